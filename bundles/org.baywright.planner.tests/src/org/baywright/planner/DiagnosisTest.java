package org.baywright.planner;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.Map;
import java.util.Optional;

import org.baywright.analysis.Consultation;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.analysis.run.Consultations;
import org.baywright.language.workspace.RuleProject;
import org.baywright.analysis.run.Prospects;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@link Diagnosis}: small rule bases whose plans are worked out by hand. */
class DiagnosisTest {

	private static final double CLOSE = 1e-9;

	private static final String LAMP = """
			family tarn
			sign dead
			sign humming
			part lamp { fault burnt seen 6 fault wire seen 3 fault fuse seen 1 }
			part fan { fault stuck seen 40 }
			test at_lamp { results none, full takes 4 min }
			test look { results torn, whole takes 1 min }
			test fuse_test { results blown, good takes 10 min }
			test turn_fan { results free, stuck takes 1 min }
			rule a { given dead run at_lamp on full : confirms lamp.burnt on none : clears lamp.burnt }
			rule b { given dead run look on torn : confirms lamp.wire on whole : clears lamp.wire }
			rule c { given dead run fuse_test on blown : confirms lamp.fuse on good : clears lamp.fuse }
			rule d { given humming run turn_fan on stuck : confirms fan.stuck on free : clears fan.stuck }
			rule e { given dead unexplained then refers "a specialist" }
			""";

	private static RuleBase read(String text) {
		RuleProject project = RuleProject.inMemory("plans");
		project.update("plans.bay", text);
		assertEquals(List.of(), project.snapshot().problems().stream().filter(problem -> problem.severity() == Severity.ERROR).map(problem -> problem.message()).toList());
		return project.snapshot().rules();
	}

	private static Reading there(String sign) {
		return new Reading.SignSeen(sign, true, Span.NONE);
	}

	private static Diagnosis begin(String text, Reading... readings) {
		return Diagnosis.of(read(text), "tarn", List.of(readings)).orElseThrow();
	}

	private static Search.Found solve(Diagnosis diagnosis) {
		Search.Found found = Search.from(diagnosis.begin(), 100_000, () -> false);
		assertTrue(found.isBest());
		return found;
	}

	private static List<String> names(Diagnosis.At at) {
		return at.steps().stream().map(Position.Step::name).toList();
	}

	@Test
	void onlyWhatTheComplaintAsksForIsACauseAndAStep() {
		Diagnosis diagnosis = begin(LAMP, there("dead"));
		assertEquals(List.of("lamp.burnt", "lamp.wire", "lamp.fuse"), diagnosis.causes());
		assertEquals(List.of("at_lamp", "fuse_test", "look"), names(diagnosis.begin()));
	}

	/** By that bound steps are left aside unseen: at no position of these rules does a step tell more. */
	@Test
	void noStepTellsMoreThanItMay() {
		int tighter = 0;
		for (String text : List.of(LAMP, LIMITS)) {
			Set<Object> met = new HashSet<>();
			Deque<Position> open = new ArrayDeque<>(List.of(begin(text, there("dead")).begin()));
			while (!open.isEmpty()) {
				Position position = open.remove();
				double before = position.uncertainty();
				for (Position.Step step : met.add(position.key()) ? position.steps() : List.<Position.Step>of()) {
					double most = step.tellsAtMost(before);
					assertTrue(before - step.uncertaintyAfter() <= most + CLOSE, step.name() + " tells " + (before - step.uncertaintyAfter()) + " of " + most);
					tighter += most < before - CLOSE ? 1 : 0;
					for (int outcome = 0; outcome < step.outcomes(); outcome++) {
						if (step.probability(outcome) > 0) {
							open.add(step.after(outcome));
						}
					}
				}
			}
		}
		assertTrue(tighter > 5, "it leaves something aside: " + tighter);
	}

	/** Seven, four, two and one of fourteen: what was seen, each with the one of the prior, and something else. */
	@Test
	void whatWasSeenMoreOftenIsLikelier() {
		double[] prior = begin(LAMP, there("dead")).begin().likelihoods();
		assertEquals(7 / 14.0, prior[0], CLOSE);
		assertEquals(4 / 14.0, prior[1], CLOSE);
		assertEquals(2 / 14.0, prior[2], CLOSE);
		assertEquals(1 / 14.0, prior[3], CLOSE);
	}

	/** A sign that only vehicles with two lamps have says that there are two; a law that the other sign is absent. */
	@Test
	void whatFollowsIsNoStepThatCosts() {
		String text = """
				family tarn { trait lamps : one, two }
				sign second "Second lamp dark" for tarn where lamps is two
				sign all "All lamps dark"
				law "Either" : never second and all
				part lamp "Lamp" { fault burnt "Burnt" fault wire "Wire" }
				test look "Look" { results black, clear takes 4 min }
				test turn "Turn" { results free, stuck takes 2 min }
				rule a { for tarn where lamps is two given second run look on black : confirms lamp.burnt on clear : clears lamp.burnt }
				rule b { given second, all absent run turn on stuck : confirms lamp.wire on free : clears lamp.wire }
				""";
		Diagnosis diagnosis = begin(text, there("second"));
		List<String> followed = new ArrayList<>();
		List<Reading> readings = new ArrayList<>(List.of(there("second")));
		for (Optional<Reading> follows = diagnosis.follows(); follows.isPresent(); follows = diagnosis.follows()) {
			followed.add(follows.get().subject());
			readings.add(follows.get());
			diagnosis = begin(text, readings.toArray(Reading[]::new));
		}
		assertEquals(List.of("all", "lamps"), followed.stream().sorted().toList());
		assertEquals(List.of("look", "turn"), names(diagnosis.begin()).stream().sorted().toList());
		assertEquals(solve(diagnosis).cost(), solve(begin(text, there("second"))).cost(), CLOSE);
		assertEquals(Optional.empty(), begin(text, there("all")).follows().filter(reading -> reading.subject().equals("lamps")), "both have them");
	}

	/** Vehicles of the family are built with one of its values only. */
	@Test
	void whatAFamilyHasOneValueOfIsNotLookedUp() {
		String text = """
				family tarn { trait lamps : one }
				sign dark "Lamp dark"
				part lamp "Lamp" { fault burnt "Burnt" }
				test look "Look" { results black, clear takes 4 min }
				rule a { for tarn where lamps is one given dark run look on black : confirms lamp.burnt on clear : clears lamp.burnt }
				""";
		Reading follows = begin(text, there("dark")).follows().orElseThrow();
		assertEquals("lamps", follows.subject());
		assertEquals(List.of("look"), names(begin(text, there("dark"), follows).begin()));
	}

	/** A ninth of seven, four, two and one. */
	@Test
	void whatWasMendedInVainIsLessLikely() {
		RuleBase base = read(LAMP);
		double[] prior = Diagnosis.of(base, Prospects.of(base, "tarn"), List.of(there("dead")), new Diagnosis.Before(Map.of(), false, Set.of("lamp.burnt")))
				.orElseThrow().begin().likelihoods();
		double sum = 7 / 9.0 + 4 + 2 + 1;
		assertEquals(7 / 9.0 / sum, prior[0], CLOSE);
		assertEquals(4 / sum, prior[1], CLOSE);
	}

	/** Each test shows only its own fault, so the order is by likelihood over cost (the ratio rule of the operations research literature). */
	@Test
	void oneFaultTestsGoByLikelihoodOverCost() {
		Search.Found found = solve(begin(LAMP, there("dead")));
		assertEquals(1 + 10 / 14.0 * 4 + 3 / 14.0 * 10, found.cost(), CLOSE);
		List<String> order = new ArrayList<>();
		for (Plan next = found.plan(); next.step().isPresent();) {
			order.add(next.step().get().name());
			next = next.branches().stream().map(Plan.Branch::plan).filter(plan -> plan.step().isPresent()).findFirst().orElse(next.branches().get(0).plan());
		}
		assertEquals(List.of("look", "at_lamp", "fuse_test"), order);
		assertEquals(15, found.plan().worstCost(), CLOSE);
	}

	/** A sign that is found on the way opens a dear test: no way to the end costs more than all together. */
	@Test
	void allTogetherIsMoreThanAnyWay() {
		Diagnosis diagnosis = begin("""
				family tarn
				sign dead
				sign smell
				part lamp { fault burnt }
				test look { results torn, whole takes 2 min }
				test deep { results bad, good takes 30 min }
				rule a { given dead, smell then suspects lamp.burnt }
				rule b { given smell run deep on bad : confirms lamp.burnt on good : clears lamp.burnt }
				rule c { given dead run look on torn : confirms lamp.burnt on whole : proves nothing }
				""", there("dead"));
		assertEquals(List.of("smell", "look"), names(diagnosis.begin()));
		double worst = solve(diagnosis).plan().worstCost();
		assertEquals(33, worst, CLOSE);
		assertTrue(worst <= diagnosis.begin().most());
	}

	/** A sign that is not there takes another one out of what is asked for, and changes nothing else. */
	@Test
	void whatIsNoLongerAskedForLeadsNowhereElse() {
		Diagnosis diagnosis = begin("""
				family tarn
				sign dead
				sign hum
				sign smell
				part lamp { fault burnt fault wire }
				test look { results torn, whole takes 2 min }
				test deep { results bad, good takes 30 min }
				rule a { given dead, smell, hum then suspects lamp.burnt }
				rule b { given dead run deep on bad : confirms lamp.burnt on good : clears lamp.burnt }
				rule c { given dead run look on torn : confirms lamp.wire on whole : clears lamp.wire }
				""", there("dead"));
		assertEquals(List.of("hum", "smell", "deep", "look"), names(diagnosis.begin()));
		Position.Step hum = diagnosis.begin().steps().get(0);
		assertEquals(List.of("deep", "look"), names((Diagnosis.At) hum.after(1)));
		// neither sign is worth the minute: a third each, by 2 minutes and then 30 for what is left
		assertEquals(2 + 2 / 3.0 * 30, solve(diagnosis).cost(), CLOSE);
	}

	@Test
	void whatIsClearedIsNoCauseAndWhatIsConfirmedEndsIt() {
		Diagnosis cleared = begin(LAMP, there("dead"), new Reading.Named("at_lamp", "none", Span.NONE));
		assertEquals(List.of("lamp.burnt", "lamp.wire", "lamp.fuse"), cleared.causes());
		assertEquals(0, cleared.begin().likelihoods()[0]);
		assertTrue(cleared.begin().likelihoods()[1] > 0);
		Diagnosis settled = begin(LAMP, there("dead"), new Reading.Named("look", "torn", Span.NONE));
		assertTrue(settled.begin().isSettled());
		assertEquals(List.of(), names(settled.begin()));
		// that a specialist is asked when nothing explains it is no end as long as something may
		assertFalse(begin(LAMP, there("dead")).begin().isSettled());
	}

	@Test
	void findingsThatCannotBeHaveNoPlan() {
		String text = LAMP + "law \"A torn wire is dead\": when look is torn then at_lamp is none\n";
		assertEquals(Optional.empty(), Diagnosis.of(read(text), "tarn",
				List.of(new Reading.Named("look", "torn", Span.NONE), new Reading.Named("at_lamp", "full", Span.NONE))));
		Diagnosis.At at = begin(text, there("dead"), new Reading.Named("at_lamp", "full", Span.NONE)).begin();
		assertTrue(at.isSettled());
	}

	@Test
	void whatALawForbidsIsNotExpected() {
		Diagnosis.At at = begin("""
				family tarn
				sign dead
				part lamp { fault burnt fault wire }
				test supply { results none, full }
				test glow { results dark, lit }
				law "No supply, no light": when supply is none then glow is dark
				rule a { given dead run supply on full : clears lamp.wire on none : suspects lamp.wire }
				rule b { given dead run glow on lit : confirms lamp.burnt on dark : suspects lamp.wire }
				rule c { given dead, lamp.wire suspected run glow on dark : confirms lamp.wire on lit : proves nothing }
				""", there("dead")).begin();
		Position.Step supply = at.steps().stream().filter(step -> step.name().equals("supply")).findFirst().orElseThrow();
		Diagnosis.At none = (Diagnosis.At) supply.after(0);
		Diagnosis.Finding glow = (Diagnosis.Finding) none.steps().stream().filter(step -> step.name().equals("glow")).findFirst().orElseThrow();
		assertEquals(1, glow.outcomes());
		assertEquals("dark", ((Reading.Named) glow.reading(0)).value());
	}

	private static final String SCAN = """
			family tarn
			sign dead
			part box { fault feed seen 4 fault board seen 4 }
			module unit "Unit" takes 6 min
			code low on unit = raw "A1"
			code inside on unit = raw "A2"
			rule a { given dead, low present then confirms box.feed }
			rule b { given dead, inside present then confirms box.board }
			rule c { given dead, low absent then clears box.feed }
			""";

	/** Who reads a module has all of its codes: the second costs nothing. */
	@Test
	void oneReadingOfAModuleHasAllItsCodes() {
		Search.Found found = solve(begin(SCAN, there("dead")));
		assertEquals(6, found.plan().worstCost(), CLOSE);
	}

	/** The author says when a test is worth doing: after what the rule is given, and once the suspicion is there. */
	@Test
	void aTestWaitsForWhatItsRuleIsGiven() {
		String text = """
				family tarn
				sign dead
				part lamp { fault burnt fault wire }
				test look { results torn, whole takes 4 min }
				test pull { results gives, holds takes 1 min }
				test bath { results off, fine takes 1 min }
				rule a { given dead run look on torn : suspects lamp.wire on whole : proves nothing }
				rule b { given lamp.wire suspected run pull on gives : confirms lamp.wire on holds : clears lamp.wire }
				rule c { given dead, look is whole run bath on off : confirms lamp.burnt on fine : clears lamp.burnt }
				""";
		assertEquals(List.of("look"), names(begin(text, there("dead")).begin()));
		assertEquals(List.of("pull"), names(begin(text, there("dead"), new Reading.Named("look", "torn", Span.NONE)).begin()));
		assertEquals(List.of("bath"), names(begin(text, there("dead"), new Reading.Named("look", "whole", Span.NONE)).begin()));
	}

	/** In the first hour somebody works on another vehicle; after it this one stands in the way. */
	@ParameterizedTest
	@CsvSource({ "40 min, 6", "1 h, 7", "20 h, 235" })
	void waitingCostsLessThanWorkAndMoreWhenItLasts(String wait, double cost) {
		String text = """
				family tarn
				sign dead
				part lamp { fault burnt }
				test rest { results off, fine wait %s takes 4 min }
				rule a { given dead run rest on off : confirms lamp.burnt on fine : clears lamp.burnt }
				""".formatted(wait);
		assertEquals(cost, begin(text, there("dead")).begin().steps().get(0).cost(), 1e-9);
	}

	/** A dangerous test that two rules are given, one of them only its result, waits all the same for what makes it safe. */
	@Test
	void whatMakesATestSafeComesFirst() {
		String text = """
				family tarn
				sign dead
				part cable { fault worn fault wet }
				test voltage_gone { results gone, there takes 40 min }
				test isolation { results low, fine takes 1 min }
				test unplugged { results recovers, stays takes 1 min }
				rule a { given dead, voltage_gone is gone run isolation on low : suspects cable.worn on fine : clears cable.worn }
				rule b { given dead, voltage_gone is gone, isolation is low run unplugged on recovers : confirms cable.wet on stays : clears cable.wet }
				""";
		assertEquals(List.of("voltage_gone"), names(begin(text, there("dead")).begin()));
		assertEquals(List.of("isolation"), names(begin(text, there("dead"), new Reading.Named("voltage_gone", "gone", Span.NONE)).begin()));
	}

	/** The state that a test leaves the vehicle in is worth the minutes of getting there. */
	@Test
	void goingBackAndForthBetweenStatesCosts() {
		String text = """
				family tarn
				state network : awake, asleep takes 20 min
				sign dead
				part lamp { fault burnt fault wire fault fuse }
				test one { results bad, good in network asleep takes 1 min }
				test two { results bad, good in network awake takes 1 min }
				test three { results bad, good in network asleep takes 1 min }
				rule a { given dead run one on bad : confirms lamp.burnt on good : clears lamp.burnt }
				rule b { given dead run two on bad : confirms lamp.wire on good : clears lamp.wire }
				rule c { given dead run three on bad : confirms lamp.fuse on good : clears lamp.fuse }
				""";
		assertEquals(2 + 20 + 1, solve(begin(text, there("dead"))).plan().worstCost(), CLOSE, "once asleep, both tests that want it are done");
	}

	/** What no tool is at hand for is not proposed. */
	@Test
	void whatIsOutOfReachIsNoStep() {
		Diagnosis.At at = begin(LAMP.replace("test fuse_test {", "tool pliers test fuse_test { needs pliers") + "workshop { lacks pliers }\n", there("dead")).begin();
		assertEquals(List.of("at_lamp", "look"), names(at));
		assertEquals(List.of("fuse_test"), at.beyond().stream().map(Variable::name).toList());
	}

	/** All modules at once cost less than one by one, and then nothing more. */
	@Test
	void oneScanReadsAllModules() {
		String text = """
				family tarn
				sign dead
				module ecm takes 6 min
				module bcm takes 6 min
				code one on ecm = raw "1"
				code two on bcm = raw "2"
				part lamp { fault burnt fault wire }
				workshop { scan all takes 7 min }
				rule a { given dead, one present then confirms lamp.burnt }
				rule b { given dead, two present then confirms lamp.wire }
				""";
		assertEquals(7, solve(begin(text, there("dead"))).plan().worstCost(), CLOSE);
		assertTrue(solve(begin(text, there("dead"))).plan().step().orElseThrow() instanceof Diagnosis.Scan);
	}

	/** No bound is above what the best plan costs, on vehicles on which some things are found already. */
	@Test
	void theBoundIsNoMoreThanTheBestPlan() {
		for (String text : List.of(LAMP, SCAN)) {
			Position.Step first = begin(text, there("dead")).begin().steps().get(0);
			for (int outcome = 0; outcome < first.outcomes(); outcome++) {
				Position after = first.after(outcome);
				Search.Found best = Search.from(after, 100_000, () -> false);
				assertTrue(best.isBest());
				assertTrue(after.bound() <= best.cost() + CLOSE, first.name() + " " + outcome + ": " + after.bound() + " > " + best.cost());
				assertTrue(best.plan().worstCost() <= after.most() + CLOSE);
			}
		}
	}

	@Test
	void aModuleThatSaysNothingTakesWhatTheWorkshopSays() {
		String bare = SCAN.replace(" takes 6 min", "");
		assertEquals(3, solve(begin(bare, there("dead"))).plan().worstCost(), CLOSE);
		assertEquals(9, solve(begin(bare + "workshop { scan each takes 9 min }\n", there("dead"))).plan().worstCost(), CLOSE);
	}

	@Test
	void aSilentModuleTellsNothingOfItsCodes() {
		Diagnosis.Finding code = (Diagnosis.Finding) begin(SCAN, there("dead")).begin().steps().stream().filter(step -> step.name().equals("low")).findFirst()
				.orElseThrow();
		assertEquals(3, code.outcomes());
		Diagnosis.At silent = (Diagnosis.At) code.after(Variable.UNREAD);
		assertEquals(List.of(), silent.steps());
		assertFalse(silent.isSettled());
		assertTrue(code.probability(Variable.UNREAD) < 0.05, () -> "silence is as likely as " + code.probability(Variable.UNREAD));
	}

	/** What finished jobs found under a cause makes it likelier there. */
	@Test
	void finishedJobsSharpenWhatIsExpected() {
		String text = """
				family tarn
				sign dead
				part lamp { fault burnt fault wire }
				test glow { results dark, dim }
				rule a { given dead run glow on dim : suspects lamp.wire on dark : suspects lamp.wire }
				rule b { given dead, lamp.wire suspected run look on torn : confirms lamp.wire on whole : clears lamp.wire }
				rule c { given dead run look on whole : suspects lamp.burnt on torn : proves nothing }
				rule d { given dead, lamp.burnt suspected, glow is dark then confirms lamp.burnt }
				test look { results torn, whole }
				""";
		String job = "job \"One\" { on tarn found dead, glow dim was lamp.wire }\n";
		assertEquals(.5, dim(text), CLOSE);
		// each of the three causes one in three; under the wire both results counted 3, as both make it suspected, and dim two jobs more
		assertEquals((5 / 8.0 + .5 + .5) / 3, dim(text + job + job.replace("One", "Two")), CLOSE);
	}

	private static double dim(String text) {
		Position.Step glow = begin(text, there("dead")).begin().steps().stream().filter(step -> step.name().equals("glow")).findFirst().orElseThrow();
		return glow.probability(1);
	}

	/** What a vehicle is like says at what limit its rule confirms: the same rules wait for the same test on both and yet are not alike. */
	private static final String LIMITS = """
			family tarn { trait system : low, high }
			sign dead
			sign dim for tarn where system is low
			part lamp { fault burnt }
			test leak { measures V 0 .. 100 step 1 }
			rule a { for tarn where system is low given dead or dim run leak on at_least 42 V : clears lamp.burnt on below 42 V : confirms lamp.burnt }
			rule b { for tarn where system is high given dead or dim run leak on at_least 82 V : clears lamp.burnt on below 82 V : confirms lamp.burnt }
			""";

	/** A sign that is asked for after the test lets a rule look at its value more closely. */
	private static final String LATER = """
			family tarn
			sign dead
			sign hum
			part lamp { fault burnt fault wire }
			test rest { measures V 0 .. 15 step 0.1 }
			test look { results torn, whole }
			rule a { given dead run rest on below 12.4 V : suspects lamp.burnt on at_least 12.4 V : clears lamp.burnt }
			rule b { given lamp.burnt suspected, hum run look on torn : confirms lamp.wire on whole : clears lamp.wire }
			rule c { given hum run rest on below 12.0 V : confirms lamp.burnt on at_least 12.0 V : proves nothing }
			""";

	/** A sign is seen on no vehicle for which it makes no sense. */
	@Test
	void whatIsFoundMakesSenseOnTheVehicle() {
		Position.Step system = begin(LIMITS, there("dim")).begin().steps().get(0);
		assertEquals("system", system.name());
		assertEquals(1, system.outcomes());
		assertEquals(2, begin(LIMITS, there("dead")).begin().steps().get(0).outcomes());
	}

	/** At every end of a plan stands what a consultation derives from the findings on the way there. */
	@Test
	void everyEndSaysWhatTheRulesDerive() {
		for (String text : List.of(LAMP, SCAN, LIMITS, LATER)) {
			Diagnosis diagnosis = begin(text, there("dead"));
			Plan plan = solve(diagnosis).plan();
			Consultation consultation = Consultations.of(read(text), "tarn");
			assertTrue(compare(plan, List.of(there("dead")), consultation) > 2);
		}
	}

	private static int compare(Plan plan, List<Reading> readings, Consultation consultation) {
		if (plan.step().isEmpty()) {
			assertFalse(plan.isCut());
			assertEquals(consultation.advise(readings, Listener.NONE).verdicts().stream().map(Consultation.Derived::verdict).toList(),
					((Diagnosis.At) plan.position()).verdicts(), () -> "after " + readings);
			return 1;
		}
		int ends = 0;
		for (Plan.Branch branch : plan.branches()) {
			List<Reading> more = new ArrayList<>(readings);
			more.add(((Diagnosis.Finding) plan.step().get()).reading(branch.outcome()));
			ends += compare(branch.plan(), more, consultation);
		}
		return ends;
	}
}
