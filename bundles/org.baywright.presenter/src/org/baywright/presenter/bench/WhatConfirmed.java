package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Derived;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Outcome;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.Trait;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;

/**
 * What faults were confirmed by on one vehicle, and whether the rules that did would do so again. A rule confirms by its
 * test; one without a test by the tests and codes that it asks for, else by what the verdicts that it asks for rest on, else
 * by signs and modules. Whatever else it asks for is taken to be as it was.
 */
final class WhatConfirmed {

	private final RuleBase base;
	private final String family;
	private final Map<Variable, Reading> before;
	private final Map<Verdict, List<Rule>> behind = new HashMap<>();
	private final List<Ground> grounds = new ArrayList<>();

	/** A rule that has led to a verdict, with what it rests on. */
	private record Ground(Rule rule, Verdict verdict, Set<Variable> rest) {
	}

	/** @param faults the faults, of which those that are not confirmed do not matter */
	WhatConfirmed(Bench bench, Advice advice, Collection<String> faults) {
		base = bench.base();
		family = bench.now().family();
		before = known(bench.now().readings());
		for (Derived derived : advice.verdicts()) {
			behind.put(derived.verdict(), derived.rules().stream().flatMap(name -> base.rule(name).stream()).toList());
		}
		Set<Object> seen = new HashSet<>();
		faults.stream().map(fault -> new Verdict(fault, VerdictKind.CONFIRMED)).forEach(verdict -> add(verdict, seen));
	}

	/** What is read of a code tells of its module, and a silent module of its codes. */
	private Map<Variable, Reading> known(Collection<Reading> readings) {
		Map<Variable, Reading> known = new LinkedHashMap<>();
		readings.forEach(reading -> known.put(Variable.of(base, reading), reading));
		for (Reading reading : readings) {
			if (reading instanceof Reading.CodeRead read) {
				base.code(read.subject()).map(Code::module).ifPresent(module -> known.putIfAbsent(new Variable(Variable.Kind.MODULE, module),
						new Reading.ModuleAsked(module, read.reading() != CodeReading.UNREAD, Span.NONE)));
			} else if (reading instanceof Reading.ModuleAsked asked && !asked.answers()) {
				base.codes().stream().filter(code -> code.module().equals(asked.subject())).forEach(code -> known.putIfAbsent(
						new Variable(Variable.Kind.CODE, code.name()), new Reading.CodeRead(code.name(), CodeReading.UNREAD, Span.NONE)));
			}
		}
		return known;
	}

	private void add(Verdict verdict, Set<Object> seen) {
		for (Rule rule : behind.getOrDefault(verdict, List.of())) {
			if (seen.add(List.of(rule.name(), verdict))) {
				Set<Variable> rest = rest(rule);
				List<Verdict> asked = asked(rule);
				if (rest.isEmpty() && !asked.isEmpty()) {
					asked.forEach(each -> add(each, seen));
				} else {
					grounds.add(new Ground(rule, verdict, rest.isEmpty() ? held(rule, false) : rest));
				}
			}
		}
	}

	private Set<Variable> rest(Rule rule) {
		return rule.test().isPresent() ? Set.of(new Variable(Variable.Kind.TEST, rule.test().get())) : held(rule, true);
	}

	/** Returns what a rule asks for and was found so: tests and codes, or else signs and modules. */
	private Set<Variable> held(Rule rule, boolean strong) {
		Set<Variable> held = new LinkedHashSet<>();
		rule.given().forEach(given -> given.eachAtom(true, (atom, asItStands) -> Variable.of(atom).filter(variable -> asItStands && shows(atom)
				&& strong == (variable.kind() == Variable.Kind.TEST || variable.kind() == Variable.Kind.CODE)
				&& truth(atom, before) == Truth.YES).ifPresent(held::add)));
		return held;
	}

	/** A code or a sign shows something only where it is there, a module only where it is silent. */
	private static boolean shows(Condition.Atom atom) {
		return atom.match(
				(Condition.TraitIs is) -> false,
				Condition.SignIs::present,
				(Condition.TestIs is) -> true,
				(Condition.CodeIs is) -> is.reading() == CodeReading.PRESENT || CodeReading.OF_PRESENT.contains(is.reading()),
				(Condition.ModuleIs is) -> !is.answers(),
				(Condition.VerdictIs is) -> false,
				(Condition.Unexplained is) -> true);
	}

	private List<Verdict> asked(Rule rule) {
		List<Verdict> asked = new ArrayList<>();
		rule.given().forEach(given -> given.eachAtom(true, (atom, asItStands) -> {
			if (asItStands && atom instanceof Condition.VerdictIs is && is.stands() && behind.containsKey(new Verdict(is.fault(), is.verdict()))) {
				asked.add(new Verdict(is.fault(), is.verdict()));
			}
		}));
		return asked;
	}

	/** Returns what the faults were confirmed by, in the order in which it was found. */
	List<Variable> rest() {
		Set<Variable> all = new HashSet<>();
		grounds.forEach(ground -> all.addAll(ground.rest()));
		return before.values().stream().map(reading -> Variable.of(base, reading)).filter(all::contains).toList();
	}

	/**
	 * Returns whether a rule that rests on something would do again what it did.
	 *
	 * @param read what was read after the repair
	 */
	Truth again(Variable variable, Collection<Reading> read) {
		Map<Variable, Reading> now = known(read);
		return grounds.stream().filter(ground -> ground.rest().contains(variable)).map(ground -> again(ground, now)).reduce(Truth.NO, Truth::or);
	}

	private Truth again(Ground ground, Map<Variable, Reading> now) {
		if (ground.rule().test().isPresent()) {
			Variable test = ground.rest().iterator().next();
			Optional<Domain> domain = base.test(test.name()).map(Test::domain);
			return !now.containsKey(test) || domain.isEmpty() ? Truth.OPEN : Truth.of(new ValueSet.Union(values(ground)), domain.get(), now.get(test));
		}
		return ground.rule().given().stream().map(given -> Truth.of(given, atom -> again(atom, ground, now))).reduce(Truth.YES, Truth::and);
	}

	private Truth again(Condition.Atom atom, Ground ground, Map<Variable, Reading> now) {
		Optional<Variable> variable = Variable.of(atom);
		if (variable.filter(ground.rest()::contains).isPresent()) {
			return truth(atom, now);
		}
		// what nobody found out had no part in it
		return Truth.of(truth(atom, before) == Truth.YES);
	}

	/** Returns the results of the rule's test that lead to the verdict. */
	private static List<ValueSet> values(Ground ground) {
		return ground.rule().outcomes().stream().filter(outcome -> outcome.conclusions().stream()
				.anyMatch(said -> Verdict.of(said).filter(ground.verdict()::equals).isPresent())).map(Outcome::values).flatMap(Optional::stream).toList();
	}

	/** Returns the results of a test with which none of the rules would do again what it did. */
	ValueSet right(Variable test) {
		List<ValueSet> wrong = new ArrayList<>();
		for (Ground ground : grounds) {
			if (ground.rest().contains(test) && ground.rule().test().isPresent()) {
				wrong.addAll(values(ground));
			} else if (ground.rest().contains(test)) {
				ground.rule().given().forEach(given -> given.eachAtom(true, (atom, asItStands) -> {
					if (asItStands && atom instanceof Condition.TestIs is && is.test().equals(test.name())) {
						wrong.add(is.values());
					}
				}));
			}
		}
		return new ValueSet.Except(new ValueSet.Union(wrong));
	}

	private Truth truth(Condition.Atom atom, Map<Variable, Reading> readings) {
		Optional<Variable> variable = Variable.of(atom);
		if (variable.isEmpty()) {
			Condition.VerdictIs is = (Condition.VerdictIs) atom;
			return Truth.of(behind.containsKey(new Verdict(is.fault(), is.verdict())) == is.stands());
		}
		Reading found = readings.get(variable.get());
		return found == null ? Truth.OPEN : atom.match(
				(Condition.TraitIs is) -> Optional.ofNullable(base.traitsOf(family).get(is.trait())).map(Trait::domain)
						.map(domain -> Truth.of(is.values(), domain, found)).orElse(Truth.NO),
				(Condition.SignIs is) -> Truth.of(((Reading.SignSeen) found).present() == is.present()),
				(Condition.TestIs is) -> base.test(is.test()).map(test -> Truth.of(is.values(), test.domain(), found)).orElse(Truth.OPEN),
				(Condition.CodeIs is) -> Truth.of(is.reading(), ((Reading.CodeRead) found).reading()),
				(Condition.ModuleIs is) -> Truth.of(((Reading.ModuleAsked) found).answers() == is.answers()),
				(Condition.VerdictIs is) -> Truth.OPEN,
				(Condition.Unexplained is) -> Truth.of(((Reading.SignSeen) found).present()));
	}
}
