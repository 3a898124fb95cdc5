package org.baywright.presenter.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.baywright.analysis.check.Checks;
import org.baywright.presenter.help.SetText.Look;
import org.junit.jupiter.api.Test;

class HelpTest {

	private static final HelpPage START = HelpPage.of("start", "The workbench", "# First steps\n\nOpen *one* file.\n");
	private static final HelpBook BOOK = new HelpBook(List.of(START));

	@Test
	void everyCheckHasAPageBehindThoseOfTheWorkbench() {
		assertEquals("First steps", BOOK.pages().get(0).title());
		assertEquals("language", BOOK.pages().get(1).id());
		for (String id : Checks.ids()) {
			HelpPage page = BOOK.page(id).orElseThrow(() -> new AssertionError("no page on " + id));
			assertTrue(page.title().startsWith(id + ":"), page.title());
		}
	}

	@Test
	void theSearchFindsTitlesFirst() {
		List<HelpPage> found = BOOK.search("dead rule");
		assertEquals("dead-rule", found.get(0).id());
		assertTrue(found.size() > 1);
		assertEquals(List.of(), BOOK.search("dead zyxw"));
		assertEquals(List.of(START), BOOK.search("OPEN one file").stream().filter(page -> page == START).toList());
	}

	@Test
	void textIsSetWithItsLooks() {
		SetText set = SetText.of("# Title\n\nSome *soft* and **loud** `words`,\nsee [there](other.md).\n\n- one\n- two\n\nThen:\n\n    code\n");
		assertEquals("Title\n\nSome soft and loud words, see there.\n\n  \u2022 one\n  \u2022 two\n\nThen:\n\n    code\n", set.text());
		assertEquals(List.of(Look.TITLE, Look.EMPHASIS, Look.STRONG, Look.CODE, Look.LINK, Look.BLOCK),
				set.runs().stream().map(SetText.Run::look).toList());
		int there = set.text().indexOf("there");
		assertEquals("other.md", set.linkAt(there));
		assertEquals("other.md", set.linkAt(there + 4));
		assertEquals("", set.linkAt(there + 5));
	}

	/** Runs lie within the text and no page is lost on the way. */
	@Test
	void everyPageCanBeSet() {
		for (HelpPage page : BOOK.pages()) {
			SetText set = SetText.of(page.markdown());
			assertFalse(set.text().isBlank(), page.id());
			for (SetText.Run run : set.runs()) {
				assertTrue(run.start() >= 0 && run.length() > 0 && run.start() + run.length() <= set.text().length() + 1, page.id() + run);
			}
		}
	}
}
