package org.baywright.language.check;

import org.baywright.analysis.check.SkillBelowHazard;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link SkillBelowHazard}: common practice. */
class SkillBelowHazardTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(SkillBelowHazard.class);
	}

	@Test
	void onlyALicenceIsEnough() {
		MarkedFlaws.check(SkillBelowHazard.class, """
				family dunlin
				hazard charge { caution "Wait." licensed "Licensed persons." reference "Local code, 2024" }
				hazard live { caution "Keep off." licensed "Licensed persons." reference "Local code, 2024" }
				hazard hot { caution "Let it cool." }
				part inverter hazards live, charge, hot { fault shorted }
				part cooler hazards hot { fault blocked }
				test licensed_at_part { results good, bad at inverter caution charge, live, hot skill licensed }
				test no_licence_asked { results good, bad at cooler caution hot }
				test only_warns { results good, bad caution charge skill trained }
				//   ^^^^^^^^^^ warning skill-below-hazard: The test only_warns meets hazard charge, where licensed persons are asked for, and is open to skill trained; write "skill licensed".
				//   also: line 2 (hazard charge)
				test at_part { results good, bad at inverter caution hot }
				//   ^^^^^^^ warning skill-below-hazard: The test at_part meets hazards charge and live, where licensed persons are asked for, and is open to skill basic; write "skill licensed".
				//   also: line 2 (hazard charge), line 3 (hazard live)
				repair licensed_repair { fixes inverter.shorted steps "Replace it." skill licensed }
				repair open_repair { fixes cooler.blocked, inverter.shorted steps "Replace them." }
				//     ^^^^^^^^^^^ warning skill-below-hazard: The repair open_repair meets hazards charge and live, where licensed persons are asked for, and is open to skill basic; write "skill licensed".
				//   also: line 2 (hazard charge), line 3 (hazard live)
				""");
	}

	@Test
	void whatIsSeenWithATestIsOpenToWhomThatOneIs() {
		MarkedFlaws.check(SkillBelowHazard.class, """
				family dunlin
				hazard live { caution "Keep off." licensed "Licensed persons." reference "Local code, 2024" }
				part inverter hazards live { fault shorted }
				test licensed_one { results good, bad at inverter caution live skill licensed }
				test beside_it { results steady, jumps seen_with licensed_one at inverter caution live }
				test plain { results good, bad }
				test at_inverter { results steady, jumps seen_with plain at inverter caution live }
				//   ^^^^^^^^^^^ warning skill-below-hazard: The test at_inverter meets hazard live, where licensed persons are asked for, and is open to skill basic; write "skill licensed" at test plain, with which it is seen.
				//   also: line 2 (hazard live)
				""");
	}
}
