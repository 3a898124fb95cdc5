package org.baywright.analysis.check;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.proof.Branch;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Encoding;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Skill;
import org.baywright.model.Test;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Words;

/** A rule runs a test although another rule that applies whenever it does decides the same faults by a cheaper one. */
@RuleCheck(id = "dear-test", severity = Severity.WARNING, summary = "A rule runs a dear test where a cheaper one decides the same faults")
public final class DearTest implements ProofCheck<List<DearTest.Decided>> {

	/** A rule, and another one that decides the same faults by its test, whatever that gives; which test is cheaper is not looked at. */
	record Decided(String rule, String by) {
	}

	@Override
	public List<Decided> examine(Prover prover) {
		List<Decided> found = new ArrayList<>();
		Program program = prover.program();
		for (int rule = 0; rule < program.rules.size(); rule++) {
			Set<String> faults = decides(program, rule);
			for (int by : faults.isEmpty() ? Set.<Integer>of() : others(program, rule, faults)) {
				if (decidesWhatever(prover, by, faults) && appliesWhenever(prover, by, rule)) {
					found.add(new Decided(program.rules.get(rule).name(), program.rules.get(by).name()));
				}
			}
		}
		return found;
	}

	/** Returns the faults that a rule confirms or clears by its test; none if it says anything else. */
	private static Set<String> decides(Program program, int rule) {
		Set<String> faults = new TreeSet<>();
		for (int b : program.branchesOf.get(rule)) {
			for (int verdict : program.branches.get(b).verdicts()) {
				if (!isDecision(program.verdicts.get(verdict))) {
					return Set.of();
				}
				faults.add(program.verdicts.get(verdict).fault());
			}
		}
		return program.rules.get(rule).test().isPresent() ? faults : Set.of();
	}

	private static boolean isDecision(Verdict verdict) {
		return verdict.kind() == VerdictKind.CONFIRMED || verdict.kind() == VerdictKind.CLEARED;
	}

	/** Returns the rules that decide one of the faults by another test. */
	private static Set<Integer> others(Program program, int rule, Set<String> faults) {
		Set<Integer> others = new TreeSet<>();
		String fault = faults.iterator().next();
		for (VerdictKind kind : List.of(VerdictKind.CONFIRMED, VerdictKind.CLEARED)) {
			int verdict = program.numberOf(new Verdict(fault, kind));
			for (int b : verdict < 0 ? List.<Integer>of() : program.derivedBy.get(verdict)) {
				int other = program.branches.get(b).rule();
				Rule found = program.rules.get(other);
				if (other != rule && found.test().isPresent() && !found.test().equals(program.rules.get(rule).test())) {
					others.add(other);
				}
			}
		}
		return others;
	}

	/** Returns whether every result of a rule's test leads to an outcome that confirms or clears each of the faults. */
	private static boolean decidesWhatever(Prover prover, int rule, Set<String> faults) {
		Program program = prover.program();
		Domain domain = prover.base().test(program.rules.get(rule).test().orElseThrow()).map(Test::domain).orElseThrow();
		IndexSet deciding = IndexSet.EMPTY;
		for (int b : program.branchesOf.get(rule)) {
			Branch branch = program.branches.get(b);
			Set<String> decided = new TreeSet<>();
			branch.verdicts().stream().map(program.verdicts::get).filter(DearTest::isDecision).forEach(verdict -> decided.add(verdict.fault()));
			Outcome outcome = program.rules.get(rule).outcomes().get(branch.outcome());
			if (decided.containsAll(faults) && outcome.values().isPresent()) {
				deciding = deciding.union(outcome.values().get().in(domain));
			}
		}
		return deciding.complement(domain.size()).isEmpty();
	}

	/**
	 * Returns whether one rule applies, once its test is done, whenever the other one does; and whether that one still asks
	 * for its test when the first has decided.
	 */
	private static boolean appliesWhenever(Prover prover, int by, int rule) {
		Program program = prover.program();
		Encoding encoding = prover.encoding();
		int test = program.numberOf(new Variable(Variable.Kind.TEST, program.rules.get(by).test().orElseThrow()));
		if (test < 0) {
			return false; // it is not for these vehicles
		}
		int done = encoding.values.known(test);
		boolean asksStill = false;
		for (int b : program.branchesOf.get(rule)) {
			List<Integer> idle = new ArrayList<>(List.of(encoding.body(b), done));
			program.branchesOf.get(by).forEach(other -> idle.add(-encoding.body(other)));
			if (encoding.ask(idle.stream().mapToInt(Integer::intValue).toArray()) != Answer.NO) {
				return false;
			}
			asksStill |= encoding.ask(encoding.body(b), done) == Answer.YES;
		}
		return asksStill;
	}

	@Override
	public List<Decided> nothing() {
		return List.of();
	}

	@Override
	public void report(Checked checked) {
		OfRules<Set<String>> facts = new OfRules<>();
		checked.each(this, (part, all) -> all.stream().map(Decided::rule).distinct().forEach(rule -> facts.add(rule, part,
				new TreeSet<>(all.stream().filter(fact -> fact.rule().equals(rule)).map(Decided::by).toList()))));
		Behind behind = new Behind(checked, seenWith(checked.base()));
		facts.each(checked, (name, byPart) -> {
			Set<String> everywhere = new TreeSet<>(byPart.get(0));
			byPart.forEach(everywhere::retainAll);
			Rule rule = checked.base().rule(name).orElseThrow();
			Efforts efforts = new Efforts(checked.base(), behind.all(rule.given()));
			everywhere.stream().map(checked.base()::rule).map(other -> other.orElseThrow()).filter(other -> efforts.isCheaper(other, rule))
					.min((one, other) -> efforts.isCheaper(one, other) ? -1 : efforts.isCheaper(other, one) ? 1 : 0)
					.ifPresent(cheaper -> report(checked, rule, cheaper, efforts));
		});
	}

	/** Returns the tests with which others are seen. */
	private static Set<String> seenWith(RuleBase base) {
		return base.tests().stream().flatMap(test -> test.seenWith().stream()).collect(Collectors.toCollection(TreeSet::new));
	}

	/** What the tests of rules take. */
	private record Effort(BigDecimal money, BigDecimal time, Skill skill) {
	}

	/**
	 * What the tests of rules take on vehicles on which some tests are done already.
	 *
	 * @param done these tests; what is seen with them takes nothing more
	 */
	private record Efforts(RuleBase base, Set<String> done) {

		Effort of(Rule rule) {
			Test test = base.doneBy(base.test(rule.test().orElseThrow()).orElseThrow());
			return done.contains(test.name()) ? new Effort(BigDecimal.ZERO, BigDecimal.ZERO, Skill.BASIC)
					: new Effort(test.cost(base), test.takes(), test.skill());
		}

		/** Returns whether the test of one rule takes neither more money nor more time nor more skill than that of the other, and less of one. */
		boolean isCheaper(Rule one, Rule other) {
			Effort cheap = of(one);
			Effort dear = of(other);
			int money = cheap.money().compareTo(dear.money());
			int time = cheap.time().compareTo(dear.time());
			int skill = cheap.skill().compareTo(dear.skill());
			return money <= 0 && time <= 0 && skill <= 0 && money + time + skill < 0;
		}

		/** Returns why the test of a rule takes less, in words. */
		String less(Rule rule) {
			return base.test(rule.test().orElseThrow()).flatMap(Test::seenWith).filter(done::contains)
					.map(other -> "seen with \"" + new Words(base).test(other) + "\", done already").orElse("cheaper");
		}

		/** An acceptance holds as long as what the tests cost. */
		String text(Rule rule) {
			Effort effort = of(rule);
			return rule.test().orElseThrow() + " " + effort.money().stripTrailingZeros().toPlainString() + " "
					+ effort.time().stripTrailingZeros().toPlainString() + " " + effort.skill();
		}
	}

	private void report(Checked checked, Rule rule, Rule cheaper, Efforts efforts) {
		Words words = new Words(checked.base());
		checked.flaw(this, rule.name() + "/" + cheaper.name(), rule.testSpan())
				.says("Rule " + rule.name() + " runs \"" + words.test(rule.test().orElseThrow()) + "\", but whenever it applies rule "
						+ cheaper.name() + " decides the same by \"" + words.test(cheaper.test().orElseThrow()) + "\", which is " + efforts.less(cheaper) + "; let the rule wait for what that leaves open, or take it out.")
				.near(cheaper.testSpan(), "rule " + cheaper.name() + " runs the cheaper test").about(rule).about(cheaper)
				.about(efforts.text(rule) + efforts.text(cheaper)).add();
	}
}
