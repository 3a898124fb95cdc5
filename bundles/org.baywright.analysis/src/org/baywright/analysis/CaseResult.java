package org.baywright.analysis;

import java.util.List;

import org.baywright.model.Case;
import org.baywright.model.Span;

/**
 * What the rules make of a finished job.
 *
 * @param job the job
 * @param passed whether the rules bring it to the end that it had
 * @param message why not, in one sentence; the empty text if it passed
 * @param fired names of the rules that fired, sorted
 * @param verdicts what they derived, sorted
 * @param confirming names of the rules that confirmed a cause of the job, sorted
 * @param blamed what decided wrongly, in the order of the texts; empty if the job passed
 */
public record CaseResult(Case job, boolean passed, String message, List<String> fired, List<Verdict> verdicts,
		List<String> confirming, List<Blame> blamed) {

	/**
	 * A rule or a law that keeps a job from the end that it had.
	 *
	 * @param rule the rule's name; the empty text for a law
	 * @param span where it is written
	 * @param does what it does or fails to do, with its name
	 */
	public record Blame(String rule, Span span, String does) {
	}

	public CaseResult {
		fired = List.copyOf(fired);
		verdicts = List.copyOf(verdicts);
		confirming = List.copyOf(confirming);
		blamed = List.copyOf(blamed);
	}
}
