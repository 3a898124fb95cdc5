package org.baywright.language.ide.layout;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.workspace.RuleProject;
import org.junit.jupiter.api.Test;

class LayingOutTest {

	private static final String UGLY = "sign   a\nrule r {\ngiven a\n     then suspects battery.flat\n}\n";

	@Test
	void aWholeFile() {
		Cursor cursor = Cursor.in(UGLY + "@");
		assertEquals("sign a\nrule r {\n  given a\n  then suspects battery.flat\n}\n",
				Edits.apply(UGLY, cursor.services().format(Cursor.FILE).orElseThrow()));
	}

	@Test
	void onlyWhatChangesIsTouched() {
		Cursor cursor = Cursor.in(UGLY + "@");
		assertEquals(List.of(new TextEdit(5, 2, ""), TextEdit.insert(18, "  "), new TextEdit(28, 3, "")), sorted(cursor));
		assertEquals(List.of(TextEdit.insert(18, "  ")), cursor.services().format(Cursor.FILE, 18, 3).orElseThrow());
	}

	private static List<TextEdit> sorted(Cursor cursor) {
		return cursor.services().format(Cursor.FILE).orElseThrow();
	}

	@Test
	void aFileWithASyntaxErrorIsLeftAlone() {
		assertEquals(Optional.empty(), Cursor.in("rule  a { given ,, }@").services().format(Cursor.FILE));
	}

	@Test
	void theExamplesAreLaidOutAlready() {
		for (var sample : Samples.projects()) {
			RuleProject project = Samples.inMemory(Samples.texts(sample));
			project.files().forEach(file -> assertEquals(Optional.of(List.of()), new EditorServices(project).format(file), file));
		}
	}
}
