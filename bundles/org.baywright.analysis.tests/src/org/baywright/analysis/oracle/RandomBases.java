package org.baywright.analysis.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.baywright.model.Chain;
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

/** Makes random rule bases from a seed. Every atom stands on a line of its own, so that a line is an atom. */
final class RandomBases {

	/**
	 * How large and how wild.
	 *
	 * @param wide whether conditions and laws are of several parts, outcomes may prove nothing, and families may lack a
	 *            module or a trait
	 */
	record Shape(int families, int signs, int tests, int faults, int rules, int laws, boolean absence, boolean loops,
			boolean wide) {
		Shape(int families, int signs, int tests, int faults, int rules, int laws, boolean absence, boolean loops) {
			this(families, signs, tests, faults, rules, laws, absence, loops, false);
		}
	}

	private final Random random;
	private static final List<CodeReading> READINGS = List.of(CodeReading.PRESENT, CodeReading.ABSENT, CodeReading.UNREAD, CodeReading.MISSING);

	private final Shape shape;
	private int line;
	private List<CodeReading> readings = READINGS;
	private boolean withChain;

	RandomBases(long seed, Shape shape) {
		random = new Random(seed);
		this.shape = shape;
	}

	/** Lets rules ask for the states of codes too, which makes more situations than can be listed quickly in all bases. */
	RandomBases states(boolean states) {
		readings = states ? List.of(CodeReading.values()) : READINGS;
		return this;
	}

	/** Adds a chain along the tests that measure, with what follows from it. */
	RandomBases chains(boolean chains) {
		withChain = chains;
		return this;
	}

	/** The faults of the part lie along the tests that measure, one or none before each; what is left over lies behind them. */
	private void chain(RuleBase.Builder base, List<Fault> faults) {
		List<Chain.Point> points = new ArrayList<>();
		List<String> left = new ArrayList<>(faults.stream().map(Fault::name).toList());
		for (Test test : base.tests) {
			if (test.domain() instanceof Domain.Quantity) {
				List<String> here = left.isEmpty() || random.nextInt(4) == 0 ? List.of() : List.of(left.remove(0));
				points.add(new Chain.Point(test.name(), test.title(), ValueSet.Band.atLeast(BigDecimal.valueOf(1 + random.nextInt(3))), here, at()));
			}
		}
		if (points.size() < 2) {
			return;
		}
		List<Condition> given = random.nextBoolean() ? List.of() : List.of(new Condition.SignIs("s0", true, at()));
		Chain chain = new Chain("line", "Line", random.nextBoolean() ? Scope.EVERY : new Scope(List.of("f0"), List.of(), Optional.empty(), at()), given,
				points, left, new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.NONE, ""), Optional.empty()), at());
		base.chains.add(chain);
		base.laws.addAll(chain.laws());
		base.rules.addAll(chain.rules());
	}

	RuleBase next() {
		line = 0;
		RuleBase.Builder base = new RuleBase.Builder("random");
		base.families.add(new Family("platform", "Platform", Optional.empty(), true, List.of(), List.of(), at()));
		boolean system = shape.families() > 1 && random.nextBoolean();
		if (system) {
			base.families.add(new Family("door", "Door", Optional.empty(), List.of(), Family.Kind.SYSTEM, List.of(), List.of(), List.of(),
					at()));
		}
		// no vehicle has this value of the trait, but rules may ask for it
		base.families.add(new Family("museum", "Museum", Optional.empty(), true,
				List.of(new Trait("engine", "", names(List.of("steam")), at())), List.of(), at()));
		for (int i = 0; i < shape.families(); i++) {
			List<Trait> traits = new ArrayList<>();
			if (i == 0 || !shape.wide() || random.nextInt(3) > 0) {
				traits.add(new Trait("engine", "", names(i == 0 ? List.of("diesel", "petrol") : List.of("diesel", "petrol", "gas")),
						at()));
			}
			if (random.nextBoolean()) {
				traits.add(new Trait("built", "year", quantity(2018, 2019), at()));
			}
			List<String> systems = system && random.nextBoolean() ? List.of("door") : List.of();
			base.families.add(new Family("f" + i, "Family " + i, Optional.of("platform"), systems, Family.Kind.VEHICLES, traits,
					List.of(), List.of(), at()));
		}
		List<String> fitted = shape.wide() && random.nextBoolean() ? List.of("f" + random.nextInt(shape.families())) : List.of();
		base.modules.add(new Module("bcm", "Body module", fitted, List.of(), at()));
		base.codes.add(new Code("low", "Low supply", "bcm", new org.baywright.model.code.RawCode("1"), at()));
		for (int i = 0; i < shape.signs(); i++) {
			base.signs.add(new Sign("s" + i, "Sign " + i, scope(), random.nextInt(4) == 0, List.of(), at()));
		}
		for (int i = 0; i < shape.tests(); i++) {
			Domain domain = i % 2 == 0 ? i % 4 == 0 ? beyond(2) : quantity(0, 3) : names(List.of("lit", "dim", "dark"));
			base.tests.add(new Test("t" + i, "Test " + i, scope(), domain, Optional.empty(), Optional.empty(), Optional.empty(), List.of(), List.of(), List.of(), List.of(),
					BigDecimal.ONE, BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), List.of(), at()));
		}
		List<Fault> faults = new ArrayList<>();
		for (int i = 0; i < shape.faults(); i++) {
			faults.add(new Fault("p.f" + i, "Fault " + i, "p", i, at()));
		}
		base.parts.add(new Part("p", "Part", List.of(), faults, at()));
		if (shape.faults() > 1 && random.nextInt(3) == 0) {
			base.exclusives.add(new Exclusive(List.of("p.f0", "p.f1"), at()));
		}
		for (int i = 0; i < shape.laws(); i++) {
			if (random.nextInt(3) > 0) {
				base.laws.add(shape.wide() ? new Law("law " + i, List.of(), lawful(0), lawful(0), at())
						: new Law("law " + i, List.of(), atom(false, 0), atom(false, 0), at()));
			}
		}
		if (withChain) {
			chain(base, faults);
		}
		for (int i = 0; i < shape.rules(); i++) {
			base.rules.add(rule(i, base));
			if (i > 0 && random.nextInt(9) == 0) {
				base.rules.add(renamed(base.rules.get(random.nextInt(i)), "copy" + i));
			}
		}
		return base.build();
	}

	/** Returns the base with the same rules and laws and one thing declared otherwise that they speak of. */
	RuleBase redeclared(RuleBase base, int edit) {
		RuleBase.Builder other = new RuleBase.Builder(base.name()).add(base);
		switch (edit) {
		case 0 -> other.tests.replaceAll(test -> test.domain() instanceof Domain.Quantity ? with(test, test.domain().equals(quantity(0, 3)) ? quantity(0, 2)
				: beyond(3)) : test);
		case 1 -> other.tests.replaceAll(test -> test.domain() instanceof Domain.Names
				? with(test, names(List.of("dark", "lit", "dim", "dull")))
				: test);
		case 2 -> other.modules.replaceAll(
				module -> new Module(module.name(), module.title(), List.of("f0"), module.answersIn(), module.span()));
		default -> other.signs.replaceAll(sign -> new Sign(sign.name(), sign.title(), sign.scope(), !sign.intermittent(), List.of(), sign.span()));
		}
		return other.build();
	}

	/** Returns for which vehicles a sign or a test is: mostly for all. */
	private Scope scope() {
		if (random.nextInt(5) > 0) {
			return Scope.EVERY;
		}
		String family = "f" + random.nextInt(shape.families());
		boolean except = random.nextBoolean();
		return switch (random.nextInt(3)) {
		case 0 -> new Scope(except ? List.of() : List.of(family), except ? List.of(family) : List.of(), Optional.empty(), at());
		case 1 -> new Scope(List.of(), List.of(), Optional.of(traitAtom()), at());
		default -> new Scope(List.of(), List.of(), Optional.of(new Condition.Not(traitAtom(), at())), at());
		};
	}

	private static Test with(Test test, Domain domain) {
		return new Test(test.name(), test.title(), test.scope(), domain, test.seenWith(), test.part(), test.place(), test.pictures(), test.tools(), test.states(), test.prepare(), test.takes(),
				test.cost(), test.skill(), test.fits(), test.disturbs(), test.cautions(), test.span());
	}

	private Span at() {
		line++;
		return new Span("random.bay", line, 1, line, 2, line, 1);
	}

	private static Rule renamed(Rule rule, String name) {
		return new Rule(name, name, rule.scope(), rule.given(), rule.states(), rule.test(), rule.outcomes(),
				rule.provenance(), rule.testSpan(), rule.span());
	}

	private static Domain names(List<String> names) {
		return new Domain.Names(names.stream().map(name -> new NamedValue(name, name, Span.NONE)).toList());
	}

	private static Domain quantity(int low, int high) {
		return new Domain.Quantity("V", BigDecimal.valueOf(low), BigDecimal.valueOf(high), BigDecimal.ONE);
	}

	/** As many values as 0 to 3, the first and the last of which are shown beyond the range. */
	private static Domain beyond(int most) {
		return new Domain.Quantity("V", BigDecimal.ONE, BigDecimal.valueOf(most), BigDecimal.ONE, Optional.of(new NamedValue("lo", "lo", Span.NONE)),
				Optional.of(new NamedValue("ol", "ol", Span.NONE)));
	}

	private Rule rule(int number, RuleBase.Builder base) {
		Span span = at();
		List<Condition> given = new ArrayList<>();
		int conditions = random.nextInt(3);
		for (int i = 0; i < conditions; i++) {
			given.add(condition(number, 0));
		}
		Optional<Condition> where = random.nextInt(4) == 0 ? Optional.of(traitAtom()) : Optional.empty();
		List<String> families = shape.families() > 1 && random.nextInt(3) == 0
				? List.of(base.families.get(random.nextInt(base.families.size())).name())
				: List.of();
		Scope scope = new Scope(families, List.of(), where, at());
		List<Outcome> outcomes = new ArrayList<>();
		Optional<String> test = Optional.empty();
		if (shape.tests() > 0 && random.nextInt(3) > 0) {
			int t = random.nextInt(shape.tests());
			test = Optional.of("t" + t);
			int branches = 1 + random.nextInt(2);
			for (int i = 0; i < branches; i++) {
				outcomes.add(new Outcome("on " + i, Optional.of(values(t)), true, conclusions(number), at()));
			}
		} else {
			outcomes.add(new Outcome("then", Optional.empty(), true, conclusions(number), at()));
		}
		return new Rule("r" + number, "Rule " + number, scope, given, List.of(), test, outcomes,
				new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.NONE, ""), Optional.empty()), span,
				span);
	}

	private List<Conclusion> conclusions(int rule) {
		List<Conclusion> all = new ArrayList<>();
		int count = 1 + random.nextInt(2);
		if (shape.wide() && random.nextInt(6) == 0) {
			return List.of(new Conclusion.Nothing(at()));
		}
		for (int i = 0; i < count; i++) {
			if (random.nextInt(8) == 0) {
				all.add(new Conclusion.Refers("team " + random.nextInt(2), at()));
			} else {
				all.add(new Conclusion.OnFault(VerdictKind.values()[random.nextInt(3)], "p.f" + faultFor(rule, 1), at()));
			}
		}
		return all;
	}

	/** Without loops, later rules speak of later faults, and look at earlier ones only. */
	private int faultFor(int rule, int extra) {
		if (shape.loops()) {
			return random.nextInt(shape.faults());
		}
		int most = Math.max(1, Math.min(shape.faults(), (rule + extra) * shape.faults() / Math.max(1, shape.rules())));
		int least = Math.max(0, most - 2);
		return extra == 0 ? random.nextInt(Math.max(1, least)) : least + random.nextInt(most - least);
	}

	/** A condition of a law; one without parts leaves nothing to be decided. */
	private Condition lawful(int depth) {
		return switch (depth < 2 ? random.nextInt(8) : 7) {
		case 0 -> new Condition.Or(List.of(lawful(depth + 1), lawful(depth + 1)), at());
		case 1 -> new Condition.And(List.of(lawful(depth + 1), lawful(depth + 1)), at());
		case 2 -> new Condition.Not(lawful(depth + 1), at());
		default -> atom(false, 0);
		};
	}

	private Condition condition(int rule, int depth) {
		int pick = random.nextInt(12);
		if (depth < 2 && pick == 0) {
			return new Condition.Or(List.of(condition(rule, depth + 1), condition(rule, depth + 1)), at());
		} else if (depth < 2 && pick == 1) {
			return new Condition.And(List.of(condition(rule, depth + 1), condition(rule, depth + 1)), at());
		} else if (depth < 2 && pick == 2 && shape.wide() && shape.absence()) {
			return new Condition.Not(condition(rule, depth + 1), at());
		} else if (pick == 2) {
			return new Condition.Not(atom(false, rule), at());
		}
		return atom(true, rule);
	}

	private Condition traitAtom() {
		return new Condition.TraitIs("engine",
				new ValueSet.Choices(List.of(random.nextBoolean() ? "diesel" : random.nextInt(4) == 0 ? "steam" : "petrol")),
				at());
	}

	private Condition atom(boolean verdicts, int rule) {
		switch (random.nextInt(verdicts ? 9 : 6)) {
		case 0:
			return traitAtom();
		case 1:
			return new Condition.CodeIs("low", readings.get(random.nextInt(readings.size())), at());
		case 2:
			return new Condition.ModuleIs("bcm", random.nextBoolean(), at());
		case 3:
			if (shape.tests() > 0) {
				int test = random.nextInt(shape.tests());
				return new Condition.TestIs("t" + test, values(test), at());
			}
			return new Condition.SignIs("s0", true, at());
		case 4, 5:
			return new Condition.SignIs("s" + random.nextInt(shape.signs()), random.nextInt(4) > 0, at());
		case 6:
			if (shape.absence()) {
				return new Condition.Unexplained("s" + random.nextInt(shape.signs()), at());
			}
			return new Condition.SignIs("s" + random.nextInt(shape.signs()), true, at());
		default:
			if (!shape.loops() && rule * shape.faults() / Math.max(1, shape.rules()) < 1) {
				return new Condition.SignIs("s" + random.nextInt(shape.signs()), true, at());
			}
			return new Condition.VerdictIs("p.f" + faultFor(rule, 0), VerdictKind.values()[random.nextInt(3)],
					!shape.absence() || random.nextInt(3) > 0, at());
		}
	}

	private ValueSet values(int test) {
		if (test % 2 == 1) {
			String first = List.of("lit", "dim", "dark").get(random.nextInt(3));
			return random.nextInt(4) == 0 ? new ValueSet.Except(new ValueSet.Choices(List.of(first)))
					: new ValueSet.Choices(List.of(first));
		}
		int low = random.nextInt(4);
		int high = low + random.nextInt(3);
		int pick = random.nextInt(6);
		if (pick == 5 && test % 4 == 0) {
			return new ValueSet.Choices(List.of(random.nextInt(3) > 0 ? "ol" : "lo"));
		}
		return switch (pick) {
		case 0 -> ValueSet.Band.below(BigDecimal.valueOf(low));
		case 1 -> ValueSet.Band.above(BigDecimal.valueOf(low));
		case 2 -> ValueSet.Band.atLeast(new BigDecimal(low + ".5"));
		case 3 -> new ValueSet.Union(List.of(ValueSet.Band.atMost(BigDecimal.ZERO),
				ValueSet.Band.closed(BigDecimal.valueOf(low), BigDecimal.valueOf(high))));
		default -> ValueSet.Band.closed(BigDecimal.valueOf(low), BigDecimal.valueOf(high));
		};
	}
}
