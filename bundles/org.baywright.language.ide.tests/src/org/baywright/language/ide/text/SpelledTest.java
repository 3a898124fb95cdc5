package org.baywright.language.ide.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.language.BayStandaloneSetup;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.services.BayGrammarAccess;
import org.baywright.language.workspace.RuleProject;
import org.eclipse.xtext.GrammarUtil;
import org.junit.jupiter.api.Test;

class SpelledTest {

	/** Whatever word of the language somebody takes as a name, as it is written the parser reads it as that name. */
	@Test
	void everyWordOfTheLanguageCanBeAName() {
		for (String word : GrammarUtil.getAllKeywords(BayStandaloneSetup.injector().getInstance(BayGrammarAccess.class).getGrammar())) {
			if (Spelled.isName(word)) {
				RuleProject project = RuleProject.inMemory("word");
				project.update("a.bay", "sign " + Spelled.written(word) + "\nstate s : " + Spelled.writtenValue(word) + ", other\n");
				assertEquals(List.of(), project.snapshot().problems(), word);
				assertEquals(word, project.snapshot().rules().signs().get(0).name());
				assertEquals(word, project.snapshot().rules().states().get(0).values().get(0).name());
			}
		}
	}

	@Test
	void wordsKeepTheirPlaces() {
		for (Word word : Words.of(Cursor.COMMON)) {
			assertEquals(word.text(), Cursor.COMMON.substring(word.offset(), word.end()));
		}
	}
}
