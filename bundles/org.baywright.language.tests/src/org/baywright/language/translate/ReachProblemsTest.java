package org.baywright.language.translate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.testing.MarkedText;
import org.baywright.model.Condition;
import org.baywright.model.Scope;
import org.junit.jupiter.api.Test;

/** Signs, tests and repairs that are for some vehicles only. */
class ReachProblemsTest {

	@Test
	void theyNameFamiliesAndTraitsAsRulesDo() {
		var base = MarkedFlaws.of("""
				base family all { trait engine : diesel, petrol }
				family tarn like all
				family heron like all
				part cell { fault flat }
				sign glow intermittent for tarn where engine is diesel do_not_start "x"
				test plugs { results fine, poor for every family except heron }
				repair charge { fixes cell.flat for tarn, heron steps "x" }
				""").base();
		Scope glow = base.sign("glow").orElseThrow().scope();
		assertEquals(List.of("tarn"), glow.families());
		assertEquals("engine", ((Condition.Atom) glow.where().orElseThrow()).about());
		assertEquals(List.of("heron"), base.test("plugs").orElseThrow().scope().except());
		assertEquals(List.of("tarn", "heron"), base.repair("charge").orElseThrow().scope().families());
	}

	@Test
	void whatIsForOtherVehiclesIsTold() {
		MarkedText.check("""
				sign rattle for heron
				test plugs { results fine, poor for every family except tarn }
				rule r1 {
				  for tarn
				  given rattle, plugs is fine
				        ^^^^^^ warning not-fitted: The sign `rattle` is for no vehicle meant here. > Name the family behind `for` at the sign, or take it out here.
				                ^^^^^^^^^^^^^ warning not-fitted: The test `plugs` is for no vehicle meant here. > Name the family behind `for` at the test, or take it out here.
				  run plugs
				      ^^^^^ warning not-fitted: The test `plugs` is for no vehicle meant here. > Name the family behind `for` at the test, or take it out here.
				  on poor : suspects battery.discharged
				}
				job "J1" { on tarn found rattle, plugs fine was referred }
				                         ^^^^^^ error module-not-on-vehicle: The sign `rattle` is not for vehicles of the family `tarn`. > Correct the family, or name it behind `for` at the sign.
				                                 ^^^^^ error module-not-on-vehicle: The test `plugs` is not for vehicles of the family `tarn`. > Correct the family, or name it behind `for` at the test.
				sign odd for tarn where no_crank
				                        ^^^^^^^^ error where-not-trait: `where` tells vehicles apart by their traits, and `no_crank` is a sign. > Put what is found on the vehicle under `given`.
				test twice { results a, b for tarn for heron }
				                                   ^^^ error clause-twice: `for` is given twice. > Keep one of the two.
				""");
	}

	/** The laws of an invented van of which only some can be heard to rattle, and only these are asked about it. */
	@Test
	void onOtherVehiclesNothingIsAskedAndNoLawBinds() {
		String text = """
				family tarn { trait engine : diesel, petrol }
				family heron
				sign rattle for tarn where engine is diesel
				part belt { fault loose fault worn }
				test tension { results fine, slack for tarn where engine is diesel }
				law "Both at once never" : never tension is slack or tension is fine
				rule a { given rattle run tension on slack : confirms belt.loose on fine : clears belt.loose }
				rule b { for heron given rattle then suspects belt.worn }
				""";
		// on a diesel the law leaves nothing that the test could give: such vehicles are shut out, the others are not
		MarkedFlaws rules = MarkedFlaws.of(text);
		assertEquals(List.of(), of(rules, "impossible-vehicle"));
		assertEquals(List.of("dead-rule:a/heron", "dead-rule:a/tarn", "dead-rule:b"), of(rules, "dead-rule"));
	}

	private static List<String> of(MarkedFlaws rules, String check) {
		return rules.report().flaws().stream().filter(flaw -> flaw.check().equals(check)).map(Flaw::id).sorted().toList();
	}

	@Test
	void aGapIsAskedForOnlyWhereTheSignIs() {
		MarkedFlaws rules = MarkedFlaws.of("""
				family tarn { trait engine : diesel, petrol }
				sign rattle for tarn where engine is diesel
				part belt { fault loose }
				test tension { results fine, slack }
				rule a { for tarn where engine is diesel given rattle run tension on slack : confirms belt.loose on fine : refers "a colleague" }
				""");
		assertEquals(List.of(), of(rules, "gap"));
	}

	@Test
	void aJobThatFoundWhatCannotBeThereFails() {
		MarkedFlaws rules = MarkedFlaws.of("""
				family tarn { trait engine : diesel, petrol }
				sign rattle for tarn where engine is diesel
				part belt { fault loose }
				rule a { given rattle then confirms belt.loose }
				job "J1" { on tarn with engine petrol found rattle was belt.loose }
				job "J2" { on tarn with engine diesel found rattle was belt.loose }
				""");
		List<CaseResult> results = rules.report().cases();
		assertEquals(List.of("rattle was found, but it is for other vehicles.", ""), results.stream().map(CaseResult::message).toList());
		assertEquals(Optional.of(true), results.stream().map(CaseResult::passed).reduce((one, other) -> other));
	}
}
