package org.baywright.language.check;

import org.baywright.analysis.check.MissingRepair;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link MissingRepair}: a verdict that leads to no action; common practice, no published source. */
class MissingRepairTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(MissingRepair.class);
	}

	@Test
	void aFaultThatIsNeverConfirmedNeedsNoRepair() {
		MarkedFlaws.check(MissingRepair.class, """
				family plover
				sign no_drive
				part motor { fault brush_worn fault burnt }
				test brush { measures mm 0 .. 30 step 1 }
				rule a { given no_drive run brush expect at_least 12 mm below : suspects motor.brush_worn }
				rule b { given no_drive, brush above 20 mm run brush on below 12 mm : confirms motor.burnt }
				""");
	}

	@Test
	void aRepairForOtherVehiclesIsNone() {
		MarkedFlaws.check(MissingRepair.class, """
				family plover { trait drive : belt, shaft }
				family heron
				sign no_drive
				part motor { fault worn fault burnt fault wet }
				//                 ^^^^ warning missing-repair: Rules can confirm motor.worn (worn) on a vehicle for which no repair is meant; write a repair for it, or let one that is there reach it.
				//   witness: plover with drive shaft; no_drive; brush: 11 mm
				//   also: line 15 (repair new_brushes is for other vehicles)
				//                            ^^^^^ warning missing-repair: Rules can confirm motor.burnt (burnt) on a vehicle for which no repair is meant; write a repair for it, or let one that is there reach it.
				//   witness: heron; no_drive; look: black
				//   also: line 16 (repair new_motor is for other vehicles)
				test brush { measures mm 0 .. 30 step 1 }
				test look { results fine, black, wet }
				rule a { for plover given no_drive run brush on below 12 mm : confirms motor.worn }
				rule b { given no_drive run look on black : confirms motor.burnt on wet : confirms motor.wet }
				repair new_brushes { fixes motor.worn for plover where drive is belt steps "Replace them." verify { repeat what confirmed } }
				repair new_motor { fixes motor.burnt for every family except heron steps "Replace it." verify { repeat what confirmed } }
				repair dry_belt { fixes motor.wet for plover where drive is belt steps "Dry it." verify { repeat what confirmed } }
				repair dry_shaft { fixes motor.wet for plover where drive is not belt steps "Dry it." verify { repeat what confirmed } }
				repair dry_heron { fixes motor.wet for heron steps "Dry it." verify { repeat what confirmed } }
				""");
	}

	@Test
	void oneRepairMayFixSeveralFaults() {
		MarkedFlaws.check(MissingRepair.class, """
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
