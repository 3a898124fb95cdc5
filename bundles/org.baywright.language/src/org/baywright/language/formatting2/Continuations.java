package org.baywright.language.formatting2;

import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Set;
import java.util.TreeMap;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;
import org.eclipse.xtext.formatting2.regionaccess.ITextSegment;

/**
 * The lines that go on with a clause. They stand further in than the clause; strings stand below the first string, and
 * a line that its author began below a word of the clause's first line stays below that word.
 */
final class Continuations {

	private final List<ISemanticRegion> words;
	private final Map<ISemanticRegion, String> columns;
	private final NavigableMap<Integer, Break> breaks = new TreeMap<>();

	/** A break between two words: where the blanks and comments between them end, and the column of the next line. */
	private record Break(int end, int column) {
	}

	Continuations(List<ISemanticRegion> words, Map<ISemanticRegion, String> columns) {
		this.words = words;
		this.columns = columns;
	}

	/** Hears of a clause by its first and last word. */
	interface Clause {
		void found(int first, int last);
	}

	/** Walks over all clauses of more than one word that do not stand in a block on one line. */
	static void clauses(List<ISemanticRegion> words, Set<ISemanticRegion> onOneLine, Clause clause) {
		int start = 0;
		for (int i = 1; i <= words.size(); i++) {
			boolean ends = i == words.size() || Layout.beginsElement(words.get(i - 1), words.get(i))
					|| Layout.beginsClause(words.get(i)) || Layout.isKeyword(words.get(i), "}")
					|| Layout.isKeyword(words.get(i), "{");
			if (ends) {
				if (i - 1 > start && !onOneLine.contains(words.get(i - 1))) {
					clause.found(start, i - 1);
				}
				start = i;
			}
		}
	}

	/**
	 * Takes note of the columns in which the later lines of a clause begin.
	 *
	 * @param first the first word of the clause
	 * @param last its last word
	 * @param indentation the column in which the clause begins
	 */
	void add(int first, int last, int indentation) {
		if (Layout.isInStep(words.get(first))) {
			return; // such a step need not begin its line
		}
		for (int i = first + 2; i <= last; i++) {
			ISemanticRegion left = words.get(i - 1);
			ISemanticRegion right = words.get(i);
			if (breaksBefore(i) && Layout.mayBreakBetween(left, right)) {
				int above = Layout.isString(left) && Layout.isString(right) ? first + 1 : wordAbove(first, i);
				if (above > first && !hasComment(first, above)) {
					breaks.put(left.getEndOffset(), new Break(right.getOffset(), indentation + width(first, above)));
				}
			}
		}
	}

	/** Returns the word of the clause's first line below which a later line begins in the text; -1 if there is none. */
	private int wordAbove(int first, int at) {
		if (hasComment(at - 1, at)) {
			return -1;
		}
		int column = column(words.get(at));
		for (int i = first + 1; i < at && !breaksBefore(i); i++) {
			if (column(words.get(i)) == column) {
				return i;
			}
		}
		return -1;
	}

	private boolean breaksBefore(int i) {
		return words.get(i).getPreviousHiddenRegion().isMultiline();
	}

	private static int column(ISemanticRegion word) {
		String text = word.getTextRegionAccess().regionForDocument().getText();
		return word.getOffset() - 1 - text.lastIndexOf('\n', word.getOffset() - 1);
	}

	private boolean hasComment(int first, int last) {
		return words.subList(first + 1, last + 1).stream()
				.anyMatch(word -> word.getPreviousHiddenRegion().containsComment());
	}

	private int width(int first, int end) {
		int width = 0;
		for (int i = first; i < end; i++) {
			ISemanticRegion next = words.get(i + 1);
			width += words.get(i).getText().length()
					+ columns.getOrDefault(next, Layout.between(words.get(i), next)).length();
		}
		return width;
	}

	/** Returns the column in which a line begins behind the blanks, or -1 if the indentation decides. */
	int columnBehind(ITextSegment blanks) {
		Map.Entry<Integer, Break> at = breaks.floorEntry(blanks.getOffset());
		return at != null && blanks.getEndOffset() <= at.getValue().end() ? at.getValue().column() : -1;
	}
}
