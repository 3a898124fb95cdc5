package org.baywright.workbench.view.picture;

import java.util.EnumMap;
import java.util.Map;

import org.baywright.presenter.picture.TextMetrics;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Font;
import org.eclipse.swt.graphics.FontData;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.widgets.Control;

/**
 * The picture's fonts with the width of each character, measured once on the screen's thread so that the layout can use
 * them on another. A line is at most as wide as its characters.
 */
final class ScreenMetrics implements TextMetrics {

	private static final int FIRST = ' ';
	private static final int LAST = 0x2BF; // the Latin alphabets

	private final Map<Style, Font> fonts = new EnumMap<>(Style.class);
	private final Map<Style, double[]> widths = new EnumMap<>(Style.class);
	private final Map<Style, Double> widest = new EnumMap<>(Style.class);
	private final Map<Style, Double> heights = new EnumMap<>(Style.class);

	ScreenMetrics(Control control) {
		FontData base = control.getFont().getFontData()[0];
		GC gc = new GC(control);
		for (Style style : Style.values()) {
			int height = Math.max(6, base.getHeight() - (style == Style.TITLE ? 0 : 1));
			Font font = new Font(control.getDisplay(), base.getName(), height, style == Style.TITLE ? SWT.BOLD : SWT.NORMAL);
			fonts.put(style, font);
			gc.setFont(font);
			double[] all = new double[LAST - FIRST + 1];
			for (int c = FIRST; c <= LAST; c++) {
				all[c - FIRST] = gc.stringExtent(String.valueOf((char) c)).x;
			}
			widths.put(style, all);
			widest.put(style, (double) gc.stringExtent("\u2014").x);
			heights.put(style, (double) gc.getFontMetrics().getHeight());
		}
		gc.dispose();
		control.addDisposeListener(event -> fonts.values().forEach(Font::dispose));
	}

	Font font(Style style) {
		return fonts.get(style);
	}

	@Override
	public double width(String text, Style style) {
		double[] all = widths.get(style);
		return text.codePoints().mapToDouble(c -> c >= FIRST && c <= LAST ? all[c - FIRST] : widest.get(style)).sum();
	}

	@Override
	public double height(Style style) {
		return heights.get(style);
	}
}
