package org.baywright.analysis.generate;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;

import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Exclusive;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Law;
import org.baywright.model.Module;
import org.baywright.model.NamedValue;
import org.baywright.model.Outcome;
import org.baywright.model.Part;
import org.baywright.model.Provenance;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Sign;
import org.baywright.model.Skill;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.Trait;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;
import org.baywright.model.VerifyStep;
import org.baywright.model.code.J1939Code;

/**
 * Makes rule bases shaped like the example projects. They are made of topics: one complaint, one part, a chain of three
 * to six tests from cheap to dear, each confirming its fault or clearing it and passing the suspicion on, and an honest
 * end. A topic is shared by up to four families; about every third one first asks for the supply voltage, a test that
 * the families of a platform have in common. About 15 % of the tests are measured in bands, the others have named results.
 */
public final class RuleBaseGenerator {

	private static final int TOPICS_PER_FAMILY = 12;
	private static final int MOST_SHARING = 4;

	private final Random random;
	private final int seedEvery;
	private final RuleBase.Builder base = new RuleBase.Builder("generated");
	private final TreeSet<String> seeded = new TreeSet<>();
	private String file = "";
	private int line;

	private RuleBaseGenerator(long seed, int seedEvery) {
		random = new Random(seed);
		this.seedEvery = seedEvery;
	}

	/**
	 * Makes a rule base.
	 *
	 * @param rules about how many rules; never fewer
	 * @param seedEvery one topic in so many holds an anomaly: a multiple of 5; 0 for none
	 * @param seed the same seed makes the same rule base
	 */
	public static GeneratedBase generate(int rules, int seedEvery, long seed) {
		RuleBaseGenerator generator = new RuleBaseGenerator(seed, seedEvery);
		generator.fill(rules);
		return new GeneratedBase(generator.base.build(), generator.seeded);
	}

	private void fill(int rules) {
		int topics = Math.max(1, rules / 8);
		int families = Math.max(1, topics * (MOST_SHARING + 1) / 2 / TOPICS_PER_FAMILY);
		for (int i = 0; i < families; i++) {
			at("families.bay");
			List<Trait> traits = List.of(
					new Trait("engine", "", names("diesel", "petrol", i % 3 == 0 ? "gas" : "electric"), next()),
					new Trait("built", "year", quantity("", 2012 + i % 4, 2024, 1, 0), next()));
			base.families.add(new Family("family" + i, "Family " + i, Optional.empty(), false, traits, List.of(), next()));
		}
		for (int platform = 0; platform * MOST_SHARING < families; platform++) {
			at("platform" + platform + ".bay");
			base.tests.add(test("supply" + platform, "Supply voltage", quantity("V", 0, 18, 1, 1)));
			List<String> reach = new ArrayList<>();
			for (int i = platform * MOST_SHARING; i < Math.min(families, (platform + 1) * MOST_SHARING); i++) {
				reach.add("family" + i);
			}
			rule("low_supply" + platform, new Scope(reach, List.of(), Optional.empty(), next()), List.of(), "supply" + platform,
					List.of(outcome("on", ValueSet.Band.below(new BigDecimal("11.5")), new Conclusion.Nothing(next()))));
		}
		for (int topic = 0; base.rules.size() < rules; topic++) {
			topic(topic, families);
		}
	}

	private void topic(int number, int families) {
		String name = "topic" + number;
		at(name + ".bay");
		int platform = random.nextInt((families + MOST_SHARING - 1) / MOST_SHARING);
		List<String> reach = new ArrayList<>();
		int sharing = 1 + random.nextInt(MOST_SHARING);
		for (int i = 0; i < sharing && platform * MOST_SHARING + i < families; i++) {
			reach.add("family" + (platform * MOST_SHARING + i));
		}
		Scope scope = new Scope(reach, List.of(), Optional.empty(), next());
		int steps = 3 + random.nextInt(4);
		int flaw = seedEvery > 0 && number % seedEvery == 0 ? number / seedEvery % Flaw.values().length : -1;
		declare(name, steps, number);
		// nothing can be proved about what hangs together with a circle
		boolean asksSupply = random.nextInt(3) == 0 && flaw != Flaw.CIRCLE.ordinal();
		List<Condition> complaint = new ArrayList<>(List.of(sign(name)));
		if (asksSupply) {
			complaint.add(new Condition.TestIs("supply" + platform, ValueSet.Band.atLeast(new BigDecimal("11.5")), next()));
		}
		rule(name + "_start", scope, complaint, null, List.of(then(says(VerdictKind.SUSPECTED, fault(name, 0)))));
		rule(name + "_code", scope,
				List.of(sign(name), new Condition.CodeIs(name + "_code", CodeReading.PRESENT, next())), null,
				List.of(then(says(VerdictKind.SUSPECTED, fault(name, steps - 1)))));
		for (int step = 0; step < steps; step++) {
			chainStep(name, scope, step, steps);
		}
		if (flaw != Flaw.GAP.ordinal()) {
			rule(name + "_end", scope, List.of(new Condition.Unexplained(name + "_sign", next())), null,
					List.of(then(new Conclusion.Refers("the maker's technical line", next()))));
		}
		if (flaw >= 0) {
			spoil(Flaw.values()[flaw], name, scope);
		}
	}

	private void declare(String name, int steps, int number) {
		base.signs.add(new Sign(name + "_sign", "Complaint " + number, false, next()));
		base.modules.add(new Module(name + "_module", "Module " + number, List.of(), List.of(), next()));
		base.codes.add(new Code(name + "_code", "Code " + number, name + "_module",
				new J1939Code(520_192 + number % 4096, number % 22), next()));
		List<Fault> faults = new ArrayList<>();
		for (int step = 0; step < steps; step++) {
			faults.add(new Fault(fault(name, step), "Fault " + number + "." + step, name, random.nextInt(40), next()));
			boolean measured = random.nextInt(100) < 15;
			base.tests.add(test(name + "_test" + step, "Test " + number + "." + step,
					measured ? quantity("V", 0, 18, 1, 1) : names("good", "bad")));
			base.repairs.add(new Repair(name + "_repair" + step, "Repair", List.of(fault(name, step)), Optional.empty(), List.of("Replace it"),
					List.of(), List.of(), BigDecimal.TEN, BigDecimal.ONE, Skill.TRAINED, List.of(), List.of(), true,
					List.of(new VerifyStep.RepeatWhatConfirmed(next())), next()));
		}
		base.parts.add(new Part(name, "Part " + number, List.of(), faults, next()));
		if (number % 10 == 3) {
			base.exclusives.add(new Exclusive(List.of(fault(name, 0), fault(name, 1)), next()));
			base.laws.add(new Law("Law of " + name, List.of(), new Condition.CodeIs(name + "_code", CodeReading.PRESENT, next()),
					sign(name), next()));
		}
	}

	private void chainStep(String name, Scope scope, int step, int steps) {
		List<Condition> given = new ArrayList<>();
		if (step == 0) {
			given.add(verdict(fault(name, 0), VerdictKind.SUSPECTED));
		} else {
			given.add(verdict(fault(name, step - 1), VerdictKind.CLEARED));
		}
		List<Conclusion> good = new ArrayList<>(List.of(says(VerdictKind.CLEARED, fault(name, step))));
		Test test = base.tests.stream().filter(found -> found.name().equals(name + "_test" + step)).findFirst().orElseThrow();
		ValueSet bad;
		ValueSet fine;
		if (test.domain() instanceof Domain.Quantity) {
			BigDecimal limit = BigDecimal.valueOf(60 + random.nextInt(60), 1);
			bad = ValueSet.Band.below(limit);
			fine = ValueSet.Band.atLeast(limit);
		} else {
			bad = new ValueSet.Choices(List.of("bad"));
			fine = new ValueSet.Choices(List.of("good"));
		}
		rule(name + "_step" + step, scope, given, test.name(),
				List.of(new Outcome("on bad", Optional.of(bad), true, List.of(says(VerdictKind.CONFIRMED, fault(name, step))), next()),
						new Outcome("on good", Optional.of(fine), true, good, next())));
	}

	// ---- anomalies ---------------------------------------------------------------------------------------------

	private enum Flaw {
		CONTRADICTION, DEAD, DUPLICATE, REDUNDANT, GAP, UNREACHABLE, CIRCLE
	}

	private void spoil(Flaw flaw, String name, Scope scope) {
		String rule = name + "_flaw";
		switch (flaw) {
		case CONTRADICTION -> {
			rule(rule, scope, List.of(sign(name)), name + "_test0", List.of(outcome("on", all(name + "_test0"),
					says(VerdictKind.CLEARED, fault(name, 0)))));
			seeded.add("contradiction:" + fault(name, 0) + "/" + name + "_step0/" + rule);
		}
		case DEAD -> {
			rule(rule, scope, List.of(sign(name), new Condition.SignIs(name + "_sign", false, next())), null,
					List.of(then(says(VerdictKind.SUSPECTED, fault(name, 1)))));
			seeded.add("dead-rule:" + rule);
		}
		case DUPLICATE -> {
			rule(rule, scope, List.of(new Condition.And(List.of(new Condition.CodeIs(name + "_code", CodeReading.PRESENT, next()),
					sign(name)), next())), null, List.of(then(says(VerdictKind.SUSPECTED, lastFault(name)))));
			seeded.add("duplicate-rule:" + name + "_code/" + rule);
		}
		case REDUNDANT -> {
			rule(rule, scope, List.of(sign(name), new Condition.CodeIs(name + "_code", CodeReading.PRESENT, next()),
					new Condition.TraitIs("engine", new ValueSet.Choices(List.of("diesel")), next())), null,
					List.of(then(says(VerdictKind.SUSPECTED, lastFault(name)))));
			seeded.add("redundant-rule:" + rule);
		}
		case UNREACHABLE -> {
			rule(rule, scope, List.of(sign(name), new Condition.Or(List.of(
					new Condition.CodeIs(name + "_code", CodeReading.ABSENT, next()),
					verdict(fault(name, 1), VerdictKind.SUSPECTED)), next())), null,
					List.of(then(says(VerdictKind.SUSPECTED, fault(name, 2)))));
			seeded.add("unreachable-conclusion:" + fault(name, 1) + "/suspected");
		}
		case CIRCLE -> {
			rule(rule, scope, List.of(sign(name), new Condition.VerdictIs(fault(name, 0), VerdictKind.CONFIRMED, false, next())),
					name + "_test0", List.of(outcome("on", all(name + "_test0"), says(VerdictKind.CONFIRMED, fault(name, 0)))));
			seeded.add("circle:" + fault(name, 0) + "/" + rule);
		}
		case GAP -> seeded.add("gap:" + name + "_sign");
		}
	}

	private String lastFault(String name) {
		int steps = (int) base.tests.stream().filter(test -> test.name().startsWith(name + "_test")).count();
		return fault(name, steps - 1);
	}

	private ValueSet all(String test) {
		Domain domain = base.tests.stream().filter(found -> found.name().equals(test)).findFirst().orElseThrow().domain();
		return domain instanceof Domain.Quantity ? ValueSet.Band.atLeast(BigDecimal.ZERO)
				: new ValueSet.Choices(List.of("good", "bad"));
	}

	// ---- pieces ------------------------------------------------------------------------------------------------

	private void at(String name) {
		file = name;
		line = 0;
	}

	private Span next() {
		line++;
		return new Span(file, line, 1, line, 20, line * 40, 19);
	}

	private static String fault(String topic, int step) {
		return topic + ".fault" + step;
	}

	private Condition sign(String topic) {
		return new Condition.SignIs(topic + "_sign", true, next());
	}

	private Condition verdict(String fault, VerdictKind kind) {
		return new Condition.VerdictIs(fault, kind, true, next());
	}

	private Conclusion says(VerdictKind kind, String fault) {
		return new Conclusion.OnFault(kind, fault, next());
	}

	private Outcome then(Conclusion conclusion) {
		return new Outcome("then", Optional.empty(), true, List.of(conclusion), next());
	}

	private Outcome outcome(String label, ValueSet values, Conclusion conclusion) {
		return new Outcome(label, Optional.of(values), true, List.of(conclusion), next());
	}

	private void rule(String name, Scope scope, List<Condition> given, String test, List<Outcome> outcomes) {
		Span span = next();
		base.rules.add(new Rule(name, name, scope, given, List.of(), Optional.ofNullable(test), outcomes,
				new Provenance(Optional.of("Generator"), Optional.of(LocalDate.of(2026, 1, 1)),
						new Source(Source.Kind.PRACTICE, ""), Optional.empty()),
				span, span));
	}

	private Test test(String name, String title, Domain domain) {
		return new Test(name, title, domain, Optional.empty(), List.of(), List.of(), List.of(), BigDecimal.TEN,
				BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), List.of(), next());
	}

	private static Domain names(String... names) {
		List<NamedValue> values = new ArrayList<>();
		for (String name : names) {
			values.add(new NamedValue(name, name, Span.NONE));
		}
		return new Domain.Names(values);
	}

	private static Domain quantity(String unit, int low, int high, int step, int scale) {
		return new Domain.Quantity(unit, BigDecimal.valueOf(low), BigDecimal.valueOf(high), BigDecimal.valueOf(step, scale));
	}
}
