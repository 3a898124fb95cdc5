package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.MissingRepair;
import org.baywright.analysis.check.StaleAcceptance;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link StaleAcceptance}. */
class StaleAcceptanceTest {

	private static final String TEXT = """
			family tarn
			sign no_crank
			part battery { fault flat }
			test rest { measures V 0 .. 18 step 0.1 }
			rule a { given no_crank run rest expect at_least 12.4 V below : confirms battery.flat }
			""";

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(StaleAcceptance.class);
	}

	private static String accept(String key) {
		return TEXT + "accept \"" + key + "\" because \"So it is.\"\n";
	}

	@Test
	void anAcceptanceOfThisFlawHolds() {
		String key = MarkedFlaws.of(TEXT).only(MissingRepair.class).acceptanceKey();
		MarkedFlaws rules = MarkedFlaws.check(StaleAcceptance.class, accept(key));
		Flaw accepted = rules.only(MissingRepair.class);
		assertTrue(accepted.accepted().isPresent());
		assertTrue(rules.report().openWarnings().stream().noneMatch(open -> open.check().equals(accepted.check())));
	}

	@Test
	void anAcceptanceOfAnotherMeaningIsStale() {
		String key = MarkedFlaws.of(TEXT).only(MissingRepair.class).acceptanceKey();
		MarkedFlaws rules = MarkedFlaws.of(accept(key.replaceAll("@.*", "@00000000")));
		assertEquals("The meaning has changed since this was accepted; look again and write \"" + key
				+ "\" if it may still stand.", rules.only(StaleAcceptance.class).message());
		assertTrue(rules.only(MissingRepair.class).accepted().isEmpty());
	}

	@Test
	void aStaleAcceptanceCanBeAccepted() {
		String stale = accept("unfound-fault:battery.flat@00000000");
		String key = MarkedFlaws.of(stale).only(StaleAcceptance.class).acceptanceKey();
		MarkedFlaws rules = MarkedFlaws.of("accept \"" + key + "\" because \"It may come back.\"\n" + stale);
		assertTrue(rules.only(StaleAcceptance.class).accepted().isPresent());
	}

	@Test
	void anErrorCannotBeAccepted() {
		String wrong = "rule b { given no_crank run rest on below 12.4 V : clears battery.flat }\n";
		Flaw error = MarkedFlaws.of(TEXT + wrong).report().flaws().stream()
				.filter(flaw -> flaw.check().equals("contradiction")).findFirst().orElseThrow();
		MarkedFlaws rules = MarkedFlaws.of(accept(error.acceptanceKey()) + wrong);
		assertEquals("An error cannot be accepted; put it right.", rules.only(StaleAcceptance.class).message());
		assertTrue(rules.report().hasErrors());
	}

	@Test
	void whereNotAllIsProvedNothingIsGone() {
		MarkedFlaws.check(StaleAcceptance.class, """
				family tarn
				sign squeal
				part belt { fault worn }
				part pump { fault dry }
				rule a { given squeal, pump.dry not suspected then suspects belt.worn }
				rule b { given squeal, belt.worn not suspected then suspects pump.dry }
				accept "dead-rule:b@00000000" because "The van is still to come."
				""");
	}
}
