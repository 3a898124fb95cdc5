package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.DeadRule;
import org.baywright.language.testing.Cores;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link DeadRule}, the "unfirable rule" of Preece and Shinghal 1994. */
class DeadRuleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(DeadRule.class);
		Cores.assertMinimal(rules, rules.only(DeadRule.class), Map.of());
	}

	@Test
	void twoLimitsThatLeaveNothing() {
		MarkedFlaws rules = MarkedFlaws.check(DeadRule.class, """
				family tarn
				sign no_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				rule a {
				//   ^ warning dead-rule: Rule a can never apply: what it asks for cannot all be true. So nothing ever suspects battery.flat.
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
		MarkedFlaws.check(DeadRule.class, """
				family tarn
				sign no_crank
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				rule a { given no_crank, rest at_least 12.4 V, rest below 12.5 V then suspects battery.flat }
				""");
	}

	@Test
	void anOutcomeThatCannotBeReached() {
		MarkedFlaws rules = MarkedFlaws.check(DeadRule.class, """
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
				//^^^^^^^^^^^^^^^^ warning dead-rule: The outcome "on at_least 12 V" of rule a can never be reached. So nothing ever clears battery.flat.
				//   core: line 6 (rule a), line 10 (rule a)
				}
				""");
		Cores.assertMinimal(rules, rules.only(DeadRule.class), Map.of("on at_least 12 V ", "on at_least 11.9 V "));
	}

	@Test
	void aRuleBehindADeadRuleIsDead() {
		MarkedFlaws rules = MarkedFlaws.check(DeadRule.class, """
				family tarn { trait engine : diesel, petrol }
				sign no_start
				part glow { fault stuck }
				test lamp { results lit, dark }
				test drop { results high, low }
				law "Petrol vans have no lamp" : never engine is petrol and lamp is lit
				rule first {
				//   ^^^^^ warning dead-rule: Rule first can never apply: what it asks for cannot all be true. So nothing ever suspects glow.stuck.
				//   core: line 10 (rule first), line 11 (rule first), line 6 (law: Petrol vans have no lamp)
				  for tarn where engine is petrol
				  given lamp is lit
				  then suspects glow.stuck
				}
				rule second {
				//   ^^^^^^ warning dead-rule: Rule second can never apply: what it asks for cannot all be true. So nothing ever confirms glow.stuck.
				//   core: line 17 (rule second), line 6 (law: Petrol vans have no lamp), line 10 (rule first), line 11 (rule first)
				  given glow.stuck suspected
				  run drop
				  on high : confirms glow.stuck
				}
				""");
		List<Flaw> found = rules.of(DeadRule.class);
		assertEquals(2, found.size());
		Cores.assertMinimal(rules, found.get(0), Map.of());
		Cores.assertMinimal(rules, found.get(1), Map.of());
	}

	@Test
	void aRuleThatFiresInOneFamilyIsAlive() {
		MarkedFlaws.check(DeadRule.class, """
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
		MarkedFlaws.check(DeadRule.class, """
				family tarn
				sign no_start
				part glow { fault stuck }
				rule first { for tarn except tarn given no_start then suspects glow.stuck }
				//   ^^^^^ warning dead-rule: Rule first covers no vehicle family, so it can never apply. So nothing ever suspects glow.stuck.
				""");
	}

	@Test
	void aCodeOfASilentModule() {
		MarkedFlaws rules = MarkedFlaws.check(DeadRule.class, """
				family tarn
				sign no_start
				module ecm
				code low on ecm = raw "1"
				part glow { fault stuck }
				rule first {
				//   ^^^^^ warning dead-rule: Rule first can never apply: what it asks for cannot all be true.
				//   core: line 9 (rule first), line 10 (rule first)
				  given ecm silent,
				    low present
				  then suspects glow.stuck
				}
				rule fine { given ecm silent, low missing then suspects glow.stuck }
				""");
		Cores.assertMinimal(rules, rules.only(DeadRule.class), Map.of());
	}

	@Test
	void aMissingCodeIsNoLawsNotPresent() {
		MarkedFlaws.check(DeadRule.class, """
				family tarn
				module ecm
				code low on ecm = raw "1"
				sign hot
				part radiator { fault leaking }
				law "Whoever reads no code sees no heat" : when low not present then hot absent
				rule a { given hot, ecm silent then suspects radiator.leaking }
				""");
	}

	@Test
	void eachFamilyIsToldItsOwnReason() {
		MarkedFlaws.check(DeadRule.class, """
				family tarn
				family heron
				sign hot
				part radiator { fault leaking }
				test level { results full, low }
				law "Level of the Tarn" for tarn : never level is low
				law "Level of the Heron" for heron : when hot then level is full
				rule a {
				//   ^ warning dead-rule: Rule a can never apply in family heron: what it asks for cannot all be true. So nothing ever suspects radiator.leaking.
				//   core: line 13 (rule a), line 7 (law: Level of the Heron)
				//   ^ warning dead-rule: Rule a can never apply in family tarn: what it asks for cannot all be true. So nothing ever suspects radiator.leaking.
				//   core: line 13 (rule a), line 6 (law: Level of the Tarn)
				  given hot, level is low
				  then suspects radiator.leaking
				}
				""");
	}

	@Test
	void isNotHoldsWhereTheFamilyLacksTheTrait() {
		MarkedFlaws.check(DeadRule.class, """
				family tarn { trait engine : diesel, petrol }
				family heron
				sign hot
				part radiator { fault leaking }
				rule a { given hot, engine is not diesel, engine is not petrol then suspects radiator.leaking }
				""");
	}

	@Test
	void notAbsentIsPresentAndNotPresentIsNot() {
		MarkedFlaws.check(DeadRule.class, """
				family tarn
				sign hot
				sign wet
				part radiator { fault leaking }
				part hose { fault split }
				test level { results full, low }
				test look { results dry, damp }
				test smell { results none, sweet }
				rule a { given hot or not wet run level on low : confirms radiator.leaking }
				rule b { given wet unexplained, radiator.leaking confirmed run look on damp : refers "the body shop" }
				rule c { given not (wet absent) run smell on sweet : confirms hose.split }
				rule d { given wet unexplained, hose.split confirmed run level on low : refers "the body shop" }
				//   ^ warning dead-rule: Rule d can never apply: what it asks for cannot all be true.
				//   core: line 12 (rule d), line 11 (rule c)
				""");
	}

	@Test
	void theReasonNamesTheLawsThatMatter() {
		MarkedFlaws.check(DeadRule.class, """
				family osier { trait engine : diesel, petrol  trait gears : manual, automatic }
				sign hot
				sign rattle
				sign smoke
				part radiator { fault leaking }
				test level { results full, low }
				law "A rattle needs a gear lever" : when rattle then gears is manual
				law "Petrol engines smoke" : when engine is petrol then smoke
				law "Nothing that smokes is petrol" : when smoke then engine is diesel
				rule a {
				//   ^ warning dead-rule: Rule a can never apply: what it asks for cannot all be true. So nothing ever suspects radiator.leaking.
				//   core: line 13 (rule a), line 9 (law: Nothing that smokes is petrol), line 8 (law: Petrol engines smoke)
				  for osier where engine is petrol
				  given hot
				  run level
				  on low : suspects radiator.leaking
				}
				rule b { given rattle, smoke then proves nothing }
				""");
	}

	@Test
	void lawsWithOneTitleAreReasonsOfTheirOwn() {
		MarkedFlaws.check(DeadRule.class, """
				family tarn
				sign hot
				sign noisy
				part pump { fault dry }
				law "Wiring" : never noisy
				law "Wiring" : when hot then noisy
				rule a { given hot then suspects pump.dry }
				//   ^ warning dead-rule: Rule a can never apply: what it asks for cannot all be true. So nothing ever suspects pump.dry.
				//   core: line 7 (rule a), line 6 (law: Wiring), line 5 (law: Wiring)
				""");
	}

	@Test
	void eachLawOfAnotherPartThatShutsAVehicleOutIsAReason() {
		MarkedFlaws.check(DeadRule.class, """
				family tarn { trait engine : diesel, petrol }
				sign hot
				sign noisy
				part pump { fault dry }
				law "Wiring" : when engine is petrol then noisy
				law "Wiring" : when engine is diesel then noisy
				law "Wiring" : when engine is diesel then noisy absent
				rule a { for tarn where engine is diesel given hot then suspects pump.dry }
				//   ^ warning dead-rule: Rule a can never apply: what it asks for cannot all be true. So nothing ever suspects pump.dry.
				//   core: line 8 (rule a), line 6 (law: Wiring), line 7 (law: Wiring)
				""");
	}
}
