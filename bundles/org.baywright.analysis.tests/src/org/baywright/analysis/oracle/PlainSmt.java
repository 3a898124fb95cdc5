package org.baywright.analysis.oracle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

import com.microsoft.z3.BoolExpr;
import com.microsoft.z3.Context;
import com.microsoft.z3.IntExpr;
import com.microsoft.z3.Solver;
import com.microsoft.z3.Status;

import org.baywright.model.Code;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Law;
import org.baywright.model.Module;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.ValueSet;

/**
 * The plain way to check the rules of a family: write all of them down for a general-purpose SMT solver (Z3) over whole
 * numbers, and ask it about every rule and every pair of rules. Shares no code with the proofs. Only for rules whose
 * verdicts do not wait for themselves.
 */
public final class PlainSmt implements AutoCloseable {

	private final RuleBase base;
	private final String family;
	private final Context z3 = new Context();
	private final Solver solver = z3.mkSolver();
	private final List<Rule> rules;
	private final Map<String, IntExpr> values = new HashMap<>();
	private final Map<String, BoolExpr> known = new LinkedHashMap<>();
	private final Map<String, BoolExpr> verdicts = new TreeMap<>();
	private final Map<String, BoolExpr> bodies = new LinkedHashMap<>();
	private final Enumeration definitions;

	/** @param base the rule base @param family one of its vehicle families */
	public PlainSmt(RuleBase base, String family) {
		this.base = base;
		this.family = family;
		definitions = new Enumeration(base);
		rules = Enumeration.rulesOf(base, family);
		declareVariables();
		for (Law law : base.laws()) {
			if (base.reaches(law.families(), family)) {
				solver.add(z3.mkImplies(truth(law.when(), false, true), truth(law.then(), false, true)));
			}
		}
		Map<String, List<BoolExpr>> ways = new TreeMap<>();
		for (Rule rule : rules) {
			for (int i = 0; i < rule.outcomes().size(); i++) {
				BoolExpr body = z3.mkBoolConst("body " + rule.name() + "/" + i);
				bodies.put(rule.name() + "/" + i, body);
				for (String said : Enumeration.says(rule, i)) {
					ways.computeIfAbsent(said, key -> new ArrayList<>()).add(body);
				}
			}
		}
		for (Rule rule : rules) {
			for (int i = 0; i < rule.outcomes().size(); i++) {
				solver.add(z3.mkEq(bodies.get(rule.name() + "/" + i), body(rule, rule.outcomes().get(i))));
			}
		}
		verdicts.forEach((said, verdict) -> solver
				.add(z3.mkEq(verdict, z3.mkOr(ways.getOrDefault(said, List.of()).toArray(new BoolExpr[0])))));
	}

	private void declareVariables() {
		base.traitsOf(family).values().forEach(trait -> declare("trait " + trait.name(), trait.domain().size(), true));
		base.signs().forEach(sign -> declare("sign " + sign.name(), 2, false));
		base.tests().forEach(test -> declare("test " + test.name(), test.domain().size(), false));
		for (Module module : base.modules()) {
			declare("module " + module.name(), 2, false);
		}
		for (Code code : base.codes()) {
			declare("code " + code.name(), 3, false);
			BoolExpr silent = z3.mkEq(values.get("module " + code.module()), z3.mkInt(1));
			solver.add(z3.mkEq(silent, z3.mkEq(values.get("code " + code.name()), z3.mkInt(2))));
			solver.add(z3.mkImplies(known.get("code " + code.name()), known.get("module " + code.module())));
			solver.add(z3.mkImplies(z3.mkAnd(known.get("module " + code.module()), silent), known.get("code " + code.name())));
		}
	}

	private void declare(String name, int size, boolean always) {
		IntExpr value = z3.mkIntConst(name);
		solver.add(z3.mkGe(value, z3.mkInt(0)), z3.mkLt(value, z3.mkInt(size)));
		values.put(name, value);
		BoolExpr seen = z3.mkBoolConst("known " + name);
		if (always) {
			solver.add(seen);
		}
		known.put(name, seen);
	}

	private BoolExpr body(Rule rule, Outcome outcome) {
		List<BoolExpr> parts = new ArrayList<>();
		rule.scope().where().ifPresent(where -> parts.add(truth(where, true, true)));
		rule.given().forEach(given -> parts.add(truth(given, true, true)));
		rule.test().ifPresent(test -> parts.add(seen("test " + test,
				outcome.values().orElseThrow().in(base.test(test).orElseThrow().domain()), true)));
		return z3.mkAnd(parts.toArray(new BoolExpr[0]));
	}

	/** Returns a formula for "the condition holds", or with {@code wanted} false for "it is known not to". */
	private BoolExpr truth(Condition condition, boolean mustBeKnown, boolean wanted) {
		if (condition instanceof Condition.Not not) {
			return truth(not.part(), mustBeKnown, !wanted);
		} else if (condition instanceof Condition.And || condition instanceof Condition.Or) {
			List<Condition> parts = condition instanceof Condition.And and ? and.parts() : ((Condition.Or) condition).parts();
			BoolExpr[] all = parts.stream().map(part -> truth(part, mustBeKnown, wanted)).toArray(BoolExpr[]::new);
			return condition instanceof Condition.And == wanted ? z3.mkAnd(all) : z3.mkOr(all);
		} else if (condition instanceof Condition.VerdictIs is) {
			BoolExpr verdict = verdict(is.verdict() + " " + is.fault());
			return is.stands() == wanted ? verdict : z3.mkNot(verdict);
		} else if (condition instanceof Condition.Unexplained is) {
			BoolExpr present = seen("sign " + is.sign(), IndexSet.range(0, 0), mustBeKnown);
			BoolExpr absent = seen("sign " + is.sign(), IndexSet.range(1, 1), mustBeKnown);
			BoolExpr explained = z3.mkOr(definitions.answering(is.sign(), family).stream()
					.map(fault -> verdict("CONFIRMED " + fault)).toArray(BoolExpr[]::new));
			return wanted ? z3.mkAnd(present, z3.mkNot(explained)) : z3.mkOr(absent, explained);
		} else if (condition instanceof Condition.SignIs is) {
			return seen("sign " + is.sign(), one(is.present() == wanted ? 0 : 1), mustBeKnown);
		} else if (condition instanceof Condition.ModuleIs is) {
			return seen("module " + is.module(), one(is.answers() == wanted ? 0 : 1), mustBeKnown);
		} else if (condition instanceof Condition.CodeIs is) {
			IndexSet cells = switch (is.reading()) {
			case PRESENT -> wanted ? one(0) : mustBeKnown ? one(1) : IndexSet.range(1, 2);
			case ABSENT -> wanted ? one(1) : mustBeKnown ? one(0) : one(0).union(one(2));
			case UNREAD -> wanted ? one(2) : IndexSet.range(0, 1);
			case MISSING -> wanted ? IndexSet.range(1, 2) : one(0);
			};
			return seen("code " + is.code(), cells, mustBeKnown);
		}
		boolean isTest = condition instanceof Condition.TestIs;
		String name = isTest ? ((Condition.TestIs) condition).test() : ((Condition.TraitIs) condition).trait();
		ValueSet set = isTest ? ((Condition.TestIs) condition).values() : ((Condition.TraitIs) condition).values();
		Domain domain = isTest ? base.test(name).orElseThrow().domain() : base.traitsOf(family).get(name).domain();
		IndexSet indexes = wanted ? set.in(domain) : set.in(domain).complement(domain.size());
		return seen((isTest ? "test " : "trait ") + name, indexes, mustBeKnown);
	}

	private static IndexSet one(int value) {
		return IndexSet.range(value, value);
	}

	private BoolExpr seen(String name, IndexSet set, boolean mustBeKnown) {
		List<BoolExpr> runs = new ArrayList<>();
		for (int run = 0; run < set.runCount(); run++) {
			runs.add(z3.mkAnd(z3.mkGe(values.get(name), z3.mkInt(set.low(run))),
					z3.mkLe(values.get(name), z3.mkInt(set.high(run)))));
		}
		BoolExpr in = z3.mkOr(runs.toArray(new BoolExpr[0]));
		return mustBeKnown ? z3.mkAnd(known.get(name), in) : in;
	}

	private BoolExpr verdict(String said) {
		return verdicts.computeIfAbsent(said, key -> z3.mkBoolConst("verdict " + key));
	}

	/** Returns the branches of the family, as {@code rule/outcome}. */
	public Set<String> branches() {
		return bodies.keySet();
	}

	/** Returns whether a situation exists in which all the branches fire. */
	public boolean canFire(String... branches) {
		BoolExpr[] all = new BoolExpr[branches.length];
		for (int i = 0; i < branches.length; i++) {
			all[i] = bodies.get(branches[i]);
		}
		return ask(all);
	}

	/** Returns whether a complete situation exists with the sign present, and nothing confirmed and nobody referred to. */
	public boolean hasGap(String sign) {
		List<BoolExpr> all = new ArrayList<>(known.values());
		all.add(z3.mkEq(values.get("sign " + sign), z3.mkInt(0)));
		for (Rule rule : rules) {
			for (int i = 0; i < rule.outcomes().size(); i++) {
				if (Enumeration.says(rule, i).stream().anyMatch(said -> said.startsWith("CONFIRMED") || said.startsWith("REFERS"))) {
					all.add(z3.mkNot(bodies.get(rule.name() + "/" + i)));
				}
			}
		}
		return ask(all.toArray(new BoolExpr[0]));
	}

	private boolean ask(BoolExpr... all) {
		Status status = solver.check(all);
		if (status == Status.UNKNOWN) {
			throw new IllegalStateException("Z3 does not know: " + solver.getReasonUnknown());
		}
		return status == Status.SATISFIABLE;
	}

	/** Asks about every rule and every pair of rules of the family; returns how many questions there were. */
	public long checkEveryPair() {
		List<String> all = List.copyOf(bodies.keySet());
		long questions = 0;
		for (int i = 0; i < all.size(); i++) {
			for (int j = i; j < all.size(); j++) {
				canFire(all.get(i), all.get(j));
				questions++;
			}
		}
		return questions;
	}

	@Override
	public void close() {
		z3.close();
	}
}
