package org.baywright.presenter.grid;

import java.util.List;
import java.util.stream.Collectors;

import org.baywright.model.Span;
import org.baywright.model.VerdictKind;

/**
 * What the results of one test say of one fault.
 *
 * @param marks by rule, in the order of its outcomes; empty if the test says nothing of the fault
 */
public record Cell(List<Mark> marks) {

	/**
	 * One result.
	 *
	 * @param verdict what it says
	 * @param result the result in words: "below 12.4 V"; the empty text where no test is done
	 * @param rule title of the rule that says so
	 * @param span where it is written
	 */
	public record Mark(VerdictKind verdict, String result, String rule, Span span) {

		/** Returns the result with what it says: "below 12.4 V confirms". */
		public String text() {
			return result.isEmpty() ? verdict.verb() : result + " " + verdict.verb();
		}
	}

	/** The test says nothing of the fault. */
	public static final Cell BLANK = new Cell(List.of());

	public Cell {
		marks = List.copyOf(marks);
	}

	/** Returns all marks, one a line; the empty text for a blank cell. */
	public String text() {
		return marks.stream().map(Mark::text).distinct().collect(Collectors.joining("\n"));
	}

	/** Returns all marks with the rules they come from, one a line. */
	public String tooltip() {
		return marks.stream().map(mark -> mark.text() + " – " + mark.rule()).distinct().collect(Collectors.joining("\n"));
	}
}
