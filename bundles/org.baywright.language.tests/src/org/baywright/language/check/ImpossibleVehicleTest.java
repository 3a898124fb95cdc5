package org.baywright.language.check;

import java.util.Map;
import org.baywright.analysis.check.ImpossibleVehicle;
import org.baywright.language.testing.Cores;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link ImpossibleVehicle}: constraints without a model; everything else would follow from them. */
class ImpossibleVehicleTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(ImpossibleVehicle.class);
		Cores.assertMinimal(rules, rules.only(ImpossibleVehicle.class), Map.of());
	}

	@Test
	void lawsThatLeaveOneVehicleAreFine() {
		MarkedFlaws.check(ImpossibleVehicle.class, """
				family dunlin { trait engine : electric  trait gears : none, one, two }
				sign no_drive
				part motor { fault open }
				test phases { results equal, unequal }
				law "No gears" : when engine is electric then gears is any of (none, one)
				law "Some gears" : never gears is none
				rule a { for dunlin where gears is one given no_drive run phases on unequal : confirms motor.open }
				""");
	}

	@Test
	void onlyTheFamilyThatIsLeftWithoutVehiclesIsTold() {
		MarkedFlaws rules = MarkedFlaws.check(ImpossibleVehicle.class, """
				family dunlin { trait engine : electric }
				family tarn { trait engine : electric, diesel }
				sign no_drive
				part motor { fault open }
				test phases { results equal, unequal }
				law "No diesel" : never engine is diesel
				// (whole line) error impossible-vehicle: No vehicle of family tarn can obey these laws together, so no rule for it can ever apply; correct one of them.
				//   core: line 6 (law: No diesel), line 9 (law: Nothing electric), line 12 (law: Nothing electric at all)
				law "Nothing electric" : never engine is electric and phases is equal
				// (whole line) error impossible-vehicle: No vehicle of family dunlin can obey these laws together, so no rule for it can ever apply; correct one of them.
				//   core: line 9 (law: Nothing electric), line 12 (law: Nothing electric at all)
				law "Nothing electric at all" : when engine is electric then phases is equal
				law "Tarn is fine" for tarn : when engine is diesel then phases is equal
				rule a { given no_drive run phases on unequal : confirms motor.open }
				""");
		rules.of(ImpossibleVehicle.class)
				.forEach(flaw -> Cores.assertMinimal(rules, flaw, Map.of()));
	}

	@Test
	void lawsOfFlawsCanLeaveNoneToo() {
		MarkedFlaws rules = MarkedFlaws.check(ImpossibleVehicle.class, """
				family tarn
				sign dark
				sign quiet
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				law "First" : when dark then rest below 9 V
				// (whole line) error impossible-vehicle: No vehicle of family tarn can obey these laws together, so no rule for it can ever apply; correct one of them.
				//   core: line 6 (law: First), line 11 (law: Fourth), line 9 (law: Second), line 10 (law: Third)
				law "Second" : when rest below 9 V then quiet
				law "Third" : never quiet
				law "Fourth" : when not dark then rest below 3 V
				law "Aside" : when quiet then dark
				rule a { given dark run rest expect at_least 9 V below : confirms battery.flat }
				""");
		Cores.assertMinimal(rules, rules.only(ImpossibleVehicle.class), Map.of());
	}

	@Test
	void aLawOnAModuleThatTheFamilyLacksDoesNotBindIt() {
		MarkedFlaws.check(ImpossibleVehicle.class, """
				family tarn
				family heron
				module ecm on tarn
				code low on ecm = raw "1"
				sign hot
				part radiator { fault leaking }
				law "Hot engines answer" : when hot then ecm answers
				law "Somebody always complains" : never hot absent
				rule a { given hot then suspects radiator.leaking }
				""");
	}

	@Test
	void lawsThatNoRuleComesNear() {
		MarkedFlaws.check(ImpossibleVehicle.class, """
				family tarn
				sign hot
				sign wet
				part radiator { fault leaking }
				law "Always wet" : never wet absent
				// (whole line) error impossible-vehicle: No vehicle of family tarn can obey these laws together, so no rule for it can ever apply; correct one of them.
				//   core: line 5 (law: Always wet), line 8 (law: Never wet)
				law "Never wet" : never wet
				rule a { given hot then suspects radiator.leaking }
				""");
	}
}
