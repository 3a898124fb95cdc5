package org.baywright.language.syntax;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.baywright.language.text.Advice;
import org.baywright.language.text.Nesting;
import org.baywright.language.text.SourceText;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.baywright.model.words.Invisible;
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
		hidden(source, problems);
		for (ILeafNode leaf : leaves) {
			int length = leaf.getLength();
			char first = length > MOST_DIGITS ? leaf.getText().charAt(0) : ' ';
			if (first >= '0' && first <= '9') {
				problems.add(problem(source, ProblemKind.NUMBER_TOO_LONG, leaf.getOffset(), length, "A number with " + length + " digits is not read.",
						Advice.words("Write at most " + MOST_DIGITS + " digits before and after the point.")));
			} else if (first == '"' && length > MOST_LETTERS) {
				problems.add(problem(source, ProblemKind.TEXT_TOO_LONG, leaf.getOffset(), 1, "A text of " + length + " letters is not read.",
						Advice.words("Write at most " + MOST_LETTERS + " letters; put the rest into a comment.")));
			}
		}
		problems.sort(Comparator.comparingInt(problem -> problem.span().offset()));
		return problems;
	}

	/** What does not show, once for each line; names take less of it than quoted texts and comments. */
	private static void hidden(SourceText source, List<Problem> problems) {
		String text = source.text();
		int prose = 0;
		int lastLine = 0;
		for (int i = 0; i < text.length();) {
			if (i >= prose) {
				prose = endOfProse(text, i);
			}
			boolean quoted = i < prose;
			int c = text.codePointAt(i);
			int end = i + Character.charCount(c);
			if (isHidden(c, quoted)) {
				while (!isLost(c) && end < text.length() && text.codePointAt(end) == c) {
					end += Character.charCount(c);
				}
				Problem problem = problem(source, isLost(c) ? ProblemKind.LOST_LETTER : ProblemKind.HIDDEN_CHARACTER, i, end - i,
						hiddenMessage(c), hiddenAdvice(c, source.span(i, end - i)));
				if (problem.span().line() != lastLine) {
					problems.add(problem);
					lastLine = problem.span().line();
				}
			}
			i = end;
		}
	}

	/** Returns where the quoted text or the comment that begins at a place ends; the place if none does. */
	private static int endOfProse(String text, int from) {
		if (text.charAt(from) == '"') {
			return Nesting.endOfQuoted(text, from);
		}
		return text.startsWith("//", from) ? Nesting.endOf(text, "\n", from)
				: text.startsWith("/*", from) ? Nesting.endOf(text, "*/", from) : from;
	}

	private static boolean isHidden(int c, boolean quoted) {
		if (c == ' ' || c == '\t' || c == '\n' || c == '\r') {
			return false;
		}
		return quoted ? isLost(c) || Invisible.is(c) && !Invisible.isJoining(c) && !Invisible.isDirection(c)
				: Invisible.is(c) || isLost(c) || isSpace(c);
	}

	private static boolean isLost(int c) {
		return c == Invisible.LOST;
	}

	private static boolean isSpace(int c) {
		return Character.getType(c) == Character.SPACE_SEPARATOR;
	}

	private static String hiddenMessage(int c) {
		String number = String.format(Locale.ROOT, "U+%04X", c);
		return isLost(c) ? "A letter was lost here; in its place stands " + number + "."
				: "A character that does not show stands here: " + number + ".";
	}

	private static Advice hiddenAdvice(int c, Span span) {
		if (isLost(c)) {
			return Advice.words("Write the letter again.");
		}
		return isSpace(c) ? new Advice("Write a plain space.", List.of(Advice.tidy("Write a plain space", span, " ")))
				: new Advice("Take it out.", List.of(Advice.tidy("Take it out", span, "")));
	}

	private static Problem problem(SourceText source, ProblemKind kind, int offset, int length, String message, Advice advice) {
		return advice.problem(kind, source.span(offset, length), message);
	}
}
