package org.baywright.analysis;

import java.util.List;

import org.baywright.model.Case;

/**
 * What the rules make of a finished job.
 *
 * @param job the job
 * @param passed whether the rules bring it to the end that it had
 * @param message why not, in one sentence; the empty text if it passed
 * @param fired names of the rules that fired, sorted
 * @param verdicts what they derived, sorted
 */
public record CaseResult(Case job, boolean passed, String message, List<String> fired, List<Verdict> verdicts) {

	public CaseResult {
		fired = List.copyOf(fired);
		verdicts = List.copyOf(verdicts);
	}
}
