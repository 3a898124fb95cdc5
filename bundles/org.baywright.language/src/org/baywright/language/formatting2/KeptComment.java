package org.baywright.language.formatting2;

import org.eclipse.xtext.formatting2.ITextReplacerContext;
import org.eclipse.xtext.formatting2.internal.MultilineCommentReplacer;
import org.eclipse.xtext.formatting2.internal.WhitespaceReplacer;
import org.eclipse.xtext.formatting2.regionaccess.IComment;

/** A comment whose lines stay as its author laid them out. */
final class KeptComment extends MultilineCommentReplacer {

	KeptComment(IComment comment) {
		super(comment, '*');
	}

	@Override
	public void configureWhitespace(WhitespaceReplacer leading, WhitespaceReplacer trailing) {
		super.configureWhitespace(leading, trailing);
		Comments.keepInPlace(getComment(), leading, trailing);
	}

	@Override
	public ITextReplacerContext createReplacements(ITextReplacerContext context) {
		return context;
	}
}
