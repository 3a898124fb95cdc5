package org.baywright.language.ide.fix;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.baywright.language.ide.text.TextEdit;
import org.junit.jupiter.api.Test;

class PreviewTest {

	private static String preview(String text, TextEdit... edits) {
		return Preview.of(new TreeMap<>(Map.of("lamps.bay", List.of(edits))), Map.of("lamps.bay", text));
	}

	@Test
	void twoChangesInALineShowItOnce() {
		assertEquals("""
				lamps.bay, line 2:
				- two three
				+ 2 3
				""", preview("one\ntwo three\nfour\n", new TextEdit(4, 3, "2"), new TextEdit(8, 5, "3")));
	}

	@Test
	void linesThatAreOnlyAddedAreShownAlone() {
		assertEquals("""
				lamps.bay, line 2:
				+ new
				""", preview("one\ntwo\n", TextEdit.insert(3, "\nnew")));
	}

	@Test
	void changesFarApartAreShownEachWithItsLine() {
		assertEquals("""
				lamps.bay, line 1:
				- one
				+ 1
				lamps.bay, line 3:
				- three
				""", preview("one\r\ntwo\r\nthree", new TextEdit(0, 3, "1"), new TextEdit(8, 7, "")));
	}
}
