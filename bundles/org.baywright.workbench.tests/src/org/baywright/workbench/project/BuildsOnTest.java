package org.baywright.workbench.project;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Map;
import java.util.stream.Stream;

import org.baywright.model.Span;
import org.baywright.workbench.Ui;
import org.baywright.workbench.editor.Resolutions;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.texteditor.ITextEditor;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two projects in the running workbench, of which one builds on the other. */
class BuildsOnTest {

	private static final String SHARED = """
			sign lamp_dark "Lamp stays dark"
			rule lamp_goes_on "Somebody else goes on" { for every family given lamp_dark unexplained then refers "a specialist"
			  because "Nothing can be checked." source practice by "R. Falk" on 2026-03-02 }
			""";

	private IProject shared;
	private IProject van;

	@BeforeEach
	void makeBoth() throws Exception {
		Ui.closeWelcome();
		shared = ProjectMaker.make("shared", Map.of("lamps.bay", SHARED), new NullProgressMonitor());
		van = ProjectMaker.make("built_on_shared", Map.of("van.bay", "builds_on \"../shared\"\nfamily tarn \"Tarn T3 van\"\n"), new NullProgressMonitor());
		awaitMark("builds-on-not-taken");
		Ui.await(() -> "no fix", () -> new Resolutions().getResolutions(Ui.mark(van, "builds-on-not-taken")).length > 0);
		Ui.run(() -> new Resolutions().getResolutions(Ui.mark(van, "builds-on-not-taken"))[0].run(Ui.mark(van, "builds-on-not-taken")));
		awaitNone();
	}

	@AfterEach
	void deleteBoth() throws Exception {
		Ui.run(() -> Ui.page().closeAllEditors(false));
		van.delete(true, true, null);
		if (shared.exists()) {
			shared.delete(true, true, null);
		}
	}

	private void awaitMark(String kind) {
		Ui.await(() -> "no mark " + kind + ": " + Arrays.toString(Ui.marks(van)), () -> Ui.mark(van, kind) != null);
	}

	private void awaitNone() {
		Ui.await(() -> Arrays.toString(Ui.marks(van)), () -> Ui.marks(van).length == 0 && RuleProjects.of(van).state().isFresh());
	}

	private IEditorPart open(String file, String word) {
		String text = RuleProjects.of(van).state().texts().orElseThrow().sources().get(file);
		int offset = text.indexOf(word);
		Ui.run(() -> Places.open(van, new Span(file, 1, 1, 1, 1, offset, word.length()), true));
		IEditorPart editor = Ui.get(() -> Ui.page().getActiveEditor());
		assertEquals(word, Ui.get(() -> ((ITextSelection) editor.getAdapter(ITextEditor.class).getSelectionProvider().getSelection()).getText()));
		return editor;
	}

	@Test
	void aChangeThereIsCheckedHere() throws Exception {
		IFile lamps = shared.getFile("lamps.bay");
		lamps.setContents(new ByteArrayInputStream(SHARED.replace("a specialist", "the maker").getBytes(StandardCharsets.UTF_8)), false, false, null);
		awaitMark("builds-on-changed");
		assertTrue(Ui.marks(van)[0].contains("changed rule `lamp_goes_on`"), () -> Arrays.toString(Ui.marks(van)));
		lamps.setContents(new ByteArrayInputStream(SHARED.getBytes(StandardCharsets.UTF_8)), false, false, null);
		awaitNone();
		lamps.setContents(new ByteArrayInputStream("sign\n".getBytes(StandardCharsets.UTF_8)), false, false, null);
		awaitMark("builds-on-errors");
		assertEquals(1, Ui.marks(van).length, () -> Arrays.toString(Ui.marks(van)));
	}

	/** Opened where it can be changed; out of the workspace, it can only be read. */
	@Test
	void aPlaceThereIsOpened() throws Exception {
		IEditorPart editor = open("../shared/lamps.bay", "lamp_goes_on");
		assertEquals(shared.getFile("lamps.bay"), editor.getEditorInput().getAdapter(IFile.class));
		Ui.run(() -> Ui.page().closeAllEditors(false));
		Path folder = Path.of(shared.getLocationURI());
		shared.delete(false, true, null);
		try {
			IEditorPart copy = open("../shared/lamps.bay", "lamp_goes_on");
			assertEquals("lamps.bay", copy.getEditorInput().getName());
			assertFalse(Ui.get(() -> copy.getAdapter(ITextEditor.class).isEditable()));
			assertEquals(copy, open("../shared/lamps.bay", "Lamp stays dark"), "the same text is one editor");
		} finally {
			try (Stream<Path> all = Files.walk(folder)) {
				for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
					Files.delete(path);
				}
			}
			awaitMark("builds-on-missing");
		}
	}
}
