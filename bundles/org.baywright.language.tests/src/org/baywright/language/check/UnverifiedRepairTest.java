package org.baywright.language.check;

import org.baywright.analysis.check.UnverifiedRepair;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link UnverifiedRepair}: common practice, no published source. */
class UnverifiedRepairTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(UnverifiedRepair.class);
	}

	@Test
	void anEmptyVerificationIsNone() {
		MarkedFlaws.check(UnverifiedRepair.class, """
				family plover
				sign no_drive
				part motor { fault brush_worn }
				test brush { measures mm 0 .. 30 step 1 }
				rule a { given no_drive run brush expect at_least 12 mm below : confirms motor.brush_worn }
				repair new_brushes { fixes motor.brush_worn steps "Replace them." verify { } }
				//     ^^^^^^^^^^^ warning unverified-repair: Repair new_brushes does not say how anybody knows that it worked; add "verify".
				""");
	}

	@Test
	void oneStepIsEnoughForThisCheck() {
		MarkedFlaws.check(UnverifiedRepair.class, """
				family plover
				sign no_drive
				part motor { fault brush_worn }
				test brush { measures mm 0 .. 30 step 1 }
				rule a { given no_drive run brush expect at_least 12 mm below : confirms motor.brush_worn }
				repair new_brushes { fixes motor.brush_worn steps "Replace them." verify { repeat brush } }
				""");
	}
}
