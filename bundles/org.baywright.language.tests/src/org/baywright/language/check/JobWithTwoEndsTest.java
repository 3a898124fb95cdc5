package org.baywright.language.check;

import org.baywright.analysis.check.JobWithTwoEnds;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link JobWithTwoEnds}: common practice. */
class JobWithTwoEndsTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(JobWithTwoEnds.class);
	}

	@Test
	void twoComplaintsMayEndInTwoWays() {
		MarkedFlaws.check(JobWithTwoEnds.class, """
				family tarn
				sign no_crank
				sign radio_dead
				part battery { fault flat }
				test rest { measures V 0 .. 18 step 0.1 }
				job "cause" { on tarn found no_crank, rest 11.8 V was battery.flat }
				job "referred" { on tarn found no_crank, rest 11.8 V was referred }
				job "two complaints" { on tarn found no_crank, radio_dead, rest 11.8 V was battery.flat was referred }
				job "one complaint" { on tarn found no_crank, radio_dead absent, rest 11.8 V was referred was battery.flat }
				//  ^^^^^^^^^^^^^^^ warning job-with-two-ends: Job "one complaint" was battery.flat and was referred; keep how it ended.
				job "no complaint" { on tarn found rest 11.8 V was referred was battery.flat }
				//  ^^^^^^^^^^^^^^ warning job-with-two-ends: Job "no complaint" was battery.flat and was referred; keep how it ended.
				""");
	}
}
