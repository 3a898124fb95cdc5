package org.baywright.presenter.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Named;
import org.baywright.model.RuleBase;
import org.baywright.presenter.Examples;
import org.baywright.presenter.search.Hit.Element;
import org.junit.jupiter.api.Test;

/** Rules are found by what they speak of, with a part of a name or title. */
class RuleSearchTest {

	private static final Set<Subject> ALL = EnumSet.allOf(Subject.class);
	private static final Pattern RULE = Pattern.compile("(?ms)^(?:rule|chain) (\\w+).*?^}");

	private static final RuleBase SMALL = Examples.rules("""
			sign no_start "Engine does not start"
			module ecm "Engine control module"
			code volts_low "Voltage low" on ecm = dtc P0562
			part battery "12 V battery" {
			  fault discharged "Low state of charge"
			}
			test rest_voltage "Battery voltage at rest" {
			  measures V 0 .. 16 step 0.1
			  at battery
			}
			base family tarn "Tarn T3 light van" {
			}
			family tarn_long "Long one" like tarn {
			}
			rule low_battery "Low at rest" {
			  for tarn
			  given no_start
			  run rest_voltage
			  expect at_least 12.4 V
			  below : confirms battery.discharged
			  because "It is so."
			  source memory
			  by "A. Author" on 2026-03-02
			}
			rule code_says "The module saw it" {
			  given volts_low present
			  then suspects battery.discharged
			  because "It is so."
			  source memory
			  by "B. Other" on 2026-03-02
			}
			law "No start without a battery" : when rest_voltage below 9 V then no_start
			job "Job 12" {
			  on tarn_long
			  found no_start, rest_voltage 11.2 V
			  was battery.discharged
			}
			""");

	private static List<String> found(String words, Subject... subjects) {
		Set<Subject> about = subjects.length == 0 ? ALL : Set.copyOf(Arrays.asList(subjects));
		return new RuleSearch(words, about).in(SMALL).stream().map(Hit::line).toList();
	}

	@Test
	void aPartOfATitleFindsTheThingAndAllThatSpeakOfIt() {
		String test = "test Battery voltage at rest";
		assertEquals(List.of(test, "rule Low at rest: " + test, "law No start without a battery: " + test, "job Job 12: " + test),
				found("VOLTAGE at", Subject.TEST));
		assertEquals(found("VOLTAGE at", Subject.TEST), found("  rest  volt ", Subject.TEST), "words stand in any order");
	}

	@Test
	void eachKindFindsWhatSpeaksOfIt() {
		assertEquals(List.of("sign Engine does not start", "rule Low at rest: sign Engine does not start",
				"law No start without a battery: sign Engine does not start", "job Job 12: sign Engine does not start"),
				found("not start", Subject.SIGN));
		assertEquals(List.of("fault Low state of charge", "rule Low at rest: fault Low state of charge",
				"rule The module saw it: fault Low state of charge", "job Job 12: fault Low state of charge"), found("charge", Subject.FAULT));
		assertEquals(List.of("code Voltage low (P0562)", "rule The module saw it: code Voltage low"), found("p0562", Subject.CODE));
		assertEquals(List.of("rule The module saw it: by B. Other"), found("other", Subject.AUTHOR));
		assertEquals(List.of("module Engine control module", "code Voltage low (P0562): module Engine control module",
				"rule The module saw it: module Engine control module"), found("ecm", Subject.MODULE));
		assertEquals(7, found("12 V", Subject.PART).size(), () -> found("12 V", Subject.PART).toString());
		assertEquals(List.of("family Long one", "rule Low at rest: family Long one", "job Job 12: family Long one"),
				found("tarn_long", Subject.FAMILY));
		assertEquals(List.of("law No start without a battery"), found("without", Subject.OTHER));
		assertEquals(List.of("job Job 12"), found("job", Subject.OTHER));
		assertEquals(List.of(), found("p0562", Subject.SIGN, Subject.TEST, Subject.FAULT, Subject.AUTHOR));
	}

	@Test
	void aToolFindsTheModulesAndTheWorkshopThatNeedIt() {
		RuleBase shop = Examples.rules("""
				tool scanner "Scan tool"
				tool meter "Meter"
				module ecm "Engine module" takes 3 min needs scanner
				workshop "Yard" { scan all takes 6 min needs scanner lacks meter }
				""");
		assertEquals(List.of("tool Scan tool", "module Engine module: tool Scan tool", "workshop Yard: tool Scan tool"),
				new RuleSearch("scan tool", ALL).in(shop).stream().map(Hit::line).toList());
		assertEquals(List.of("tool Meter", "workshop Yard: tool Meter"), new RuleSearch("meter", ALL).in(shop).stream().map(Hit::line).toList());
		assertEquals(List.of("workshop Yard"), new RuleSearch("yard", ALL).in(shop).stream().map(Hit::line).toList());
	}

	@Test
	void aHitLeadsToTheName() {
		Hit rule = new RuleSearch("low at rest", ALL).in(SMALL).get(0);
		assertEquals(Element.RULE, rule.element());
		assertEquals("low_battery".length(), rule.span().length());
	}

	@Test
	void saysWhatIsMissingAndWhatWasFound() {
		assertTrue(new RuleSearch("  ", ALL).refusal().orElseThrow().contains("Type"));
		assertTrue(new RuleSearch("volt", Set.of()).refusal().orElseThrow().contains("Choose"));
		assertTrue(new RuleSearch("volt", ALL).refusal().isEmpty());
		assertEquals(List.of(), new RuleSearch(" ", ALL).in(SMALL));
		assertEquals("\u201cvolt\u201d in the rules: 1 place", new RuleSearch(" volt ", ALL).headline(1));
		assertEquals("\u201cvolt\u201d in the rules: 2 places", new RuleSearch("volt", ALL).headline(2));
		assertTrue(new RuleSearch("volt", ALL).headline(0).startsWith("Nothing in the rules has to do with \u201cvolt\u201d."));
	}

	/** Oracle: the names that stand in a rule's text, outside of quotes. */
	@Test
	void findsTheRulesWhoseTextNamesTheThing() {
		for (String name : Examples.ALL) {
			RuleProject project = Examples.project(name);
			Snapshot texts = project.snapshot();
			int rules = 0;
			for (String word : List.of("volt", "no", "batt", "e", "lamp", "low", "open", "00")) {
				rules += compare(texts, Subject.SIGN, word, texts.rules().signs());
				rules += compare(texts, Subject.TEST, word, texts.rules().tests());
				rules += compare(texts, Subject.FAULT, word, texts.rules().faults());
			}
			assertTrue(rules > 50, name + ": " + rules);
		}
	}

	private static int compare(Snapshot texts, Subject subject, String word, List<? extends Named> all) {
		Set<String> names = all.stream().filter(named -> Stream.of(named.name(), named.title())
				.anyMatch(text -> text.toLowerCase(Locale.ROOT).contains(word))).map(Named::name).collect(Collectors.toSet());
		Set<String> expected = new TreeSet<>();
		for (String text : texts.sources().values()) {
			// a result of a test may be called like a sign
			Matcher rule = RULE.matcher(text.replaceAll("//[^\n]*", "").replaceAll("\"[^\"]*\"", "\"\"").replaceAll("(?m)^\\s*on .*?:", "")
					.replaceAll(" is \\S+", ""));
			while (rule.find()) {
				Set<String> spoken = Arrays.stream(rule.group().split("[^\\w.]+")).skip(2).collect(Collectors.toSet());
				if (spoken.stream().anyMatch(names::contains)) {
					expected.add(rule.group(1));
				}
			}
		}
		Set<String> found = new TreeSet<>();
		for (Hit hit : new RuleSearch(word, Set.of(subject)).in(texts.rules())) {
			if (hit.element() == Element.RULE) {
				String source = texts.sources().get(hit.span().file());
				found.add(source.substring(hit.span().offset(), hit.span().offset() + hit.span().length()));
			}
		}
		assertEquals(expected, found, subject + " " + word);
		return found.size();
	}
}
