package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Derived;
import org.baywright.analysis.Consultation.State;
import org.baywright.analysis.Variable;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Words;
import org.baywright.presenter.RuleScope;

/**
 * Handing a job on.
 *
 * @param isDue whether the rules refer it, nothing is confirmed and no rule that has to do with the complaint and has begun may apply any more
 * @param toWhom to whom the rules refer it, sorted; empty if they do not
 * @param accepted to whom somebody has handed it on; the empty text if nobody has
 * @param suspected faults that are suspected, in words
 * @param ruledOut faults that are cleared, in words
 * @param notTried tests that have to do with the complaint and were not done, by title
 */
public record Referral(boolean isDue, List<String> toWhom, String accepted, List<String> suspected, List<String> ruledOut, List<String> notTried) {

	public Referral {
		toWhom = List.copyOf(toWhom);
		suspected = List.copyOf(suspected);
		ruledOut = List.copyOf(ruledOut);
		notTried = List.copyOf(notTried);
	}

	/** Returns to whom it goes: as somebody has said, or else as the rules say; the empty text if neither does. */
	public String goesTo() {
		return accepted.isEmpty() ? Words.and(toWhom) : accepted;
	}

	/** Returns whether the job is handed on, or ought to be. */
	boolean goesAlong() {
		return isDue || !accepted.isEmpty();
	}

	static Referral of(Bench bench, Advice advice) {
		List<String> toWhom = advice.verdicts().stream().map(Derived::verdict).filter(verdict -> verdict.isReferral()).map(verdict -> verdict.fault()).sorted().toList();
		Set<Rule> concerned = concerned(bench);
		// rules of which nothing holds yet are for other complaints
		boolean open = advice.rules().stream().filter(rule -> bench.base().rule(rule.rule()).filter(concerned::contains).isPresent())
				.anyMatch(rule -> rule.state() == State.OPEN && rule.begun() || rule.state() == State.UNDECIDED);
		List<String> confirmed = faults(bench, advice, VerdictKind.CONFIRMED);
		List<String> cleared = faults(bench, advice, VerdictKind.CLEARED);
		List<String> suspected = new ArrayList<>(faults(bench, advice, VerdictKind.SUSPECTED));
		suspected.removeAll(confirmed);
		suspected.removeAll(cleared);
		return new Referral(!toWhom.isEmpty() && confirmed.isEmpty() && !open, toWhom, bench.now().done().referredTo(), suspected, cleared,
				notTried(bench, concerned));
	}

	private static List<String> faults(Bench bench, Advice advice, VerdictKind kind) {
		Words words = new Words(bench.base());
		return advice.verdicts().stream().map(Derived::verdict).filter(verdict -> verdict.kind() == kind).map(verdict -> words.fault(verdict.fault())).sorted().toList();
	}

	/** Returns the rules that have to do with a sign that is there. */
	private static Set<Rule> concerned(Bench bench) {
		Set<Rule> rules = new LinkedHashSet<>();
		for (Reading reading : bench.now().readings()) {
			if (reading instanceof Reading.SignSeen seen && seen.present()) {
				rules.addAll(RuleScope.family(bench.now().family()).around(new RuleScope.Around.OneSign(seen.subject())).rules(bench.base()));
			}
		}
		return rules;
	}

	/** Returns the tests that such rules look at and that were not done. */
	private static List<String> notTried(Bench bench, Set<Rule> rules) {
		Set<String> tests = new TreeSet<>();
		for (Rule rule : rules) {
			rule.test().ifPresent(tests::add);
			RuleScope.atoms(rule).forEach(atom -> Variable.of(atom).filter(variable -> variable.kind() == Variable.Kind.TEST).ifPresent(test -> tests.add(test.name())));
		}
		bench.now().readings().forEach(reading -> tests.remove(reading.subject()));
		Subjects subjects = new Subjects(bench.base(), bench.now().family());
		return tests.stream().flatMap(test -> subjects.subject(new Variable(Variable.Kind.TEST, test)).stream()).map(Subject::title).sorted().toList();
	}
}
