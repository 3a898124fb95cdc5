package org.baywright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.UnaryOperator;

import org.baywright.model.Span;
import org.junit.jupiter.api.Test;

class ExcerptTest {

	private static String excerpt(String text, int line, int column, int endLine, int endColumn) {
		return String.join("\n", Excerpt.of(text, new Span("a.bay", line, column, endLine, endColumn, 0, 0), Style.PLAIN,
				UnaryOperator.identity()));
	}

	@Test
	void marksThePlace() {
		assertEquals("    2 | two words\n      |     ^^^^^", excerpt("one\ntwo words\nthree", 2, 5, 2, 10));
	}

	@Test
	void marksAnEmptyPlaceAndThePlaceBehindTheEnd() {
		assertEquals("    1 | abc\n      | ^", excerpt("abc", 1, 1, 1, 1));
		assertEquals("    1 | abc\n      |    ^", excerpt("abc", 1, 4, 1, 4));
		assertEquals("    1 | abc\n      |    ^", excerpt("abc", 1, 9, 1, 12));
	}

	@Test
	void marksOnlyTheFirstLineOfALongPlace() {
		assertEquals("    1 | rule a {\n      |      ^^^", excerpt("rule a {\n}", 1, 6, 2, 2));
	}

	@Test
	void keepsCaretsBelowTheirTextAfterTabsAndWideLetters() {
		assertEquals("    1 |     a b\n      |       ^", excerpt("\ta b", 1, 4, 1, 5));
		assertEquals("    1 | 電圧 x\n      |      ^", excerpt("電圧 x", 1, 4, 1, 5));
	}

	@Test
	void showsThePartOfALongLineThatMatters() {
		String[] lines = excerpt("x".repeat(500) + "HERE" + "y".repeat(500), 1, 501, 1, 505).split("\n");
		int at = lines[1].indexOf('^');
		assertEquals("HERE", lines[0].substring(at, at + lines[1].length() - at));
		assertEquals(168, lines[0].length());
	}

	@Test
	void knowsAllLineEnds() {
		assertEquals("    3 | c\n      | ^", excerpt("a\r\nb\rc\nd", 3, 1, 3, 2));
	}

	@Test
	void saysNothingOfALineThatIsNotThere() {
		assertEquals("", excerpt("a", 2, 1, 2, 2));
	}
}
