package org.baywright.language.conversion;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.baywright.language.workspace.RuleProject;
import org.baywright.model.RuleBase;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextsTest {

	@ParameterizedTest
	@ValueSource(strings = { "", "plain", "a \"quoted\" word", "C:\\new\\folder", "two\nlines", "\\", "\\\\n", "12 \u03A9" })
	void whatIsQuotedReadsTheSame(String text) {
		assertEquals(text, Texts.unquote(Texts.quote(text)));
	}

	@Test
	void aBackslashThatMeansNothingStandsForItself() {
		assertEquals("C:\\temp", Texts.unquote("\"C:\\temp\""));
	}

	@Test
	void quotedTextsReachTheModel() {
		assertEquals("say \"off\" \\ on", model("sign a \"say \\\"off\\\" \\\\ on\"").signs().get(0).title());
	}

	@Test
	void aCaretMakesAWordOfTheLanguageAName() {
		RuleBase rules = model("sign ^rule part ^part { fault ^absent } rule r { given ^rule then clears ^part.^absent }");
		assertEquals("rule", rules.signs().get(0).name());
		assertEquals("part.absent", rules.faults().get(0).name());
		assertEquals(1, rules.rules().size());
	}

	@Test
	void wordsOfOnePlaceMayBeNamesElsewhere() {
		RuleBase rules = model("""
				tool cost tool skill cost 2.50
				state lamp : on, off, clear, set, read
				module base answers in lamp on
				sign what
				test step { results on, off needs cost, skill in lamp on cost 3 skill trained }
				part tool { fault raw }
				rule cases { given what, step is on run step on on : clears tool.raw on off : proves nothing }
				job "x" { on van found step on, what was tool.raw }
				family van
				""");
		assertEquals(1, rules.rules().size());
		assertEquals(1, rules.cases().size());
		assertEquals("2.50", rules.tools().get(1).cost().toPlainString());
	}

	@Test
	void namesMayUseTheLettersOfAnyScript() {
		assertEquals("z\u00FCndung_\u043D\u0435\u0442",
				model("sign z\u00FCndung_\u043D\u0435\u0442").signs().get(0).name());
	}

	private static RuleBase model(String text) {
		RuleProject project = RuleProject.inMemory("one");
		project.update("a.bay", text);
		return project.snapshot().rules();
	}
}
