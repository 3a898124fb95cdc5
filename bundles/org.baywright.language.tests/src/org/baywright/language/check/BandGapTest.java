package org.baywright.language.check;

import org.baywright.analysis.check.BandGap;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/**
 * {@link BandGap}: the missing region of one rule's table, as Calvanese and others define it for decision tables
 * (BPM 2016; Information Systems 2018; their figures were seen on slides, their inputs are not published).
 */
class BandGapTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(BandGap.class);
	}

	@Test
	void bandsThatMeetAtAStepLeaveNothing() {
		MarkedFlaws.check(BandGap.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow run cranking on 0 V .. 9.5 V : confirms battery.worn on 9600 mV .. 18 V : clears battery.worn }
				""");
	}

	@Test
	void valuesBeyondAllBandsAreNotBetweenThem() {
		MarkedFlaws.check(BandGap.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow run cranking on 2 V .. 9.5 V : confirms battery.worn on 9.6 V .. 12 V : clears battery.worn }
				""");
	}

	@Test
	void aTableWithTwoGaps() {
		MarkedFlaws.check(BandGap.class, """
				family tarn
				sign slow
				part battery { fault worn fault weak }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a {
				  given slow
				  run cranking
				//    ^^^^^^^^ warning band-gap: Rule a says nothing about 6.1 V or 11.0 V, which lies between its bands; extend one of them.
				  on above 11 V      : clears battery.worn
				  on 0 V .. 6 V      : confirms battery.worn
				  on 6.2 V .. 10.9 V : suspects battery.weak
				}
				""");
	}

	@Test
	void otherwiseTakesWhatIsLeft() {
		MarkedFlaws.check(BandGap.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow run cranking on below 6 V : confirms battery.worn on above 11 V : clears battery.worn otherwise : proves nothing }
				""");
	}

	@Test
	void namedResultsHaveNoBetween() {
		MarkedFlaws.check(BandGap.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test lamp { results dark, dim, lit }
				rule a { given slow run lamp on dark : confirms battery.worn on lit : clears battery.worn }
				""");
	}
}
