package org.baywright.workbench.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.TreeMap;

import org.baywright.analysis.Report;
import org.baywright.workbench.Ui;
import org.baywright.workbench.view.RulesView;
import org.baywright.workbench.view.flaws.FlawsView;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Each window follows what is worked on in it, beside another window. */
class ActiveProjectTest {

	private IProject alder;
	private IProject birch;
	private IWorkbenchWindow first;
	private IWorkbenchWindow second;

	@BeforeEach
	void openWindows() throws Exception {
		Ui.closeWelcome();
		alder = ProjectMaker.make("alder", new TreeMap<>(Map.of("a.bay", "family alder \"Alder\"\n")), new NullProgressMonitor());
		birch = ProjectMaker.make("birch", new TreeMap<>(Map.of("b.bay", "family birch \"Birch\"\n")), new NullProgressMonitor());
		first = Ui.get(() -> Ui.page().getWorkbenchWindow());
		second = Ui.get(() -> PlatformUI.getWorkbench().openWorkbenchWindow(null));
		Ui.pause(500);
	}

	@AfterEach
	void leaveNothing() throws Exception {
		Ui.run(() -> {
			if (isOpen(second)) {
				second.close();
			}
			first.getShell().forceActive();
			first.getActivePage().closeAllEditors(false);
		});
		alder.delete(true, true, null);
		birch.delete(true, true, null);
	}

	@Test
	void belongsToItsWindow() {
		RulesView inFirst = show(first);
		RulesView inSecond = show(second);
		edit(first, alder, "a.bay");
		edit(second, birch, "b.bay");
		awaitShown(inFirst, "alder");
		awaitShown(inSecond, "birch");
		ActiveProject ofFirst = Ui.get(() -> ActiveProject.of(first));
		ActiveProject ofSecond = Ui.get(() -> ActiveProject.of(second));
		assertNotSame(ofFirst, ofSecond);
		assertEquals(alder, ofFirst.project().orElseThrow().project());
		assertEquals(birch, ofSecond.project().orElseThrow().project());

		// whoever asks for one window's takes nothing from the other
		Ui.run(() -> ActiveProject.of(first).activate(birch));
		awaitShown(inFirst, "birch");
		Ui.run(() -> ActiveProject.of(second).activate(alder));
		awaitShown(inSecond, "alder");
		awaitShown(inFirst, "birch");
		assertSame(ofFirst, Ui.get(() -> ActiveProject.of(first)));
	}

	@Test
	void commandsAreForTheWindowTheyAreCalledIn() {
		edit(first, alder, "a.bay");
		edit(second, birch, "b.bay");
		Ui.await(() -> "not checked", () -> RuleProjects.of(alder).state().isFresh() && RuleProjects.of(birch).state().isFresh());
		Report ofAlder = RuleProjects.of(alder).state().checked().orElseThrow().report();
		Report ofBirch = RuleProjects.of(birch).state().checked().orElseThrow().report();
		Ui.run(() -> second.getShell().forceActive());
		Ui.await(() -> "not in front", () -> PlatformUI.getWorkbench().getActiveWorkbenchWindow() == second);
		Ui.command("org.baywright.workbench.checkAgain");
		Ui.await(() -> "not checked again", () -> RuleProjects.of(birch).state().fresh().filter(now -> now.report() != ofBirch).isPresent());
		assertSame(ofAlder, RuleProjects.of(alder).state().checked().orElseThrow().report());
	}

	@Test
	void goesWithItsWindow() {
		RulesView inFirst = show(first);
		show(second);
		edit(first, alder, "a.bay");
		edit(second, birch, "b.bay");
		awaitShown(inFirst, "alder");
		ActiveProject ofSecond = Ui.get(() -> ActiveProject.of(second));
		assertEquals(birch, ofSecond.project().orElseThrow().project());
		assertTrue(Ui.get(second::close));
		assertTrue(ofSecond.project().isEmpty());

		edit(first, birch, "b.bay");
		awaitShown(inFirst, "birch");
		Ui.await(() -> "not checked", () -> ActiveProject.of(first).state().filter(LiveState::isFresh).isPresent());
	}

	private static boolean isOpen(IWorkbenchWindow window) {
		return window != null && window.getShell() != null && !window.getShell().isDisposed();
	}

	private static RulesView show(IWorkbenchWindow window) {
		return Ui.get(() -> (RulesView) window.getActivePage().showView(FlawsView.ID));
	}

	private static void edit(IWorkbenchWindow window, IProject project, String file) {
		Ui.run(() -> Places.open(window.getActivePage(), project.getFile(file), 0, 0, true));
	}

	private static void awaitShown(RulesView view, String project) {
		Ui.await(view::getContentDescription, () -> view.getContentDescription().startsWith(project));
	}
}
