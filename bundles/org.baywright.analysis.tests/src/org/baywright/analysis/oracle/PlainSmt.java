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
import org.baywright.model.CodeReading;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Law;
import org.baywright.model.Module;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Sign;
import org.baywright.model.Test;
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
				solver.add(z3.mkImplies(z3.mkAnd(isForVehicle(law), truth(law.when(), false, true)), truth(law.then(), false, true)));
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
			declare("code " + code.name(), base.asksForState(code.name()) ? 7 : 3, false);
			solver.add(z3.mkOr(z3.mkNot(z3.mkBool(base.asksForState(code.name()))), z3.mkGt(values.get("code " + code.name()), z3.mkInt(0))));
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
		return condition.match(
				(Condition.And and) -> truth(and.parts(), mustBeKnown, wanted, wanted),
				(Condition.Or or) -> truth(or.parts(), mustBeKnown, wanted, !wanted),
				(Condition.Not not) -> truth(not.part(), mustBeKnown, !wanted),
				(Condition.Atom atom) -> truth(atom, mustBeKnown, wanted));
	}

	private BoolExpr truth(List<Condition> parts, boolean mustBeKnown, boolean wanted, boolean together) {
		BoolExpr[] all = parts.stream().map(part -> truth(part, mustBeKnown, wanted)).toArray(BoolExpr[]::new);
		return together ? z3.mkAnd(all) : z3.mkOr(all);
	}

	private BoolExpr truth(Condition.Atom atom, boolean mustBeKnown, boolean wanted) {
		return atom.match(
				(Condition.TraitIs is) -> seen("trait " + is.trait(),
						indexes(is.values(), base.traitsOf(family).get(is.trait()).domain(), wanted), mustBeKnown),
				(Condition.SignIs is) -> seen("sign " + is.sign(), one(is.present() == wanted ? 0 : 1), mustBeKnown),
				(Condition.TestIs is) -> seen("test " + is.test(),
						indexes(is.values(), base.test(is.test()).orElseThrow().domain(), wanted), mustBeKnown),
				(Condition.CodeIs is) -> seen("code " + is.code(), readings(is, mustBeKnown, wanted), mustBeKnown),
				(Condition.ModuleIs is) -> seen("module " + is.module(), one(is.answers() == wanted ? 0 : 1), mustBeKnown),
				(Condition.VerdictIs is) -> {
					BoolExpr verdict = verdict(is.verdict() + " " + is.fault());
					return is.stands() == wanted ? verdict : z3.mkNot(verdict);
				},
				(Condition.Unexplained is) -> {
					BoolExpr present = seen("sign " + is.sign(), IndexSet.range(0, 0), mustBeKnown);
					BoolExpr absent = seen("sign " + is.sign(), IndexSet.range(1, 1), mustBeKnown);
					BoolExpr explained = z3.mkOr(definitions.answering(is.sign(), family).stream()
							.map(fault -> verdict("CONFIRMED " + fault)).toArray(BoolExpr[]::new));
					return wanted ? z3.mkAnd(present, z3.mkNot(explained)) : z3.mkOr(absent, explained);
				});
	}

	private static IndexSet indexes(ValueSet set, Domain domain, boolean wanted) {
		return wanted ? set.in(domain) : set.in(domain).complement(domain.size());
	}

	/** Unread, 2, is neither so nor not so where somebody must have seen it; the other numbers are as the readings stand. */
	private IndexSet readings(Condition.CodeIs is, boolean mustBeKnown, boolean wanted) {
		int size = base.asksForState(is.code()) ? 7 : 3;
		IndexSet held = size == 3 ? one(0) : IndexSet.range(3, 5);
		IndexSet so = switch (is.reading()) {
		case PRESENT -> held;
		case MISSING -> held.complement(size);
		default -> one(is.reading().ordinal());
		};
		if (wanted) {
			return so;
		}
		boolean ofUnread = is.reading() == CodeReading.UNREAD || is.reading() == CodeReading.MISSING;
		return so.complement(size).intersect(mustBeKnown && !ofUnread ? one(2).complement(size) : IndexSet.range(0, size - 1));
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
		BoolExpr in = z3.mkAnd(z3.mkOr(runs.toArray(new BoolExpr[0])), isForVehicle(name));
		return mustBeKnown ? z3.mkAnd(known.get(name), in) : in;
	}

	/** Says that a sign or a test makes sense on the vehicle; it always does for anything else. */
	private BoolExpr isForVehicle(String variable) {
		String name = variable.substring(variable.indexOf(' ') + 1);
		Scope scope = base.sign(name).map(Sign::scope).or(() -> base.test(name).map(Test::scope)).orElse(Scope.EVERY);
		List<String> line = base.lineage(family);
		boolean meant = (scope.families().isEmpty() || scope.families().stream().anyMatch(line::contains))
				&& scope.except().stream().noneMatch(line::contains);
		return z3.mkAnd(z3.mkBool(meant), scope.where().map(where -> truth(where, false, true)).orElse(z3.mkTrue()));
	}

	private BoolExpr isForVehicle(Law law) {
		List<BoolExpr> all = new ArrayList<>();
		for (Condition side : List.of(law.when(), law.then())) {
			side.eachAtom(atom -> all.add(isForVehicle((atom instanceof Condition.TestIs ? "test " : "sign ") + atom.about())));
		}
		return z3.mkAnd(all.toArray(new BoolExpr[0]));
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
		all.add(isForVehicle("sign " + sign));
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
