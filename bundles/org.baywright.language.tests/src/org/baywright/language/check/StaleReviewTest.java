package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.baywright.analysis.check.StaleReview;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.model.Meaning;
import org.junit.jupiter.api.Test;

/** {@link StaleReview}. */
class StaleReviewTest {

	private static final String TEXT = """
			family tarn
			sign no_crank
			part battery { fault flat }
			test rest { measures V 0 .. 18 step 0.1 }
			rule a "Flat" {
			  given no_crank
			  run rest
			  expect at_least 12.4 V
			  below : confirms battery.flat
			  because "Practice."
			}
			review a by "M. Sund" on 2026-03-09 agrees meaning "MEANING"
			""";

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(StaleReview.class);
	}

	private static String reviewed() {
		MarkedFlaws rules = MarkedFlaws.of(TEXT);
		return TEXT.replace("MEANING", Meaning.fingerprint(rules.base().rule("a").orElseThrow()));
	}

	@Test
	void aReviewOfThisMeaningHolds() {
		MarkedFlaws.check(StaleReview.class, reviewed());
	}

	@Test
	void otherWordsForTheSameMeaningKeepTheReview() {
		MarkedFlaws.check(StaleReview.class, reviewed().replace("12.4 V", "12400 mV").replace("\"Flat\"", "\"Battery flat\"")
				.replace("given no_crank", "given no_crank present").replace("Practice.", "Seen often."));
	}

	@Test
	void anotherLimitMakesItStale() {
		MarkedFlaws rules = MarkedFlaws.of(reviewed().replace("12.4 V", "12.3 V"));
		assertEquals("stale-review:a/M. Sund/2026-03-09", rules.only(StaleReview.class).id());
	}

	@Test
	void anotherConclusionMakesItStale() {
		MarkedFlaws rules = MarkedFlaws.of(reviewed().replace("confirms", "suspects"));
		assertEquals("stale-review:a/M. Sund/2026-03-09", rules.only(StaleReview.class).id());
	}

	/** Nothing has changed where nobody has noted what was read. */
	@Test
	void aReviewThatIsJustBeingWritten() {
		MarkedFlaws rules = MarkedFlaws.of(TEXT.replace("MEANING", "00000000"));
		String now = Meaning.fingerprint(rules.base().rule("a").orElseThrow());
		assertEquals("The review of rule a by M. Sund does not say yet what was read; if it is the rule as it stands now, write meaning \""
				+ now + "\".", rules.only(StaleReview.class).message());
	}
}
