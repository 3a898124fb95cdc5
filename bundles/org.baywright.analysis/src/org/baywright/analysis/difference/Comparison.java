package org.baywright.analysis.difference;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Effect;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Reach;
import org.baywright.analysis.Report;
import org.baywright.analysis.proof.CaseRun;
import org.baywright.analysis.proof.Contrast;
import org.baywright.analysis.proof.Prover;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Case;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;

/**
 * Compares two states of a rule base by what they do to vehicles. All situations are looked at, by proof and not by
 * trying some; where a limit ends that, it is said.
 */
public final class Comparison {

	private final int conflictLimit;

	/** Makes a comparison with the usual limit. */
	public Comparison() {
		this(Prover.CONFLICT_LIMIT);
	}

	/** @param conflictLimit conflicts after which the solver leaves a question undecided, 1 or more */
	public Comparison(int conflictLimit) {
		this.conflictLimit = conflictLimit;
	}

	/**
	 * Compares two states, without their findings.
	 *
	 * @throws CancellationException if the listener asked to stop
	 */
	public Difference compare(RuleBase old, RuleBase now, Listener listener) {
		Renames renames = Renames.between(old, now);
		return compare(old, renames.apply(old), now, renames, listener);
	}

	/** @param renamed the old rule base with the names of now */
	private Difference compare(RuleBase old, RuleBase renamed, RuleBase now, Renames renames, Listener listener) {
		Contrast contrast = new Contrast(renamed, now, conflictLimit);
		contrast.run(listener);
		List<Effect> effects = new ArrayList<>(contrast.effects());
		effects.sort(Effect.ORDER);
		List<Reach> reaches = new ArrayList<>(contrast.reaches());
		reaches.sort(Comparator.comparing(Reach::verdict).thenComparing(Reach::now).thenComparing(reach -> reach.families().toString()));
		boolean same = effects.isEmpty() && contrast.undecided().isEmpty() && !contrast.hasMore();
		return new Difference(Elements.between(old, renamed, now, renames), effects, reaches, same ? List.of() : jobs(renamed, now), List.of(), List.of(),
				contrast.undecided(), contrast.hasMore());
	}

	/**
	 * Compares two states with their findings.
	 *
	 * @throws CancellationException if the listener asked to stop
	 */
	public Difference compareChecked(RuleBase old, RuleBase now, Listener listener) {
		Renames renames = Renames.between(old, now);
		RuleBase renamed = renames.apply(old);
		Difference difference = compare(old, renamed, now, renames, listener);
		Analysis analysis = new Analysis(conflictLimit);
		Report before = analysis.check(renamed, listener);
		Report after = analysis.check(now, listener);
		return new Difference(difference.edits(), difference.effects(), difference.reaches(), difference.jobs(), without(after, before), without(before, after),
				difference.undecided(), difference.more());
	}

	/** Returns the findings of one check that the other did not have, those that were accepted apart. */
	private static List<Flaw> without(Report some, Report others) {
		Set<String> known = new HashSet<>();
		others.flaws().stream().filter(flaw -> flaw.accepted().isEmpty()).forEach(flaw -> known.add(flaw.id()));
		return some.flaws().stream().filter(flaw -> flaw.accepted().isEmpty() && !known.contains(flaw.id())).toList();
	}

	/** Returns the jobs of both that come to another end. */
	private static List<JobChange> jobs(RuleBase old, RuleBase now) {
		Map<String, Case> before = new HashMap<>();
		old.cases().forEach(job -> before.putIfAbsent(job.name(), job));
		Map<String, CaseRun> oldRuns = new HashMap<>();
		Map<String, CaseRun> newRuns = new HashMap<>();
		List<JobChange> changes = new ArrayList<>();
		for (Case job : now.cases()) {
			Case was = before.get(job.name());
			if (was != null && isOfVehicles(old, was) && isOfVehicles(now, job)) {
				CaseResult then = oldRuns.computeIfAbsent(was.family(), family -> CaseRun.of(old, family)).run(was);
				CaseResult today = newRuns.computeIfAbsent(job.family(), family -> CaseRun.of(now, family)).run(job);
				if (then.passed() != today.passed() || !then.verdicts().equals(today.verdicts())) {
					changes.add(new JobChange(then, today));
				}
			}
		}
		return changes;
	}

	private static boolean isOfVehicles(RuleBase base, Case job) {
		return base.family(job.family()).filter(family -> family.kind() == Family.Kind.VEHICLES).isPresent();
	}
}
