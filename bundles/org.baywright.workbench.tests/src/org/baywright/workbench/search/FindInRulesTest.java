package org.baywright.workbench.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;

import org.baywright.workbench.Ui;
import org.baywright.workbench.project.Places;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.bindings.Binding;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.search.ui.NewSearchUI;
import org.eclipse.search.ui.text.AbstractTextSearchResult;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.keys.IBindingService;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Rules are found by a part of a word from the search dialog; a double click on what was found leads there. */
class FindInRulesTest {

	private static final String COMMAND = "org.baywright.workbench.find";
	private static final String RULES = """
			sign no_start "Engine does not start"
			part battery "12 V battery" {
			  fault discharged "Low state of charge"
			}
			rule empty "It is empty" {
			  given no_start
			  then suspects battery.discharged
			  because "It is so."
			  source memory
			  by "A. Author" on 2026-03-02
			}
			""";

	private IProject project;

	@BeforeEach
	void makeAProject() throws Exception {
		Ui.closeWelcome();
		project = ProjectMaker.make("searching", new TreeMap<>(Map.of("a.bay", RULES, "b.bay", "family tarn \"Tarn\"\n")), new NullProgressMonitor());
		Ui.run(() -> Places.open(project.getFile("a.bay"), 0, 0, true));
	}

	@AfterEach
	void leaveNothing() throws Exception {
		Ui.run(() -> Ui.page().closeAllEditors(false));
		project.delete(true, true, null);
	}

	private static Shell openPage() {
		Ui.command(COMMAND);
		return Ui.dialog("Search");
	}

	private static Text words(Shell dialog) {
		return Ui.get(() -> Ui.all(dialog, Text.class).stream().filter(Text::isVisible).findFirst().orElseThrow());
	}

	private static String told(Shell dialog) {
		return String.join("\n", Ui.all(dialog, Label.class).stream().filter(Label::isVisible).map(Label::getText).toList());
	}

	private static boolean canSearch(Shell dialog) {
		return Ui.get(() -> dialog.getDefaultButton().isEnabled());
	}

	private static AbstractTextSearchResult search(String words) {
		Shell dialog = openPage();
		Ui.run(() -> words(dialog).setText(words));
		Ui.press(dialog, "Search");
		Ui.await(() -> "the dialog stays", dialog::isDisposed);
		Ui.await(() -> "no result of " + words, () -> result() != null && result().getLabel().contains(words));
		return Ui.get(FindInRulesTest::result);
	}

	private static AbstractTextSearchResult result() {
		var view = NewSearchUI.getSearchResultView();
		return view != null && view.getActivePage() instanceof PlacesPage page ? page.getInput() : null;
	}

	@Test
	void whatIsFoundStandsByFileAndADoubleClickLeadsThere() {
		AbstractTextSearchResult found = search("NOT sta");
		assertEquals("\u201cNOT sta\u201d in the rules: 2 places", found.getLabel());
		assertEquals(1, Ui.get(() -> found.getElements()).length);
		Tree tree = Ui.get(() -> Ui.all((Composite) ((PlacesPage) NewSearchUI.getSearchResultView().getActivePage()).getControl(), Tree.class).get(0));
		Ui.await(() -> "not shown", () -> tree.getItemCount() == 1 && tree.getItem(0).getItemCount() == 2);
		assertEquals("searching/a.bay", Ui.get(() -> tree.getItem(0).getText()));
		assertEquals("rule It is empty: sign Engine does not start", Ui.get(() -> tree.getItem(0).getItem(1).getText()));
		Ui.picture("search");
		Ui.run(() -> {
			TreeItem rule = tree.getItem(0).getItem(1);
			tree.setSelection(rule);
			for (int type : new int[] { SWT.Selection, SWT.DefaultSelection }) {
				Event event = new Event();
				event.item = rule;
				tree.notifyListeners(type, event);
			}
		});
		Ui.await(() -> "not led there: " + selected(), () -> selected().equals("empty"));
	}

	private static String selected() {
		IEditorPart editor = Ui.page().getActiveEditor();
		return editor instanceof ITextEditor text && text.getSelectionProvider().getSelection() instanceof ITextSelection selection
				? String.valueOf(selection.getText())
				: "";
	}

	@Test
	void nothingFoundIsSaidInWords() {
		assertTrue(search("zzqx").getLabel().startsWith("Nothing in the rules has to do with \u201czzqx\u201d."));
		Ui.picture("search-nothing");
	}

	@Test
	void withoutWordsOrKindsTheButtonIsGreyAndSaysWhy() {
		Shell dialog = openPage();
		Ui.run(() -> words(dialog).setText(""));
		assertFalse(canSearch(dialog));
		assertTrue(Ui.get(() -> told(dialog)).contains("Type a part of a name or title"), Ui.get(() -> told(dialog)));
		Ui.picture("search-dialog");
		Ui.run(() -> words(dialog).setText("low"));
		assertTrue(canSearch(dialog));
		Ui.press(dialog, "No kind");
		assertFalse(canSearch(dialog));
		assertTrue(Ui.get(() -> told(dialog)).contains("Choose at least one kind"), Ui.get(() -> told(dialog)));
		Button signs = Ui.get(() -> Ui.all(dialog, Button.class).stream().filter(each -> each.getText().equals("Signs")).findFirst().orElseThrow());
		assertFalse(Ui.get(signs::getSelection));
		Ui.press(dialog, "Signs");
		assertTrue(canSearch(dialog));
		Ui.press(dialog, "Cancel");
	}

	@Test
	void thePageComesFirstWhenRulesAreShown() {
		Ui.command("org.eclipse.search.ui.openSearchDialog");
		Shell dialog = Ui.dialog("Search");
		CTabFolder tabs = Ui.get(() -> Ui.all(dialog, CTabFolder.class).get(0));
		assertEquals("Find in rules", Ui.get(() -> tabs.getItem(0).getText().replace("&", "")));
		assertEquals(0, Ui.get(tabs::getSelectionIndex));
		Ui.press(dialog, "Cancel");
	}

	@Test
	void itsKeyIsNobodyElses() {
		IWorkbenchWindow window = Ui.get(() -> Ui.page().getWorkbenchWindow());
		IBindingService keys = window.getService(IBindingService.class);
		assertEquals("Ctrl+Alt+F", Ui.get(() -> keys.getBestActiveBindingFormattedFor(COMMAND)));
		String[] others = Ui.get(() -> Arrays.stream(keys.getBindings())
				.filter(binding -> binding.getTriggerSequence().format().startsWith("Ctrl+Alt+F") || binding.getTriggerSequence().format().startsWith("Alt+Ctrl+F"))
				.filter(binding -> binding.getParameterizedCommand() != null && !binding.getParameterizedCommand().getId().equals(COMMAND))
				.map(Binding::toString).toArray(String[]::new));
		assertEquals(0, others.length, () -> Arrays.toString(others));
	}
}
