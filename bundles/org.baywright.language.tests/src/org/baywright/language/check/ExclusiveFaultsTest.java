package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.ExclusiveFaults;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Replay;
import org.baywright.model.VerdictKind;
import org.junit.jupiter.api.Test;

/** {@link ExclusiveFaults}, an "ambivalence" over an impermissible set in the words of Preece and Shinghal 1994. */
class ExclusiveFaultsTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(ExclusiveFaults.class);
		assertShows(rules, rules.only(ExclusiveFaults.class), "battery.flat", "battery.open_cell");
	}

	private static void assertShows(MarkedFlaws rules, Flaw flaw, String one, String other) {
		CaseResult result = Replay.assertShows(rules, flaw, seen -> Replay.says(seen, VerdictKind.CONFIRMED, one)
				&& Replay.says(seen, VerdictKind.CONFIRMED, other));
		assertTrue(result.fired().size() >= 2, result::toString);
	}

	@Test
	void aRuleThatWaitsForTheOtherFaultToBeClearedIsFine() {
		MarkedFlaws.check(ExclusiveFaults.class, """
				family tarn
				sign no_crank
				part battery { fault flat fault open_cell }
				exclusive battery.flat, battery.open_cell
				test rest { measures V 0 .. 18 step 0.1 }
				test load { measures V 0 .. 18 step 0.1 }
				rule a { given no_crank run rest expect at_least 12.4 V met : clears battery.flat below : confirms battery.flat }
				rule b { given no_crank, battery.flat not confirmed, rest at_least 12.4 V run load expect at_least 6 V below : confirms battery.open_cell }
				""");
	}

	@Test
	void bandsOfOneTestDoNotMeet() {
		MarkedFlaws.check(ExclusiveFaults.class, """
				family tarn
				sign no_crank
				part battery { fault flat fault open_cell }
				exclusive battery.flat, battery.open_cell
				test rest { measures V 0 .. 18 step 0.1 }
				rule a { given no_crank run rest on below 6 V : confirms battery.open_cell on 6 V .. 12.3 V : confirms battery.flat }
				""");
	}

	@Test
	void oneOutcomeThatConfirmsBothIsFound() {
		MarkedFlaws rules = MarkedFlaws.check(ExclusiveFaults.class, """
				family tarn
				sign no_crank
				part battery { fault flat fault open_cell }
				exclusive battery.flat, battery.open_cell
				test rest { measures V 0 .. 18 step 0.1 }
				rule a { given no_crank run rest on below 6 V : confirms battery.open_cell, battery.flat }
				//                               ^^^^^^^^^^^^ error exclusive-faults: Rule a confirms battery.flat (flat) and battery.open_cell (open_cell) in the same situation, but only one of them can be the cause; decide for one.
				//   witness: tarn; no_crank; rest: 5.9 V
				//   also: line 6 (rule a, on below 6 V)
				""");
		Flaw flaw = rules.only(ExclusiveFaults.class);
		Replay.assertShows(rules, flaw, seen -> Replay.says(seen, VerdictKind.CONFIRMED, "battery.flat")
				&& Replay.says(seen, VerdictKind.CONFIRMED, "battery.open_cell"));
	}

	@Test
	void twoOutcomesAreToldOnceWithAllThatTheyConfirmOfOneGroup() {
		MarkedFlaws.check(ExclusiveFaults.class, """
				family tarn
				sign hum
				part hub { fault worn fault loose fault cracked fault dry }
				part tyre { fault bald fault oval }
				exclusive hub.worn, hub.loose, hub.cracked, hub.dry
				exclusive tyre.bald, tyre.oval
				test play { results none, felt }
				test look { results good, crack }
				rule a { given hum run play on felt : confirms hub.worn, tyre.bald }
				//                          ^^^^^^^ error exclusive-faults: Rule a confirms tyre.bald (bald) and rule b confirms tyre.oval (oval), but only one of them can be the cause; withdraw one of the two, or add a condition to one of the rules.
				//   witness: tarn; hum; look: crack; play: felt
				//   also: line 13 (rule b, on crack)
				rule b { given hum run look on crack : confirms hub.cracked, hub.loose, tyre.oval }
				//                          ^^^^^^^^ error exclusive-faults: Rule b confirms hub.cracked (cracked) and hub.loose (loose) and rule a confirms hub.worn (worn), but only one of them can be the cause; withdraw one of the two, or add a condition to one of the rules.
				//   witness: tarn; hum; look: crack; play: felt
				//   also: line 9 (rule a, on felt)
				//                          ^^^^^^^^ error exclusive-faults: Rule b confirms hub.cracked (cracked) and hub.loose (loose) in the same situation, but only one of them can be the cause; decide for one.
				//   witness: tarn; hum; look: crack
				//   also: line 13 (rule b, on crack)
				""");
	}

	@Test
	void ofThreeEachTwoAreTold() {
		MarkedFlaws rules = MarkedFlaws.check(ExclusiveFaults.class, """
				family tarn
				sign hum
				part hub { fault worn fault loose fault cracked }
				exclusive hub.worn, hub.loose, hub.cracked
				test play { results none, felt }
				test look { results good, crack }
				rule a { given hum run play on felt : confirms hub.worn }
				rule b { given hum, play is none run look on crack : confirms hub.cracked }
				//                                        ^^^^^^^^ error exclusive-faults: Rule b confirms hub.cracked (cracked) and rule c confirms hub.loose (loose), but only one of them can be the cause; withdraw one of the two, or add a condition to one of the rules.
				//   witness: tarn; hum; look: crack; play: none
				//   also: line 12 (rule c, on good, crack)
				rule c { given hum run look on good, crack : confirms hub.loose }
				//                          ^^^^^^^^^^^^^^ error exclusive-faults: Rule c confirms hub.loose (loose) and rule a confirms hub.worn (worn), but only one of them can be the cause; withdraw one of the two, or add a condition to one of the rules.
				//   witness: tarn; hum; look: good; play: felt
				//   also: line 7 (rule a, on felt)
				""");
		List<Flaw> found = rules.of(ExclusiveFaults.class);
		assertShows(rules, found.get(0), "hub.cracked", "hub.loose");
		assertShows(rules, found.get(1), "hub.loose", "hub.worn");
	}
}
