package org.baywright.analysis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.check.Checks;
import org.baywright.analysis.proof.Engine;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Acceptance;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;

/**
 * Checks rule bases. Keep one instance for one project: it remembers what it proved, so that the next check costs only
 * what changed. What it finds does not depend on what it remembers. Not safe for use by several threads at once.
 */
public final class Analysis {

	private final Engine engine;

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
		List<Finding> findings = new ArrayList<>(new HashSet<>(outcome.findings()));
		List<Finding> judged = accept(base, findings);
		judged.sort(null);
		return new Report(judged, outcome.cases(), Checks.ids(), outcome.parts(), outcome.proved());
	}

	private static List<Finding> accept(RuleBase base, List<Finding> findings) {
		Map<String, Acceptance> byKey = new HashMap<>();
		base.acceptances().forEach(acceptance -> byKey.putIfAbsent(acceptance.finding(), acceptance));
		List<Finding> judged = new ArrayList<>();
		for (Finding finding : findings) {
			Acceptance acceptance = byKey.get(finding.acceptanceKey());
			judged.add(acceptance != null && finding.severity() == Severity.WARNING ? finding.accept(acceptance) : finding);
		}
		return judged;
	}
}
