package org.baywright.language.check;

import org.baywright.analysis.check.UnfoundFault;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/**
 * {@link UnfoundFault}: a conclusion that is never reached (Preece and Shinghal 1994, deficiency); in the words of
 * testability standards a fault that is not detected (IEEE 1522, from memory).
 */
class UnfoundFaultTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(UnfoundFault.class);
	}

	@Test
	void aFaultThatOneFamilyConfirmsIsFound() {
		MarkedFlaws.check(UnfoundFault.class, """
				family tarn
				family heron
				sign hum
				part hub { fault worn }
				test play { results none, felt }
				rule a { for tarn given hum then suspects hub.worn }
				rule b { for heron given hum run play on felt : confirms hub.worn }
				""");
	}

	@Test
	void aDeadRuleConfirmsNothing() {
		MarkedFlaws.check(UnfoundFault.class, """
				family tarn
				sign hum
				part hub { fault worn }
				test play { results none, felt }
				rule a { given hum, play is none run play on felt : confirms hub.worn }
				""");
	}

	@Test
	void whatOnlyARuleForNoFamilyConfirmsIsToldWithThatRule() {
		MarkedFlaws.check("""
				family tarn
				sign hum
				part hub { fault worn }
				test play { results none, felt }
				rule a { for tarn except tarn given hum run play on felt : confirms hub.worn }
				//   ^ warning dead-rule: Rule a covers no vehicle family, so it can never apply. So nothing ever confirms hub.worn.
				rule b { given hum run play on none, felt : refers "the dealer" }
				""");
	}

	@Test
	void aFaultThatNoRuleNames() {
		MarkedFlaws.check(UnfoundFault.class, """
				family tarn
				sign hum
				part hub { fault worn fault loose "Hub loose" }
				//                          ^^^^^ warning unfound-fault: No rule can ever confirm hub.loose (Hub loose); write a rule that confirms it by a test.
				test play { results none, felt }
				rule a { given hum run play on felt : confirms hub.worn }
				""");
	}
}
