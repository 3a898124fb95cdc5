package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.UnsplitFaults;
import org.baywright.language.testing.MarkedFlaws;
import org.junit.jupiter.api.Test;

/** {@link UnsplitFaults}: an ambiguity group of the testability standards (IEEE 1522, MIL-STD-2165, from memory). */
class UnsplitFaultsTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws.checkFlawed(UnsplitFaults.class);
	}

	@Test
	void aTestThatClearsOneSplitsThem() {
		MarkedFlaws.check(UnsplitFaults.class, """
				family plover
				sign no_lift
				part pump { fault seized }
				part relay { fault burnt }
				test current { measures A 0 .. 300 step 1 }
				test click { results heard, none }
				rule a { given no_lift run current expect at_least 20 A below : confirms pump.seized, relay.burnt }
				rule b { given no_lift, current at_least 20 A run click on heard : clears relay.burnt }
				""");
	}

	@Test
	void twoTestsThatAlwaysSayBothDoNotSplit() {
		MarkedFlaws.check(UnsplitFaults.class, """
				family plover
				sign no_lift
				part pump { fault seized }
				//                ^^^^^^ warning unsplit-faults: No set of tests can tell pump.seized, relay.burnt apart: the rules always confirm and clear them together; find a test that splits them, or make one fault of them.
				//   also: line 6 (fault relay.burnt)
				part relay { fault burnt }
				test current { measures A 0 .. 300 step 1 }
				test click { results heard, none }
				rule a { given no_lift run current expect at_least 20 A below : confirms pump.seized, relay.burnt }
				rule b { given no_lift, current at_least 20 A run click on heard : clears relay.burnt }
				rule c { given no_lift, current at_least 20 A run click on heard : clears pump.seized }
				""");
	}

	@Test
	void threeFaultsMakeOneGroup() {
		MarkedFlaws rules = MarkedFlaws.check(UnsplitFaults.class, """
				family plover
				sign no_lift
				part pump { fault seized fault worn }
				//                ^^^^^^ warning unsplit-faults: No set of tests can tell pump.seized, pump.worn, relay.burnt apart: the rules always confirm and clear them together; find a test that splits them, or make one fault of them.
				//   also: line 3 (fault pump.worn), line 6 (fault relay.burnt)
				part relay { fault burnt }
				part fuse { fault blown }
				test current { measures A 0 .. 300 step 1 }
				test look { results whole, blown }
				rule a { given no_lift run current on below 20 A : confirms pump.seized, relay.burnt, pump.worn }
				rule b { given no_lift run look on blown : confirms fuse.blown }
				""");
		assertEquals(List.of("unsplit-faults:pump.seized+pump.worn+relay.burnt"),
				rules.report().flaws().stream().filter(flaw -> flaw.check().equals("unsplit-faults"))
						.map(Flaw::id).toList());
	}

	@Test
	void oneFamilyThatSplitsThemIsEnough() {
		MarkedFlaws.check(UnsplitFaults.class, """
				family plover
				family heron
				sign no_lift
				part pump { fault seized }
				part relay { fault burnt }
				test current { measures A 0 .. 300 step 1 }
				rule a { given no_lift run current expect at_least 20 A below : confirms pump.seized, relay.burnt }
				rule b { for heron given no_lift run current expect at_least 20 A met : clears relay.burnt }
				""");
	}
}
