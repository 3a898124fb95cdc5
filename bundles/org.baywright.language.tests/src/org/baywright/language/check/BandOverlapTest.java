package org.baywright.language.check;

import org.baywright.analysis.check.BandOverlap;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/**
 * {@link BandOverlap}: overlapping rules of one table, as Calvanese and others define it for decision tables
 * (BPM 2016; Information Systems 2018; their figures were seen on slides, their inputs are not published).
 */
class BandOverlapTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(BandOverlap.class);
	}

	@Test
	void bandsOneStepApartShareNothing() {
		MarkedFlaws.check(BandOverlap.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow run cranking on below 9.6 V : confirms battery.worn on at_least 9600 mV : clears battery.worn }
				""");
	}

	@Test
	void oneSharedStepIsFound() {
		MarkedFlaws.check(BandOverlap.class, """
				family tarn
				sign slow
				part battery { fault worn }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow run cranking on at_most 9.6 V : confirms battery.worn on at_least 9600 mV : clears battery.worn }
				//                                                                        ^^^^^^^^^^^^^^^^^^^ error band-overlap: In rule a, 9.6 V belongs to two outcomes: "on at_most 9.6 V" and "on at_least 9600 mV"; leave it to one of them.
				//   also: line 5 (the other outcome)
				""");
	}

	@Test
	void namedResultsCanOverlapToo() {
		MarkedFlaws.check(BandOverlap.class, """
				family tarn
				sign slow
				part battery { fault worn fault weak }
				test lamp { results dark, dim, lit }
				rule a {
				  given slow
				  run lamp
				  on dark, dim : confirms battery.worn
				  on dim, lit  : suspects battery.weak
				//^^^^^^^^^^^ error band-overlap: In rule a, dim belongs to two outcomes: "on dark, dim" and "on dim, lit"; leave it to one of them.
				//   also: line 8 (the other outcome)
				}
				""");
	}

	@Test
	void twoRulesMayUseTheSameBand() {
		MarkedFlaws.check(BandOverlap.class, """
				family tarn
				sign slow
				part battery { fault worn fault weak }
				test cranking { measures V 0 .. 18 step 0.1 }
				rule a { given slow run cranking on below 9.6 V : confirms battery.worn }
				rule b { given slow run cranking on below 9.6 V : suspects battery.weak }
				""");
	}
}
