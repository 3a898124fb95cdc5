package org.baywright.language.translate;

import java.util.ArrayList;
import java.util.List;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/** Collects the problems of one file and whether the element at hand is still whole. */
final class Report {

	private final List<Problem> problems = new ArrayList<>();
	private boolean broken;

	/** Reports an error that leaves the element's meaning unknown. */
	void error(String id, Span span, String message, String advice) {
		problems.add(new Problem(id, Severity.ERROR, span, message, advice));
		broken = true;
	}

	/** Reports an error that leaves the element's meaning as it is. */
	void flaw(String id, Span span, String message, String advice) {
		problems.add(new Problem(id, Severity.ERROR, span, message, advice));
	}

	void warning(String id, Span span, String message, String advice) {
		problems.add(new Problem(id, Severity.WARNING, span, message, advice));
	}

	void note(String id, Span span, String message, String advice) {
		problems.add(new Problem(id, Severity.NOTE, span, message, advice));
	}

	/** Says that the element is not whole for a reason that is reported elsewhere. */
	void incomplete() {
		broken = true;
	}

	/** Begins a new element. */
	void begin() {
		broken = false;
	}

	/** Returns whether anything since {@link #begin} left the element's meaning unknown. */
	boolean isBroken() {
		return broken;
	}

	List<Problem> problems() {
		return problems;
	}
}
