package org.baywright.workbench.editor;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.regex.Pattern;

import org.baywright.analysis.Flaw;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.baywright.presenter.draft.FamilyDraft;
import org.baywright.presenter.draft.ProjectDraft;
import org.baywright.workbench.Ui;
import org.baywright.workbench.help.Help;
import org.baywright.workbench.help.HelpView;
import org.baywright.workbench.project.FileEdits;
import org.baywright.workbench.project.RuleMarkers;
import org.baywright.workbench.search.PlaceFound;
import org.baywright.workbench.search.PlacesFound;
import org.baywright.workbench.search.PlacesQuery;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.text.ITextOperationTarget;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.contentassist.ICompletionProposal;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.ltk.core.refactoring.CheckConditionsOperation;
import org.eclipse.ltk.core.refactoring.CreateChangeOperation;
import org.eclipse.ltk.core.refactoring.PerformChangeOperation;
import org.eclipse.ltk.core.refactoring.RefactoringCore;
import org.eclipse.ltk.core.refactoring.RefactoringStatus;
import org.eclipse.ltk.core.refactoring.participants.ProcessorBasedRefactoring;
import org.eclipse.search.ui.text.Match;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Control;
import org.eclipse.ui.ide.IDE;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.texteditor.MarkerAnnotation;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Editing in the running workbench: marks, fixes, names across files, assist, explanations, help. */
class EditingTest {

	private static final String[] NONE = {};

	private static final String CONTRADICTION = """

			rule low_is_fine "Says the opposite"{
			  given no_start
			  run rest_voltage
			  expect at_least 12.4 V
			  below : clears battery.discharged
			  because "It is a mistake."
			  source memory
			  by "A. Author" on 2026-03-02
			}
			""";

	private IProject project;
	private ITextEditor editor;
	private IDocument document;

	@BeforeEach
	void openAProjectThatNothingStandsAgainst() throws Exception {
		Ui.closeWelcome();
		SortedMap<String, String> files = new ProjectDraft("editing",
				new FamilyDraft("Tarn T3 light van", "tarn", "2015", "2021", "diesel, petrol", "WZZT3"), true, "A. Author",
				LocalDate.of(2026, 3, 2)).files();
		files.put("jobs.bay", """
				job "Job 1" {
				  on tarn with engine diesel, built 2018
				  found no_start, rest_voltage 11.2 V
				  was battery.discharged
				}
				""");
		project = ProjectMaker.make("editing", files, new NullProgressMonitor());
		IFile file = project.getFile("starting.bay");
		editor = Ui.get(() -> (ITextEditor) IDE.openEditor(Ui.page(), file));
		document = Ui.get(() -> editor.getDocumentProvider().getDocument(editor.getEditorInput()));
		Ui.await(() -> "not checked", () -> edited().project().state().isFresh());
		assertArrayEquals(NONE, Ui.marks(project), () -> Arrays.toString(Ui.marks(project)));
	}

	@AfterEach
	void deleteTheProject() throws Exception {
		Ui.run(() -> Ui.page().closeAllEditors(false));
		project.delete(true, true, null);
	}

	private EditedFile edited() {
		return EditedFile.of(editor).orElseThrow();
	}

	private ITextViewer viewer() {
		return Ui.get(() -> editor.getAdapter(ITextViewer.class));
	}

	private void type(int offset, String text) {
		Ui.run(() -> {
			try {
				document.replace(offset, 0, text);
			} catch (BadLocationException e) {
				throw new IllegalStateException(e);
			}
		});
	}

	@Test
	void aContradictionIsMarkedAndItsFixTakesItAway() {
		type(document.getLength(), CONTRADICTION);
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "contradiction") != null);
		IMarker marker = Ui.mark(project, "contradiction");
		List<Resolutions.Resolution> fixes = Ui.get(() -> Resolutions.of(marker));
		assertFalse(fixes.isEmpty());
		assertTrue(fixes.get(0).getDescription().contains("proves nothing"), fixes.get(0).getDescription());
		Ui.run(() -> fixes.get(0).run(marker));
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "contradiction") == null);
	}

	@Test
	void aWrongNameIsMarkedAtOnceAlsoBehindASyntaxError() {
		type(document.get().indexOf("rule low_battery"), "rule { given\n");
		type(document.getLength(), "job \"Job 2\" { on tarn found no_strat was battery.discharged }\n");
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> misspelled() != null);
		Resolutions.Resolution fix = Ui.get(() -> Resolutions.of(misspelled())).get(0);
		Ui.run(() -> fix.run(misspelled()));
		assertTrue(Ui.get(() -> document.get()).contains("found no_start was"), fix.getLabel());
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> misspelled() == null);
	}

	@Test
	void whatAFixTakesAwayAndSavesLeavesNoMarkBehind() {
		Ui.run(() -> editor.doSave(new NullProgressMonitor()));
		for (int i = 0; i < 20; i++) {
			type(document.getLength(), "job \"Job 2\" { on tarn found no_strat was battery.discharged }\n");
			Ui.run(() -> editor.doSave(new NullProgressMonitor()));
			Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> misspelled() != null && Resolutions.of(misspelled()).size() > 0);
			// at another moment each time, as the proofs follow on the texts
			Ui.pause(i * 14L);
			Ui.run(() -> Resolutions.of(misspelled()).get(0).run(misspelled()));
			assertFalse(Ui.get(() -> editor.isDirty()), "not saved");
			Ui.run(() -> {
				document.set(document.get().replaceAll("job \"Job 2\".*\n", ""));
				editor.doSave(new NullProgressMonitor());
			});
			Ui.await(() -> Arrays.toString(Ui.marks(project)) + marked(), () -> Ui.marks(project).length == 0 && marked().isEmpty());
		}
	}

	@Test
	void whenAFileIsSavedTheMarksOfOthersGoWithTheirWords() throws Exception {
		IFile file = edited().file();
		int at = document.get().indexOf("rule low_battery");
		IMarker other = file.createMarker(IMarker.BOOKMARK, Map.of(IMarker.MESSAGE, "other", IMarker.CHAR_START, at, IMarker.CHAR_END, at + 4));
		Ui.await(() -> marked().toString(), () -> marked().contains("other"));
		change(text -> text.replace(0, 0, "// moves all\n"));
		int now = document.get().indexOf("rule low_battery");
		assertEquals(now, other.getAttribute(IMarker.CHAR_START, 0));
		assertEquals(now + 4, other.getAttribute(IMarker.CHAR_END, 0));
		change(text -> text.replace(now - 1, 6, ""));
		assertFalse(other.exists(), "its words are gone");
	}

	private void change(FileEdits.Change change) {
		Ui.get(() -> {
			FileEdits.change(edited().file(), change);
			return null;
		});
	}

	/** What is underlined in the editor. */
	private List<String> marked() {
		List<String> found = new ArrayList<>();
		editor.getDocumentProvider().getAnnotationModel(editor.getEditorInput()).getAnnotationIterator().forEachRemaining(each -> {
			if (each instanceof MarkerAnnotation mark) {
				found.add(mark.getText());
			}
		});
		return found;
	}

	private IMarker misspelled() {
		try {
			return Arrays.stream(project.findMarkers(RuleMarkers.PROBLEM, true, IResource.DEPTH_INFINITE))
					.filter(marker -> marker.getAttribute(IMarker.MESSAGE, "").contains("no_strat")).findFirst().orElse(null);
		} catch (CoreException e) {
			throw new IllegalStateException(e);
		}
	}

	@Test
	void aFixOfWhatHasChangedMeanwhileIsNotMade() {
		type(document.getLength(), CONTRADICTION);
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "contradiction") != null);
		IMarker marker = Ui.mark(project, "contradiction");
		Resolutions.Resolution fix = Ui.get(() -> Resolutions.of(marker)).get(0);
		type(0, "// something new\n");
		assertFalse(Ui.get(fix::isStillTrue));
	}

	@Test
	void aTestIsRenamedInAllFiles() throws Exception {
		int offset = document.get().indexOf("run rest_voltage") + 6;
		RenameProcessor processor = new RenameProcessor(edited(), offset, "rest_voltage");
		processor.setName("open_voltage");
		CheckConditionsOperation check = new CheckConditionsOperation(new ProcessorBasedRefactoring(processor),
				CheckConditionsOperation.ALL_CONDITIONS);
		PerformChangeOperation perform = new PerformChangeOperation(new CreateChangeOperation(check, RefactoringStatus.FATAL));
		perform.setUndoManager(RefactoringCore.getUndoManager(), "Rename");
		Ui.run(() -> {
			try {
				ResourcesPlugin.getWorkspace().run(perform, null);
			} catch (CoreException e) {
				throw new IllegalStateException(e);
			}
		});
		assertEquals(3, count(document.get(), "open_voltage"));
		assertEquals(0, count(document.get(), "rest_voltage"));
		String jobs = new String(project.getFile("jobs.bay").getContents().readAllBytes(), StandardCharsets.UTF_8);
		assertEquals(1, count(jobs, "open_voltage 11.2 V"), jobs);
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> edited().project().state().isFresh() && Ui.marks(project).length == 0);
	}

	@Test
	void aNameThatIsTakenIsRefused() throws Exception {
		RenameProcessor processor = new RenameProcessor(edited(), document.get().indexOf("run rest_voltage") + 6, "rest_voltage");
		processor.setName("no_start");
		RefactoringStatus status = new ProcessorBasedRefactoring(processor).checkAllConditions(new NullProgressMonitor());
		assertTrue(status.hasFatalError());
		assertTrue(status.getMessageMatchingSeverity(RefactoringStatus.FATAL).contains("no_start"));
	}

	private static int count(String text, String word) {
		return text.split(Pattern.quote(word), -1).length - 1;
	}

	@Test
	void usesAreListedByFile() {
		PlacesQuery query = FindUses.query(edited(), document.get(), document.get().indexOf("run rest_voltage") + 6);
		query.run(new NullProgressMonitor());
		PlacesFound found = (PlacesFound) query.getSearchResult();
		assertEquals("rest_voltage: 4 places", found.getLabel());
		assertEquals(4, found.getMatchCount());
		Match[] inJobs = found.getMatches(project.getFile("jobs.bay"));
		assertEquals(1, inJobs.length);
		PlacesQuery once = FindUses.query(edited(), document.get(), document.get().indexOf("rule low_battery") + 6);
		once.run(new NullProgressMonitor());
		assertEquals("low_battery: 1 place", once.getLabel());
		assertEquals("found no_start, rest_voltage 11.2 V", ((PlaceFound) inJobs[0]).line());
	}

	@Test
	void assistOffersNamesAndSkeletonsAndFillsThemIn() {
		type(document.getLength(), "\nrule another {\n  given no\n}\n");
		int offset = document.get().lastIndexOf("given no") + 8;
		ICompletionProposal[] offered = new Assist().computeCompletionProposals(viewer(), offset);
		ICompletionProposal sign = Arrays.stream(offered).filter(proposal -> proposal.getDisplayString().startsWith("no_start"))
				.findFirst().orElseThrow(() -> new AssertionError(Arrays.toString(offered)));
		assertTrue(sign.getDisplayString().contains("Engine does not start"), sign.getDisplayString());
		Ui.run(() -> sign.apply(document));
		assertTrue(document.get().contains("given no_start\n}"));
		ICompletionProposal[] whole = new Assist().computeCompletionProposals(viewer(), document.getLength());
		ICompletionProposal test = Arrays.stream(whole).filter(proposal -> proposal.getDisplayString().startsWith("test"))
				.findFirst().orElseThrow();
		Ui.run(() -> {
			editor.selectAndReveal(document.get().lastIndexOf("given no_start") + 6, 0);
			((ITextOperationTarget) viewer()).doOperation(ISourceViewer.CONTENTASSIST_PROPOSALS);
		});
		Ui.pause(1500);
		Ui.picture("assist");
		Ui.run(() -> Ui.page().activate(Ui.page().findViewReference("org.eclipse.ui.navigator.ProjectExplorer").getPart(true)));
		int before = document.getLength();
		Ui.run(() -> test.apply(document));
		assertTrue(document.getLength() > before + 20, document.get().substring(before));
		assertNotNull(Ui.get(() -> test.getSelection(document)));
	}

	@Test
	void wordsAreColouredAndNamesExplained() {
		StyledText widget = Ui.get(() -> (StyledText) editor.getAdapter(Control.class));
		Ui.await(() -> "no colours", () -> widget.getStyleRanges().length > 20);
		type(0, "// more\n");
		int word = document.get().indexOf("sign no_start");
		Ui.await(() -> "lost its colour", () -> widget.getStyleRangeAtOffset(word) != null && widget.getStyleRangeAtOffset(word).foreground != null);
		Object told = new Explanation().getHoverInfo2(viewer(), new Region(document.get().indexOf("run rest_voltage") + 6, 0));
		assertTrue(String.valueOf(told).contains("Battery voltage at rest"), String.valueOf(told));
	}

	@Test
	void linksLeadToTheDeclaration() {
		var links = new Links().detectHyperlinks(viewer(), new Region(document.get().indexOf("run rest_voltage") + 6, 0), false);
		Ui.run(() -> links[0].open());
		String selected = Ui.get(() -> ((ITextSelection) editor.getSelectionProvider().getSelection()).getText());
		assertEquals("rest_voltage", selected);
		int line = Ui.get(() -> ((ITextSelection) editor.getSelectionProvider().getSelection()).getStartLine());
		assertTrue(Ui.get(() -> lineAt(line)).startsWith("test rest_voltage"));
	}

	private String lineAt(int line) {
		try {
			return document.get(document.getLineOffset(line), document.getLineLength(line));
		} catch (BadLocationException e) {
			throw new IllegalStateException(e);
		}
	}

	@Test
	void helpComesOnTheFlawAtTheCursor() {
		type(document.getLength(), CONTRADICTION);
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "contradiction") != null);
		int start = Ui.mark(project, "contradiction").getAttribute(IMarker.CHAR_START, 0);
		Ui.run(() -> {
			Ui.page().activate(editor);
			editor.selectAndReveal(start, 0);
			Help.showHere();
		});
		assertEquals("contradiction", Ui.get(() -> ((HelpView) Ui.page().findView(HelpView.ID)).shownPage()));
		Ui.picture("help");
	}

	@Test
	void anEditorThatIsClosedUnsavedLeavesTheTextOfTheDisk() {
		type(document.getLength(), CONTRADICTION);
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "contradiction") != null);
		Ui.run(() -> Ui.page().closeEditor(editor, false));
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.marks(project).length == 0);
	}

	@Test
	void aFileChangedOutsideIsReadAgain() throws Exception {
		Path jobs = Path.of(project.getFile("jobs.bay").getLocationURI());
		Files.writeString(jobs, Files.readString(jobs).replace("11.2 V", "13.1 V"));
		project.refreshLocal(IResource.DEPTH_INFINITE, null);
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "failing-job") != null);
	}

	@Test
	void aFixIsMadeFromTheFlaws() {
		type(document.getLength(), CONTRADICTION);
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "contradiction") != null);
		Ui.await(() -> "not fresh", () -> edited().project().state().isFresh());
		Flaw flaw = edited().project().state().checked().orElseThrow().report().flaws().stream()
				.filter(found -> found.check().equals("contradiction")).findFirst().orElseThrow();
		Ui.run(() -> {
			Display.getCurrent().timerExec(700, () -> press(Display.getCurrent().getActiveShell()));
			Resolutions.offer(editor.getSite().getShell(), edited().project(), flaw.span(), flaw.id(), flaw.fixes().get(0).title());
		});
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "contradiction") == null);
	}

	@Test
	void whoAcceptsIsAskedForTheReasonAndForNothingElse() {
		type(document.getLength(), "sign lonely \"Lonely\"\n");
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "gap") != null && edited().project().state().isFresh());
		IMarker marker = Ui.mark(project, "gap");
		Resolutions.Resolution fix = Ui.get(() -> Resolutions.of(marker)).stream().filter(each -> each.getLabel().startsWith("Accept")).findFirst()
				.orElseThrow();
		assertTrue(fix.getDescription().contains("because \"\u2026\""), fix.getDescription());
		Flaw flaw = edited().project().state().checked().orElseThrow().report().flaws().stream()
				.filter(found -> found.check().equals("gap")).findFirst().orElseThrow();
		Ui.run(() -> {
			Display.getCurrent().timerExec(700, () -> {
				Shell asking = Display.getCurrent().getActiveShell();
				assertFalse(asking.getDefaultButton().isEnabled(), "a reason is needed");
				Ui.all(asking, Text.class).get(0).setText("It is new");
				press(asking);
			});
			Resolutions.offer(editor.getSite().getShell(), edited().project(), flaw.span(), flaw.id(), fix.getLabel());
		});
		assertTrue(Ui.get(() -> document.get()).contains(" because \"It is new\""), document.get());
		Ui.await(() -> Arrays.toString(Ui.marks(project)), () -> Ui.mark(project, "gap") == null);
	}

	/** Agrees to what a dialog asks. */
	private static void press(Shell dialog) {
		Button agree = dialog.getDefaultButton();
		agree.notifyListeners(SWT.Selection, new Event());
	}
}
