package org.baywright.language.syntax;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.baywright.language.translate.SourceText;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.eclipse.xtext.nodemodel.ILeafNode;

/** Finds what the parser takes and no person can read: signs that do not show, and numbers and texts without measure. */
public final class Unreadable {

	/** More digits before or after the point than any instrument shows; an IEEE 754 double keeps 15 exactly. */
	static final int MOST_DIGITS = 15;
	static final int MOST_LETTERS = 5_000;

	private Unreadable() {
	}

	/**
	 * Returns the problems, by place.
	 *
	 * @param source the text
	 * @param leaves the visible leaves of its tree
	 */
	public static List<Problem> of(SourceText source, List<ILeafNode> leaves) {
		List<Problem> problems = new ArrayList<>();
		int lastLine = 0;
		for (int i = 0; i < source.text().length(); i++) {
			char c = source.text().charAt(i);
			if (isHidden(c)) {
				Problem problem = problem(source, "hidden-character", i, 1,
						"A character that does not show stands here: " + String.format(Locale.ROOT, "U+%04X", (int) c) + ".", "Take it out.");
				if (problem.span().line() != lastLine) {
					problems.add(problem);
					lastLine = problem.span().line();
				}
			}
		}
		for (ILeafNode leaf : leaves) {
			int length = leaf.getLength();
			char first = length > MOST_DIGITS ? leaf.getText().charAt(0) : ' ';
			if (first >= '0' && first <= '9') {
				problems.add(problem(source, "number-too-long", leaf.getOffset(), length, "A number with " + length + " digits is not read.",
						"Write at most " + MOST_DIGITS + " digits before and after the point."));
			} else if (first == '"' && length > MOST_LETTERS) {
				problems.add(problem(source, "text-too-long", leaf.getOffset(), 1, "A text of " + length + " letters is not read.",
						"Write at most " + MOST_LETTERS + " letters; put the rest into a comment."));
			}
		}
		problems.sort(Comparator.comparingInt(problem -> problem.span().offset()));
		return problems;
	}

	/** Control characters, and those that turn the direction of writing (Unicode Technical Report 36, 2.10) or take no room. */
	private static boolean isHidden(char c) {
		return Character.isISOControl(c) && c != '\t' && c != '\n' && c != '\r' || c >= '\u202A' && c <= '\u202E'
				|| c >= '\u2066' && c <= '\u2069' || c == '\u200B' || c == '\u2060' || c == '\uFEFF';
	}

	private static Problem problem(SourceText source, String id, int offset, int length, String message, String advice) {
		return new Problem(id, Severity.ERROR, source.span(offset, length), message, advice);
	}
}
