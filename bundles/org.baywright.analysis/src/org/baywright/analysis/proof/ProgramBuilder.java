package org.baywright.analysis.proof;

import org.baywright.analysis.Verdict;
import org.baywright.analysis.Variable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.baywright.model.Code;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Law;
import org.baywright.model.Outcome;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Trait;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;

/** Makes a {@link Program} of rules and laws. */
final class ProgramBuilder {

	final RuleBase base;
	final String family;
	final List<Rule> rules;
	final List<Law> laws;
	final List<List<String>> exclusives;
	final List<Variable> variables = new ArrayList<>();
	final List<Optional<Domain>> domains = new ArrayList<>();
	final List<Cells> cells = new ArrayList<>();
	final List<Verdict> verdicts = new ArrayList<>();
	final List<Branch> branches = new ArrayList<>();
	final List<Program.LawFormula> lawFormulas = new ArrayList<>();
	final List<SourceLine> lines = new ArrayList<>();
	final List<Formula> unquiet = new ArrayList<>();
	private List<Limit> limits = List.of();
	private List<Condition> unquietConditions = List.of();
	final Map<Variable, Integer> numbers = new HashMap<>();
	final Map<Verdict, Integer> verdictNumbers = new HashMap<>();
	private final Map<SourceLine, Integer> lineNumbers = new HashMap<>();
	private final Ground ground;
	private final Map<Variable, Cells.Cutter> cutters;
	/** What rules and laws of this program speak of and vehicles of the family have. */
	private final Set<Variable> own = new HashSet<>();
	private Map<String, Set<String>> answering;

	/**
	 * @param base the rule base the rules are from
	 * @param family the vehicle family
	 * @param rules rules that reach the family
	 * @param laws laws that reach the family
	 * @param exclusives groups of faults of which one can be the cause
	 */
	ProgramBuilder(RuleBase base, String family, List<Rule> rules, List<Law> laws, List<List<String>> exclusives) {
		this(base, new Ground(base, base, family), family, rules, laws, exclusives, Answering.faultsBySign(rules));
	}

	/**
	 * @param ground what the findings are; two builders of the same one make programs that can be asked of the same vehicles
	 * @param answering for each sign that a rule calls unexplained the faults that answer it
	 */
	ProgramBuilder(RuleBase base, Ground ground, String family, List<Rule> rules, List<Law> laws, List<List<String>> exclusives,
			Map<String, Set<String>> answering) {
		this.base = base;
		this.ground = ground;
		cutters = ground.cutters;
		this.family = family;
		this.rules = List.copyOf(rules);
		this.laws = List.copyOf(laws);
		this.exclusives = List.copyOf(exclusives);
		this.answering = answering;
	}

	/** Adds conditions on traits under which other parts of the family cannot be quiet. */
	ProgramBuilder unquiet(List<Condition> conditions) {
		unquietConditions = conditions;
		return this;
	}

	/** Adds what laws of other parts of the family say about traits. */
	ProgramBuilder limits(List<Limit> told) {
		limits = told;
		return this;
	}

	Program build() {
		cutAll();
		return number();
	}

	/** Makes two programs of the same variables with the same cells. */
	static List<Program> beside(ProgramBuilder old, ProgramBuilder now) {
		old.cutAll();
		now.cutAll();
		return List.of(old.number(), now.number());
	}

	private Program number() {
		for (Map.Entry<Variable, Cells.Cutter> entry : new java.util.TreeMap<>(cutters).entrySet()) {
			numbers.put(entry.getKey(), variables.size());
			variables.add(entry.getKey());
			domains.add(ground.domain(entry.getKey()));
			cells.add(entry.getValue().cells());
		}
		Collection<Verdict> mentioned = new TreeSet<>();
		for (Rule rule : rules) {
			eachCondition(rule, condition -> collectVerdicts(condition, mentioned));
			for (Outcome outcome : rule.outcomes()) {
				for (Conclusion conclusion : outcome.conclusions()) {
					Verdict.of(conclusion).ifPresent(mentioned::add);
				}
			}
		}
		for (Verdict verdict : mentioned) {
			verdictNumbers.put(verdict, verdicts.size());
			verdicts.add(verdict);
		}
		for (int r = 0; r < rules.size(); r++) {
			compile(r, rules.get(r));
		}
		for (int i = 0; i < laws.size(); i++) {
			addLaw(laws.get(i), i, SourceLine.of(laws.get(i)));
		}
		limits.forEach(limit -> addLaw(limit.law(), Program.ELSEWHERE, limit.line()));
		Owner elsewhere = new Owner(Optional.empty(), Span.NONE);
		unquietConditions.forEach(condition -> unquiet.add(formula(condition, true, elsewhere)));
		return new Program(this);
	}

	// ---- values ------------------------------------------------------------------------------------------------

	private void cutAll() {
		BiConsumer<Variable, IndexSet> cut = this::cut;
		for (Rule rule : rules) {
			eachCondition(rule, condition -> eachAtom(condition, cut));
			rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream()).map(Verdict::of).flatMap(Optional::stream)
					.filter(verdict -> verdict.kind() == VerdictKind.CONFIRMED).forEach(verdict -> mends(verdict.fault())
							.forEach(repair -> repair.scope().where().ifPresent(where -> eachAtom(where, cut))));
			if (rule.test().isPresent()) {
				for (Outcome outcome : rule.outcomes()) {
					outcome.values().ifPresent(values -> {
						Variable test = new Variable(Variable.Kind.TEST, rule.test().get());
						domainOf(test).ifPresent(domain -> cut.accept(test, values.in(domain)));
					});
				}
			}
		}
		Stream.concat(laws.stream(), limits.stream().map(Limit::law)).forEach(law -> {
			eachAtom(law.when(), cut);
			eachAtom(law.then(), cut);
		});
		unquietConditions.forEach(condition -> eachAtom(condition, cut));
	}

	private void cut(Variable variable, IndexSet values) {
		if (take(variable)) {
			Variable key = ground.key(base, variable);
			cutters.get(key).cut(ground.values(key, domainOf(variable), values));
		}
	}

	/** Takes up a variable, if vehicles of the family have it. */
	private boolean take(Variable variable) {
		if (own.contains(variable)) {
			return true;
		}
		if (sizeOf(variable) <= 0) {
			return false;
		}
		own.add(variable);
		cutters.computeIfAbsent(ground.key(base, variable), key -> {
			int size = ground.domain(key).map(Domain::size).orElse(sizeOf(variable));
			Cells.Cutter cutter = new Cells.Cutter(size);
			for (int value = 0; value < size && domainOf(variable).isEmpty(); value++) {
				cutter.cut(IndexSet.range(value, value)); // signs, codes and modules keep every value apart
			}
			return cutter;
		});
		// values that only the other rule base knows are told apart
		domainOf(variable).ifPresent(domain -> cut(variable, IndexSet.all(domain)));
		limitOf(variable).ifPresent(where -> eachAtom(where, this::cut));
		if (variable.kind() == Variable.Kind.CODE) {
			take(new Variable(Variable.Kind.MODULE, ground.moduleOf(variable.name())));
		}
		return true;
	}

	private Optional<Domain> domainOf(Variable variable) {
		return switch (variable.kind()) {
		case TRAIT -> Optional.ofNullable(base.traitsOf(family).get(variable.name())).map(Trait::domain);
		case TEST -> base.test(variable.name()).map(org.baywright.model.Test::domain);
		default -> Optional.empty();
		};
	}

	/** Returns the number of values; 0 if vehicles of the family do not have the variable. */
	private int sizeOf(Variable variable) {
		return switch (variable.kind()) {
		case SIGN -> base.sign(variable.name()).filter(sign -> base.reaches(sign.scope(), family)).isPresent() ? 2 : 0;
		case TEST -> base.test(variable.name()).filter(test -> base.reaches(base.scopeOf(test), family))
				.map(test -> test.domain().size()).orElse(0);
		case MODULE -> isFitted(variable.name()) ? 2 : 0;
		case CODE -> base.code(variable.name()).map(Code::module).filter(this::isFitted).isPresent()
				? CodeValues.count(ground.asksForState(variable.name())) : 0;
		default -> domainOf(variable).map(Domain::size).orElse(0);
		};
	}

	/** Returns the condition on traits that a vehicle must meet for a sign or a test to make sense on it. */
	private Optional<Condition> limitOf(Variable variable) {
		boolean limited = variable.kind() == Variable.Kind.SIGN || variable.kind() == Variable.Kind.TEST;
		return limited ? base.scopeOf(variable.name()).where() : Optional.empty();
	}

	private boolean isFitted(String module) {
		return base.module(module).map(known -> base.reaches(known.families(), family)).orElse(false);
	}

	private void eachAtom(Condition condition, BiConsumer<Variable, IndexSet> use) {
		condition.eachAtom(atom -> Variable.of(atom).ifPresent(variable -> use.accept(variable, valuesOf(atom, variable))));
	}

	private IndexSet valuesOf(Condition.Atom atom, Variable variable) {
		return atom.match(
				(Condition.TraitIs is) -> valuesIn(is.values(), variable),
				(Condition.SignIs is) -> single(is.present() ? Variable.PRESENT : Variable.ABSENT),
				(Condition.TestIs is) -> valuesIn(is.values(), variable),
				(Condition.CodeIs is) -> CodeValues.of(is.reading(), ground.asksForState(is.code())),
				(Condition.ModuleIs is) -> single(is.answers() ? Variable.ANSWERS : Variable.SILENT),
				(Condition.VerdictIs is) -> {
					throw new IllegalStateException("no situation fixes a verdict");
				},
				(Condition.Unexplained is) -> single(Variable.PRESENT));
	}

	private IndexSet valuesIn(ValueSet values, Variable variable) {
		return domainOf(variable).map(values::in).orElse(IndexSet.EMPTY);
	}

	private static IndexSet single(int value) {
		return IndexSet.range(value, value);
	}

	// ---- formulas ----------------------------------------------------------------------------------------------

	/**
	 * Whose condition it is.
	 *
	 * @param rule name of the rule; empty for what is one statement as a whole
	 */
	private record Owner(Optional<String> rule, Span span) {
		static Owner of(Rule rule) {
			return new Owner(Optional.of(rule.name()), rule.span());
		}
	}

	private void addLaw(Law law, int number, SourceLine line) {
		if (speaksOfWhatIsThere(law)) {
			Owner whole = new Owner(Optional.empty(), law.span());
			List<Formula> ways = new ArrayList<>();
			eachVariable(law, variable -> limitOf(variable).ifPresent(where -> ways.add(opposite(formula(where, true, whole)))));
			ways.add(opposite(formula(law.when(), true, whole)));
			ways.add(formula(law.then(), true, whole));
			lawFormulas.add(new Program.LawFormula(new Formula.Any(ways), number, number(line)));
		}
	}

	private void compile(int number, Rule rule) {
		Owner owner = Owner.of(rule);
		List<Formula> shared = new ArrayList<>();
		rule.scope().where().ifPresent(where -> flatten(formula(where, true, owner), shared));
		rule.given().forEach(given -> flatten(formula(given, true, owner), shared));
		for (int i = 0; i < rule.outcomes().size(); i++) {
			Outcome outcome = rule.outcomes().get(i);
			List<Formula> body = new ArrayList<>(shared);
			int line = line(owner, outcome.span());
			if (rule.test().isPresent() && outcome.values().isPresent()) {
				Variable test = new Variable(Variable.Kind.TEST, rule.test().get());
				IndexSet values = domainOf(test).map(domain -> outcome.values().get().in(domain))
						.orElse(IndexSet.EMPTY);
				flatten(known(test, values, line), body);
			}
			Set<Integer> says = new TreeSet<>();
			for (Conclusion conclusion : outcome.conclusions()) {
				Verdict.of(conclusion).map(verdictNumbers::get).ifPresent(says::add);
			}
			branches.add(new Branch(number, i, new Formula.All(body), List.copyOf(says), line));
		}
	}

	/** A law that speaks of a module that vehicles of the family do not have, or of a test for others, does not bind them. */
	private boolean speaksOfWhatIsThere(Law law) {
		boolean[] there = { true };
		eachVariable(law, variable -> there[0] &= variable.kind() == Variable.Kind.TRAIT || own.contains(variable));
		return there[0];
	}

	private static void eachVariable(Law law, Consumer<Variable> use) {
		law.when().eachAtom(atom -> use.accept(Variable.of(atom).orElseThrow()));
		law.then().eachAtom(atom -> use.accept(Variable.of(atom).orElseThrow()));
	}

	/** Returns what holds of the vehicle exactly when the formula does not. */
	private Formula opposite(Formula formula) {
		if (formula instanceof Formula.Known lit) {
			return lit.var() < 0 ? Formula.TRUE : new Formula.Known(lit.var(), lit.cells().complement(cells.get(lit.var()).count()), lit.line());
		} else if (formula instanceof Formula.All all) {
			return new Formula.Any(all.parts().stream().map(this::opposite).toList());
		} else if (formula instanceof Formula.Any any) {
			return new Formula.All(any.parts().stream().map(this::opposite).toList());
		}
		throw new IllegalStateException("laws never speak of verdicts");
	}

	private static void flatten(Formula formula, List<Formula> into) {
		if (formula instanceof Formula.All all) {
			all.parts().forEach(part -> flatten(part, into));
		} else {
			into.add(formula);
		}
	}

	/** Returns what one condition of a rule asks for, in the numbers of the program that was built. */
	Formula formula(Rule rule, Condition condition) {
		return formula(condition, true, Owner.of(rule));
	}

	private Formula formula(Condition condition, boolean holds, Owner owner) {
		return condition.match(
				(Condition.And and) -> holds ? new Formula.All(formulas(and.parts(), true, owner))
						: new Formula.Any(formulas(and.parts(), false, owner)),
				(Condition.Or or) -> holds ? new Formula.Any(formulas(or.parts(), true, owner))
						: new Formula.All(formulas(or.parts(), false, owner)),
				(Condition.Not not) -> formula(not.part(), !holds, owner),
				(Condition.Atom atom) -> formula(atom, holds, line(owner, atom.span())));
	}

	private List<Formula> formulas(List<Condition> parts, boolean hold, Owner owner) {
		return parts.stream().map(part -> formula(part, hold, owner)).toList();
	}

	private Formula formula(Condition.Atom atom, boolean holds, int line) {
		return atom.match(
				// a trait that the vehicle lacks has no value at all
				(Condition.TraitIs is) -> holds || own.contains(new Variable(Variable.Kind.TRAIT, is.trait())) ? seen(is, holds, line)
						: Formula.TRUE,
				(Condition.SignIs is) -> seen(is, holds, line),
				(Condition.TestIs is) -> seen(is, holds, line),
				(Condition.CodeIs is) -> holds ? seen(is, true, line) : known(new Variable(Variable.Kind.CODE, is.code()),
						CodeValues.otherwise(is.reading(), ground.asksForState(is.code())), line),
				(Condition.ModuleIs is) -> seen(is, holds, line),
				(Condition.VerdictIs is) -> stands(is.fault(), is.verdict(), is.stands() == holds, line),
				(Condition.Unexplained is) -> unexplained(is, holds, line));
	}

	private Formula seen(Condition.Atom atom, boolean holds, int line) {
		Variable variable = Variable.of(atom).orElseThrow();
		IndexSet values = valuesOf(atom, variable);
		return known(variable, holds ? values : values.complement(Math.max(1, sizeOf(variable))), line);
	}

	private Formula unexplained(Condition.Unexplained is, boolean holds, int line) {
		List<Formula> parts = new ArrayList<>(List.of(seen(is, holds, line)));
		for (String fault : answering.getOrDefault(is.sign(), Set.of())) {
			parts.add(stands(fault, VerdictKind.CONFIRMED, !holds, line));
		}
		return holds ? new Formula.All(parts) : new Formula.Any(parts);
	}

	private Formula stands(String fault, VerdictKind verdict, boolean stands, int line) {
		return new Formula.Stands(verdictNumbers.get(new Verdict(fault, verdict)), stands, line);
	}

	/** What is found counts only on vehicles for which it makes sense. */
	private Formula known(Variable variable, IndexSet values, int line) {
		if (!own.contains(variable)) {
			return new Formula.Known(-1, IndexSet.EMPTY, line);
		}
		Variable key = ground.key(base, variable);
		int number = numbers.get(key);
		Formula found = new Formula.Known(number, cells.get(number).of(ground.values(key, domainOf(variable), values)), line);
		Formula limit = limit(variable);
		return limit == Formula.TRUE ? found : new Formula.All(List.of(atLine(limit, line), found));
	}

	/** Returns what must hold of a vehicle so that a finding makes sense on it. */
	Formula limit(Variable variable) {
		return limitOf(variable).map(this::ofVehicle).orElse(Formula.TRUE);
	}

	/** Returns for each repair of the fault that may be meant for vehicles of the family what must hold of one so that it is. */
	Map<String, Formula> mend(Verdict verdict) {
		Map<String, Formula> mends = new LinkedHashMap<>();
		mends(verdict.fault()).forEach(repair -> mends.put(repair.name(), repair.scope().where().map(this::ofVehicle).orElse(Formula.TRUE)));
		return mends;
	}

	private List<Repair> mends(String fault) {
		return base.repairsOf(fault).stream().filter(repair -> base.reaches(repair.scope(), family)).toList();
	}

	private Formula ofVehicle(Condition where) {
		return formula(where, true, new Owner(Optional.empty(), Span.NONE));
	}

	private static Formula atLine(Formula formula, int line) {
		if (formula instanceof Formula.All all) {
			return new Formula.All(all.parts().stream().map(part -> atLine(part, line)).toList());
		} else if (formula instanceof Formula.Any any) {
			return new Formula.Any(any.parts().stream().map(part -> atLine(part, line)).toList());
		}
		Formula.Known known = (Formula.Known) formula;
		return new Formula.Known(known.var(), known.cells(), line);
	}

	/** Returns the number of a line of a rule; what is one statement as a whole has no lines of its own. */
	private int line(Owner owner, Span span) {
		return owner.rule().map(rule -> number(SourceLine.of(rule, span.line() - owner.span().line()))).orElse(Program.NO_LINE);
	}

	private int number(SourceLine line) {
		return lineNumbers.computeIfAbsent(line, key -> {
			lines.add(key);
			return lines.size() - 1;
		});
	}

	private static void eachCondition(Rule rule, Consumer<Condition> use) {
		rule.scope().where().ifPresent(use);
		rule.given().forEach(use);
	}

	static void collectVerdicts(Condition condition, Collection<Verdict> into) {
		condition.eachAtom(atom -> {
			if (atom instanceof Condition.VerdictIs is) {
				into.add(new Verdict(is.fault(), is.verdict()));
			}
		});
	}

	int[] moduleOf() {
		int[] modules = new int[variables.size()];
		Arrays.fill(modules, -1);
		for (int i = 0; i < modules.length; i++) {
			if (variables.get(i).kind() == Variable.Kind.CODE) {
				modules[i] = numbers.get(new Variable(Variable.Kind.MODULE, ground.moduleOf(variables.get(i).name())));
			}
		}
		return modules;
	}
}
