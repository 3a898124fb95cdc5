package org.baywright.language.check;

import org.baywright.analysis.check.TestWithoutPlace;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link TestWithoutPlace}: common practice. */
class TestWithoutPlaceTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(TestWithoutPlace.class);
	}

	@Test
	void aPlaceOrAWarningIsEnough() {
		MarkedFlaws.check(TestWithoutPlace.class, """
				family dunlin
				hazard charge { caution "Wait." }
				hazard live { caution "Keep off." }
				sign no_ready
				part inverter hazards charge, live { fault shorted  fault open }
				part cooler hazards charge { fault leaks }
				part lamp { fault dead }
				test at_part { results good, bad at inverter caution charge, live }
				test at_other { results good, bad at lamp }
				test from_seat { results good, bad place "From the driver's seat" }
				test warns { results good, bad caution live, charge }
				test only_suspects { results good, bad }
				test harmless { results good, bad }
				test unused { results good, bad }
				test warns_of_one { results good, bad caution live }
				//   ^^^^^^^^^^^^ warning test-without-place: The test warns_of_one decides on parts cooler and inverter with hazard charge, and does not say where it is done; write at with the part, or place.
				//   also: line 26 (rule f)
				test clears_only { results good, bad }
				//   ^^^^^^^^^^^ warning test-without-place: The test clears_only decides on part inverter with hazards charge and live, and does not say where it is done; write at with the part, or place.
				//   also: line 27 (rule g)
				rule a { given no_ready run at_part on bad : confirms inverter.shorted on good : proves nothing }
				rule b { given no_ready run at_other on bad : confirms inverter.shorted on good : proves nothing }
				rule c { given no_ready run from_seat on bad : confirms inverter.shorted on good : proves nothing }
				rule d { given no_ready run warns on bad : confirms inverter.shorted on good : proves nothing }
				rule e { given no_ready run only_suspects on bad : suspects inverter.shorted on good : proves nothing }
				rule f { given no_ready run warns_of_one on bad : confirms inverter.open on good : clears cooler.leaks }
				rule g { given no_ready run clears_only on bad : proves nothing on good : clears inverter.open }
				rule h { given no_ready run harmless on bad : confirms lamp.dead on good : clears lamp.dead }
				""");
	}
}
