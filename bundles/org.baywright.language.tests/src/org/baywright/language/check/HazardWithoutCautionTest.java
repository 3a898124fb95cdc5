package org.baywright.language.check;

import org.baywright.analysis.check.HazardWithoutCaution;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/**
 * {@link HazardWithoutCaution}. Which hazards a part has and what protects from them is the author's to say; local codes and
 * licensed practice come first (NFPA 70E, UN R100, from memory).
 */
class HazardWithoutCautionTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(HazardWithoutCaution.class);
	}

	@Test
	void aTestAtThePartWarnsToo() {
		MarkedFlaws.check(HazardWithoutCaution.class, """
				family dunlin
				sign no_ready
				hazard charge "Stored charge" { caution "Wait ten minutes." }
				hazard heat { caution "Let it cool." }
				part inverter hazards charge, heat { fault shorted }
				test resistance { results high, low  at inverter  caution heat }
				//   ^^^^^^^^^^ error hazard-without-caution: The test resistance works on a part with hazard charge and does not warn of it; add "caution charge".
				test look { results fine, burnt  at inverter  caution heat, charge }
				test lamp { results lit, dark }
				""");
	}

	@Test
	void aHazardSaysWhatProtectsFromIt() {
		MarkedFlaws.check(HazardWithoutCaution.class, """
				family dunlin
				hazard charge "Stored charge" { licensed "Only licensed persons." }
				//     ^^^^^^ error hazard-without-caution: Hazard charge has no caution: say what protects from it.
				""");
	}

	@Test
	void aRepairOfSeveralPartsWarnsOfAllHazards() {
		MarkedFlaws.check(HazardWithoutCaution.class, """
				family dunlin
				hazard charge { caution "Wait ten minutes." }
				hazard heat { caution "Let it cool." }
				part inverter hazards charge { fault shorted }
				part heater hazards heat { fault open }
				part lamp { fault open }
				repair all { fixes inverter.shorted, heater.open steps "Replace." caution charge }
				//     ^^^ error hazard-without-caution: The repair all works on a part with hazard heat and does not warn of it; add "caution heat".
				repair more { fixes inverter.shorted, heater.open steps "Replace." }
				//     ^^^^ error hazard-without-caution: The repair more works on parts with hazards charge and heat and does not warn of them; add "caution charge, heat".
				repair well { fixes inverter.shorted, heater.open steps "Replace." caution charge, heat }
				repair harmless { fixes lamp.open steps "Replace." }
				""");
	}

	@Test
	void aTestThatIsSeenWithAnotherIsWarnedOfByThatOne() {
		MarkedFlaws.check(HazardWithoutCaution.class, """
				family dunlin
				hazard live { caution "Keep off." }
				part inverter hazards live { fault shorted }
				test current { results good, bad at inverter caution live }
				test sound { results quiet, hum seen_with current }
				test glow { results dark_red, none_seen seen_with current at inverter }
				test plain { results good, bad }
				test beside { results good, bad seen_with plain at inverter }
				//   ^^^^^^ error hazard-without-caution: The test beside works on a part with hazard live and does not warn of it; add "caution live".
				""");
	}
}
