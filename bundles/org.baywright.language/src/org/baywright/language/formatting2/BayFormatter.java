package org.baywright.language.formatting2;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.baywright.language.bay.RuleFile;
import org.eclipse.xtext.formatting2.AbstractJavaFormatter;
import org.eclipse.xtext.formatting2.IFormattableDocument;
import org.eclipse.xtext.formatting2.IHiddenRegionFormatter;
import org.eclipse.xtext.formatting2.IHiddenRegionFormatting;
import org.eclipse.xtext.formatting2.ITextReplacer;
import org.eclipse.xtext.formatting2.regionaccess.IComment;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;
import org.eclipse.xtext.formatting2.regionaccess.ITextSegment;

/**
 * Lays rule files out: one clause a line, indented by two blanks, colons of neighbouring outcomes and traits below each
 * other. A block that its author wrote on one line stays on one line, and so do verify steps; nothing is broken that was
 * whole, and breaks that the author made in lists, between strings and between the parts of a clause stay.
 */
public class BayFormatter extends AbstractJavaFormatter {

	/** Lines between elements and clauses: at least a new line, at most one empty line. */
	static final int MOST_NEW_LINES = 2;
	private static final int INDENTATION = 2;
	private Continuations continuations;

	/** Formats a file. */
	protected void format(RuleFile file, IFormattableDocument document) {
		List<ISemanticRegion> words = new ArrayList<>();
		textRegionExtensions.allSemanticRegions(file).forEach(words::add);
		if (words.isEmpty()) {
			return;
		}
		Map<ISemanticRegion, ISemanticRegion> braces = braces(words);
		Set<ISemanticRegion> onOneLine = onOneLine(words, braces);
		Map<ISemanticRegion, String> columns = Columns.of(words, onOneLine);
		boolean headed = words.get(0).getPreviousHiddenRegion().containsComment();
		document.prepend(words.get(0), it -> it.setNewLines(0, 0, headed ? MOST_NEW_LINES : 0));
		document.append(words.get(words.size() - 1), it -> it.newLine());
		for (int i = 1; i < words.size(); i++) {
			place(words.get(i - 1), words.get(i), onOneLine, columns, document);
		}
		braces.forEach((open, close) -> {
			if (!onOneLine.contains(open)) {
				document.interior(open, close, IHiddenRegionFormatter::indent);
			}
		});
		continuations = new Continuations(words, columns);
		int[] depths = depths(words, braces);
		Continuations.clauses(words, onOneLine, (first, last) -> {
			document.set(words.get(first).getNextHiddenRegion(), words.get(last).getNextHiddenRegion(),
					IHiddenRegionFormatter::indent);
			continuations.add(first, last, INDENTATION * depths[first]);
		});
	}

	/** Returns in how many blocks each word stands. */
	private static int[] depths(List<ISemanticRegion> words, Map<ISemanticRegion, ISemanticRegion> braces) {
		int[] depths = new int[words.size()];
		Set<ISemanticRegion> closing = new HashSet<>(braces.values());
		int depth = 0;
		for (int i = 0; i < depths.length; i++) {
			depth -= closing.contains(words.get(i)) ? 1 : 0;
			depths[i] = depth;
			depth += braces.containsKey(words.get(i)) ? 1 : 0;
		}
		return depths;
	}

	@Override
	public ITextReplacer createWhitespaceReplacer(ITextSegment blanks, IHiddenRegionFormatting formatting) {
		int column = continuations == null ? -1 : continuations.columnBehind(blanks);
		return column < 0 ? super.createWhitespaceReplacer(blanks, formatting) : new Aligned(blanks, formatting, column);
	}

	@Override
	public ITextReplacer createCommentReplacer(IComment comment) {
		return comment.getText().startsWith("/*") ? new KeptComment(comment) : new KeptLineComment(comment);
	}

	private static void place(ISemanticRegion left, ISemanticRegion right, Set<ISemanticRegion> onOneLine,
			Map<ISemanticRegion, String> columns, IFormattableDocument document) {
		boolean oneLine = onOneLine.contains(right);
		if (Layout.beginsElement(left, right)) {
			document.prepend(right, it -> it.setNewLines(1, 1, MOST_NEW_LINES));
		} else if (Layout.isKeyword(right, "}")) {
			boolean empty = Layout.isKeyword(left, "{");
			document.prepend(right, oneLine || empty ? IHiddenRegionFormatter::oneSpace : IHiddenRegionFormatter::newLine);
		} else if (Layout.isKeyword(left, "{")) {
			document.prepend(right, oneLine ? IHiddenRegionFormatter::oneSpace : IHiddenRegionFormatter::newLine);
		} else if (Layout.beginsClause(right)) {
			document.prepend(right, it -> {
				it.setSpace(Layout.BETWEEN_CLAUSES);
				if (!oneLine) {
					int least = Layout.isInStep(right) ? 0 : 1;
					it.setNewLines(least, least, MOST_NEW_LINES);
				}
			});
		} else {
			String space = columns.getOrDefault(right, Layout.between(left, right));
			document.prepend(right, it -> {
				it.setSpace(space);
				if (Layout.mayBreakBetween(left, right) && !oneLine) {
					it.setNewLines(0, 0, 1);
				} else {
					it.setNewLines(0, 0, 0);
				}
			});
		}
	}

	private static Map<ISemanticRegion, ISemanticRegion> braces(List<ISemanticRegion> words) {
		Map<ISemanticRegion, ISemanticRegion> pairs = new HashMap<>();
		Deque<ISemanticRegion> open = new ArrayDeque<>();
		for (ISemanticRegion word : words) {
			if (Layout.isKeyword(word, "{")) {
				open.push(word);
			} else if (Layout.isKeyword(word, "}") && !open.isEmpty()) {
				pairs.put(open.pop(), word);
			}
		}
		return pairs;
	}

	/** All words of blocks that the author wrote on one line, with their braces. */
	private static Set<ISemanticRegion> onOneLine(List<ISemanticRegion> words,
			Map<ISemanticRegion, ISemanticRegion> braces) {
		Set<ISemanticRegion> found = new HashSet<>();
		for (int i = 0; i < words.size(); i++) {
			ISemanticRegion close = braces.get(words.get(i));
			if (close == null) {
				continue;
			}
			boolean broken = false;
			int j = i;
			while (words.get(j) != close) {
				j++;
				broken |= words.get(j).getPreviousHiddenRegion().isMultiline();
			}
			if (!broken) {
				found.addAll(words.subList(i, j + 1));
			}
		}
		return found;
	}
}
