package org.baywright.language.translate;

import java.util.ArrayList;
import java.util.List;
import org.baywright.language.text.Advice;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;

/** Collects the problems of one file and whether the element at hand is still whole. */
final class Report {

	private final List<Problem> problems = new ArrayList<>();
	private boolean broken;

	/** Reports an error that leaves the element's meaning unknown. */
	void error(ProblemKind kind, Span span, String message, Advice advice) {
		tell(kind, span, message, advice);
		broken = true;
	}

	/** As {@link #error(ProblemKind, Span, String, Advice)} where only the author knows what to write. */
	void error(ProblemKind kind, Span span, String message, String advice) {
		error(kind, span, message, Advice.words(advice));
	}

	/** Reports what leaves the element's meaning as it is. */
	void tell(ProblemKind kind, Span span, String message, Advice advice) {
		problems.add(advice.problem(kind, span, message));
	}

	/** As {@link #tell(ProblemKind, Span, String, Advice)} where only the author knows what to write. */
	void tell(ProblemKind kind, Span span, String message, String advice) {
		tell(kind, span, message, Advice.words(advice));
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
