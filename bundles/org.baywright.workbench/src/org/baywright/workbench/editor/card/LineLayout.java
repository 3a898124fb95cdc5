package org.baywright.workbench.editor.card;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Layout;
import org.eclipse.swt.widgets.Text;

/** Puts controls behind each other like words of a sentence; one that has no room goes on in the next row. */
final class LineLayout extends Layout {

	private static final int GAP = 6;
	private static final int ROW_GAP = 3;
	private static final int INDENT = 24;
	private static final int AROUND = 16;

	/**
	 * How a control stands in its row.
	 *
	 * @param width how wide it is at least, in pixels; -1 for as wide as it wants
	 * @param grows whether it takes what is left of the row
	 * @param breaks whether a new row begins before it
	 * @param indent how many steps that row is moved in
	 */
	record Place(int width, boolean grows, boolean breaks, int indent) {
	}

	@Override
	protected Point computeSize(Composite of, int width, int height, boolean changed) {
		int wanted = width == SWT.DEFAULT ? 500 : width;
		return new Point(wanted, arrange(of, wanted, false));
	}

	@Override
	protected void layout(Composite of, boolean changed) {
		arrange(of, of.getClientArea().width, true);
	}

	private static Place place(Control control) {
		return control.getLayoutData() instanceof Place place ? place : new Place(-1, false, false, 0);
	}

	private static int arrange(Composite of, int width, boolean move) {
		Control[] all = of.getChildren();
		int y = 0;
		int indent = 0;
		for (int from = 0; from < all.length;) {
			indent = place(all[from]).breaks() ? place(all[from]).indent() * INDENT : from == 0 ? 0 : indent;
			int x = indent;
			int to = from;
			int growing = 0;
			while (to < all.length && (to == from || !place(all[to]).breaks())) {
				int wide = least(all[to], width - indent);
				if (to > from && x + wide > width) {
					break;
				}
				x += wide + GAP;
				growing += place(all[to]).grows() ? 1 : 0;
				to++;
			}
			int left = Math.max(0, width - x + GAP);
			y += row(all, from, to, indent, y, growing == 0 ? 0 : left / growing, width, move) + ROW_GAP;
			from = to;
		}
		return Math.max(0, y - ROW_GAP);
	}

	private static int least(Control control, int most) {
		Place place = place(control);
		int wide = place.width() >= 0 ? place.width() : control.computeSize(SWT.DEFAULT, SWT.DEFAULT).x;
		return Math.max(20, Math.min(wide, most));
	}

	/** The toolkit knows how high a text of several lines is only after it was drawn. */
	private static int height(Text text, int width) {
		GC gc = new GC(text);
		try {
			int lines = 0;
			for (String line : text.getText().split("\n", -1)) {
				// words that go on in the next line leave some of this one empty
				lines += 1 + gc.textExtent(line).x * 21 / 20 / Math.max(40, width - AROUND);
			}
			return lines * gc.getFontMetrics().getHeight() + AROUND;
		} finally {
			gc.dispose();
		}
	}

	private static int row(Control[] all, int from, int to, int indent, int y, int more, int width, boolean move) {
		int x = indent;
		int tall = 0;
		Rectangle[] bounds = new Rectangle[to - from];
		for (int i = from; i < to; i++) {
			int wide = least(all[i], width - indent) + (place(all[i]).grows() ? more : 0);
			boolean sentence = all[i] instanceof Text && (all[i].getStyle() & SWT.MULTI) != 0;
			Point size = sentence ? new Point(wide, height((Text) all[i], wide)) : all[i].computeSize(wide, SWT.DEFAULT);
			bounds[i - from] = new Rectangle(x, y, wide, size.y);
			tall = Math.max(tall, size.y);
			x += wide + GAP;
		}
		// a sentence of several lines stands at the top of its row, as do the words beside it
		int first = Integer.MAX_VALUE;
		for (int i = from; i < to; i++) {
			first = bounds[i - from].height > 20 ? Math.min(first, bounds[i - from].height) : first;
		}
		for (int i = from; i < to && move; i++) {
			Rectangle at = bounds[i - from];
			int line = Math.min(tall, first);
			all[i].setBounds(at.x, at.y + Math.max(0, (line - at.height) / 2), at.width, at.height);
		}
		return tall;
	}
}
