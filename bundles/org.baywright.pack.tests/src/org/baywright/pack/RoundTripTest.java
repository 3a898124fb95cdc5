package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;

import org.baywright.model.CodeReading;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Meaning;
import org.baywright.model.NamedValue;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Skill;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;
import org.baywright.model.VerifyStep;
import org.baywright.model.code.CodeText;
import org.baywright.pack.format.RulesForm;
import org.baywright.pack.json.CanonicalJson;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.json.JsonText;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RoundTripTest {

	static RuleBase again(RuleBase base) throws PackException {
		byte[] json = CanonicalJson.bytes(RulesForm.write(base));
		RuleBase read = RulesForm.read(JsonIn.of("rules.json", JsonText.read("rules.json", json), true)).build();
		assertArrayEquals(json, CanonicalJson.bytes(RulesForm.write(read)));
		return read;
	}

	@Test
	void whatWasWrittenIsRead() throws PackException {
		assertEquals(Records.tell(RulesForm.sorted(Tarn.rules())), Records.tell(again(Tarn.rules())));
	}

	@ParameterizedTest
	@ValueSource(classes = { Domain.class, ValueSet.class, Condition.class, Conclusion.class, VerifyStep.class, Reading.class,
			CodeText.class })
	void theSampleHasEveryKind(Class<?> type) {
		Set<Class<?>> used = Records.types(Tarn.rules());
		for (Class<?> kind : type.getPermittedSubclasses()) {
			if (kind.isSealed()) {
				theSampleHasEveryKind(kind);
			} else {
				assertTrue(used.contains(kind), "the sample rules have no " + kind);
			}
		}
	}

	@Test
	void elementsThatStandNowhereKeepTheirOrder() throws PackException {
		RuleBase.Builder base = new RuleBase.Builder("made");
		for (String name : List.of("z", "a", "m")) {
			base.rules.add(new Rule(name, name, new Scope(List.of(), List.of(), Optional.empty(), Span.NONE), List.of(),
					List.of(), Optional.empty(), List.of(), new Provenance(Optional.empty(), Optional.empty(),
							new Source(Source.Kind.NONE, ""), Optional.empty()), Span.NONE, Span.NONE));
		}
		RuleBase made = base.build();
		assertEquals(Records.tell(made), Records.tell(again(made)));
	}

	@Test
	void randomRulesAreReadAsWritten() throws PackException {
		Random random = new Random(2020);
		for (int i = 0; i < 300; i++) {
			RuleBase.Builder base = new Tarn().builder();
			base.rules.clear();
			base.reviews.clear();
			base.remarks.clear();
			List<String> words = Stream.generate(() -> text(random)).limit(5).toList();
			base.tests.add(words(words));
			for (int r = 0; r < 10; r++) {
				base.rules.add(rule(random, words, "r" + r, r + 1));
			}
			RuleBase written = base.build();
			RuleBase read = again(written);
			assertEquals(Records.tell(RulesForm.sorted(written)), Records.tell(read));
			for (Rule rule : written.rules()) {
				assertEquals(Meaning.text(rule), Meaning.text(read.rule(rule.name()).orElseThrow()));
			}
		}
	}

	private static org.baywright.model.Test words(List<String> words) {
		return new org.baywright.model.Test("words", "Words", new Domain.Names(words.stream().map(word -> new NamedValue(word, word, Span.NONE)).toList()),
				Optional.empty(), List.of(), List.of(), List.of(), BigDecimal.ONE, BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(),
				List.of(), Span.NONE);
	}

	private static Rule rule(Random random, List<String> words, String name, int line) {
		Span span = new Span("r.bay", line, 1, line, 1, 0, 0);
		boolean test = random.nextBoolean();
		List<Outcome> outcomes = new ArrayList<>();
		for (int i = test ? random.nextInt(4) : 1; i > 0; i--) {
			Optional<ValueSet> values = test ? Optional.of(values(random, words, 2)) : Optional.empty();
			outcomes.add(new Outcome(text(random), values, random.nextBoolean(), List.of(
					new Conclusion.OnFault(VerdictKind.values()[random.nextInt(3)], "battery.flat", span),
					new Conclusion.Refers(text(random), span)), span));
		}
		List<Condition> given = new ArrayList<>();
		for (int i = random.nextInt(4); i > 0; i--) {
			given.add(condition(random, words, 3, span));
		}
		return new Rule(name, text(random), new Scope(List.of("t3"), List.of(), Optional.of(condition(random, words, 1, span)), span),
				given, List.of(), test ? Optional.of("words") : Optional.empty(), outcomes,
				new Provenance(Optional.of(text(random)), Optional.empty(), new Source(Source.Kind.MEMORY, ""),
						Optional.of(text(random))),
				span, span);
	}

	private static Condition condition(Random random, List<String> words, int depth, Span span) {
		switch (random.nextInt(depth == 0 ? 6 : 9)) {
		case 0:
			return new Condition.TraitIs("built", values(random, List.of(), 2), span);
		case 1:
			return new Condition.SignIs("stalls", random.nextBoolean(), span);
		case 2:
			return random.nextBoolean() ? new Condition.TestIs("rest_voltage", values(random, List.of(), 2), span)
					: new Condition.TestIs("words", values(random, words, 2), span);
		case 3:
			return new Condition.CodeIs("tilt", CodeReading.values()[random.nextInt(4)], span);
		case 4:
			return new Condition.ModuleIs("bcm", random.nextBoolean(), span);
		case 5:
			return new Condition.VerdictIs("lamp.blown", VerdictKind.values()[random.nextInt(3)], random.nextBoolean(), span);
		case 6:
			return new Condition.Not(condition(random, words, depth - 1, span), span);
		case 7:
			return new Condition.Or(parts(random, words, depth, span), span);
		default:
			return new Condition.And(parts(random, words, depth, span), span);
		}
	}

	private static List<Condition> parts(Random random, List<String> words, int depth, Span span) {
		List<Condition> parts = new ArrayList<>();
		for (int i = random.nextInt(4); i > 0; i--) {
			parts.add(condition(random, words, depth - 1, span));
		}
		return parts;
	}

	private static ValueSet values(Random random, List<String> words, int depth) {
		switch (depth == 0 ? 0 : random.nextInt(5)) {
		case 1:
			return new ValueSet.Except(values(random, words, depth - 1));
		case 2:
			return new ValueSet.Union(List.of(values(random, words, depth - 1), values(random, words, depth - 1)));
		case 3:
			return new ValueSet.Choices(words.subList(0, Math.min(words.size(), random.nextInt(3))));
		default:
			return new ValueSet.Band(limit(random), random.nextBoolean(), limit(random), random.nextBoolean());
		}
	}

	private static Optional<BigDecimal> limit(Random random) {
		return random.nextInt(4) == 0 ? Optional.empty()
				: Optional.of(BigDecimal.valueOf(random.nextLong() % 1_000_000_000_000L, random.nextInt(25) - 3));
	}

	/** Texts that JSON and HTML must escape, of all planes. */
	private static String text(Random random) {
		StringBuilder text = new StringBuilder();
		String some = "aZ \"\\/<>&'\n\t\u0001\u007F\u0080\u2028é€";
		for (int i = random.nextInt(12); i > 0; i--) {
			text.append(some.charAt(random.nextInt(some.length())));
		}
		return text.append(Character.toString(0x1F602)).toString();
	}
}
