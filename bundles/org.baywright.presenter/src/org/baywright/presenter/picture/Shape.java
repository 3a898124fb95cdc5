package org.baywright.presenter.picture;

import java.util.List;

import org.baywright.presenter.picture.LaidOut.Point;

/** Forms of what is drawn, the same on a screen and in a file. */
public final class Shape {

	/** Distance of text from the edge of its box. */
	public static final double PADDING = 9;

	private static final double ARROW = 8;

	private Shape() {
	}

	/** Returns the radius of a box's corners: what was found is round, rules have corners. */
	public static double radius(Node.Kind kind) {
		return switch (kind) {
		case SIGN, CODE, MODULE, TEST -> 14;
		case RULE, RULE_WITH_TEST -> 2;
		default -> 7;
		};
	}

	/** Returns the dashes of a line: their length and that of the gaps; 0 for a whole line. */
	public static int dash(Edge.Kind kind) {
		return kind == Edge.Kind.ALTERNATIVE ? 5 : 0;
	}

	/** Returns the three corners of the arrow's head, its tip first. */
	public static List<Point> arrow(List<Point> way) {
		Point tip = way.get(way.size() - 1);
		Point before = tip;
		for (int i = way.size() - 2; i >= 0 && before.equals(tip); i--) {
			before = way.get(i);
		}
		double length = Math.hypot(tip.x() - before.x(), tip.y() - before.y());
		double dx = length == 0 ? 1 : (tip.x() - before.x()) / length;
		double dy = length == 0 ? 0 : (tip.y() - before.y()) / length;
		double backX = tip.x() - ARROW * dx;
		double backY = tip.y() - ARROW * dy;
		return List.of(tip, new Point(backX - dy * ARROW / 2, backY + dx * ARROW / 2),
				new Point(backX + dy * ARROW / 2, backY - dx * ARROW / 2));
	}
}
