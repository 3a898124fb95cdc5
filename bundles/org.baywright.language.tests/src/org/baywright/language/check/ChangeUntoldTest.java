package org.baywright.language.check;

import org.baywright.analysis.check.ChangeUntold;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link ChangeUntold}: common practice. */
class ChangeUntoldTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(ChangeUntold.class);
	}

	@Test
	void whoeverIsToldIsEnough() {
		MarkedFlaws.check(ChangeUntold.class, """
				family plover
				part heater { fault short }
				repair nothing_changes { fixes heater.short steps "Replace it." }
				repair customer { fixes heater.short steps "Unplug it." changes_for_good "It is off." tell_customer "It is off." }
				repair insurer { fixes heater.short steps "Unplug it." changes_for_good "It is off." tell insurer "It is off." }
				repair nobody { fixes heater.short steps "Unplug it." changes_for_good "It is off." }
				//     ^^^^^^ warning change-untold: Repair nobody changes something for good and nobody is told; say who must know it.
				""");
	}
}
