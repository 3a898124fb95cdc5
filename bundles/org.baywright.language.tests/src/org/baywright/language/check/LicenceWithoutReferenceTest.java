package org.baywright.language.check;

import org.baywright.analysis.check.LicenceWithoutReference;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link LicenceWithoutReference}: common practice. */
class LicenceWithoutReferenceTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(LicenceWithoutReference.class);
	}

	@Test
	void aHazardForEverybodyNeedsNone() {
		MarkedFlaws.check(LicenceWithoutReference.class, """
				family dunlin
				hazard hot { caution "Let it cool." }
				hazard charge { caution "Wait." licensed "Licensed persons." reference "Local code, 2024" }
				hazard live { caution "Keep off." licensed "Licensed persons." }
				//     ^^^^ warning licence-without-reference: Hazard live asks for licensed persons and names no instrument that says so; add it under reference, with its edition.
				""");
	}
}
