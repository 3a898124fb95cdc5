package org.baywright.analysis.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.check.Checks;
import org.baywright.analysis.proof.Engine;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Acceptance;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;

/**
 * Checks rule bases. Keep one instance for one project: it remembers what it proved, so that the next check costs only
 * what changed. What is found in the rules that others build on alone is told there. What it finds does not depend on what it remembers. Not safe for use by several threads at once.
 */
public final class Analysis {

	private final Engine engine;
	private final int conflictLimit;
	private final Beneath beneath;

	/** Makes an analysis with the usual limit, which only rule bases made to be hard ever reach. */
	public Analysis() {
		this(Prover.CONFLICT_LIMIT);
	}

	/**
	 * Makes an analysis with a limit of its own.
	 *
	 * @param conflictLimit conflicts after which the solver leaves a question undecided, 1 or more
	 */
	public Analysis(int conflictLimit) {
		this.conflictLimit = conflictLimit;
		beneath = new Beneath(() -> new Analysis(this.conflictLimit));
		engine = new Engine(Checks.all(), Math.max(1, Runtime.getRuntime().availableProcessors()), conflictLimit);
	}

	/**
	 * Makes all checks.
	 *
	 * @param base the rule base as it stands now
	 * @param listener hears of progress and can stop the check
	 * @throws CancellationException if the listener asked to stop
	 */
	public Report check(RuleBase base, Listener listener) {
		Engine.Outcome outcome = engine.run(base, listener);
		List<Flaw> flaws = new ArrayList<>(new HashSet<>(outcome.flaws()));
		List<Flaw> judged = accept(base, flaws);
		judged.sort(null);
		List<Flaw> told = beneath.toldHere(base, judged, listener);
		return new Report(told, outcome.cases(), Checks.ids(), outcome.parts(), outcome.proved(), judged);
	}

	private static List<Flaw> accept(RuleBase base, List<Flaw> flaws) {
		Map<String, Acceptance> byKey = new HashMap<>();
		base.acceptances().forEach(acceptance -> byKey.putIfAbsent(acceptance.flaw(), acceptance));
		List<Flaw> judged = new ArrayList<>();
		for (Flaw flaw : flaws) {
			Acceptance acceptance = byKey.get(flaw.acceptanceKey());
			judged.add(acceptance != null && flaw.severity() == Severity.WARNING && !flaw.breach() ? flaw.accept(acceptance) : flaw);
		}
		return judged;
	}
}
