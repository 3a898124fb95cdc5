package org.baywright.language.check;

import static org.baywright.language.testing.Peers.review;
import static org.baywright.language.testing.Peers.told;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.analysis.check.SettledByAuthor;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Peers;
import org.junit.jupiter.api.Test;

/** {@link SettledByAuthor}. */
class SettledByAuthorTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(SettledByAuthor.class);
	}

	private static String settled(String who) {
		return review("a", "M. Sund", 9, "objects") + " { settled by \"" + who + "\" on 2026-03-10 }";
	}

	@Test
	void whoObjectedOrAnybodyElseMaySettle() {
		assertEquals(List.of("R. Falk wrote rule a and cannot settle the objection of M. Sund; that is for M. Sund, or for anybody else."),
				told(SettledByAuthor.class, settled("R. Falk")));
		assertEquals(List.of(), told(SettledByAuthor.class, settled("M. Sund")));
		assertEquals(List.of(), told(SettledByAuthor.class, settled("L. Amsel")));
		assertEquals(List.of(), told(SettledByAuthor.class, settled("R. Falk").replace("settled by", "reply by").replace("-10 }", "-10 \"No.\" }")));
	}

	@Test
	void whatStandsNoLongerNeedsNoSettling() {
		assertEquals(List.of(), told(SettledByAuthor.class, settled("R. Falk"), review("a", "M. Sund", 11, "agrees")));
		assertEquals(List.of(), told(SettledByAuthor.class, settled("R. Falk").replace(Peers.meaning("a"), "0123abcd")));
	}

	@Test
	void anAuthorMaySettleAnObjectionOfTheOwn() {
		assertEquals(List.of(), told(SettledByAuthor.class, settled("R. Falk").replace("M. Sund", "R. Falk")));
	}

	@Test
	void onlyAReplyWithWordsIsMadeOfIt() {
		assertEquals(List.of("Accept this with a reason"), titles(settled("R. Falk")));
		assertEquals(List.of("Make a reply of it", "Accept this with a reason"), titles(settled("R. Falk").replace("-10 }", "-10 \"No.\" }")));
	}

	private static List<String> titles(String line) {
		return MarkedFlaws.of(Peers.TEXT + line).of(SettledByAuthor.class).get(0).fixes().stream().map(fix -> fix.title()).toList();
	}
}
