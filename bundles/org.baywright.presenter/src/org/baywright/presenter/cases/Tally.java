package org.baywright.presenter.cases;

import org.baywright.presenter.Say;

/**
 * How many jobs of one kind pass.
 *
 * @param title what they have in common: a family or a sign
 * @param passed jobs that pass
 * @param failed jobs that fail
 */
public record Tally(String title, int passed, int failed) {

	/** Returns the tally in words: "Bord S: 4 jobs, 1 fails". */
	public String text() {
		return title + ": " + Say.count(passed + failed, "job") + (failed == 0 ? ", all pass"
				: failed == 1 ? ", 1 fails" : ", " + failed + " fail");
	}
}
