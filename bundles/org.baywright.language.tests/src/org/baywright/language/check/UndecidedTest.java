package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.DeadRule;
import org.baywright.analysis.check.Undecided;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.model.Severity;
import org.junit.jupiter.api.Test;

/**
 * {@link Undecided}. No small text reaches the usual limit, so this one is checked with a limit of one conflict: the
 * pigeonhole principle, hard for every solver that reasons by resolution (Haken 1985, from memory).
 */
class UndecidedTest {

	private static final int BIRDS = 5;

	/** Returns laws that put each of the birds into one of the holes, no two into the same. */
	private static String pigeons(int birds, int holes) {
		StringBuilder text = new StringBuilder("""
				family tarn
				sign hum
				part hub { fault worn }
				test play { results none, felt }
				""");
		for (int bird = 0; bird < birds; bird++) {
			StringBuilder somewhere = new StringBuilder();
			for (int hole = 0; hole < holes; hole++) {
				text.append("sign in_").append(bird).append('_').append(hole).append("\n");
				somewhere.append(hole == 0 ? "" : " or ").append("in_").append(bird).append('_').append(hole);
				for (int other = 0; other < bird; other++) {
					text.append("law \"alone %d %d %d\" : when hum then not (in_%d_%d and in_%d_%d)\n".formatted(bird, other, hole,
							bird, hole, other, hole));
				}
			}
			text.append("law \"somewhere ").append(bird).append("\" : when hum then ").append(somewhere).append("\n");
		}
		return text + "rule nest { given hum run play on felt : confirms hub.worn }\n";
	}

	@Test
	void whatTheLimitLeavesOpenIsSaid() {
		MarkedFlaws rules = MarkedFlaws.of(pigeons(BIRDS, BIRDS - 1), new Analysis(1));
		List<Flaw> open = rules.of(Undecided.class);
		assertTrue(open.stream().map(Flaw::message).toList().contains(
				"It was not decided whether rule nest (outcome on felt) can ever apply: the search reached its limit."),
				open::toString);
		for (Flaw flaw : open) {
			assertEquals(Severity.WARNING, flaw.severity());
			assertTrue(rules.text().startsWith("nest", flaw.span().offset()), flaw::toString);
			assertTrue(flaw.evidence() instanceof Evidence.Undecided, flaw::toString);
		}
		assertEquals(List.of(), rules.of(DeadRule.class), "nobody knows whether the rule is dead");
	}

	@Test
	void theUsualLimitDecides() {
		MarkedFlaws rules = MarkedFlaws.of(pigeons(BIRDS, BIRDS - 1));
		assertEquals(List.of(), rules.of(Undecided.class));
		assertEquals("dead-rule:nest", rules.only(DeadRule.class).id());
		MarkedFlaws room = MarkedFlaws.of(pigeons(BIRDS - 1, BIRDS - 1));
		assertEquals(List.of(), room.of(Undecided.class));
		assertEquals(List.of(), room.of(DeadRule.class));
	}
}
