package org.baywright.language.check;

import static org.baywright.language.testing.Peers.review;
import static org.baywright.language.testing.Peers.told;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.baywright.analysis.check.NotAgreed;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Peers;
import org.junit.jupiter.api.Test;

/** {@link NotAgreed}. */
class NotAgreedTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(NotAgreed.class);
	}

	private static final String TWO = "sign_off { agree 2 not_by author }";

	@Test
	void saysOnceThatNobodyHasBegun() {
		assertEquals(List.of("Nobody has reviewed any rule of this project yet; each of the 2 needs 2 people to agree with it as it stands."),
				told(NotAgreed.class, TWO));
		assertEquals(List.of(), told(NotAgreed.class, "sign_off { not_by author }"));
		assertEquals(List.of(), told(NotAgreed.class));
	}

	@Test
	void rulesAndChains() {
		assertEquals(List.of("Rule a needs 2 people to agree with it as it stands; 1 does (M. Sund), 1 more is missing.",
				"Chain supply needs 2 people to agree with it as it stands; nobody does."), told(NotAgreed.class, TWO, review("a", "M. Sund", 9, "agrees")));
		assertEquals(List.of(), told(NotAgreed.class, TWO, review("a", "M. Sund", 9, "agrees"), review("a", "L. Amsel", 9, "agrees"),
				review("supply", "M. Sund", 9, "agrees"), review("supply", "L. Amsel", 9, "agrees")));
	}

	@Test
	void saysWhoDoesNotCountAndWhy() {
		String whole = review("supply", "M. Sund", 9, "agrees") + "\n" + review("supply", "L. Amsel", 9, "agrees");
		String rule = "Rule a needs 2 people to agree with it as it stands; ";
		assertEquals(List.of(rule + "nobody does. Not counted: R. Falk wrote it; M. Sund reviewed it before it was written; K. Renn objects; L. Amsel reviewed what it meant before."),
				told(NotAgreed.class, TWO, whole, review("a", "R. Falk", 9, "agrees"), review("a", "M. Sund", 1, "agrees"),
						review("a", "L. Amsel", 9, "agrees").replace(Peers.meaning("a"), "0123abcd"), review("a", "K. Renn", 9, "objects")));
		assertEquals(List.of(rule + "1 does (M. Sund), 1 more is missing."),
				told(NotAgreed.class, TWO, whole, review("a", "M. Sund", 9, "agrees"), review("a", "m. sund ", 10, "agrees")));
		assertEquals(List.of(rule + "nobody does. Not counted: M. Sund objects."),
				told(NotAgreed.class, TWO, whole, review("a", "M. Sund", 8, "agrees"), review("a", "M. Sund", 9, "objects")));
		assertEquals(List.of(), told(NotAgreed.class, "sign_off { agree 2 }", whole, review("a", "M. Sund", 8, "agrees"), review("a", "R. Falk", 9, "agrees")));
	}

	@Test
	void nobodyCanAcceptIt() {
		String text = Peers.TEXT + TWO + "\n" + review("a", "M. Sund", 9, "agrees");
		var flaw = MarkedFlaws.of(text).of(NotAgreed.class).get(0);
		assertTrue(flaw.breach());
		assertEquals(List.of("Say that you agree with it as it stands"), flaw.fixes().stream().map(fix -> fix.title()).toList());
		MarkedFlaws accepted = MarkedFlaws.of(text + "\naccept \"" + flaw.acceptanceKey() + "\" because \"Later.\"");
		assertTrue(accepted.of(NotAgreed.class).stream().allMatch(each -> each.accepted().isEmpty()));
		assertEquals("Nobody can accept what the sign-off asks for; take the acceptance out.",
				accepted.of(org.baywright.analysis.check.StaleAcceptance.class).get(0).message());
		assertEquals(2, accepted.report().breaches().size());
	}
}
