package org.baywright.analysis.proof;

import org.baywright.analysis.Verdict;
import org.baywright.analysis.Variable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
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
import org.baywright.model.CodeReading;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Law;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Trait;
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
	private final Map<Variable, Cells.Cutter> cutters = new LinkedHashMap<>();
	private final Map<String, Set<String>> answering;

	/**
	 * @param base the rule base the rules are from
	 * @param family the vehicle family
	 * @param rules rules that reach the family
	 * @param laws laws that reach the family
	 * @param exclusives groups of faults of which one can be the cause
	 */
	ProgramBuilder(RuleBase base, String family, List<Rule> rules, List<Law> laws, List<List<String>> exclusives) {
		this.base = base;
		this.family = family;
		this.rules = List.copyOf(rules);
		this.laws = List.copyOf(laws);
		this.exclusives = List.copyOf(exclusives);
		answering = Answering.faultsBySign(rules);
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
		for (Map.Entry<Variable, Cells.Cutter> entry : new java.util.TreeMap<>(cutters).entrySet()) {
			numbers.put(entry.getKey(), variables.size());
			variables.add(entry.getKey());
			domains.add(domainOf(entry.getKey()));
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
		BiConsumer<Variable, IndexSet> cut = (variable, values) -> cutter(variable)
				.ifPresent(cutter -> cutter.cut(values));
		for (Rule rule : rules) {
			eachCondition(rule, condition -> eachAtom(condition, cut));
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

	private Optional<Cells.Cutter> cutter(Variable variable) {
		Cells.Cutter known = cutters.get(variable);
		if (known != null) {
			return Optional.of(known);
		}
		int size = sizeOf(variable);
		if (size <= 0) {
			return Optional.empty();
		}
		Cells.Cutter cutter = new Cells.Cutter(size);
		cutters.put(variable, cutter);
		if (domainOf(variable).isEmpty()) {
			for (int value = 0; value < size; value++) {
				cutter.cut(IndexSet.range(value, value)); // signs, codes and modules keep every value apart
			}
		}
		if (variable.kind() == Variable.Kind.CODE) {
			cutter(new Variable(Variable.Kind.MODULE, base.code(variable.name()).orElseThrow().module()));
		}
		return Optional.of(cutter);
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
		case SIGN -> base.sign(variable.name()).isPresent() ? 2 : 0;
		case MODULE -> isFitted(variable.name()) ? 2 : 0;
		case CODE -> base.code(variable.name()).map(Code::module).filter(this::isFitted).isPresent() ? 3 : 0;
		default -> domainOf(variable).map(Domain::size).orElse(0);
		};
	}

	private boolean isFitted(String module) {
		return base.module(module).map(known -> base.reaches(known.families(), family)).orElse(false);
	}

	private void eachAtom(Condition condition, BiConsumer<Variable, IndexSet> use) {
		condition.eachAtom(atom -> {
			Variable variable = variableOf(atom);
			if (variable != null) {
				use.accept(variable, valuesOf(atom, variable));
			}
		});
	}

	static Variable variableOf(Condition atom) {
		if (atom instanceof Condition.TraitIs is) {
			return new Variable(Variable.Kind.TRAIT, is.trait());
		} else if (atom instanceof Condition.SignIs is) {
			return new Variable(Variable.Kind.SIGN, is.sign());
		} else if (atom instanceof Condition.Unexplained is) {
			return new Variable(Variable.Kind.SIGN, is.sign());
		} else if (atom instanceof Condition.TestIs is) {
			return new Variable(Variable.Kind.TEST, is.test());
		} else if (atom instanceof Condition.CodeIs is) {
			return new Variable(Variable.Kind.CODE, is.code());
		} else if (atom instanceof Condition.ModuleIs is) {
			return new Variable(Variable.Kind.MODULE, is.module());
		}
		return null;
	}

	private IndexSet valuesOf(Condition atom, Variable variable) {
		if (atom instanceof Condition.TraitIs is) {
			return domainOf(variable).map(domain -> is.values().in(domain)).orElse(IndexSet.EMPTY);
		} else if (atom instanceof Condition.TestIs is) {
			return domainOf(variable).map(domain -> is.values().in(domain)).orElse(IndexSet.EMPTY);
		} else if (atom instanceof Condition.SignIs is) {
			return single(is.present() ? Variable.PRESENT : Variable.ABSENT);
		} else if (atom instanceof Condition.Unexplained) {
			return single(Variable.PRESENT);
		} else if (atom instanceof Condition.ModuleIs is) {
			return single(is.answers() ? Variable.ANSWERS : Variable.SILENT);
		}
		CodeReading reading = ((Condition.CodeIs) atom).reading();
		return switch (reading) {
		case PRESENT -> single(Variable.PRESENT);
		case ABSENT -> single(Variable.ABSENT);
		case UNREAD -> single(Variable.UNREAD);
		case MISSING -> IndexSet.range(Variable.ABSENT, Variable.UNREAD);
		};
	}

	/** The opposite of a reading is again a reading: an unread code is neither present nor absent. */
	private static IndexSet readOtherwise(CodeReading reading) {
		return switch (reading) {
		case PRESENT -> single(Variable.ABSENT);
		case ABSENT, MISSING -> single(Variable.PRESENT);
		case UNREAD -> IndexSet.range(Variable.PRESENT, Variable.ABSENT);
		};
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
			lawFormulas.add(new Program.LawFormula(
					new Formula.Any(List.of(opposite(formula(law.when(), true, whole)), formula(law.then(), true, whole))), number,
					number(line)));
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
				body.add(known(test, values, line));
			}
			Set<Integer> says = new TreeSet<>();
			for (Conclusion conclusion : outcome.conclusions()) {
				Verdict.of(conclusion).map(verdictNumbers::get).ifPresent(says::add);
			}
			branches.add(new Branch(number, i, new Formula.All(body), List.copyOf(says), line));
		}
	}

	/** A law that speaks of a module that vehicles of the family do not have does not bind them. */
	private boolean speaksOfWhatIsThere(Law law) {
		boolean[] there = { true };
		Consumer<Condition> look = atom -> {
			Variable variable = variableOf(atom);
			boolean fitted = variable.kind() == Variable.Kind.MODULE || variable.kind() == Variable.Kind.CODE;
			there[0] &= !fitted || numbers.containsKey(variable);
		};
		law.when().eachAtom(look);
		law.then().eachAtom(look);
		return there[0];
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
		if (condition instanceof Condition.Not not) {
			return formula(not.part(), !holds, owner);
		} else if (condition instanceof Condition.And and) {
			List<Formula> parts = and.parts().stream().map(part -> formula(part, holds, owner)).toList();
			return holds ? new Formula.All(parts) : new Formula.Any(parts);
		} else if (condition instanceof Condition.Or or) {
			List<Formula> parts = or.parts().stream().map(part -> formula(part, holds, owner)).toList();
			return holds ? new Formula.Any(parts) : new Formula.All(parts);
		}
		int line = line(owner, condition.span());
		if (condition instanceof Condition.VerdictIs is) {
			return new Formula.Stands(verdictNumbers.get(new Verdict(is.fault(), is.verdict())), is.stands() == holds,
					line);
		}
		Variable variable = variableOf(condition);
		IndexSet values = valuesOf(condition, variable);
		if (!holds && condition instanceof Condition.TraitIs && !numbers.containsKey(variable)) {
			return Formula.TRUE; // a trait that the vehicle lacks has no value at all
		}
		IndexSet others = condition instanceof Condition.CodeIs is ? readOtherwise(is.reading())
				: values.complement(Math.max(1, sizeOf(variable)));
		Formula seen = known(variable, holds ? values : others, line);
		if (condition instanceof Condition.Unexplained) {
			List<Formula> parts = new ArrayList<>(List.of(seen));
			for (String fault : answering.getOrDefault(variable.name(), Set.of())) {
				parts.add(new Formula.Stands(verdictNumbers.get(new Verdict(fault, VerdictKind.CONFIRMED)), !holds,
						line));
			}
			return holds ? new Formula.All(parts) : new Formula.Any(parts);
		}
		return seen;
	}

	private Formula known(Variable variable, IndexSet values, int line) {
		Integer number = numbers.get(variable);
		return number == null ? new Formula.Known(-1, IndexSet.EMPTY, line)
				: new Formula.Known(number, cells.get(number).of(values), line);
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
				String module = base.code(variables.get(i).name()).orElseThrow().module();
				modules[i] = numbers.get(new Variable(Variable.Kind.MODULE, module));
			}
		}
		return modules;
	}
}
