package org.baywright.language.check;

import org.baywright.analysis.check.MissingRepair;
import org.baywright.language.testing.MarkedFindings;
import org.junit.jupiter.api.Test;

/** {@link MissingRepair}: a verdict that leads to no action; common practice, no published source. */
class MissingRepairTest {

	@Test
	void theFlawedFile() {
		MarkedFindings.checkFlawed(MissingRepair.class);
	}

	@Test
	void aFaultThatIsNeverConfirmedNeedsNoRepair() {
		MarkedFindings.check(MissingRepair.class, """
				family plover
				sign no_drive
				part motor { fault brush_worn fault burnt }
				test brush { measures mm 0 .. 30 step 1 }
				rule a { given no_drive run brush expect at_least 12 mm below : suspects motor.brush_worn }
				rule b { given no_drive, brush above 20 mm run brush on below 12 mm : confirms motor.burnt }
				""");
	}

	@Test
	void oneRepairMayFixSeveralFaults() {
		MarkedFindings.check(MissingRepair.class, """
				family plover
				sign no_drive
				part motor { fault brush_worn fault burnt fault wet }
				//                                              ^^^ warning missing-repair: Rules can confirm motor.wet (wet), but no repair puts it right; write the repair.
				test brush { measures mm 0 .. 30 step 1 }
				test look { results fine, black, wet }
				rule a { given no_drive run brush expect at_least 12 mm below : confirms motor.brush_worn }
				rule b { given no_drive run look on black : confirms motor.burnt on wet : confirms motor.wet }
				repair new_motor { fixes motor.brush_worn, motor.burnt steps "Replace it." verify { repeat what confirmed } }
				""");
	}
}
