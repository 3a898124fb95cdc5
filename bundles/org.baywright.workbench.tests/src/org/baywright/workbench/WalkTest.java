package org.baywright.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;

import org.baywright.pack.Pack;
import org.baywright.pack.PackReader;
import org.baywright.workbench.project.RuleProjects;
import org.baywright.workbench.walk.WalkView;
import org.baywright.workbench.wizard.ExampleWizard;
import org.baywright.workbench.wizard.PackWizard;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.wizard.WizardDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.IWorkbenchWizard;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.Test;

/** The ten-minute walk as a new user takes it, with pictures of the way. */
class WalkTest {

	private static final String[] NONE = {};

	private static IProject project() {
		return ResourcesPlugin.getWorkspace().getRoot().getProject("first-walk");
	}

	private static String marks() {
		return Arrays.toString(Ui.marks(project()));
	}

	private static WizardDialog open(IWorkbenchWizard wizard) {
		return Ui.get(() -> {
			wizard.init(PlatformUI.getWorkbench(), StructuredSelection.EMPTY);
			WizardDialog dialog = new WizardDialog(Ui.page().getWorkbenchWindow().getShell(), wizard);
			dialog.setBlockOnOpen(false);
			dialog.open();
			return dialog;
		});
	}

	private static void finish(WizardDialog dialog, IWorkbenchWizard wizard) {
		Ui.await(() -> "the wizard does not get ready: " + dialog.getErrorMessage(), wizard::canFinish);
		Ui.run(() -> {
			assertTrue(wizard.performFinish());
			dialog.close();
		});
	}

	@Test
	void fromTheWelcomeToTheRulePack() throws Exception {
		Ui.run(() -> {
			Ui.page().closeAllEditors(false);
			Ui.page().resetPerspective();
			Ui.page().getWorkbenchWindow().getShell().setBounds(0, 0, 1440, 900);
			PlatformUI.getWorkbench().getIntroManager().showIntro(Ui.page().getWorkbenchWindow(), false);
		});
		// another test may have closed it; a new workspace opens it by itself
		Ui.run(() -> PlatformUI.getWorkbench().getIntroManager().showIntro(Ui.page().getWorkbenchWindow(), false));
		Ui.await(() -> "no welcome", () -> PlatformUI.getWorkbench().getIntroManager().getIntro() != null);
		Ui.picture("01-welcome");
		Ui.run(() -> PlatformUI.getWorkbench().getIntroManager().closeIntro(PlatformUI.getWorkbench().getIntroManager().getIntro()));

		// the menu of the rules comes with their perspective, a moment later
		Ui.await(() -> "menus: " + menus(), () -> menus().equals(List.of("File", "Edit", "Search", "Rules", "View", "Help")));

		ExampleWizard examples = new ExampleWizard();
		WizardDialog choice = open(examples);
		Ui.picture("02-example");
		finish(choice, examples);
		Ui.run(WalkView::open);
		awaitWalk("Done: the example is in the project tree.");
		IFile rules = project().getFile("rules.bay");
		assertTrue(rules.exists());

		Ui.await(() -> "no contradiction: " + marks(), () -> Ui.mark(project(), "contradiction") != null);
		assertEquals(1, Ui.marks(project()).length, WalkTest::marks);
		ITextEditor editor = Ui.get(() -> (ITextEditor) IDE.openEditor(Ui.page(), rules));
		IDocument document = Ui.get(() -> editor.getDocumentProvider().getDocument(editor.getEditorInput()));
		Ui.run(() -> editor.selectAndReveal(document.get().indexOf("strap_by_drop"), 0));
		chooseTheFlaw();
		Ui.pause(1500);
		Ui.picture("contradiction");

		Composite window = Ui.get(WalkTest::window);
		for (int i = 0; i < 3; i++) {
			Ui.press(window, "Next step");
		}
		assertFalse(walk().endsWith("Done: the contradiction is gone."), WalkTest::walk);
		String wrong = "                  clears ground_strap.loose\n";
		Ui.run(() -> document.set(document.get().replace(wrong, "")));
		Ui.await(() -> "still there: " + marks(), () -> Ui.marks(project()).length == 0);
		awaitWalk("Done: the contradiction is gone.");
		Ui.run(() -> editor.doSave(null));
		Ui.pause(500);
		Ui.picture("03-mended");
		for (String view : new String[] { "picture", "grid", "cases", "bench" }) {
			Ui.run(() -> {
				try {
					Ui.page().showView("org.baywright.workbench.view." + view);
				} catch (PartInitException e) {
					throw new IllegalStateException(e);
				}
			});
			Ui.pause(1500);
			Ui.picture("04-" + view);
		}
		assertArrayEquals(NONE, Ui.marks(project()));
		Ui.await(() -> "not checked", () -> RuleProjects.of(project()).state().isFresh());
		assertTrue(RuleProjects.of(project()).state().checked().orElseThrow().report().cases().stream().allMatch(job -> job.passed()));

		PackWizard packing = new PackWizard();
		WizardDialog export = open(packing);
		Ui.picture("05-pack");
		Ui.run(() -> Display.getCurrent().timerExec(1500, () -> {
			// the note that the pack was written waits for somebody to read it
			var shell = Display.getCurrent().getActiveShell();
			if (shell != null) {
				shell.close();
			}
		}));
		finish(export, packing);
		Path pack = Path.of(project().getLocationURI()).resolve("first-walk.baypack");
		assertTrue(Files.exists(pack));
		Pack read = PackReader.read(Files.readAllBytes(pack));
		assertEquals(4, read.rules().rules().size());
		assertEquals(3, read.manifest().cases());
		assertNotNull(read.manifest().fingerprint());
	}

	private static Composite window() {
		return Ui.page().getWorkbenchWindow().getShell();
	}

	/** What the walk says at its step. */
	private static String walk() {
		return Ui.get(() -> find(window(), Text.class, text -> text.getText().contains("contradict")
				|| text.getText().contains("relay_by_swap")).getText());
	}

	private static void awaitWalk(String end) {
		Ui.await(() -> "the walk says: " + walk(), () -> walk().endsWith(end));
	}

	/** Selects the contradiction, so that its story is told. */
	private static void chooseTheFlaw() {
		Tree tree = Ui.get(() -> find((Composite) Ui.page().getWorkbenchWindow().getShell(), Tree.class,
				found -> found.getItemCount() > 0 && found.getItem(0).getText().startsWith("One rule confirms")));
		Ui.run(() -> {
			TreeItem flaw = tree.getItem(0).getItem(0);
			tree.setSelection(flaw);
			Event event = new Event();
			event.item = flaw;
			tree.notifyListeners(SWT.Selection, event);
		});
	}

	private static <T extends Control> T find(Composite in, Class<T> type, Predicate<T> wanted) {
		for (Control child : in.getChildren()) {
			if (type.isInstance(child) && wanted.test(type.cast(child))) {
				return type.cast(child);
			}
			T found = child instanceof Composite inner ? find(inner, type, wanted) : null;
			if (found != null) {
				return found;
			}
		}
		return null;
	}

	private static List<String> menus() {
		return Arrays.stream(Ui.page().getWorkbenchWindow().getShell().getMenuBar().getItems()).map(item -> item.getText().replace("&", ""))
				.filter(text -> !text.isEmpty()).toList();
	}
}
