package org.baywright.language.check;

import static org.baywright.language.testing.Peers.review;
import static org.baywright.language.testing.Peers.told;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.analysis.check.HazardNotAgreed;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Peers;
import org.junit.jupiter.api.Test;

/** {@link HazardNotAgreed}. */
class HazardNotAgreedTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(HazardNotAgreed.class);
	}

	private static final String HAZARDS = """
			hazard gas { caution "No flame." }
			hazard acid { caution "Goggles." }
			part cell hazards gas { fault cut }
			part tray hazards acid { fault cracked }
			test look { results whole, torn at cell caution gas }
			rule looked { given no_crank run look on torn : suspects battery.worn }
			rule cut { given no_crank run load on fail : confirms cell.cut }
			rule not_cut { given no_crank run load on fail : suspects cell.cut }
			sign_off { hazard gas by "gas" hazard acid by "acid" }
			reviewer "T. Ruhland" qualified "gas", "acid"
			reviewer "L. Amsel" qualified "acid"
			""";

	private static String message(String rule) {
		return "Rule " + rule + " touches hazard gas, and nobody agrees with it as it stands who is qualified \"gas\"; that is T. Ruhland.";
	}

	@Test
	void byTheTestItsPartAndWhatIsConfirmed() {
		assertEquals(List.of(message("looked"), message("cut")), told(HazardNotAgreed.class, HAZARDS));
		String chain = "chain row { given no_crank point load expect pass : battery.worn point look expect whole : cell.cut }";
		assertEquals(List.of(message("looked"), message("cut"), message("row").replace("Rule", "Chain")), told(HazardNotAgreed.class, HAZARDS, chain));
	}

	@Test
	void onlyOneWhoIsQualifiedForItHelps() {
		String text = Peers.TEXT + HAZARDS;
		String review = "review looked by \"WHO\" on 2026-03-09 agrees meaning \"" + MarkedFlaws.of(text).base().meaning("looked").orElseThrow() + "\"";
		assertEquals(List.of(message("cut")), told(HazardNotAgreed.class, HAZARDS, review.replace("WHO", "T. Ruhland")));
		assertEquals(2, told(HazardNotAgreed.class, HAZARDS, review.replace("WHO", "L. Amsel")).size());
		assertEquals(2, told(HazardNotAgreed.class, HAZARDS, review.replace("WHO", "M. Sund")).size());
	}

	@Test
	void whereNobodyCanOrNobodyHasBegunThatIsTold() {
		assertEquals(List.of(), told(HazardNotAgreed.class, HAZARDS.replace("\"gas\", \"acid\"", "\"acid\"")));
		assertEquals(List.of(), told(HazardNotAgreed.class, HAZARDS.replace("sign_off {", "sign_off { agree 1")));
	}
}
