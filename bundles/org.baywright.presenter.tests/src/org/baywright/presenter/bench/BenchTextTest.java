package org.baywright.presenter.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.presenter.Examples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BenchTextTest {

	private static final String WHY = "  because \"a\" source memory by \"R. Falk\" on 2026-03-02 }";
	private static final RuleBase BASE = Examples.rules("family osier \"Osier van\"", "sign no_crank \"No crank\" do_not_drive \"It stops.\"",
			"hazard gas \"Gas\" { caution \"No sparks.\" }", "part battery \"Battery\" { fault flat \"Flat\" fault worn \"Worn\" }",
			"test volts \"Voltage\" { measures V 0 .. 18 step 0.1 takes 8 min caution gas }", "test load \"Load\" { results pass, fail takes 20 min }",
			"rule first \"First\" { given no_crank run volts on below 12 V : confirms battery.flat on at_least 12 V : clears battery.flat", WHY,
			"rule second \"Second\" { given no_crank run load on fail : confirms battery.worn on pass : clears battery.worn", WHY,
			"repair charge \"Charge\" { fixes battery.flat steps \"Charge it.\" verify { repeat volts expect at_least 12 V } }",
			"repair change \"Change\" { fixes battery.flat steps \"Change it.\" verify { repeat volts expect at_least 12 V } }");
	private static final Bench BENCH = Bench.of(BASE).enter(new Variable(Variable.Kind.SIGN, "no_crank"), "present");

	/** Notes where paragraphs lead. */
	private static final class Noted implements Paragraph.Ways {

		private final List<String> ways = new ArrayList<>();

		@Override
		public void open(Span span) {
			ways.add("open " + span.line());
		}

		@Override
		public void enter(Variable variable) {
			ways.add("enter " + variable.name());
		}

		@Override
		public void ask(Ask ask) {
			ways.add("ask " + ask.title());
		}

		@Override
		public void set(Bench bench) {
			ways.add("set " + bench.now().done().chosen());
		}
	}

	private static List<Paragraph> told(Bench bench) {
		return BenchText.of(bench, new Consulting().show(bench, Listener.NONE));
	}

	private static List<String> ways(List<Paragraph> told) {
		Noted noted = new Noted();
		told.forEach(paragraph -> paragraph.way().ifPresent(way -> way.accept(noted)));
		return noted.ways;
	}

	@Test
	void whatIsDangerousComesFirst() {
		List<Paragraph> told = told(BENCH);
		assertEquals(List.of("Before anything else", "Caution: Gas", "How", "Why this", "Or instead"), told.stream().filter(paragraph -> paragraph.kind() == Paragraph.Kind.HEADING)
				.map(Paragraph::text).limit(5).toList());
		assertEquals("No sparks.", told.get(3).text());
		assertTrue(ways(told).contains("enter load"), ways(told).toString());
	}

	@Test
	void rulesThatKnowNoComplaintSayWhatToDo() {
		String said = "These rules know no complaint of such a vehicle. Write a sign first, and a rule that asks for it.";
		assertEquals(said, told(Bench.of(Examples.rules("family osier"))).get(0).text());
		RuleBase other = Examples.rules("family osier", "family elder", "sign dead \"Dead\" for elder");
		assertEquals(said, told(Bench.of(other).choose("osier")).get(0).text());
		assertTrue(told(Bench.of(other).choose("elder")).stream().noneMatch(paragraph -> paragraph.text().equals(said)));
	}

	@Test
	void repairsCanBeFollowedAndTicked() {
		Bench found = BENCH.enter(new Variable(Variable.Kind.TEST, "volts"), "11 V");
		assertTrue(ways(told(found)).containsAll(List.of("set charge", "set change")), ways(told(found)).toString());
		Bench chosen = found.repair("charge");
		assertTrue(told(chosen).stream().anyMatch(paragraph -> paragraph.text().equals("\u2610 Charge it.")));
		Bench ticked = chosen.tick("charge", Progress.Tick.STEP, 0);
		assertTrue(told(ticked).stream().anyMatch(paragraph -> paragraph.text().equals("\u2611 Charge it.")));
		assertTrue(ways(told(ticked)).contains("ask Repeat: Voltage."), ways(told(ticked)).toString());
	}

	@Test
	void whatATestNeedsIsToldWhereverItIsAskedFor() {
		Subject volts = BENCH.subjects().stream().filter(subject -> subject.variable().name().equals("volts")).findFirst().orElseThrow();
		assertEquals(List.of("Caution: Gas", "No sparks.", "How", "Takes: 8 min"), BenchText.doing(BENCH, volts).stream().map(Paragraph::text).limit(4).toList());
	}

	/** The page "How the next step is chosen" tells these figures. */
	@Test
	void theExampleOfTheHelp() {
		RuleBase walk = Examples.project("../bundles/org.baywright.workbench/examples/first-walk").snapshot().rules();
		Bench bench = Bench.of(walk).enter(new Variable(Variable.Kind.SIGN, "sometimes_dead"), "present");
		Lead lead = new Consulting().show(bench, Listener.NONE).lead();
		assertEquals("Voltage drop from the engine block to battery minus, key in start", lead.first().orElseThrow().title());
		String why = String.join(" ", lead.first().orElseThrow().why());
		assertTrue(why.contains("about 5 were \u201cGround strap") && why.contains("3 were \u201c12 V battery") && why.contains("2 were \u201cStarter relay") && why.contains(", from 40 counted jobs."), why);
		assertTrue(why.contains("about 14 min; about 17 min beginning with the next best"), why);
		assertEquals(List.of("Battery voltage at rest (17 min)", "Five starts with its own relay, five with a known-good one (22 min)"),
				lead.others().stream().map(other -> other.title() + " (" + other.expected() + ")").toList(), "the next best first");
		Lead after = new Consulting().show(bench.enter(new Variable(Variable.Kind.TEST, "ground_drop"), "0.3"), Listener.NONE).lead();
		assertEquals("Battery voltage at rest", after.first().orElseThrow().title());
	}

	private static final Pattern TIME = Pattern.compile("([0-9.]+) (min|h)\\b");

	/** Returns what is told to take, in minutes; hours are told in tenths. */
	private static double minutes(String told) {
		return TIME.matcher(told).results().mapToDouble(time -> Double.parseDouble(time.group(1)) * (time.group(2).equals("h") ? 60 : 1)).sum();
	}

	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van" })
	void theNextBestIsTheLeastOfWhatCouldBeDoneInstead(String name) {
		RuleBase rules = Examples.checked(name).rules();
		Bench bench = Bench.of(rules).choose(rules.vehicleFamilies().get(0).name());
		int compared = 0;
		for (Subject sign : bench.subjects().stream().filter(subject -> subject.variable().kind() == Variable.Kind.SIGN).toList()) {
			Lead lead = new Consulting().show(bench.enter(sign.variable(), "present"), Listener.NONE).lead();
			List<String> told = lead.others().stream().map(Lead.Other::expected).toList();
			for (int i = 1; i < told.size(); i++, compared++) {
				assertTrue(minutes(told.get(i - 1)) <= minutes(told.get(i)) + (told.get(i).contains(" h") ? 6 : 0), sign.title() + ": " + told);
			}
			if (!told.isEmpty()) {
				String why = String.join(" ", lead.first().orElseThrow().why());
				assertTrue(why.contains("; about " + told.get(0) + " beginning with the next best"), why);
			}
		}
		assertTrue(compared > 0);
	}
}
