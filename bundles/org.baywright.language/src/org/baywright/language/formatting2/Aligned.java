package org.baywright.language.formatting2;

import org.eclipse.xtext.formatting2.IHiddenRegionFormatting;
import org.eclipse.xtext.formatting2.ITextReplacerContext;
import org.eclipse.xtext.formatting2.internal.WhitespaceReplacer;
import org.eclipse.xtext.formatting2.regionaccess.ITextSegment;

/** Blanks that, where they break a line, bring the next word below a word of the line before. */
final class Aligned extends WhitespaceReplacer {

	private final int column;

	Aligned(ITextSegment blanks, IHiddenRegionFormatting formatting, int column) {
		super(blanks, formatting);
		this.column = column;
	}

	@Override
	public ITextReplacerContext createReplacements(ITextReplacerContext context) {
		int lines = computeNewLineCount(context);
		if (lines == 0) {
			return super.createReplacements(context);
		}
		context.addReplacement(getRegion().replaceWith(context.getNewLinesString(lines) + " ".repeat(column)));
		return context.withIndentation(computeNewIndentation(context));
	}
}
