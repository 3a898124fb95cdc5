package org.baywright.presenter.bench;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.analysis.run.Jobs;
import org.baywright.model.Case;
import org.baywright.model.RuleBase;
import org.baywright.model.words.Words;
import org.baywright.presenter.Say;

/**
 * Tries a rule that a job teaches against all others. Keep one instance for one project: it remembers what it proved. May be
 * called from any thread, one call at a time.
 */
public final class Trial {

	private final Analysis analysis = new Analysis();
	private RuleBase base;
	private Report before;

	/**
	 * What comes of a rule.
	 *
	 * @param added flaws that the rules would have anew, by place
	 * @param gone flaws that they would no longer have, by place
	 * @param stillFails why the rules would still not bring the job to the end that the rule says; the empty text if they would
	 * @param unlike the cause of the rule and that of the job, in words, where they are two; the empty text where they are one
	 */
	public record Result(List<Flaw> added, List<Flaw> gone, String stillFails, String unlike) {
		public Result {
			added = List.copyOf(added);
			gone = List.copyOf(gone);
		}

		/** Returns whether the job comes to its end and nothing new is wrong. */
		public boolean fits() {
			return added.isEmpty() && stillFails.isEmpty() && unlike.isEmpty();
		}

		/** Returns it in one or two sentences. */
		public String headline() {
			String job = stillFails.isEmpty() ? "With this rule the rules find " + (unlike.isEmpty() ? "the cause of the job" : unlike) + ". " : "The rules still do not bring the job to its end: " + stillFails + " ";
			String less = gone.isEmpty() ? "" : " " + Say.upper(Say.count(gone.size(), "flaw")) + (gone.size() == 1 ? " goes." : " go.");
			return job + (added.isEmpty() ? "It fits with all others." : Say.upper(Say.count(added.size(), "flaw")) + (added.size() == 1 ? " comes" : " come") + " with it.") + less;
		}
	}

	/**
	 * Tries a rule.
	 *
	 * @param draft the rule; it must have no problem
	 * @param listener hears of progress and can stop the work
	 * @throws CancellationException if the listener asked to stop
	 */
	public synchronized Result of(JobRule draft, Listener listener) {
		if (base != draft.base()) {
			before = analysis.check(draft.base(), listener);
			base = draft.base();
		}
		RuleBase.Builder more = new RuleBase.Builder(base.name()).add(base);
		more.rules.add(draft.rule());
		RuleBase with = more.build();
		Report after = analysis.check(with, listener);
		return new Result(without(after.flaws(), before.flaws()), without(before.flaws(), after.flaws()), why(with, draft, listener), unlike(draft));
	}

	/** A flaw of which only the vehicle that shows it has changed is no other one. */
	private static List<Flaw> without(List<Flaw> flaws, List<Flaw> others) {
		Set<String> known = new HashSet<>();
		others.forEach(flaw -> known.addAll(List.of(flaw.id(), flaw.check() + flaw.message())));
		return flaws.stream().filter(flaw -> !known.contains(flaw.id()) && !known.contains(flaw.check() + flaw.message())).toList();
	}

	private static String why(RuleBase with, JobRule draft, Listener listener) {
		return message(with, draft.job(), listener).orElse("no vehicle belongs to the family.");
	}

	private static String unlike(JobRule draft) {
		Words words = new Words(draft.base());
		return draft.known().isEmpty() || draft.known().contains(draft.cause()) ? ""
				: "“" + words.fault(draft.cause()) + "”, but the job's cause is " + Words.and(draft.known().stream().map(fault -> "“" + words.fault(fault) + "”").toList());
	}

	/**
	 * Returns why rules do not bring a job to its end, in one sentence; the empty text if they do, and nothing if no vehicle
	 * belongs to its family.
	 */
	static Optional<String> message(RuleBase rules, Case job, Listener listener) {
		RuleBase.Builder alone = new RuleBase.Builder(rules.name()).add(rules);
		alone.cases.clear();
		alone.cases.add(job);
		return Jobs.run(alone.build(), listener).stream().findFirst().map(CaseResult::message);
	}
}
