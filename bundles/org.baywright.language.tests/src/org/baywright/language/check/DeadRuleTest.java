package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.baywright.analysis.Finding;
import org.baywright.analysis.check.DeadRule;
import org.baywright.language.testing.Cores;
import org.baywright.language.testing.MarkedFindings;
import org.junit.jupiter.api.Test;

/** {@link DeadRule}, the "unfirable rule" of Preece and Shinghal 1994. */
class DeadRuleTest {

	@Test
	void theFlawedFile() {
		MarkedFindings rules = MarkedFindings.checkFlawed(DeadRule.class);
		Cores.assertMinimal(rules, rules.only(DeadRule.class), Map.of());
	}

	@Test
	void twoLimitsThatLeaveNothing() {
		MarkedFindings rules = MarkedFindings.check(DeadRule.class, """
				family tarn
				sign no_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				rule a {
				//   ^ warning dead-rule: Rule a can never fire: what it asks for cannot all be true.
				//   core: line 9 (rule a), line 10 (rule a)
				  given no_crank,
				    rest at_least 12.4 V,
				    rest below 12400 mV
				  then suspects battery.flat
				}
				""");
		Cores.assertMinimal(rules, rules.only(DeadRule.class), Map.of());
	}

	@Test
	void limitsThatLeaveOneStepAreFine() {
		MarkedFindings.check(DeadRule.class, """
				family tarn
				sign no_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				rule a { given no_crank, rest at_least 12.4 V, rest below 12.5 V then suspects battery.flat }
				""");
	}

	@Test
	void anOutcomeThatCannotBeReached() {
		MarkedFindings rules = MarkedFindings.check(DeadRule.class, """
				family tarn
				sign no_crank
				part battery { fault flat fault open_cell }
				test rest { measures V 0 .. 18 step 0.1 }
				rule a {
				  given no_crank, rest below 12 V
				  run rest
				  on below 6 V     : suspects battery.open_cell
				  on 6 V .. 11.9 V : suspects battery.flat
				  on at_least 12 V : clears battery.flat
				//^^^^^^^^^^^^^^^^ warning dead-rule: The outcome "on at_least 12 V" of rule a can never be reached.
				//   core: line 6 (rule a), line 10 (rule a)
				}
				""");
		Cores.assertMinimal(rules, rules.only(DeadRule.class), Map.of("on at_least 12 V ", "on at_least 11.9 V "));
	}

	@Test
	void aRuleBehindADeadRuleIsDead() {
		MarkedFindings rules = MarkedFindings.check(DeadRule.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_start
				part glow { fault stuck }
				test lamp { results lit, dark }
				test drop { results high, low }
				law "Petrol vans have no lamp" : never engine is petrol and lamp is lit
				rule first {
				//   ^^^^^ warning dead-rule: Rule first can never fire: what it asks for cannot all be true.
				//   core: line 10 (rule first), line 11 (rule first), line 6 (law: Petrol vans have no lamp)
				  for tarn where engine is petrol
				  given lamp is lit
				  then suspects glow.stuck
				}
				rule second {
				//   ^^^^^^ warning dead-rule: Rule second can never fire: what it asks for cannot all be true.
				//   core: line 17 (rule second), line 6 (law: Petrol vans have no lamp), line 10 (rule first), line 11 (rule first)
				  given glow.stuck suspected
				  run drop
				  on high : confirms glow.stuck
				}
				""");
		List<Finding> found = rules.of(DeadRule.class);
		assertEquals(2, found.size());
		Cores.assertMinimal(rules, found.get(0), Map.of());
		Cores.assertMinimal(rules, found.get(1), Map.of());
	}

	@Test
	void aRuleThatFiresInOneFamilyIsAlive() {
		MarkedFindings.check(DeadRule.class, """
				family tarn { trait engine : diesel, petrol }
				family heron { trait engine : diesel, petrol }
				sign no_start
				part glow { fault stuck }
				test lamp { results lit, dark }
				law "Petrol vans have no lamp" for tarn : never engine is petrol and lamp is lit
				rule first { for tarn, heron where engine is petrol given lamp is lit then suspects glow.stuck }
				""");
	}

	@Test
	void aRuleForNoFamily() {
		MarkedFindings.check(DeadRule.class, """
				family tarn
				sign no_start
				part glow { fault stuck }
				rule first { for tarn except tarn given no_start then suspects glow.stuck }
				//   ^^^^^ warning dead-rule: Rule first covers no vehicle family, so it can never fire.
				""");
	}

	@Test
	void aCodeOfASilentModule() {
		MarkedFindings rules = MarkedFindings.check(DeadRule.class, """
				family tarn
				sign no_start
				module ecm
				code low on ecm = raw "1"
				part glow { fault stuck }
				rule first {
				//   ^^^^^ warning dead-rule: Rule first can never fire: what it asks for cannot all be true.
				//   core: line 9 (rule first), line 10 (rule first)
				  given ecm silent,
				    low present
				  then suspects glow.stuck
				}
				rule fine { given ecm silent, low missing then suspects glow.stuck }
				""");
		Cores.assertMinimal(rules, rules.only(DeadRule.class), Map.of());
	}
}
