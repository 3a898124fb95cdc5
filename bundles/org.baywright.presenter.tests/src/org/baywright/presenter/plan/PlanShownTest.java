package org.baywright.presenter.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;

import javax.xml.parsers.DocumentBuilderFactory;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.model.Problem;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.PackWriter;
import org.baywright.planner.Diagnosis;
import org.baywright.planner.Proposals;
import org.baywright.presenter.Examples;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Consulting;
import org.baywright.presenter.bench.StepWords;
import org.baywright.presenter.bench.Subject;
import org.baywright.presenter.picture.Edge;
import org.baywright.presenter.picture.LaidOut;
import org.baywright.presenter.picture.Layout;
import org.baywright.presenter.picture.Node;
import org.baywright.presenter.picture.Picture;
import org.baywright.presenter.picture.Svg;
import org.baywright.presenter.picture.TextMetrics;
import org.baywright.presenter.picture.Theme;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** {@link PlanShown}: small rules whose plans are worked out by hand, and the example projects. */
class PlanShownTest {

	private static final double CLOSE = 1e-9;

	/** Each test shows its own fault; seven, four, two and one of fourteen, so look, then at_lamp, then fuse_test. */
	private static final String LAMP = """
			family tarn "Tarn"
			sign dead "Lamp is dark"
			hazard glass "Hot glass" { caution "Let it cool." }
			part lamp "Lamp" { fault burnt "Burnt out" seen 6 fault wire "Wire torn" seen 3 fault fuse "Fuse blown" seen 1 }
			test at_lamp "Voltage at the lamp" { measures V 0 .. 15 step 0.1 takes 4 min caution glass }
			test look "Look at the wire" { results torn "torn", whole "whole" takes 1 min }
			test fuse_test "Fuse" { results blown, good takes 10 min }
			rule a { given dead run at_lamp on at_least 12.0 V : confirms lamp.burnt on below 12.0 V : clears lamp.burnt }
			rule b { given dead run look on torn : confirms lamp.wire on whole : clears lamp.wire }
			rule c { given dead run fuse_test on blown : confirms lamp.fuse on good : clears lamp.fuse }
			""";

	private static RuleBase lamp() {
		return rules(LAMP);
	}

	private static RuleBase rules(String text) {
		ProjectState state = Examples.text(text.split("\n"));
		assertEquals(List.of(), state.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).map(Problem::message).toList());
		return state.rules();
	}

	private static PlanShown plan(RuleBase base, String family, String sign) {
		return PlanShown.of(base, family, List.of(sign), () -> false);
	}

	@Test
	void theFiguresOfAPlan() {
		PlanShown plan = plan(lamp(), "tarn", "dead");
		assertEquals("Plan for “Lamp is dark” on Tarn", plan.title());
		Figures figures = plan.figures().orElseThrow();
		assertEquals(1 + 10 / 14.0 * 4 + 3 / 14.0 * 10, figures.minutes(), CLOSE);
		assertEquals(15, figures.worstMinutes(), CLOSE);
		assertEquals(figures.minutes(), figures.cost(), CLOSE);
		assertTrue(figures.isBest());
		assertEquals(13 / 14.0, figures.one(), CLOSE);
		assertEquals(1 / 14.0, figures.nothing(), CLOSE);
		assertEquals(List.of("Work: about 6 min to be expected, 15 min at worst.",
				"Time and money together: about 6 to be expected, 15 at worst, in the project’s own money; a minute of work counts like one of it.",
				"No order of steps costs less.", "Of 100 vehicles 93 end with one cause confirmed and 7 end with nothing confirmed."), plan.facts());
		assertEquals(List.of("Hot glass"), plan.cautions().stream().map(caution -> caution.title()).toList());
	}

	@Test
	void theTreeInLines() {
		assertEquals(List.of("1. Look at the wire (1 min)", "1a torn, 29 of 100: Lamp: Wire torn", "1b whole, 71 of 100: 2. Voltage at the lamp (4 min)",
				"2a 11.9 V or less, 21 of 100: 3. Fuse (10 min)", "3a blown, 14 of 100: Lamp: Fuse blown", "3b good, 7 of 100: Nothing confirmed",
				"2b 12.0 V or more, 50 of 100: Lamp: Burnt out"), PlanText.of(plan(lamp(), "tarn", "dead").tree().orElseThrow()).stream().map(PlanText.Line::toString).toList());
	}

	@Test
	void theTreeAsAPicture() {
		Picture picture = plan(lamp(), "tarn", "dead").picture();
		assertEquals(List.of("Step: Look at the wire, 1 min", "Fault confirmed: Lamp: Wire torn, confirmed", "Step: Voltage at the lamp, 4 min", "Step: Fuse, 10 min",
				"Fault confirmed: Lamp: Fuse blown, confirmed", "End: Nothing confirmed", "Fault confirmed: Lamp: Burnt out, confirmed"), picture.nodes().stream().map(Node::description).toList());
		Edge first = picture.edges().stream().filter(edge -> edge.label().startsWith("torn")).findFirst().orElseThrow();
		assertEquals("torn, 29 of 100", first.label());
		assertEquals(picture.nodes().get(0).id(), first.from());
		assertEquals(picture.nodes().get(1).id(), first.to());
		assertTrue(picture.nodes().get(0).span().line() > 1, "it leads to the text");
	}

	/** A result that one in hundreds of vehicles shows is not followed, and that is said. */
	@Test
	void whatIsSeldomIsLeftOut() {
		PlanShown plan = plan(rules(LAMP.replace("seen 6", "seen 900")), "tarn", "dead");
		Twig tree = plan.tree().orElseThrow();
		assertEquals("Voltage at the lamp", tree.title());
		assertEquals(List.of("12.0 V or more, 99 of 100", "anything else, 1 of 100"), tree.after().stream().map(Twig::leads).toList());
		Twig seldom = tree.after().stream().filter(twig -> twig.kind() != Twig.Kind.CONFIRMED).findFirst().orElseThrow();
		assertEquals(Twig.Kind.MORE, seldom.kind());
		assertEquals("…", seldom.title());
		assertEquals(7 / 908.0, seldom.share(), 1e-3);
		assertEquals("“…”: left out here, as no more than 1 of 100 vehicles come there. The figures count these too.", plan.leftOut());
		assertEquals("", plan(lamp(), "tarn", "dead").leftOut());
	}

	/** Two faults with one test for both: each confirmed by it, so nothing tells them apart. */
	private static final String BOTH = """
			family tarn "Tarn"
			sign dead "Lamp is dark"
			part lamp "Lamp" { fault burnt "Burnt out" seen 5 fault holder "Holder burnt" seen 2 fault wire "Wire torn" }
			test look "Look" { results dark, torn takes 1 min }
			rule a { given dead run look on dark : suspects lamp.burnt, lamp.holder on torn : confirms lamp.wire }
			rule d { given dead run look on dark : clears lamp.wire on torn : proves nothing }
			rule b { given dead, lamp.burnt suspected run deep on yes : confirms lamp.burnt on no : proves nothing }
			rule c { given dead, lamp.holder suspected run deep on yes : confirms lamp.holder on no : proves nothing }
			test deep "Deep" { results yes, no needs pliers }
			tool pliers "Pliers"
			workshop { lacks pliers }
			repair bulb "Bulb" { fixes lamp.burnt takes 10 min }
			repair holder "Holder" { fixes lamp.holder takes 30 min }
			""";

	/** Six and three of eleven, and something else: the bulb comes first, in vain in three of the vehicles that are not torn. */
	@Test
	void whatNoStepSplitsAndWhatItIsWorth() {
		PlanShown plan = plan(rules(BOTH), "tarn", "dead");
		assertEquals(1, plan.groups().size(), plan.facts().toString());
		PlanShown.Undivided group = plan.groups().get(0);
		assertEquals(List.of("Lamp: Burnt out", "Lamp: Holder burnt"), group.faults());
		double saved = 3 / 11.0 * 10 / group.share();
		assertTrue(group.text().endsWith("pays while it costs less than " + Figures.money(saved) + ", or " + StepWords.minutes(saved) + " of work: what is repaired in vain otherwise."), group.text());
		PlanShown without = plan(rules(BOTH.replace("takes 30 min", "")), "tarn", "dead");
		assertTrue(without.groups().get(0).text().endsWith("as not all of them have a repair that says what it takes."), without.facts().toString());
	}

	@Test
	void whatAChangeMoves() {
		PlanShown before = plan(lamp(), "tarn", "dead");
		assertEquals("", plan(lamp(), "tarn", "dead").against(before));
		assertEquals("expected 6 → 5 min, worst 15 → 9 min, cost 6 → 4.7", plan(rules(LAMP.replace("10 min", "4 min")), "tarn", "dead").against(before));
		String dearer = plan(rules(LAMP.replace("takes 1 min", "takes 9 min")), "tarn", "dead").against(before);
		assertTrue(dearer.contains("first step: Look at the wire → Voltage at the lamp"), dearer);
		assertTrue(dearer.startsWith("expected 6 → "), dearer);
		assertEquals("there is no plan any more", plan(rules(LAMP.replaceAll("rule .*\n", "")), "tarn", "dead").against(before));
	}

	@Test
	void whyThereIsNoPlan() {
		assertEquals("Choose a complaint to see the plan for it.", PlanShown.of(lamp(), "tarn", List.of(), () -> false).trouble());
		PlanShown none = plan(rules(LAMP.replaceAll("rule .*\n", "")), "tarn", "dead");
		assertEquals(List.of("Nothing that can be found out would make the rules say more."), none.facts());
		assertEquals(List.of(), none.picture().nodes());
		assertTrue(read(none.sheet()).getDocumentElement().getTextContent().contains("Nothing that can be found out"));
	}

	@Test
	void itStopsWhenAsked() {
		assertThrows(CancellationException.class, () -> PlanShown.of(lamp(), "tarn", List.of("dead"), () -> true));
	}

	private static Document read(String xml) {
		try {
			return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
		} catch (Exception e) {
			throw new AssertionError(xml, e);
		}
	}

	@Test
	void aSmallPlanIsPrintedAsAPictureAndALargeOneAsNumberedSteps() throws PackException {
		Document small = read(plan(rules(BOTH), "tarn", "dead").sheet());
		assertEquals(1, small.getElementsByTagName("svg").getLength());
		assertTrue(small.getDocumentElement().getTextContent().contains("licensed practice come first"));
		String text = read(plan(rules(BOTH.replace("workshop { lacks pliers }", "").replace("needs pliers", "needs pliers skill trained fits \"A lamp\"")), "tarn", "dead").sheet()).getDocumentElement().getTextContent();
		assertTrue(text.contains("A lamp, Pliers") && text.contains("“Deep”: somebody trained for it"), text);
		assertTrue(text.contains("Date  Vehicle  Name"), text);
		PlanShown plan = plan(Examples.checked("light-van").rules(), "bord_s", "slow_crank");
		Document large = read(plan.sheet());
		assertEquals(0, large.getElementsByTagName("svg").getLength());
		assertTrue(large.getElementsByTagName("li").getLength() > plan.facts().size() + 10);
		assertTrue(large.getDocumentElement().getTextContent().contains("left out on this page, as no more than"));
		assertTrue(plan.sheet().contains("light-van, rules " + PackWriter.fingerprint(plan.rules()).substring(0, 12)), "which rules it follows");
		assertEquals(plan.sheet(), plan(Examples.checked("light-van").rules(), "bord_s", "slow_crank").sheet(), "the same each time");
	}

	/** Every complaint of the first family of each example project. */
	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van" })
	void plansOfTheExamples(String project) {
		RuleBase base = Examples.checked(project).rules();
		String family = base.vehicleFamilies().get(0).name();
		int plans = 0;
		for (String sign : PlanShown.complaints(base, family).stream().map(subject -> subject.variable().name()).toList()) {
			PlanShown plan = plan(base, family, sign);
			if (plan.tree().isPresent()) {
				plans++;
				Twig tree = plan.tree().get();
				Figures figures = plan.figures().orElseThrow();
				assertEquals(1, figures.one() + figures.several() + figures.referred() + figures.nothing() + figures.unseen(), 1e-6, sign);
				assertTrue(figures.minutes() <= figures.worstMinutes() + CLOSE && figures.cost() <= figures.worstCost() + CLOSE, sign);
				assertTrue(figures.least() <= figures.cost(), sign);
				addsUp(tree);
				String bench = first(Bench.of(base).choose(family).enter(new Variable(Variable.Kind.SIGN, sign), "present"));
				assertEquals(bench.equals(tree.title()) ? "" : bench, plan.bench(), "what the bench begins with for " + sign);
				assertTrue(figures.isBest() || plan.bench().isEmpty(), "the bench begins otherwise with " + sign);
				if (tree.size() < 60) {
					LaidOut picture = Layout.of(plan.picture(), TextMetrics.FIXED, () -> false);
					read(Svg.write(picture, Theme.LIGHT));
				}
				read(plan.sheet());
			} else {
				assertFalse(plan.trouble().isEmpty());
			}
		}
		assertTrue(plans > 5, project + " has " + plans);
	}

	/** What is proved to be the best has no other beside it of which less is to be expected. */
	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van" })
	void theBestIsNotDearerThanWhatCouldBeDoneInstead(String project) {
		RuleBase base = Examples.checked(project).rules();
		String family = base.vehicleFamilies().get(0).name();
		int compared = 0;
		for (Subject complaint : PlanShown.complaints(base, family)) {
			Diagnosis diagnosis = Diagnosis.of(base, family, List.of(new Reading.SignSeen(complaint.variable().name(), true, Span.NONE))).orElseThrow();
			Proposals proposals = diagnosis.next(Proposals.Care.QUICK, () -> false);
			for (int i = 1; proposals.isBest() && i < proposals.steps().size(); i++, compared++) {
				assertTrue(proposals.steps().get(0).expectedCost() <= proposals.steps().get(i).expectedCost() + CLOSE, complaint.title());
			}
		}
		assertTrue(compared > 0);
	}

	private static String first(Bench bench) {
		return new Consulting().follow(bench, Listener.NONE).shown().lead().first().orElseThrow().title();
	}

	/** At each step the shares of its results add up, and no more than a hundred ways are told. */
	private static void addsUp(Twig twig) {
		if (twig.kind() == Twig.Kind.STEP) {
			assertEquals(twig.share(), twig.after().stream().mapToDouble(Twig::share).sum(), 1e-6, twig.title());
			Set<String> results = twig.after().stream().map(Twig::result).collect(Collectors.toSet());
			assertEquals(twig.after().size(), results.size(), () -> twig.title() + ": " + results);
			twig.after().forEach(PlanShownTest::addsUp);
		} else {
			assertEquals(List.of(), twig.after());
		}
	}

	@Test
	void theGapIsTold() {
		Figures notBest = new Figures(20, 90, 0, 0, 20, 90, 18, false, .8, 0, .2, 0, 0);
		assertTrue(notBest.sentences().contains("The search for a better order stopped before its end: none costs less than 18, but this plan need not be the best."), notBest.sentences().toString());
		Figures waits = new Figures(20, 90, 30, 1200, 20, 90, 20, true, 1, 0, 0, 0, 0);
		assertTrue(waits.sentences().contains("Waiting: about 30 min to be expected, 20 h at worst."), waits.sentences().toString());
		assertEquals(List.of("waiting none → 30 min", "cost 20 → 25", "one cause confirmed in 80 of 100 → 100 of 100"), new Figures(20, 90, 30, 1200, 25, 90, 25, true, 1, 0, 0, 0, 0).against(notBest));
	}

	@Test
	void rulesThatContradictEachOtherHaveNoPlan() {
		RuleBase base = Examples.text("family van", "sign dead", "part lamp { fault burnt }", "test look { results bad, good }",
				"rule a { given dead run look on bad : confirms lamp.burnt on good : clears lamp.burnt }",
				"rule b { given dead run look on bad : clears lamp.burnt on good : confirms lamp.burnt }").rules();
		PlanShown plan = plan(base, "van", "dead");
		assertTrue(plan.trouble().startsWith("Whatever is found first, the rules contradict each other"), plan.facts().toString());
		read(plan.sheet());
	}
}
