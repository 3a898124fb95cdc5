package org.baywright.language.write;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.formatting2.Formatting;
import org.baywright.language.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Conclusion;
import org.baywright.model.Law;
import org.baywright.model.Outcome;
import org.baywright.model.ProblemKind;
import org.baywright.model.Provenance;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Severity;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;
import org.baywright.model.write.RuleWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the writer of rules writes says, when it is read, what was written: text to rules to text to rules. */
class RuleWriterTest {

	static Stream<Path> texts() throws IOException {
		List<Path> all = new ArrayList<>(Samples.all());
		try (Stream<Path> flawed = Files.list(Samples.flawed())) {
			flawed.filter(file -> file.toString().endsWith(".bay")).sorted().forEach(all::add);
		}
		return all.stream();
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "sign a", "part a { fault b }", "a } b", "sign a \"{\" // {\n/* { \" */ law \"\\\"{\" never a" })
	void whatIsClosedIsWhole(String text) {
		assertTrue(RuleWriter.isWhole(text), text);
	}

	@ParameterizedTest
	@ValueSource(strings = { "part a { fault b", "job \"}\" {", "sign a /* no end", "part a { // }\n", "a { } {", "accept \"x\n" })
	void whatIsOpenIsNot(String text) {
		assertFalse(RuleWriter.isWhole(text), text);
	}

	@ParameterizedTest
	@MethodSource("texts")
	void examplesComeBackAsTheyWere(Path path) throws IOException {
		roundTrip(RuleProject.open(path).snapshot().rules());
		assertTrue(!Files.isRegularFile(path) || RuleWriter.isWhole(Files.readString(path)));
	}

	/** What is not in the examples: names that are words, texts with quotes and line ends, odd times, every form of a limit. */
	@Test
	void oddThingsComeBackAsTheyWere() {
		RuleProject project = RuleProject.inMemory("odd");
		project.update("odd.bay", """
				system ^rule "A \\"bus\\" \\\\ with\\nlines" { trait ^test : ^fault "F", on "On", clear }
				base family all has ^rule
				family ^law like all { trait built : year 2015 .. 2021 vin "WZZ?" vin "WZY" check_digit
				  cycle ignition : off, wait 8 s, wait 2.5 min, on }
				state ignition "Key" : off takes 0 min, on "On", cranking takes 7 s
				tool ^code cost 12.50
				tool plain
				tool each
				tool scan
				workshop "A \\"shop\\"" { hour 72.50 scan all scan each takes 90 s cost 2.5 needs ^code, each, scan lacks plain, ^code skill licensed }
				hazard ^caution { caution "a" licensed "b" reference "c" caution "d" }
				module ^module "M" on ^law, all answers in ignition on
				module bare
				code one on ^module = dtc p0300 sub 1a runs in ignition on, wait 20 s, drive above 20 km/h "uphill" for 1 min, do "x", drive
				code two on ^module = j1939 spn 168 fmi 4
				code three on ^module = raw "7B\\\\12"
				sign ^sign "S" intermittent do_not_drive "why" do_not_start make_safe "first"
				sign bare_sign
				part ^part place "left" hazards ^caution { fault ^seen "Flat" seen 3 fault open }
				part empty { }
				exclusive ^part.^seen, ^part.open
				test ^given "T" { measures V -5.0 .. 18 step 0.1 at ^part place "p" needs ^code, plain in ignition off prepare "p" wait 1 h do "q"
				  takes 90 s cost 3 skill licensed fits "f" fits "g" disturbs bare_sign, ^module caution ^caution }
				test words { results ^met "Met", on, bad takes 0.5 min skill trained }
				test number { measures 0 .. 10 step 1 }
				test lamp_of_module { results active, stored, pending, untested, status }
				law "L" for ^law : when (^sign or not one present), ^given is any of (1 V .. 2.5 V, 4 V) then not (bare_sign absent or bare silent)
				law "N" : never bare answers and one missing
				chain feed "Feed" { for ^law where ^test is not on given ^sign
				  point ^given expect at_least 500 mV, below 0.2 V : ^part.^seen point words expect ^met, on : ^part.open
				  beyond empty_part.none because "a" because "b" source published "T \\"x\\"" by "A" on 2026-03-02 }
				part empty_part { fault none }
				rule iff "R" { for every family except all where built > 2016 year, built <= 2020 given ^sign unexplained given ^part.open not suspected or
				  ^part.^seen confirmed in ignition on run number expect at_least 5 below : clears ^part.open met : proves nothing refers "x" }
				rule low { run ^given expect above 3 V below : confirms ^part.open }
				rule high { run ^given expect at_most 3 V above : confirms ^part.open }
				rule both { run ^given expect 3 V .. 4 V below : confirms ^part.open above : suspects ^part.^seen, ^part.open }
				rule list { run ^given expect 3 V .. 4 V, 5 V met : confirms ^part.open otherwise : refers "to \\"whom\\"" }
				rule upon { for all run ^given on 300 mV .. 1 V, above 2 V : proves nothing source memory }
				rule plain_words { for all, ^law run words on ^met, bad : proves nothing source jobs }
				repair ^repair "P" { fixes ^part.open, ^part.^seen place "p" steps "one" "two" steps "three" caution ^caution needs plain takes 1.5 h cost 2
				  skill trained tell_customer "c" tell insurer "i" because "w" changes_for_good "g"
				  verify { clear ^module cycle ignition set ignition on read ^module expect one absent expect ^sign absent tried 10 times
				    wait 20 min drive below 50 km/h do "x" repeat what confirmed repeat ^given expect at_least 1 V, 0 V repeat words expect ^met repeat number } }
				repair bare_repair { fixes ^part.open }
				job "J \\"1\\"" { on ^law with built 2018, ^test is on vin "WZZT2AA75J0000001" found ^sign present, ^given 1500 mV, words ^met, number 3, one unread,
				  two absent, ^module silent, bare answers, lamp_of_module is active was ^part.open, ^part.^seen took 2 h spent 100 afterwards bare_sign absent came_back after 9 d }
				job "J3" { on ^law found lamp_of_module is status was ^part.open afterwards lamp_of_module is stored }
				job "J2" { on ^law found bare_sign absent was referred }
				review both by "A" on 2026-03-02 objects "n \\"q\\"" meaning "00000000"
				review feed by "A" on 2026-03-02 agrees meaning "00000000"
				sign_off { agree 2 not_by author hazard ^caution by "q \\"q\\"" hazard ^caution by "r" }
				reviewer "A" qualified "q \\"q\\"", "r"
				review both by "B" on 2026-03-02 objects meaning "00000000" {
				  reply by "A" on 2026-03-03 "n" settled by "B" on 2026-03-04 settled by "C" on 2026-03-05 "s" }
				remark on feed by "A" on 2026-03-02 "m" meaning "00000000" { reply by "B" on 2026-03-03 "n" at "given \\"x\\"" }
				remark on change "Limit \\"raised\\"" by "A" on 2026-03-02 "m"
				remark on change "c" by "A" on 2026-03-02 "m" { settled by "B" on 2026-03-03 }
				accept "gap:x@1" because "r" by "A" on 2026-03-02
				accept "gap:y@1" because "r"
				""");
		Snapshot snapshot = project.snapshot();
		assertEquals(List.of(), snapshot.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).toList());
		assertEquals(List.of(), snapshot.dropped());
		roundTrip(snapshot.rules());
	}

	private static void roundTrip(RuleBase rules) {
		String text = new RuleWriter(rules).all();
		RuleProject project = RuleProject.inMemory(rules.name());
		project.update("written.bay", text);
		Snapshot again = project.snapshot();
		assertEquals(List.of(), again.problems().stream().filter(problem -> problem.severity() == Severity.ERROR)
				.filter(problem -> problem.kind() != ProblemKind.VIN_CHECK_DIGIT).toList(), text);
		assertEquals(plain(rules), plain(again.rules()), text);
		assertEquals(text, new RuleWriter(again.rules()).all());
		assertEquals(text, tidied(project));
		assertFalse(text.isEmpty());
	}

	private static String tidied(RuleProject project) {
		return project.services().getInstance(Formatting.class).format(project.resource("written.bay").orElseThrow()).orElseThrow();
	}

	/** What a fingerprint is made of stays as it is, however texts are laid out. */
	@Test
	void thePlainTextSaysTheSameInALayoutOfItsOwn() {
		RuleProject project = RuleProject.inMemory("plain");
		project.update("a.bay", """
				family tarn "Tarn" { trait engine : diesel, petrol trait built : year 2015 .. 2021 }
				part battery { fault flat "Flat" seen 3 fault open_cell }
				part bare { }
				repair charge { fixes battery.flat steps "One." "Two." verify { repeat what confirmed } }
				""");
		RuleBase rules = project.snapshot().rules();
		assertEquals("""
				family tarn "Tarn" {
				  trait engine : diesel, petrol
				  trait built : year 2015 .. 2021
				}

				part battery {
				  fault flat "Flat" seen 3
				  fault open_cell
				}

				part bare {
				}

				repair charge {
				  fixes battery.flat
				  steps "One."
				    "Two."
				  verify {
				    repeat what confirmed
				  }
				}
				""", RuleWriter.plain(rules).all());
	}

	@Test
	void aRuleBeingMadeNeedsNoAuthorAndMayExpectMoreThanItSays() {
		RuleProject project = RuleProject.inMemory("draft");
		project.update("a.bay", "test volts { measures V 0 .. 18 step 0.1 } part battery { fault flat }");
		Outcome met = new Outcome("met", Optional.of(ValueSet.Band.closed(BigDecimal.ONE, BigDecimal.TEN)), true, List.of(), Span.NONE);
		Outcome below = new Outcome("below", Optional.of(ValueSet.Band.below(BigDecimal.ONE)), false,
				List.of(new Conclusion.OnFault(VerdictKind.CONFIRMED, "battery.flat", Span.NONE)), Span.NONE);
		assertEquals("""
				rule low "Low" {
				  run volts
				  expect 1 V .. 10 V
				  below : confirms battery.flat
				  because "So."
				}
				""", new RuleWriter(project.snapshot().rules()).text(new Rule("low", "Low", Scope.EVERY, List.of(), List.of(), Optional.of("volts"),
				List.of(met, below), new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.NONE, ""), Optional.of("So.")),
				Span.NONE, Span.NONE)));
	}

	@Test
	void aLongListGoesOnBelowItsFirstName() {
		RuleProject project = RuleProject.inMemory("long");
		List<String> signs = IntStream.range(0, 12).mapToObj(i -> "a_sign_with_the_number_" + i).toList();
		project.update("a.bay", "family tarn\npart battery { fault flat }\nsign " + String.join("\nsign ", signs) + "\njob \"J\" { on tarn found "
				+ String.join(", ", signs) + " was battery.flat }");
		roundTrip(project.snapshot().rules());
		String text = new RuleWriter(project.snapshot().rules()).text(project.snapshot().rules().cases().get(0));
		assertTrue(text.contains("  found a_sign_with_the_number_0, a_sign_with_the_number_1, a_sign_with_the_number_2,\n"
				+ "        a_sign_with_the_number_3,"), text);
		assertTrue(text.lines().allMatch(line -> line.length() <= 100), text);
	}

	/** What a fix adds is laid out as its author would have it after tidying. */
	@Test
	void whatFixesAddIsLaidOut() throws IOException {
		int added = 0;
		for (Path path : texts().toList()) {
			for (Flaw flaw : new Analysis().check(RuleProject.open(path).snapshot().rules(), Listener.NONE).flaws()) {
				for (Fix fix : flaw.fixes()) {
					if (fix instanceof Fix.AddElement add) {
						RuleProject project = RuleProject.inMemory("fix");
						project.update("written.bay", add.text() + "\n");
						assertEquals(add.text() + "\n", tidied(project));
						added++;
					}
				}
			}
		}
		assertTrue(added > 20, () -> "found less than there is");
	}

	/** Returns all that a rule base says, apart from places; laws in an order of their own, as those of chains stand apart. */
	private static String plain(RuleBase base) {
		return Stream.of(base.families(), base.states(), base.tools(), base.workshop().stream().toList(), base.hazards(), base.modules(), base.codes(), base.signs(),
				base.parts(), base.exclusives(), base.tests(), base.laws().stream().map(RuleWriterTest::plain).sorted().toList(),
				base.chains(), base.rules(), base.repairs(), base.cases(), base.signOff().stream().toList(), base.reviewers(), base.reviews(),
				base.remarks(), base.acceptances())
				.map(RuleWriterTest::plain).collect(Collectors.joining("\n\n"));
	}

	private static String plain(Object value) {
		if (value instanceof Span) {
			return "";
		} else if (value instanceof BigDecimal number) {
			return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
		} else if (value instanceof Optional<?> optional) {
			return optional.map(RuleWriterTest::plain).orElse("-");
		} else if (value instanceof List<?> list) {
			return list.stream().map(RuleWriterTest::plain).collect(Collectors.joining(",\n ", "[", "]"));
		} else if (value instanceof Record record) {
			return record.getClass().getSimpleName() + Stream.of(record.getClass().getRecordComponents())
					.map(component -> component.getName() + " " + plain(get(component, record))).collect(Collectors.joining(", ", "(", ")"));
		}
		return String.valueOf(value);
	}

	private static Object get(RecordComponent component, Record record) {
		try {
			return component.getAccessor().invoke(record);
		} catch (IllegalAccessException | InvocationTargetException e) {
			throw new IllegalStateException(e);
		}
	}

	@Test
	void lawsOfChainsAreNotWrittenTwice() throws IOException {
		for (Path path : Samples.all()) {
			RuleBase rules = RuleProject.open(path).snapshot().rules();
			long ofChains = rules.chains().stream().mapToLong(chain -> chain.laws().size()).sum();
			assertEquals(rules.laws().stream().map(Law::title).count() - ofChains, new RuleWriter(rules).laws().size(), path::toString);
		}
	}
}
