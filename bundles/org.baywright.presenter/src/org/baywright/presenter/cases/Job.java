package org.baywright.presenter.cases;

import java.util.List;

import org.baywright.analysis.CaseResult;
import org.baywright.presenter.Link;

/**
 * A finished job with what the rules make of it.
 *
 * @param name its name
 * @param place where it is written
 * @param family title of the vehicle's family
 * @param signs titles of the signs that were present
 * @param end how it ended: the causes, or that it was referred
 * @param passed whether the rules bring it to that end
 * @param message why not; the empty text if they do
 * @param decided rules whose result led to the end, with what they say
 * @param fired all rules that fired
 * @param verdicts what they derived, in words
 * @param result what all this was made of
 */
public record Job(String name, Link place, String family, List<String> signs, String end, boolean passed, String message,
		List<Link> decided, List<Link> fired, List<String> verdicts, CaseResult result) {

	public Job {
		signs = List.copyOf(signs);
		decided = List.copyOf(decided);
		fired = List.copyOf(fired);
		verdicts = List.copyOf(verdicts);
	}
}
