package org.baywright.presenter.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.stream.Collectors;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Case;
import org.baywright.model.Family;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.presenter.Examples;
import org.baywright.presenter.Left;
import org.baywright.presenter.Link;
import org.baywright.presenter.ProjectState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BenchTest {

	private static final String WHY = "  because \"a\" source memory by \"R. Falk\" on 2026-03-02 }";

	private static final String[] TEXT = { "family osier \"Osier van\" { trait engine : diesel, petrol }",
			"sign no_crank \"No crank\"", "sign hum \"Hum\"", "module bcm \"Body module\"",
			"code low \"Supply low\" on bcm = raw \"1\"", "tool meter cost 3",
			"part battery \"Battery\" { fault flat \"Flat\" fault worn \"Worn\" }",
			"test volts \"Voltage\" { measures V 0 .. 18 step 0.1 needs meter takes 8 min }",
			"test load \"Load\" { results pass, fail takes 20 min }",
			"law \"A flat battery does not hum\" : when volts below 9 V then hum absent",
			"rule first \"First\" { given no_crank run volts on below 12 V : confirms battery.flat",
			"  on 12 V .. 12.9 V : suspects battery.worn on at_least 13 V : clears battery.flat", WHY,
			"rule second \"Second\" { for osier where engine is diesel given battery.worn suspected",
			"  run load on fail : confirms battery.worn on pass : clears battery.worn", WHY,
			"rule third \"Third\" { given no_crank, low present then suspects battery.flat", WHY };

	private static final RuleBase SMALL = Examples.rules(TEXT);

	private static final Variable NO_CRANK = new Variable(Variable.Kind.SIGN, "no_crank");
	private static final Variable HUM = new Variable(Variable.Kind.SIGN, "hum");
	private static final Variable VOLTS = new Variable(Variable.Kind.TEST, "volts");
	private static final Variable ENGINE = new Variable(Variable.Kind.TRAIT, "engine");
	private static final Variable BCM = new Variable(Variable.Kind.MODULE, "bcm");
	private static final Variable LOW = new Variable(Variable.Kind.CODE, "low");

	private static Shown show(Bench bench) {
		return new Consulting().show(bench, Listener.NONE);
	}

	private static String lines(List<Shown.RuleLine> rules) {
		return rules.stream().map(rule -> rule.title() + ": "
				+ rule.lines().stream().map(Link::text).collect(Collectors.joining(" | "))).collect(Collectors.joining("\n"));
	}

	@Test
	void whatAnInstrumentShowsBeyondItsRangeIsEnteredByItsWords() {
		RuleBase rules = Examples.rules("family van", "sign dead \"Dead\"", "part wire { fault broken }",
				"test ohms \"Ohms\" { measures Ohm 0 .. 200 step 1 over ol \"Open line\" }",
				"rule a \"A\" { given dead run ohms on above 100 Ohm : confirms wire.broken on at_most 100 Ohm : clears wire.broken", WHY);
		Variable ohms = new Variable(Variable.Kind.TEST, "ohms");
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present");
		assertEquals("Type the value, from 0 Ohm to 200 Ohm or Open line, and press Enter.",
				bench.subjects().stream().filter(subject -> subject.variable().equals(ohms)).findFirst().orElseThrow().prompt());
		assertEquals("500 Ohm is out of range: 0 Ohm to 200 Ohm or Open line.", bench.enter(ohms, "500").message());
		assertEquals("Write a number in Ohm, such as 100 Ohm, or “Open line”.", bench.enter(ohms, "nothing").message());
		for (String typed : List.of("open line", "Open line", "ol", "OL")) {
			Bench open = bench.enter(ohms, typed);
			assertEquals("Open line", open.lines().get(1).value());
			assertEquals("A: above 100 Ohm: confirms “wire: broken”", lines(show(open).fired()));
			assertEquals(open.lines(), open.with(rules).lines());
			assertTrue(CaseText.of(open, show(open).advice(), "1").contains("found dead, ohms ol\n"));
		}
	}

	@Test
	void goesOnWithTheJobThatWasLeftAtAnotherProject() {
		Left<Bench> left = new Left<>(Bench::base, Bench::of, Bench::turn);
		Bench begun = Bench.of(SMALL).enter(ENGINE, "petrol").enter(NO_CRANK, "present");
		RuleBase other = new RuleBase.Builder("another").build();
		Bench elsewhere = left.turn(begun, other);
		assertEquals(List.of(), elsewhere.lines());
		assertEquals(begun.lines(), left.turn(elsewhere, SMALL).lines());
		assertEquals(begun.lines(), left.turn(begun, SMALL).lines());
	}

	@Test
	void tellsWhatFiredWhatWaitsAndWhatCannot() {
		Bench bench = Bench.of(SMALL).enter(ENGINE, "petrol").enter(NO_CRANK, "present").enter(VOLTS, "12.4");
		Shown shown = show(bench);
		assertEquals("Nothing is confirmed yet; 1 rule may still apply.", shown.headline());
		assertEquals("First: 12.0 V to 12.9 V: suspects “Battery: Worn”", lines(shown.fired()));
		assertEquals("Third: waits for: code 1 (Supply low) is present in Body module", lines(shown.open()));
		assertEquals("Second: cannot be so any more: engine diesel | because of: engine petrol", lines(shown.never()));
		assertEquals(List.of("Battery: Worn is suspected"), shown.verdicts().stream().map(line -> line.text()).toList());
		assertEquals("First", shown.verdicts().get(0).rules().get(0).text());
		assertTrue(shown.open().get(0).lines().get(0).leads());
		assertEquals(List.of(), shown.warnings());
	}

	private static final RuleBase WITH_STATES = Examples.rules("family van", "sign dips \"Dips\"", "module body \"Body module\"",
			"code low \"Supply low\" on body = raw \"1\"", "part post { fault loose }", "part feed { fault weak }",
			"test drop { measures mV 0 .. 500 step 10 takes 3 min }", "test load { results holds, falls takes 3 min }",
			"test other { results fine, poor takes 1 min }",
			"rule over { given dips, low stored then suspects post.loose", WHY, "rule now { given dips, low active then suspects feed.weak", WHY,
			"rule spotted { given dips run other on poor : suspects post.loose, feed.weak on fine : proves nothing", WHY,
			"rule a { given feed.weak suspected run load on falls : confirms feed.weak on holds : clears feed.weak", WHY,
			"rule b { given post.loose suspected run drop on above 100 mV : confirms post.loose on at_most 100 mV : clears post.loose", WHY);

	@Test
	void theStateOfACodeIsAskedForWhereSomeRuleAsks() {
		Bench bench = Bench.of(WITH_STATES).enter(new Variable(Variable.Kind.SIGN, "dips"), "present");
		List<String> choices = bench.subjects().stream().filter(subject -> subject.variable().equals(LOW)).findFirst().orElseThrow().choices().stream()
				.map(Subject.Choice::text).toList();
		assertEquals(List.of("present", "absent", "unread", "active", "stored", "pending", "untested"), choices);
		// whose state nobody read: both rules wait for it
		Shown half = show(bench.enter(LOW, "present"));
		assertEquals(List.of(), half.verdicts());
		assertTrue(lines(half.open()).contains("over: waits for: code 1 (Supply low) is stored in Body module"), lines(half.open()));
		assertEquals(List.of("post: loose is suspected"), show(bench.enter(LOW, "stored")).verdicts().stream().map(line -> line.text()).toList());
		assertEquals(List.of(), show(bench.enter(LOW, "untested")).verdicts());
		// where no rule asks, the bench does not either
		assertEquals(List.of("present", "absent", "unread"), Bench.of(SMALL).enter(NO_CRANK, "present").subjects().stream()
				.filter(subject -> subject.variable().equals(LOW)).findFirst().orElseThrow().choices().stream().map(Subject.Choice::text).toList());
	}

	@Test
	void aSuspicionWithTwoPointersComesFirst() {
		Bench bench = Bench.of(WITH_STATES).enter(new Variable(Variable.Kind.SIGN, "dips"), "present").enter(new Variable(Variable.Kind.TEST, "other"), "poor");
		assertEquals(List.of("feed: weak is suspected", "post: loose is suspected"), show(bench).verdicts().stream().map(line -> line.text()).toList());
		Shown both = show(bench.enter(LOW, "stored"));
		assertEquals(List.of("post: loose is suspected: 2 independent pointers", "feed: weak is suspected"),
				both.verdicts().stream().map(line -> line.text()).toList());
		assertEquals("drop", first(both).title());
	}

	private static Lead.Todo first(Shown shown) {
		return shown.lead().first().orElseThrow();
	}

	private static List<String> asks(Bench bench) {
		Lead.Todo todo = first(show(bench));
		return Stream.concat(Stream.of(todo.title()), todo.asks().stream().map(Subject::title)).toList();
	}

	@Test
	void asksOnlyForWhatIsForTheFamily() {
		RuleBase rules = Examples.rules("family van", "family bus", "sign hums for bus", "sign dead", "part motor { fault worn }",
				"test ohms { measures Ohm 0 .. 9 step 1 for bus }", "test course { seen_with ohms results steady, jumps }",
				"rule b { given hums run course on jumps : confirms motor.worn", WHY, "rule a { given dead or hums run ohms on below 3 Ohm : confirms motor.worn", WHY);
		assertEquals(List.of("dead"), Bench.of(rules).choose("van").subjects().stream().map(Subject::title).toList());
		assertEquals(List.of("dead", "hums", "course", "ohms"), Bench.of(rules).choose("bus").subjects().stream().map(Subject::title).toList());
	}

	/** Whoever enters something anew corrects it, unless it was disturbed meanwhile and so was measured again. */
	@Test
	void whatIsMeasuredAgainAfterItWasDisturbedKeepsItsFirstReading() {
		RuleBase rules = Examples.rules("family van", "sign dead \"Dead\"", "part battery { fault flat }", "test rest \"Rest\" { measures V 0 .. 18 step 0.1 prepare \"Wait.\" }",
				"test load \"Load\" { results holds, drops disturbs rest }",
				"rule a { given dead run rest on below 12 V : suspects battery.flat on at_least 12 V : clears battery.flat", WHY,
				"rule b { given dead run load on drops : confirms battery.flat on holds : clears battery.flat", WHY);
		Variable rest = new Variable(Variable.Kind.TEST, "rest");
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present").enter(rest, "11.0").enter(rest, "11.2");
		assertEquals(List.of(), bench.now().done().again());
		Bench again = bench.enter(new Variable(Variable.Kind.TEST, "load"), "drops").enter(rest, "12.4");
		String text = CaseText.of(again, show(again).advice(), "1");
		assertTrue(text.contains("  // found first: Rest: 11.2 V\n") && text.contains("rest 12.4 V"), text);
		assertTrue(JobSheet.of(again, show(again).advice(), "1", "").contains("<td>first 11.2 V, then 12.4 V</td>"));
	}

	private static final String[] SWITCHED = { "family van", "sign dead \"Dead\"", "sign stop \"Stop lamp\" make_safe \"Power off.\"", "sign knocks \"Knocks\" do_not_start",
			"state power \"Power\" : off, on", "tool reader", "tool meter", "workshop { scan each takes 1 min needs reader }", "module link answers in power on", "code lost on link = raw \"1\"",
			"hazard volts \"High voltage\" { caution \"Power off.\" licensed \"A licensed person.\" reference \"Shop rule 4\" }",
			"part motor \"Motor\" hazards volts { fault worn fault open fault wet }",
			"test live \"Live data\" { measures V 0 .. 900 step 1 at motor needs reader in power on takes 1 min caution volts }",
			"test coil \"Coil\" { measures V 0 .. 30 step 1 at motor needs meter in power on takes 2 min skill licensed caution volts }",
			"test ohms \"Ohms\" { measures Ohm 0 .. 30 step 1 at motor needs meter in power off takes 3 min skill licensed caution volts }",
			"test dry \"Dry\" { results yes, no at motor needs meter in power off takes 3 min skill licensed caution volts }",
			"rule a \"A\" { given dead run live on below 60 V : confirms motor.worn on at_least 60 V : clears motor.worn", WHY,
			"rule b \"B\" { given dead run coil on below 9 V : confirms motor.open on at_least 9 V : clears motor.open", WHY,
			"rule c \"C\" { given dead, lost absent run ohms on below 9 Ohm : confirms motor.wet on at_least 9 Ohm : clears motor.wet", WHY };

	private static List<String> told(Bench bench, Variable.Kind kind, String name) {
		Subject subject = bench.subjects().stream().filter(each -> each.variable().equals(new Variable(kind, name))).findFirst().orElseThrow();
		return BenchText.doing(bench, subject).stream().map(Paragraph::text).takeWhile(text -> !text.equals("How")).toList();
	}

	/** "Power off" beside a reading that needs power must not leave open which of both is meant. */
	@Test
	void aCautionSaysWhenItHolds() {
		Bench bench = Bench.of(Examples.rules(SWITCHED)).enter(new Variable(Variable.Kind.SIGN, "dead"), "present");
		assertEquals(List.of("Caution: High voltage, before hands go near it", "Power off.", "A licensed person.", "See: Shop rule 4"), told(bench, Variable.Kind.TEST, "live"));
		assertEquals(List.of("Caution: High voltage", "Power off.", "This step itself needs Power on; where that says otherwise, no hand goes near what it warns of.", "A licensed person.",
				"See: Shop rule 4"), told(bench, Variable.Kind.TEST, "coil"));
		assertEquals(List.of("Caution: High voltage", "Power off.", "A licensed person.", "See: Shop rule 4"), told(bench, Variable.Kind.TEST, "ohms"));
		assertEquals("", show(bench).lead().first().orElseThrow().exception());
	}

	@Test
	void aStepThatNeedsWhatASignForbidsSaysSo() {
		Bench bench = Bench.of(Examples.rules(SWITCHED)).enter(new Variable(Variable.Kind.SIGN, "dead"), "present");
		Bench stop = bench.enter(new Variable(Variable.Kind.SIGN, "stop"), "present");
		assertEquals("This reading needs Power on, with hands off; make it safe again afterwards.", told(stop, Variable.Kind.TEST, "live").get(0));
		assertEquals("This step needs Power on; make it safe again afterwards.", told(stop, Variable.Kind.TEST, "coil").get(0));
		assertEquals("This reading needs Power on, with hands off; make it safe again afterwards.", told(stop, Variable.Kind.CODE, "lost").get(0));
		Bench knocks = bench.enter(new Variable(Variable.Kind.SIGN, "knocks"), "present");
		assertEquals("This reading needs Power on. What must not be done still holds.", told(knocks, Variable.Kind.TEST, "live").get(0));
		assertEquals("This reading needs Power on, with hands off; make it safe again afterwards. What must not be done still holds.",
				told(knocks.enter(new Variable(Variable.Kind.SIGN, "stop"), "present"), Variable.Kind.TEST, "live").get(0));
		assertFalse(show(stop).lead().first().orElseThrow().exception().isEmpty());
	}

	@Test
	void whyItTakesLongerThanBeforeIsTold() {
		RuleBase rules = Examples.rules("family van", "sign dead \"Dead\"", "part battery { fault flat seen 90 fault worn seen 10 }",
				"test quick \"Quick\" { results yes, no takes 1 min }", "test slow \"Slow\" { results yes, no takes 60 min }",
				"rule a { given dead run quick on yes : confirms battery.flat on no : clears battery.flat", WHY,
				"rule b { given dead, battery.flat cleared run slow on yes : confirms battery.worn on no : clears battery.worn", WHY);
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present");
		Consulting consulting = new Consulting();
		assertEquals("Until the cause is found: about 8 min. No order of steps takes less.", consulting.show(bench, Listener.NONE).lead().first().orElseThrow().why().get(2));
		for (int again = 0; again < 2; again++) {
			assertEquals("Until the cause is found: about 1 h, more than before, as the likeliest cause is out. No order of steps takes less.",
					consulting.show(bench.enter(new Variable(Variable.Kind.TEST, "quick"), "no"), Listener.NONE).lead().first().orElseThrow().why().get(2), "however often it is looked at");
		}
		assertEquals("Until the cause is found: about 8 min. No order of steps takes less.", consulting.show(bench, Listener.NONE).lead().first().orElseThrow().why().get(2));
	}

	/** What the rules refer at once is no last resort. */
	@Test
	void whoIsToCallAtOnceIsToldAtOnce() {
		RuleBase rules = Examples.rules("family van", "sign dead \"Dead\"", "sign smoke \"Smoke\"", "part battery { fault flat }",
				"test lamp { results lit, dark takes 1 min }",
				"rule a { given dead run lamp on dark : confirms battery.flat on lit : clears battery.flat", WHY,
				"rule b { given smoke then refers \"the fire service\"", WHY, "rule z { given dead unexplained then refers \"the specialist\"", WHY);
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present").enter(new Variable(Variable.Kind.SIGN, "smoke"), "present");
		Shown early = show(bench);
		assertEquals("Refer to the fire service. Nothing is confirmed yet; 1 rule may still apply. If nothing else is found: refer to the specialist.", early.headline());
		assertEquals(List.of("Refer to the fire service", "If nothing else is found: refer to the specialist"), early.verdicts().stream().map(Shown.VerdictLine::text).toList());
	}

	/** A job is not sent away before the tests are done. */
	@Test
	void aReferralWaitsForTheTests() {
		RuleBase rules = Examples.rules("family van", "sign dead \"Dead\"", "part battery { fault flat }",
				"test lamp { results lit, dark takes 1 min }",
				"rule a { given dead run lamp on dark : confirms battery.flat on lit : clears battery.flat", WHY,
				"rule z { given dead unexplained then refers \"the specialist\"", WHY);
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present");
		Shown early = show(bench);
		assertEquals("Nothing is confirmed yet; 1 rule may still apply. If nothing else is found: refer to the specialist.",
				early.headline());
		assertEquals("If nothing else is found: refer to the specialist", early.verdicts().get(0).text());
		Shown done = show(bench.enter(new Variable(Variable.Kind.TEST, "lamp"), "lit"));
		assertEquals("Nothing is confirmed. Refer to the specialist.", done.headline());
	}

	@Test
	void aSilentModuleEndsTheWait() {
		Shown shown = show(Bench.of(SMALL).enter(NO_CRANK, "present").enter(BCM, "silent"));
		assertTrue(lines(shown.never()).contains("Third: cannot be so any more: code 1 (Supply low) is present in Body module "
				+ "| because of: Body module is silent"), lines(shown.never()));
	}

	@Test
	void warnsOfWhatCannotBe() {
		Shown law = show(Bench.of(SMALL).enter(VOLTS, "4 V").enter(HUM, "present").enter(NO_CRANK, "present"));
		assertEquals("These findings cannot all be so.", law.headline());
		assertEquals("No vehicle shows this: the laws forbid it. Voltage: 4.0 V and “Hum”.", law.warnings().get(0).text());
		assertEquals("The law says: A flat battery does not hum", law.warnings().get(1).text());
		assertTrue(law.warnings().get(1).leads());
		assertFalse(law.fired().isEmpty(), "what the rules say of it is still told");
		Shown silent = show(Bench.of(SMALL).enter(BCM, "silent").enter(LOW, "present"));
		assertEquals("These two cannot both be so. Body module is silent and code 1 (Supply low) is present in Body module.",
				silent.warnings().get(0).text());
	}

	@Test
	void theNextStepSaysWhatItTakesAndWhy() {
		Shown shown = show(Bench.of(SMALL).enter(ENGINE, "diesel").enter(NO_CRANK, "present"));
		assertEquals("Voltage", first(shown).title());
		assertEquals(List.of("Needs: meter", "Takes: 8 min", "Who: anybody who knows the trade"), first(shown).how());
		assertEquals(List.of("Of ten such jobs about 3 were “Battery: Flat” and 3 were “Battery: Worn”. That is by the rules alone: nobody has counted yet how often each was the cause.",
				"It can confirm or rule out Battery: Flat; point to Battery: Worn.",
				"Until the cause is found: about 14 min; about 17 min beginning with the next best. No order of steps takes less."), first(shown).why());
		assertEquals(List.of("Read: Body module 17 min"), shown.lead().others().stream().map(other -> other.title() + " " + other.expected()).toList());
	}

	@Test
	void theComplaintComesFirst() {
		assertTrue(show(Bench.of(SMALL)).lead().asksComplaint());
		assertEquals(Optional.empty(), show(Bench.of(SMALL)).lead().first());
		assertFalse(show(Bench.of(SMALL).enter(NO_CRANK, "present")).lead().asksComplaint());
	}

	@Test
	void aStepLeadsToThePicturesOfItsTestAndItsPart() {
		RuleBase rules = Examples.rules("family van", "sign dead", "hazard gas \"Gas\" { caution \"No sparks.\" }", "hazard heat \"Heat\" { caution \"Let it cool.\" }",
				"part strap \"Strap\" hazards gas { picture \"pictures/strap.png\" \"Behind the wheel\" fault loose }",
				"test drop { results good, bad picture \"leads.jpg\" \"Where the leads go\" at strap caution heat }",
				"rule a { given dead run drop on bad : confirms strap.loose on good : clears strap.loose", WHY);
		Lead.Todo todo = first(show(Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present")));
		assertEquals(List.of("Picture: Where the leads go leads.jpg", "Picture: Behind the wheel pictures/strap.png"),
				todo.pictures().stream().map(link -> link.text() + " " + link.span().file()).toList());
		assertTrue(todo.pictures().stream().allMatch(Link::leads));
		assertEquals(List.of("Heat", "Gas"), todo.cautions().stream().map(Caution::title).toList());
	}

	/** Asking a module once gives all its codes. */
	@Test
	void aModuleIsPaidForOnce() {
		RuleBase rules = Examples.rules("family van", "tool scanner cost 2", "sign dead \"Dead\"",
				"module bcm \"Body module\" takes 3 min cost 1 needs scanner", "code low on bcm = raw \"1\"", "code high on bcm = raw \"2\"",
				"part battery { fault flat fault worn }", "test cheap \"Cheap\" { results good, bad cost 2 takes 9 min }",
				"rule a \"A\" { given dead, low present then confirms battery.flat", WHY, "rule b \"B\" { given dead, high present then confirms battery.worn", WHY,
				"rule c \"C\" { given dead run cheap on bad : confirms battery.flat on good : proves nothing", WHY);
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present");
		assertEquals(List.of("Read: Body module", "2 (high) in Body module", "1 (low) in Body module"), asks(bench));
		assertEquals(List.of("Seen in the same reading: 2 (high) in Body module", "2 (high) in Body module"), asks(bench.enter(LOW, "absent")));
		assertEquals(asks(bench), asks(bench.enter(LOW, "absent").undo()));
	}

	/** Who does a test sees what is seen with it. */
	@Test
	void aTestIsPaidForOnceWithWhatIsSeenWithIt() {
		RuleBase rules = Examples.rules("family van", "sign dead \"Dead\"", "part battery { fault flat fault worn fault old }",
				"test volts \"Voltage\" { measures V 0 .. 18 step 0.1 takes 8 min cost 3 }", "test course \"Course\" { seen_with volts results steady, jumps }",
				"test look \"Look\" { results good, bad takes 1 h cost 1 }",
				"rule a { given dead run volts on below 9 V : confirms battery.flat on at_least 9 V : proves nothing", WHY,
				"rule b { given dead run course on jumps : confirms battery.worn on steady : proves nothing", WHY,
				"rule c { given dead run look on bad : confirms battery.old on good : proves nothing", WHY);
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present");
		assertEquals(List.of("Voltage", "Course", "Voltage"), asks(bench));
		assertEquals(List.of("Course", "Course"), asks(bench.enter(new Variable(Variable.Kind.TEST, "volts"), "12")));
		assertEquals(List.of("Voltage", "Voltage"), asks(bench.enter(new Variable(Variable.Kind.TEST, "course"), "steady")));
	}

	/** What is found out after a test that disturbs it does not count, unless it says how to prepare the vehicle for it. */
	@Test
	void whatIsDisturbedDoesNotCount() {
		RuleBase rules = Examples.rules("family van", "sign dead \"Dead\"", "part battery { fault flat fault worn }", "test rest \"Rest\" { results low, fine takes 8 min }",
				"test load \"Load\" { results falls, holds disturbs rest }", "rule a { given dead run rest on low : confirms battery.flat on fine : clears battery.flat", WHY,
				"rule b { given dead run load on falls : confirms battery.worn on holds : clears battery.worn", WHY);
		Variable rest = new Variable(Variable.Kind.TEST, "rest");
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "dead"), "present");
		Lead.Todo todo = first(show(bench));
		assertEquals("Rest", todo.title(), "what the other would spoil is done first");
		Bench loaded = bench.enter(new Variable(Variable.Kind.TEST, "load"), "holds");
		assertEquals(Optional.empty(), show(loaded).lead().first());
		Shown spoilt = show(loaded.enter(rest, "low"));
		assertEquals("Rest: low: this does not count, as “Load” was done before and disturbs it.", spoilt.warnings().get(0).text());
		assertFalse(spoilt.verdicts().stream().anyMatch(line -> line.text().contains("confirmed")), spoilt.verdicts().toString());
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "12.4 V|12.4 V|''", "12400 mV|12.4 V|''", "12,4|12.4 V|''",
			"12.43|12.4 V|The instrument shows steps of 0.1 V, so 12.43 V counts as 12.4 V.", "0|0.0 V|''" })
	void readsNumbers(String typed, String value, String message) {
		Bench bench = Bench.of(SMALL).enter(VOLTS, typed);
		assertEquals(List.of(value), bench.lines().stream().map(Bench.Line::value).toList());
		assertEquals(message, bench.message());
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "much|Write a number in V, such as 9.0 V.", "''|Write a number in V, such as 9.0 V.",
			"20 V|20.0 V is out of range: 0.0 V to 18.0 V.", "-1|-1.0 V is out of range: 0.0 V to 18.0 V.",
			"12 Ohm|Ohm and V do not measure the same kind of thing. Write a number in V, such as 9.0 V.", "12 florps|There is no unit florps. Write a number in V, such as 9.0 V.",
			"11_000|Write a number in V, such as 9.0 V.", "1,000,000|Write a number in V, such as 9.0 V.", "11 000 V|Write a number in V, such as 9.0 V.",
			"11.9 km|km and V do not measure the same kind of thing. Write a number in V, such as 9.0 V.",
			"1e400000|A number is written out, not as a power of ten. Write a number in V, such as 9.0 V.", "1e400 V|A number is written out, not as a power of ten. Write a number in V, such as 9.0 V." })
	void refusesWhatIsNoValue(String typed, String message) {
		Bench before = Bench.of(SMALL).enter(NO_CRANK, "present");
		Bench bench = before.enter(VOLTS, typed);
		assertEquals(message, bench.message());
		assertEquals(before.now(), bench.now());
		assertEquals(before.past(), bench.past());
	}

	@Test
	void refusesWhatIsNoChoice() {
		assertEquals("Say present or absent.", Bench.of(SMALL).enter(NO_CRANK, "perhaps").message());
		assertEquals("Choose one of: diesel, petrol.", Bench.of(SMALL).enter(ENGINE, "steam").message());
		assertEquals("Say present, absent, unread, active, stored, pending or untested.", Bench.of(SMALL).enter(LOW, "missing").message());
		assertEquals("There is no test gone in these rules.",
				Bench.of(SMALL).enter(new Variable(Variable.Kind.TEST, "gone"), "1").message());
	}

	@Test
	void goesBackAndForth() {
		Bench one = Bench.of(SMALL).enter(NO_CRANK, "present");
		Bench two = one.enter(NO_CRANK, "absent");
		assertEquals(1, two.lines().size());
		assertEquals(one.now(), two.undo().now());
		assertEquals(two.now(), two.undo().redo().now());
		assertFalse(two.undo().enter(HUM, "present").canRedo());
		assertEquals(List.of(), two.undo().undo().lines());
		assertFalse(two.undo().undo().canUndo());
		Bench start = Bench.of(SMALL);
		assertSame(start, start.undo());
		assertSame(start, start.redo());
		assertEquals(one.now(), one.enter(NO_CRANK, "present").now());
		assertEquals(one.past(), one.enter(NO_CRANK, "present").past(), "what changes nothing is no step");
		assertEquals(two.now(), two.remove(NO_CRANK).undo().now());
		assertEquals(List.of(), two.clear().lines());
	}

	@Test
	void keepsWhatChangedRulesStillKnow() {
		Bench bench = Bench.of(SMALL).enter(NO_CRANK, "present").enter(VOLTS, "17");
		String[] less = TEXT.clone();
		less[7] = less[7].replace("0 .. 18", "0 .. 16");
		Bench after = bench.with(Examples.rules(less));
		assertEquals(1, after.lines().size());
		assertEquals("Left out, since the rules no longer know it: Voltage.", after.message());
		assertEquals(bench.now(), bench.with(Examples.rules(TEXT)).now());
		assertEquals("", bench.with(Examples.rules("family other", "family more")).now().family());
	}

	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van" })
	void everyJobOfTheExamplesCanBeEnteredAndCopied(String name) {
		ProjectState state = Examples.checked(name);
		Consulting consulting = new Consulting();
		List<String> copies = new ArrayList<>();
		for (CaseResult result : state.report().orElseThrow().cases()) {
			Case job = result.job();
			Bench bench = Bench.of(state.rules()).choose(job.family());
			for (Reading reading : all(job)) {
				bench = bench.enter(Variable.of(state.rules(), reading), Bench.text(reading));
				assertEquals("", bench.message(), job.name());
			}
			Shown shown = consulting.show(bench, Listener.NONE);
			assertEquals(List.of(), shown.warnings(), job.name());
			assertEquals(result.fired(), shown.fired().stream().map(Shown.RuleLine::rule).toList(), job.name());
			assertEquals(result.verdicts(), shown.advice().verdicts().stream().map(derived -> derived.verdict()).toList(),
					job.name());
			copies.add(CaseText.of(bench, shown.advice(), "Copy of " + job.name()));
		}
		RuleProject project = Examples.project(name);
		project.update("copies.bay", String.join("", copies));
		assertEquals(List.of(), project.snapshot().problems());
		List<Case> read = project.snapshot().rules().cases().stream().filter(job -> job.name().startsWith("Copy of ")).toList();
		assertEquals(copies.size(), read.size());
		for (Case copy : read) {
			Case job = state.rules().cases().stream().filter(each -> copy.name().equals("Copy of " + each.name())).findFirst()
					.orElseThrow();
			assertEquals(strip(all(job)), strip(all(copy)), job.name());
			assertEquals(job.referred() && job.causes().isEmpty(), copy.referred(), job.name());
		}
		assertTrue(new Analysis().check(project.snapshot().rules(), Listener.NONE).cases().stream().allMatch(CaseResult::passed));
	}

	private static List<Reading> all(Case job) {
		List<Reading> all = new ArrayList<>(job.traits());
		all.addAll(job.found());
		return all;
	}

	private static List<String> strip(List<Reading> readings) {
		return readings.stream().map(Reading::toString).map(text -> text.replaceAll("span=.*", "")).toList();
	}

	@Test
	void longCasesAreWrappedAndOpenEndsStayOpen() {
		Bench bench = Bench.of(SMALL).enter(HUM, "absent").enter(LOW, "unread");
		String text = CaseText.of(bench, show(bench).advice(), "A \"new\"\njob");
		assertEquals("job \"A \\\"new\\\" job\" {\n  on osier\n  found hum absent, low unread\n"
				+ "  // was: the cause is not known yet\n}\n", text);
	}

	@Test
	void aCopiedJobWritesNamesAsNames() {
		RuleBase rules = Examples.rules("family ^law", "sign ^given \"Dead\"", "part wire { fault ^seen }",
				"test ^takes { results fine, ^below }", "rule a \"A\" { given ^given run ^takes on ^below : confirms wire.^seen", WHY);
		Bench bench = Bench.of(rules).enter(new Variable(Variable.Kind.SIGN, "given"), "present").enter(new Variable(Variable.Kind.TEST, "takes"), "below");
		assertEquals("job \"1\" {\n  on ^law\n  found ^given, ^takes ^below\n  was wire.^seen\n}\n", CaseText.of(bench, show(bench).advice(), "1"));
	}

	@Test
	void everyFamilyHasItsSubjects() {
		for (String name : Examples.ALL) {
			RuleBase base = Examples.checked(name).rules();
			for (Family family : base.vehicleFamilies()) {
				List<Subject> subjects = Bench.of(base).choose(family.name()).subjects();
				assertEquals(subjects.size(), subjects.stream().map(Subject::variable).distinct().count());
				assertTrue(subjects.stream().allMatch(each -> each.choices().isEmpty() != each.range().isEmpty()), name);
				assertTrue(subjects.stream().map(each -> each.variable().kind()).distinct().count() >= 4, name);
				Bench bench = Bench.of(base).choose(family.name());
				for (Subject subject : subjects) {
					String value = subject.choices().isEmpty() ? subject.range().split(" to ")[0]
							: subject.choices().get(0).text();
					assertEquals("", bench.enter(subject.variable(), value).message(), subject.toString());
				}
			}
		}
	}

	@Test
	void whatIsSeenComesFirstAndEachSaysHowItIsEntered() {
		List<Subject> subjects = Bench.of(SMALL).subjects();
		assertEquals(List.of("Sign", "Test", "Code", "Module", "Vehicle"), subjects.stream().map(Subject::kind).distinct().toList());
		assertEquals("Choose the value and press Enter.", subjects.get(0).prompt());
		assertTrue(subjects.stream().map(Subject::prompt).anyMatch("Type the value, from 0.0 V to 18.0 V, and press Enter."::equals),
				() -> subjects.toString());
	}

	@Test
	void nothingIsWorkedOutBeforeAFamilyIsChosen() {
		Bench bench = Bench.of(Examples.rules("family osier", "family other"));
		assertEquals("Choose the vehicle to begin.", show(bench).headline());
		assertEquals(List.of(), bench.subjects());
	}

	@Test
	void aCircleIsSaid() {
		ProjectState state = Examples.checked("flawed/circle.bay");
		Bench bench = Bench.of(state.rules()).choose(state.rules().vehicleFamilies().get(0).name());
		assertEquals("The rules go round in a circle, so nothing can be derived.", show(bench).headline());
	}

	@Test
	void whatFollowsIsNotedWithTheAnswerAndUndoneWithIt() {
		RuleBase base = Examples.rules("family tarn { trait lamps : one, two }", "sign second \"Second lamp dark\" for tarn where lamps is two", "part lamp { fault burnt }",
				"test look { results black, clear }", "rule a { for tarn where lamps is two given second run look on black : confirms lamp.burnt on clear : clears lamp.burnt because \"a\" source memory by \"R. Falk\" on 2026-03-02 }");
		Bench bench = Bench.of(base).enter(new Variable(Variable.Kind.SIGN, "second"), "present");
		assertEquals(Optional.empty(), new Consulting().show(bench, Listener.NONE).lead().first());
		Consulting.Followed followed = new Consulting().follow(bench, Listener.NONE);
		Bench noted = followed.bench();
		assertEquals("lamps: two, as what was found leaves nothing else.", noted.message());
		assertEquals(List.of(noted.message()), followed.noted());
		assertEquals("look", followed.shown().lead().first().orElseThrow().title());
		assertEquals(List.of(), new Consulting().follow(noted, Listener.NONE).noted());
		assertEquals(List.of(), noted.undo().lines());
		assertEquals(noted.now(), noted.undo().redo().now());
	}

	@Test
	void whatIsLessThanTheInstrumentShowsNeedsItsUnit() {
		Variable drop = new Variable(Variable.Kind.TEST, "drop");
		Bench bench = Bench.of(MendingTest.SMALL).choose("osier");
		assertEquals("0.85 mV is less than the instrument shows, which goes in steps of 10 mV. Write the unit with it.", bench.enter(drop, "0.85").message());
		assertEquals(List.of(), bench.enter(drop, "0.85").lines());
		assertEquals("850 mV", bench.enter(drop, "0.85 V").lines().get(0).value());
		assertEquals("0 mV", bench.enter(drop, "0.85 mV").lines().get(0).value());
		assertEquals("0 mV", bench.enter(drop, "0").lines().get(0).value());
	}

	@Test
	void aComplaintIsChosen() {
		Bench bench = Bench.of(MendingTest.SMALL).choose("osier");
		Ask ask = Ask.of(bench, new Consulting().show(bench, Listener.NONE)).orElseThrow();
		assertEquals("What is wrong with the vehicle?", ask.title());
		assertEquals("Choose what is wrong with the vehicle.", ask.answer(bench, "").message());
		assertEquals(bench.now(), ask.answer(bench, "").now());
	}

	@Test
	void whatIsSaidOfTheJobIsAskedForToo() {
		Bench bench = MendingTest.osier();
		List<Ask> asks = Ask.ofTheJob(bench);
		assertEquals(List.of("What the cause was", "Refer the job: to whom it is handed on", "Identification number of the vehicle", "Time that the job took", "Money that the job cost"),
				asks.stream().map(Ask::title).toList());
		bench = asks.get(0).answer(bench, "battery.flat");
		bench = asks.get(2).answer(bench, "1m8gdm9axkp042788");
		bench = asks.get(3).answer(bench, "1.5 h");
		bench = asks.get(4).answer(bench, "140");
		assertEquals("battery.flat", bench.now().done().cause());
		assertEquals("1M8GDM9AXKP042788", bench.now().done().vin());
		assertEquals("90", bench.now().done().minutes().orElseThrow().toPlainString());
		assertEquals("140", bench.now().done().cost().orElseThrow().toPlainString());
		assertEquals("the dealer", asks.get(1).answer(bench, "the dealer").now().done().referredTo());
		assertEquals("Type minutes such as 90, or 1.5 h, and press Enter.", asks.get(3).subject().orElseThrow().prompt());
		assertEquals(List.of(), Ask.ofTheJob(Bench.of(MendingTest.SMALL)));
	}

	@Test
	void aJobWaitsForRulesThatKnowItsVehicle() {
		RuleBase broken = Examples.rules("family elder", "sign no_crank");
		Bench bench = MendingTest.osier().enter(MendingTest.VOLTS, "11.4");
		Left<Bench> left = new Left<>(Bench::base, Bench::of, Bench::turn);
		Bench waits = left.turn(bench, broken);
		assertEquals("The rules no longer know the vehicle. What was found is kept, and the job goes on when they do.", waits.message());
		assertEquals(bench.now(), waits.now());
		assertEquals(bench.now(), left.turn(waits, Examples.rules(MendingTest.TEXT)).now());
		assertEquals("elder", left.turn(Bench.of(MendingTest.SMALL).choose("osier"), broken).now().family(), "nothing was found");
	}
}
