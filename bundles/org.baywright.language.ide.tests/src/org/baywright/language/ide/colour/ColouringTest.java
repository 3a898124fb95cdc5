package org.baywright.language.ide.colour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.junit.jupiter.api.Test;

class ColouringTest {

	private static String colours(String text) {
		Cursor cursor = Cursor.in(text + "@");
		return cursor.services().colours(Cursor.FILE).stream().map(word -> word.colour() + (word.declaration() ? "!" : "") + ":"
				+ text.substring(word.offset(), word.offset() + word.length())).collect(Collectors.joining(" "));
	}

	@Test
	void wordsByTheirMeaning() {
		assertEquals("KEYWORD:rule RULE!:a TEXT:\"A\" KEYWORD:for FAMILY:tarn KEYWORD:where TRAIT:engine KEYWORD:is VALUE:diesel"
				+ " KEYWORD:given SIGN:no_crank CODE:low_supply KEYWORD:present KEYWORD:run TEST:rest_voltage KEYWORD:expect"
				+ " NUMBER:12 NUMBER:4 UNIT:V KEYWORD:met VERDICT:clears PART:battery FAULT:flat KEYWORD:in STATE:ignition"
				+ " VALUE:on COMMENT:// x", colours("rule a \"A\" { for tarn where engine is diesel given no_crank, low_supply present"
						+ " run rest_voltage expect 12.4 V met : clears battery.flat in ignition on } // x"));
		assertEquals("KEYWORD:test TEST!:t KEYWORD:results VALUE!:on VALUE!:off", colours("test t { results on, off }"));
		assertEquals("KEYWORD:test TEST!:t KEYWORD:measures UNIT:m UNIT:/ UNIT:s NUMBER:0 NUMBER:5 KEYWORD:step NUMBER:1",
				colours("test t { measures m/s 0 .. 5 step 1 }"));
	}

	@Test
	void wrongTextIsColouredByItsLooks() {
		assertEquals("KEYWORD:rule KEYWORD:given KEYWORD:given TEXT:\"no end", colours("rule { given given ;; \"no end"));
	}

	@Test
	void wordsAreSortedAndDoNotOverlap() {
		for (var sample : Samples.projects()) {
			RuleProject project = Samples.inMemory(Samples.texts(sample));
			EditorServices services = new EditorServices(project);
			for (String file : project.files()) {
				int behind = 0;
				List<Coloured> words = services.colours(file);
				assertTrue(words.size() > 10);
				for (Coloured word : words) {
					assertTrue(word.offset() >= behind && word.length() > 0, file + " " + word);
					behind = word.offset() + word.length();
				}
			}
		}
	}
}
