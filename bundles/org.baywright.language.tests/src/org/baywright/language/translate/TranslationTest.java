package org.baywright.language.translate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.baywright.language.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.CodeReading;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Law;
import org.baywright.model.Outcome;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Skill;
import org.baywright.model.Source;
import org.baywright.model.VerdictKind;
import org.baywright.model.VerifyStep;
import org.baywright.model.Workshop;
import org.baywright.model.code.Dtc;
import org.baywright.model.code.J1939Code;
import org.baywright.model.code.RawCode;
import org.junit.jupiter.api.Test;

class TranslationTest {

	private static final RuleBase SAMPLE = Samples.tarnInMemory().snapshot().rules();

	private static Rule rule(String name) {
		return SAMPLE.rule(name).orElseThrow();
	}

	/** Translates text together with the sample project; it must be free of errors. */
	private static RuleBase with(String text) {
		RuleProject project = Samples.tarnInMemory();
		project.update("zz.bay", text);
		Snapshot snapshot = project.snapshot();
		assertEquals(List.of(),
				snapshot.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).toList());
		return snapshot.rules();
	}

	private static IndexSet values(Rule rule, int outcome) {
		Domain domain = SAMPLE.test(rule.test().orElseThrow()).orElseThrow().domain();
		return rule.outcomes().get(outcome).values().orElseThrow().in(domain);
	}

	private static List<String> labels(Rule rule) {
		return rule.outcomes().stream().map(Outcome::label).toList();
	}

	@Test
	void metBelowAndAboveShareTheRangeOut() {
		Rule flat = rule("flat_battery");
		assertEquals(List.of("met", "below", "above"), labels(flat));
		assertEquals(IndexSet.range(124, 130), values(flat, 0)); // 12.4 V .. 13.0 V in steps of 0.1 V from 0
		assertEquals(IndexSet.range(0, 123), values(flat, 1));
		assertEquals(IndexSet.range(131, 180), values(flat, 2));
		assertEquals(List.of(true, false, false), flat.outcomes().stream().map(Outcome::listed).toList());
	}

	@Test
	void anExpectedLimitHasOneSide() {
		Rule ground = rule("starter_ground");
		assertEquals(IndexSet.range(0, 20), values(ground, 0)); // at most 0.2 V in steps of 0.01 V
		assertEquals(IndexSet.range(21, 500), values(ground, 1));
	}

	@Test
	void belowAndAboveLieBeyondAllExpectedBands() {
		RuleBase rules = with("""
				rule r {
				  run rest_voltage
				  expect 9 V .. 10 V, 12 V .. 13 V, above 16 V
				  met : proves nothing
				  below : suspects battery.discharged
				  otherwise : suspects battery.open_cell
				}
				""");
		Domain domain = rules.test("rest_voltage").orElseThrow().domain();
		List<Outcome> outcomes = rules.rule("r").orElseThrow().outcomes();
		assertEquals(IndexSet.range(90, 100).union(IndexSet.range(120, 130)).union(IndexSet.range(161, 180)),
				outcomes.get(0).values().orElseThrow().in(domain));
		assertEquals(IndexSet.range(0, 89), outcomes.get(1).values().orElseThrow().in(domain));
		assertEquals(IndexSet.range(101, 119).union(IndexSet.range(131, 160)),
				outcomes.get(2).values().orElseThrow().in(domain));
	}

	@Test
	void otherwiseIsWhatNoOtherOutcomeNames() {
		Rule cell = rule("charge_or_cell");
		assertEquals(List.of("on at_least 9.6 V", "on below 6000 mV", "otherwise"), labels(cell));
		assertEquals(IndexSet.range(96, 180), values(cell, 0));
		assertEquals(IndexSet.range(0, 59), values(cell, 1));
		assertEquals(IndexSet.range(60, 95), values(cell, 2));
		assertEquals(List.of(true, true, false), cell.outcomes().stream().map(Outcome::listed).toList());
		assertEquals(IndexSet.range(1, 1), values(rule("lamp"), 1)); // not lit, so dark
	}

	@Test
	void limitsAreInTheUnitOfTheTest() {
		Rule charging = rule("charging");
		assertEquals(IndexSet.range(135, 148), values(charging, 0)); // 13.5 V .. 14.8 V, read in mV in steps of 100 mV
	}

	@Test
	void conclusionsStandInTheOrderOfTheText() {
		List<Conclusion> met = rule("starter_ground").outcomes().get(0).conclusions();
		assertEquals(2, met.size());
		Conclusion.OnFault first = assertInstanceOf(Conclusion.OnFault.class, met.get(0));
		assertEquals(VerdictKind.CLEARED, first.verdict());
		assertEquals("starter.ground", first.fault());
		assertInstanceOf(Conclusion.Nothing.class, rule("lamp").outcomes().get(0).conclusions().get(0));
		Conclusion.Refers end = assertInstanceOf(Conclusion.Refers.class,
				rule("starter_end").outcomes().get(0).conclusions().get(0));
		assertEquals("an electrician for starters", end.toWhom());
		assertEquals(List.of("then"), labels(rule("starter_end")));
		assertEquals(Optional.empty(), rule("starter_end").outcomes().get(0).values());
	}

	@Test
	void scopesNameFamiliesExceptionsAndTraits() {
		assertEquals(List.of("tarn", "heron"), rule("flat_battery").scope().families());
		assertEquals(List.of(), rule("charge_or_cell").scope().families());
		assertEquals(List.of("heron"), rule("charge_or_cell").scope().except());
		Condition.And where = assertInstanceOf(Condition.And.class, rule("starter_ground").scope().where().orElseThrow());
		Condition.TraitIs engine = assertInstanceOf(Condition.TraitIs.class, where.parts().get(0));
		assertEquals(IndexSet.range(0, 1), engine.values().in(SAMPLE.traitsOf("tarn").get("engine").domain()));
		Condition.TraitIs built = assertInstanceOf(Condition.TraitIs.class, where.parts().get(1));
		assertEquals(IndexSet.range(1, 6), built.values().in(SAMPLE.traitsOf("tarn").get("built").domain()));
		assertInstanceOf(Condition.Not.class, rule("flat_battery").scope().where().orElseThrow());
	}

	@Test
	void severalForClausesAreJoined() {
		Rule rule = with("""
				rule r {
				  for tarn where engine is electric
				  for heron where built above 2020
				  then proves nothing
				}
				""").rule("r").orElseThrow();
		assertEquals(List.of("tarn", "heron"), rule.scope().families());
		assertEquals(2, assertInstanceOf(Condition.And.class, rule.scope().where().orElseThrow()).parts().size());
	}

	@Test
	void commasBindLikeAnd() {
		Rule rule = with("rule r { given (no_crank, slow_crank absent) or (lift_dead and bcm silent) then proves nothing }")
				.rule("r").orElseThrow();
		Condition.Or or = assertInstanceOf(Condition.Or.class, rule.given().get(0));
		assertEquals(2, or.parts().size());
		Condition.And left = assertInstanceOf(Condition.And.class, or.parts().get(0));
		assertEquals(false, assertInstanceOf(Condition.SignIs.class, left.parts().get(1)).present());
		Condition.And right = assertInstanceOf(Condition.And.class, or.parts().get(1));
		assertEquals(false, assertInstanceOf(Condition.ModuleIs.class, right.parts().get(1)).answers());
	}

	@Test
	void everyPredicateHasItsCondition() {
		Rule rule = with("""
				rule r {
				  given low_supply, low_supply missing, low_supply not present
				  given battery.discharged not cleared
				  given no_crank unexplained, no_crank not unexplained
				  given charge_lamp is not lit, rest_voltage is any of (9 V .. 10 V, 12 V)
				  then proves nothing
				}
				""").rule("r").orElseThrow();
		List<Condition> codes = ((Condition.And) rule.given().get(0)).parts();
		assertEquals(CodeReading.PRESENT, ((Condition.CodeIs) codes.get(0)).reading());
		assertEquals(CodeReading.MISSING, ((Condition.CodeIs) codes.get(1)).reading());
		assertEquals(CodeReading.PRESENT, ((Condition.CodeIs) ((Condition.Not) codes.get(2)).part()).reading());
		Condition.VerdictIs verdict = (Condition.VerdictIs) rule.given().get(1);
		assertEquals(VerdictKind.CLEARED, verdict.verdict());
		assertEquals(false, verdict.stands());
		List<Condition> signs = ((Condition.And) rule.given().get(2)).parts();
		assertInstanceOf(Condition.Unexplained.class, signs.get(0));
		assertInstanceOf(Condition.Unexplained.class, ((Condition.Not) signs.get(1)).part());
		List<Condition> tests = ((Condition.And) rule.given().get(3)).parts();
		assertInstanceOf(Condition.TestIs.class, ((Condition.Not) tests.get(0)).part());
		assertEquals(IndexSet.range(90, 100).union(IndexSet.range(120, 120)), ((Condition.TestIs) tests.get(1)).values()
				.in(SAMPLE.test("rest_voltage").orElseThrow().domain()));
	}

	@Test
	void neverIsALawWhoseConsequenceCannotBe() {
		Law law = SAMPLE.laws().get(1);
		assertEquals(List.of("tarn", "heron"), law.families());
		assertEquals(2, assertInstanceOf(Condition.And.class, law.when()).parts().size());
		assertEquals(List.of(), assertInstanceOf(Condition.Or.class, law.then()).parts());
	}

	@Test
	void codesKeepTheFormOfTheirStandard() {
		assertEquals(new Dtc("U3003", "16"), SAMPLE.code("low_supply").orElseThrow().text());
		assertEquals(new J1939Code(168, 4), SAMPLE.code("torque_limit").orElseThrow().text());
		assertEquals(new RawCode("7B12"), SAMPLE.code("tilt_range").orElseThrow().text());
	}

	@Test
	void testsAndRepairsCarryTheirWork() {
		org.baywright.model.Test supply = SAMPLE.test("lift_supply").orElseThrow();
		assertEquals(new BigDecimal("10"), supply.takes());
		assertEquals(List.of("A lamp of 21 W as a load"), supply.fits());
		assertEquals(List.of("ignition on", "lift down"), supply.states().stream().map(Object::toString).toList());
		assertEquals(Skill.TRAINED, SAMPLE.test("starter_drop").orElseThrow().skill());
		assertEquals(List.of("rest_voltage"), SAMPLE.test("cranking_voltage").orElseThrow().disturbs());
		var recharge = SAMPLE.repair("recharge").orElseThrow();
		assertEquals(0, new BigDecimal(540).compareTo(recharge.takes())); // 9 h
		assertEquals(List.of("Charge at 10 A for 8 h.", "Load-test."), recharge.steps());
		assertEquals(List.of(VerifyStep.Clear.class, VerifyStep.Cycle.class, VerifyStep.Read.class, VerifyStep.Expect.class,
				VerifyStep.Repeat.class), recharge.verify().stream().map(Object::getClass).toList());
		var battery = SAMPLE.repair("new_battery").orElseThrow();
		assertEquals(new BigDecimal("120"), battery.cost());
		assertInstanceOf(VerifyStep.RepeatWhatConfirmed.class, battery.verify().get(1));
	}

	@Test
	void rulesSayWhereTheyComeFrom() {
		var provenance = rule("charge_or_cell").provenance();
		assertEquals(Optional.of("R. Falk"), provenance.author());
		assertEquals(Optional.of(LocalDate.of(2026, 3, 2)), provenance.date());
		assertEquals(new Source(Source.Kind.PUBLISHED, "Workshop handbook, 4th edition"), provenance.source());
		assertEquals(Source.Kind.JOBS, rule("starter_end").provenance().source().kind());
	}

	@Test
	void jobsAreExamples() {
		var job = SAMPLE.cases().get(0);
		assertEquals("tarn", job.family());
		assertEquals(2, job.traits().size());
		assertEquals(new BigDecimal("7.2"), ((Reading.Measured) job.found().get(2)).value()); // 7200 mV, read in V
		assertEquals(CodeReading.ABSENT, ((Reading.CodeRead) job.found().get(4)).reading());
		assertEquals(List.of("battery.discharged"), job.causes());
		assertTrue(SAMPLE.cases().get(2).referred());
	}

	@Test
	void whatIsNotWholeIsLeftOutAndNamed() {
		RuleProject project = Samples.tarnInMemory();
		project.update("zz.bay", """
				test odd { takes 1 min }
				rule uses_odd { run odd on x : proves nothing }
				rule right { given no_crank then proves nothing }
				rule wrong { given no_crnk then proves nothing }
				rule torn { given no_crank then proves nothing
				""");
		Snapshot snapshot = project.snapshot();
		assertEquals(List.of("test odd", "rule uses_odd", "rule wrong", "rule torn"), snapshot.dropped());
		assertTrue(snapshot.rules().rule("right").isPresent());
		assertEquals(List.of("test-neither", "unknown-name", "syntax"), snapshot.problems().stream()
				.filter(problem -> problem.severity() == Severity.ERROR).map(problem -> problem.id()).toList());
	}

	@Test
	void theWorkshopAndTheTimesOfStates() {
		RuleBase base = with("""
				state network : awake, asleep "Asleep" takes 0.5 h
				module roof
				workshop { scan each takes 90 s needs scan_tool lacks clamp hour 72.50 skill licensed }
				sign workshop sign hour sign each sign all sign lacks test scan { results all, each, hour }
				""");
		assertEquals(0, new BigDecimal(30).compareTo(base.state("network").orElseThrow().minutesTo("asleep").orElseThrow()));
		assertEquals(Optional.empty(), base.state("network").orElseThrow().minutesTo("awake"));
		Workshop workshop = base.workshop().orElseThrow();
		assertEquals("", workshop.title());
		assertEquals(Optional.of(new BigDecimal("72.50")), workshop.hour());
		assertEquals(Optional.empty(), workshop.all());
		assertEquals(List.of("clamp"), workshop.lacks());
		assertEquals(Optional.of(Skill.LICENSED), workshop.skill());
		Workshop.Scan scan = base.scan(base.module("roof").orElseThrow());
		assertEquals(List.of("scan_tool"), scan.tools());
		assertEquals(0, new BigDecimal("1.5").compareTo(scan.takes()));
		assertEquals(Optional.empty(), SAMPLE.workshop());
	}
}
