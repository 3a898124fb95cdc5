package org.baywright.analysis.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Listener;
import org.baywright.analysis.proof.CaseRun;
import org.baywright.model.Case;
import org.baywright.model.Family;
import org.baywright.model.RuleBase;

/** Runs finished jobs through the rules, without any check. */
public final class Jobs {

	private Jobs() {
	}

	/**
	 * Runs all finished jobs; one of a family that no vehicle belongs to is left out, as in a check.
	 *
	 * @param listener hears how many jobs are done and can stop the run
	 * @return what the rules make of each job, in the order of the files
	 * @throws CancellationException if the listener asked to stop
	 */
	public static List<CaseResult> run(RuleBase base, Listener listener) {
		Set<String> vehicles = new HashSet<>();
		base.vehicleFamilies().stream().map(Family::name).forEach(vehicles::add);
		List<Case> jobs = base.cases().stream().filter(job -> vehicles.contains(job.family())).toList();
		Map<String, CaseRun> runs = new HashMap<>();
		List<CaseResult> results = new ArrayList<>();
		for (Case job : jobs) {
			if (listener.isCancelled()) {
				throw new CancellationException();
			}
			results.add(runs.computeIfAbsent(job.family(), family -> CaseRun.of(base, family)).run(job));
			listener.progress(results.size(), jobs.size());
		}
		return results;
	}
}
