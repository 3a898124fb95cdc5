package org.baywright.workbench.editor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.baywright.presenter.draft.FamilyDraft;
import org.baywright.presenter.draft.ProjectDraft;
import org.baywright.workbench.Ui;
import org.baywright.workbench.editor.pages.RulesEditor;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextOperationTarget;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.ide.IDE;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The second page of the editor shows what the text says and changes just that. */
class CardPageTest {

	private IProject project;
	private RulesEditor editor;
	private IDocument document;

	@BeforeEach
	void openACard() throws Exception {
		Ui.closeWelcome();
		project = ProjectMaker.make("cards", new ProjectDraft("cards", new FamilyDraft("Tarn T3 light van", "tarn", "2015", "2021", "diesel, petrol", "WZZT3"),
				true, "A. Author", LocalDate.of(2026, 3, 2)).files(), new NullProgressMonitor());
		IFile file = project.getFile("starting.bay");
		editor = Ui.get(() -> (RulesEditor) IDE.openEditor(Ui.page(), file));
		document = Ui.get(() -> editor.getDocumentProvider().getDocument(editor.getEditorInput()));
		Ui.await(() -> "not checked", () -> EditedFile.of(document).orElseThrow().project().state().isFresh());
	}

	@AfterEach
	void closeAll() throws Exception {
		Ui.run(() -> Ui.page().closeAllEditors(false));
		project.delete(true, true, null);
	}

	private Composite shell() {
		return editor.getSite().getShell();
	}

	private <C extends Control> Optional<C> find(Class<C> kind, String name) {
		return Ui.all(shell(), kind).stream().filter(control -> control.isVisible() && name.equals(control.getToolTipText())).findFirst();
	}

	private void show(String words) {
		Ui.run(() -> {
			editor.selectAndReveal(document.get().indexOf(words), 0);
			editor.turn(true);
		});
	}

	private String box(String name) {
		return Ui.get(() -> find(Text.class, name).map(Text::getText).orElse(""));
	}

	private void fill(String name, String typed) {
		Ui.run(() -> {
			Text field = find(Text.class, name).orElseThrow();
			field.setFocus();
			field.setText(typed);
			field.notifyListeners(SWT.DefaultSelection, new Event());
		});
	}

	@Test
	void aFieldChangesItsWordsAndOneUndoTakesThemBack() {
		String before = document.get();
		show("test rest_voltage");
		Ui.await(() -> "no card", () -> !box("Takes").isEmpty());
		String takes = box("Takes");
		fill("Takes", "9 min");
		Ui.await(() -> document.get(), () -> document.get().equals(before.replaceFirst("takes " + takes, "takes 9 min")));
		Ui.await(() -> box("Takes"), () -> box("Takes").equals("9 min"));
		Ui.run(() -> editor.getAdapter(ITextOperationTarget.class).doOperation(ITextOperationTarget.UNDO));
		assertEquals(before, document.get());
		Ui.await(() -> box("Takes"), () -> box("Takes").equals(takes));
	}

	@Test
	void theCardShowsWhatIsTypedIntoTheText() {
		show("test rest_voltage");
		Ui.await(() -> "no card", () -> !box("Title").isEmpty());
		String title = box("Title");
		int at = document.get().indexOf('"' + title + '"') + 1;
		Ui.run(() -> {
			try {
				document.replace(at, title.length(), "Something else");
			} catch (BadLocationException e) {
				throw new IllegalStateException(e);
			}
		});
		Ui.await(() -> box("Title"), () -> box("Title").equals("Something else"));
	}

	@Test
	void whoeverLeadsToAPlaceLeadsToItsCard() {
		show("test rest_voltage");
		Ui.await(() -> "no card", () -> !box("Takes").isEmpty());
		Ui.run(() -> editor.selectAndReveal(document.get().indexOf("rule "), 4));
		Ui.await(() -> "no rule", () -> Ui.get(() -> find(Text.class, "Run").isPresent()));
		assertTrue(Ui.get(() -> editor.isCardInFront()));
	}

	@Test
	void whatCannotBeReadIsLeftAlone() {
		show("test rest_voltage");
		Ui.await(() -> "no card", () -> !box("Takes").isEmpty());
		int brace = document.get().indexOf('{', document.get().indexOf("test rest_voltage"));
		Ui.run(() -> {
			try {
				document.replace(brace, 1, "");
			} catch (BadLocationException e) {
				throw new IllegalStateException(e);
			}
		});
		String broken = document.get();
		Ui.await(() -> "no sentence", () -> Ui.get(() -> Ui.all(shell(), Label.class).stream()
				.anyMatch(label -> label.getText().contains("cannot be shown as a card"))));
		assertFalse(Ui.get(() -> find(Combo.class, "Given").isPresent()));
		Ui.run(() -> editor.turn(false));
		assertEquals(broken, document.get());
		assertEquals(List.of(), Ui.get(() -> Ui.all(shell(), Text.class).stream().filter(text -> text.isVisible() && "Title".equals(text.getToolTipText())).toList()));
	}
}
