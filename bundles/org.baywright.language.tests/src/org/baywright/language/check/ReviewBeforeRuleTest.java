package org.baywright.language.check;

import static org.baywright.language.testing.Peers.review;
import static org.baywright.language.testing.Peers.told;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.analysis.check.ReviewBeforeRule;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Peers;
import org.junit.jupiter.api.Test;

/** {@link ReviewBeforeRule}. */
class ReviewBeforeRuleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(ReviewBeforeRule.class);
	}

	@Test
	void theDayItselfIsNotBefore() {
		assertEquals(List.of(), told(ReviewBeforeRule.class, review("a", "M. Sund", 2, "agrees"), review("supply", "M. Sund", 3, "agrees")));
	}

	@Test
	void anObjectionStandsAllTheSame() {
		assertEquals(List.of("The review of chain supply by M. Sund is of 2026-03-01, before the rule was written on 2026-03-02; one of the two dates is wrong."),
				told(ReviewBeforeRule.class, review("supply", "M. Sund", 1, "objects")));
		assertEquals(1, told(org.baywright.analysis.check.ObjectionStands.class, review("supply", "M. Sund", 1, "objects")).size());
	}

	@Test
	void aReviewOfAnotherMeaningIsStaleOnly() {
		assertEquals(List.of(), told(ReviewBeforeRule.class, review("a", "M. Sund", 1, "agrees").replace(Peers.meaning("a"), "0123abcd")));
	}

	@Test
	void withoutASignOffItMayBeAccepted() {
		String early = review("a", "M. Sund", 1, "agrees");
		assertEquals(List.of("Accept this with a reason"), titles(Peers.TEXT + early));
		assertEquals(List.of(), titles(Peers.TEXT + early + "\nsign_off { agree 1 }"));
	}

	private static List<String> titles(String text) {
		return MarkedFlaws.of(text).of(ReviewBeforeRule.class).get(0).fixes().stream().map(fix -> fix.title()).toList();
	}
}
