package org.baywright.workbench.help;

import java.util.ArrayList;
import java.util.List;

import org.baywright.presenter.help.SetText;
import org.baywright.presenter.help.SetText.Run;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.resource.JFaceColors;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;

/** Puts a set text into a text widget, in the fonts and colours of the theme. */
public final class PageSetter {

	private PageSetter() {
	}

	/** Shows a text from its beginning. */
	public static void set(StyledText widget, SetText page) {
		widget.setText(page.text());
		List<StyleRange> styles = new ArrayList<>();
		int end = 0;
		for (Run run : page.runs()) {
			// styles may not overlap: what stands within another keeps the outer look
			if (run.start() >= end) {
				styles.add(style(widget, run));
				end = run.start() + run.length();
			}
		}
		widget.setStyleRanges(styles.toArray(StyleRange[]::new));
		widget.setTopIndex(0);
	}

	private static StyleRange style(StyledText widget, Run run) {
		StyleRange style = new StyleRange();
		style.start = run.start();
		style.length = run.length();
		switch (run.look()) {
		case TITLE -> style.font = JFaceResources.getFontRegistry().getBold(JFaceResources.HEADER_FONT);
		case HEADING -> style.font = JFaceResources.getFontRegistry().getBold(JFaceResources.DIALOG_FONT);
		case STRONG -> style.fontStyle = SWT.BOLD;
		case EMPHASIS -> style.fontStyle = SWT.ITALIC;
		case CODE, BLOCK -> style.font = JFaceResources.getFont(JFaceResources.TEXT_FONT);
		case LINK -> {
			style.underline = true;
			style.underlineStyle = SWT.UNDERLINE_LINK;
			style.foreground = JFaceColors.getHyperlinkText(widget.getDisplay());
		}
		}
		return style;
	}
}
