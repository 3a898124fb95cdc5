package org.baywright.language.ide.fold;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class FoldingTest {

	private static List<String> folds(String text) {
		return Folding.of(text).stream().map(fold -> (fold.comment() ? "//" : "") + lines(text, fold)).toList();
	}

	/** Says a fold by its first and last line, from 1. */
	private static String lines(String text, Fold fold) {
		return line(text, fold.offset()) + "-" + line(text, fold.offset() + fold.length());
	}

	private static long line(String text, int offset) {
		return text.substring(0, offset).chars().filter(c -> c == '\n').count() + 1;
	}

	@Test
	void elementsWithBraces() {
		assertEquals(List.of("1-6", "3-5"), folds("repair a {\n  fixes b.c\n  verify {\n    read d\n  }\n}\nsign e"));
		assertEquals(List.of("3-5"), folds("test a { results b, c }\nrule\nrule d {\n  run a\n}\n"));
	}

	@Test
	void aMissingBraceDoesNotSwallowWhatFollows() {
		assertEquals(List.of("4-6"), folds("rule a {\n  given b\n\nrule c {\n  given d\n}\n"));
	}

	@Test
	void comments() {
		assertEquals(List.of("//1-3", "//5-6"), folds("// a\n// b\n// c\n\n/* d\n e */\n// f\nsign g // h\n// i\n"));
	}

	@Test
	void runsOfLines() {
		assertEquals(List.of("1-3"), folds("law \"a\" : never b\nlaw \"c\" : never d\nlaw \"e\" : never f\n\nlaw \"g\" : never h\n"));
		assertEquals(List.of("3-5"), folds("sign a\nsign b\ncode c on m = raw \"1\"\ncode d on m = raw \"2\"\ncode e on m = raw \"3\"\n"));
	}
}
