package org.baywright.language.formatting2;

import org.eclipse.xtext.formatting2.IHiddenRegionFormatting;
import org.eclipse.xtext.formatting2.internal.WhitespaceReplacer;
import org.eclipse.xtext.formatting2.regionaccess.IComment;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;

/** What comments of both kinds have in common. */
final class Comments {

	private Comments() {
	}

	/**
	 * Keeps an empty line before and behind a comment. A comment in front of a closing brace belongs to the block, so the
	 * block ends behind it.
	 */
	static void keepInPlace(IComment comment, WhitespaceReplacer leading, WhitespaceReplacer trailing) {
		IHiddenRegionFormatting before = leading.getFormatting();
		IHiddenRegionFormatting after = trailing.getFormatting();
		if (leading.getRegion().isMultiline()) {
			before.setNewLinesMax(BayFormatter.MOST_NEW_LINES);
		}
		ISemanticRegion next = comment.getHiddenRegion().getNextSemanticRegion();
		if (beginsLine(next) && trailing.getRegion().isMultiline()) {
			after.setNewLinesMax(BayFormatter.MOST_NEW_LINES);
		}
		Integer decrease = before.getIndentationDecrease();
		if (decrease != null && decrease > 0 && Layout.isKeyword(next, "}")) {
			before.setIndentationDecrease(decrease == 1 ? null : decrease - 1);
			after.setIndentationDecrease(1 + (after.getIndentationDecrease() == null ? 0 : after.getIndentationDecrease()));
		}
	}

	private static boolean beginsLine(ISemanticRegion word) {
		return word != null && (word.getPreviousSemanticRegion() == null || Layout.beginsClause(word)
				|| Layout.beginsElement(word.getPreviousSemanticRegion(), word));
	}
}
