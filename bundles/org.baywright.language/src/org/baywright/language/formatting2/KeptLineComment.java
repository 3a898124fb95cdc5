package org.baywright.language.formatting2;

import org.eclipse.xtext.formatting2.IHiddenRegionFormatting;
import org.eclipse.xtext.formatting2.ITextReplacerContext;
import org.eclipse.xtext.formatting2.internal.CommentReplacer;
import org.eclipse.xtext.formatting2.internal.WhitespaceReplacer;
import org.eclipse.xtext.formatting2.regionaccess.IComment;

/** A comment up to the end of its line; behind other words it keeps its distance, so that columns of comments stay. */
final class KeptLineComment extends CommentReplacer {

	KeptLineComment(IComment comment) {
		super(comment);
	}

	@Override
	public void configureWhitespace(WhitespaceReplacer leading, WhitespaceReplacer trailing) {
		String blanks = leading.getRegion().getText();
		if (leading.getRegion().getOffset() > 0 && !leading.getRegion().isMultiline()) {
			IHiddenRegionFormatting before = leading.getFormatting();
			before.setSpace(blanks.isEmpty() ? " " : blanks.replace('\t', ' '));
			before.setNewLinesMin(0);
			before.setNewLinesDefault(0);
			before.setNewLinesMax(0);
		}
		Comments.keepInPlace(getComment(), leading, trailing);
		IHiddenRegionFormatting after = trailing.getFormatting();
		after.setNewLinesMin(1);
		after.setNewLinesMax(Math.max(1, after.getNewLineMax() == null ? 1 : after.getNewLineMax()));
	}

	@Override
	public ITextReplacerContext createReplacements(ITextReplacerContext context) {
		return context;
	}
}
