package org.baywright.language.ide.fix;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;

import org.baywright.language.ide.text.Edits;
import org.junit.jupiter.api.Test;

/** {@link Places}: where a line comes to stand. */
class PlacesTest {

	private static void adds(String before, String kind, String name, String line, String after) {
		assertEquals(after, Edits.apply(before, List.of(new Places(before).addLine(kind, name, line).orElseThrow())));
	}

	@Test
	void belowTheLastLineThatBeginsAlike() {
		adds("rule a \"A\" {\n  given x\n  // why\n  run t\n  because \"given\"\n}\n", "rule", "a", "given b.c suspected",
				"rule a \"A\" {\n  given x\n  given b.c suspected\n  // why\n  run t\n  because \"given\"\n}\n");
		adds("rule a {\n  given x,\n        y\n  run t\n}\n", "rule", "a", "given z", "rule a {\n  given x,\n        y\n  given z\n  run t\n}\n");
		adds("hazard h {\n\tcaution \"A\"\n\n\tcaution \"B\"\n}\n", "hazard", "h", "caution \"\"", "hazard h {\n\tcaution \"A\"\n\n\tcaution \"B\"\n\tcaution \"\"\n}\n");
	}

	@Test
	void withinABlockOfItsOwnKind() {
		adds("repair r {\n  fixes a.b\n  verify {\n    repeat t\n    clear m\n  }\n}\n", "verify", "r", "repeat what confirmed",
				"repair r {\n  fixes a.b\n  verify {\n    repeat t\n    repeat what confirmed\n    clear m\n  }\n}\n");
	}

	@Test
	void elseBeforeTheBrace() {
		adds("rule a {\n  run t\n}\n", "rule", "a", "given x", "rule a {\n  run t\n  given x\n}\n");
		adds("rule a { given x run t }\n", "rule", "a", "given y", "rule a { given x run t given y }\n");
		adds("rule a {\n  run t\n  on low : clears b.c }\n", "rule", "a", "run u", "rule a {\n  run t\n  run u\n  on low : clears b.c }\n");
	}
}
