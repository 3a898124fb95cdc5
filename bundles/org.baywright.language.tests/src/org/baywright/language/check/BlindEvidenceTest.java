package org.baywright.language.check;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.check.BlindEvidence;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.Replay;
import org.baywright.model.VerdictKind;
import org.junit.jupiter.api.Test;

/**
 * {@link BlindEvidence}. That a module which does not answer has told nothing is common practice; the bits of ISO 14229-1
 * keep "not tested since the last clearing" apart from "test passed" for the same reason (bit names seen).
 */
class BlindEvidenceTest {

	@Test
	void theFlawedFile() {
		MarkedFlaws rules = MarkedFlaws.checkFlawed(BlindEvidence.class);
		assertShows(rules, rules.only(BlindEvidence.class), "no_code");
	}

	private static void assertShows(MarkedFlaws rules, Flaw flaw, String rule) {
		CaseResult result = Replay.assertShows(rules, flaw, seen -> seen.fired().contains(rule));
		assertTrue(result.verdicts().stream().anyMatch(
				said -> said.kind() == VerdictKind.CONFIRMED || said.kind() == VerdictKind.CLEARED), result::toString);
	}

	@Test
	void aCodeThatWasReadAndIsAbsentIsEvidence() {
		MarkedFlaws.check(BlindEvidence.class, """
				family osier
				module doors
				code range on doors = raw "D 107"
				sign reopens
				part sensor { fault broken }
				rule a { given reopens, range absent then clears sensor.broken }
				rule b { given reopens, range not present then clears sensor.broken }
				""");
	}

	@Test
	void aCodeThatWasNotTestedIsNone() {
		MarkedFlaws rules = MarkedFlaws.check(BlindEvidence.class, """
				family osier
				module doors
				code range on doors = raw "D 107"
				sign reopens
				part sensor { fault broken fault loose }
				rule a { given reopens, range active then confirms sensor.broken }
				rule b { given reopens, range not present then clears sensor.broken }
				//   ^ warning blind-evidence: Rule b takes it as proof that code range is not seen, even when its module has not tested for it since its codes were cleared; ask for "absent", or for the states that are meant.
				//   witness: osier; reopens; code range untested in doors
				rule c { given reopens, range absent then clears sensor.broken }
				rule d { given reopens, (range untested or range pending) then confirms sensor.loose }
				rule e { given reopens, range not unread then clears sensor.loose }
				""");
		assertShows(rules, rules.only(BlindEvidence.class), "b");
	}

	@Test
	void aSuspicionMayRestOnAMissingCode() {
		MarkedFlaws.check(BlindEvidence.class, """
				family osier
				module doors
				code range on doors = raw "D 107"
				sign reopens
				part sensor { fault broken }
				rule a { given reopens, range missing then suspects sensor.broken }
				""");
	}

	@Test
	void aMissingCodeOfAModuleThatAnswersIsEvidence() {
		MarkedFlaws.check(BlindEvidence.class, """
				family osier
				module doors
				code range on doors = raw "D 107"
				sign reopens
				part sensor { fault broken }
				rule a { given reopens, doors answers, range missing then clears sensor.broken }
				""");
	}

	@Test
	void theSilenceOfAModuleThatNeedNotAnswer() {
		MarkedFlaws rules = MarkedFlaws.check(BlindEvidence.class, """
				family osier
				state ignition : off, on
				module doors answers in ignition on
				sign reopens
				part supply { fault broken }
				test fuse { results whole, blown  in ignition off }
				rule a { given reopens, doors silent run fuse on blown : confirms supply.broken }
				//   ^ warning blind-evidence: Rule a takes the silence of module doors as proof, but in this state the module need not answer; put the vehicle into one in which it must.
				//   witness: osier; reopens; doors is silent; fuse: blown
				""");
		assertShows(rules, rules.only(BlindEvidence.class), "a");
	}

	@Test
	void theSilenceOfAModuleThatMustAnswerIsEvidence() {
		MarkedFlaws.check(BlindEvidence.class, """
				family osier
				state ignition : off, on
				module doors answers in ignition on
				module lamps
				sign reopens
				part supply { fault broken }
				test fuse { results whole, blown  in ignition on }
				test lamp { results dark, lit }
				rule a { given reopens, doors silent run fuse on blown : confirms supply.broken }
				rule b { given reopens, doors silent in ignition on run lamp on dark : confirms supply.broken }
				rule c { given reopens, lamps silent run lamp on dark : confirms supply.broken }
				""");
	}

	@Test
	void aCodeOfASilentModuleIsNeverEvidence() {
		MarkedFlaws rules = MarkedFlaws.check(BlindEvidence.class, """
				family osier
				state ignition : off, on
				module doors answers in ignition on
				code range on doors = raw "D 107"
				sign reopens
				part supply { fault broken }
				rule a { in ignition on given reopens, doors silent, range missing then clears supply.broken }
				//   ^ warning blind-evidence: Rule a takes it as proof that code range is missing, even when the module is silent and the code was never read; ask for "absent".
				//   witness: osier; reopens; doors is silent; code range unread in doors
				""");
		assertShows(rules, rules.only(BlindEvidence.class), "a");
	}

	@Test
	void anUnreadCodeIsTheSilenceOfItsModule() {
		MarkedFlaws rules = MarkedFlaws.check(BlindEvidence.class, """
				family osier
				state ignition : off, on
				module doors answers in ignition on
				code range on doors = raw "D 107"
				sign reopens
				part supply { fault broken }
				rule a { given reopens, range unread then confirms supply.broken }
				//   ^ warning blind-evidence: Rule a takes the silence of module doors as proof, but in this state the module need not answer; put the vehicle into one in which it must.
				//   witness: osier; reopens; doors is silent; code range unread in doors
				rule b { in ignition on given reopens, range unread then confirms supply.broken }
				""");
		assertShows(rules, rules.only(BlindEvidence.class), "a");
	}

	@Test
	void theAbsenceOfASignThatComesAndGoes() {
		MarkedFlaws rules = MarkedFlaws.check(BlindEvidence.class, """
				family osier
				sign reopens "Opens again now and then" intermittent
				sign squeals "Squeals"
				part sensor { fault broken }
				part roller { fault dry }
				rule a { given squeals, reopens absent then clears sensor.broken }
				//   ^ warning blind-evidence: Rule a takes it as proof that "Opens again now and then" is not seen, but it comes and goes; let a test decide.
				//   witness: osier; "Opens again now and then" is not seen; Squeals
				rule b { given squeals absent then clears roller.dry }
				rule c { given reopens then suspects sensor.broken }
				""");
		assertShows(rules, rules.only(BlindEvidence.class), "a");
	}

	@Test
	void aSuspicionThatNoTestFollowsIsNoEvidence() {
		MarkedFlaws rules = MarkedFlaws.check(BlindEvidence.class, """
				family osier
				module doors
				code range on doors = raw "D 107"
				sign reopens
				sign squeals "Squeals now and then" intermittent
				part sensor { fault broken }
				part roller { fault dry }
				test pull { results easy, heavy }
				rule a { given reopens, range missing then suspects sensor.broken }
				rule b { given sensor.broken suspected, squeals absent then suspects roller.dry }
				rule c { given roller.dry suspected then confirms roller.dry }
				//   ^ warning blind-evidence: Rule c, which builds on the suspicion of rule b, takes it as proof that "Squeals now and then" is not seen, but it comes and goes; let a test decide.
				//   witness: osier; reopens; "Squeals now and then" is not seen; doors is silent; code range unread in doors
				//   also: line 10 (rule b asks for it)
				//   ^ warning blind-evidence: Rule c, which builds on the suspicion of rule a, takes it as proof that code range is missing, even when the module is silent and the code was never read; ask for "absent".
				//   witness: osier; reopens; "Squeals now and then" is not seen; doors is silent; code range unread in doors
				//   also: line 9 (rule a asks for it)
				rule d { given sensor.broken suspected run pull on heavy : confirms sensor.broken }
				""");
		rules.of(BlindEvidence.class).forEach(flaw -> assertShows(rules, flaw, "c"));
	}
}
