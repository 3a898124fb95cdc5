package org.baywright.workbench.view.picture;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.presenter.picture.Edge;
import org.baywright.presenter.picture.LaidOut;
import org.baywright.presenter.picture.LaidOut.Box;
import org.baywright.presenter.picture.LaidOut.Point;
import org.baywright.presenter.picture.LaidOut.Rect;
import org.baywright.presenter.picture.LaidOut.Route;
import org.baywright.presenter.picture.Shape;
import org.baywright.presenter.picture.TextMetrics.Style;
import org.baywright.presenter.picture.Theme;
import org.baywright.workbench.view.Grounds;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.GC;

/** Draws a picture with lines and letters, so that it is sharp in any size. */
final class Paper {

	private final ScreenMetrics metrics;
	private final Theme theme;
	private final Map<String, Color> colours = new HashMap<>();

	Paper(ScreenMetrics metrics, Theme theme) {
		this.metrics = metrics;
		this.theme = theme;
	}

	/** Returns a colour of the theme. */
	Color colour(String hex) {
		return colours.computeIfAbsent(hex, Grounds::colour);
	}

	Theme theme() {
		return theme;
	}

	/**
	 * Draws what lies in the visible part.
	 *
	 * @param chosen id of the chosen node
	 */
	void draw(GC gc, LaidOut picture, Rect visible, Optional<String> chosen) {
		gc.setAntialias(SWT.ON);
		gc.setTextAntialias(SWT.ON);
		picture.routes().stream().filter(route -> !isAt(route, chosen)).forEach(route -> line(gc, route, false, visible));
		picture.routes().stream().filter(route -> isAt(route, chosen)).forEach(route -> line(gc, route, true, visible));
		picture.boxes().stream().filter(box -> box.bounds().overlaps(visible))
				.forEach(box -> box(gc, box, chosen.filter(box.node().id()::equals).isPresent()));
		picture.routes().stream().filter(route -> !route.lines().isEmpty() && route.label().overlaps(visible))
				.forEach(route -> label(gc, route));
	}

	private static boolean isAt(Route route, Optional<String> node) {
		return node.isPresent() && (route.edge().from().equals(node.get()) || route.edge().to().equals(node.get()));
	}

	private void line(GC gc, Route route, boolean near, Rect visible) {
		if (!bounds(route.points()).overlaps(visible)) {
			return;
		}
		Color colour = colour(near ? theme.chosen()
				: route.edge().kind() == Edge.Kind.ALTERNATIVE ? theme.alternative() : theme.line());
		gc.setForeground(colour);
		gc.setLineWidth(near ? 2 : 1);
		int dash = Shape.dash(route.edge().kind());
		if (dash > 0) {
			gc.setLineDash(new int[] { dash, dash });
		} else {
			gc.setLineStyle(SWT.LINE_SOLID);
		}
		gc.drawPolyline(flat(route.points()));
		gc.setLineStyle(SWT.LINE_SOLID);
		gc.setBackground(colour);
		gc.fillPolygon(flat(Shape.arrow(route.points())));
	}

	/** Returns the area of a line, widened so that a straight one has an area too. */
	private static Rect bounds(List<Point> points) {
		double left = points.stream().mapToDouble(Point::x).min().orElse(0) - 5;
		double top = points.stream().mapToDouble(Point::y).min().orElse(0) - 5;
		return new Rect(left, top, points.stream().mapToDouble(Point::x).max().orElse(0) + 5 - left,
				points.stream().mapToDouble(Point::y).max().orElse(0) + 5 - top);
	}

	private static int[] flat(List<Point> points) {
		int[] flat = new int[2 * points.size()];
		for (int i = 0; i < points.size(); i++) {
			flat[2 * i] = round(points.get(i).x());
			flat[2 * i + 1] = round(points.get(i).y());
		}
		return flat;
	}

	private static int round(double value) {
		return (int) Math.round(value);
	}

	private void box(GC gc, Box box, boolean chosen) {
		Theme.Paint paint = theme.boxes().get(box.node().kind());
		Rect at = box.bounds();
		int arc = round(2 * Shape.radius(box.node().kind()));
		gc.setBackground(colour(paint.fill()));
		gc.fillRoundRectangle(round(at.x()), round(at.y()), round(at.width()), round(at.height()), arc, arc);
		gc.setForeground(colour(chosen ? theme.chosen() : paint.outline()));
		gc.setLineWidth(chosen ? 3 : 1);
		gc.drawRoundRectangle(round(at.x()), round(at.y()), round(at.width()), round(at.height()), arc, arc);
		double y = text(gc, box.title(), at.x() + Shape.PADDING, at.y() + Shape.PADDING, Style.TITLE, theme.text());
		text(gc, box.detail(), at.x() + Shape.PADDING, y, Style.DETAIL, theme.label());
	}

	private void label(GC gc, Route route) {
		Rect at = route.label();
		gc.setBackground(colour(theme.background()));
		gc.setAlpha(215);
		gc.fillRectangle(round(at.x()), round(at.y()), round(at.width()), round(at.height()));
		gc.setAlpha(255);
		text(gc, route.lines(), at.x(), at.y(), Style.LABEL, theme.label());
	}

	private double text(GC gc, List<String> lines, double x, double y, Style style, String hex) {
		gc.setFont(metrics.font(style));
		gc.setForeground(colour(hex));
		for (int i = 0; i < lines.size(); i++) {
			gc.drawString(lines.get(i), round(x), round(y + i * metrics.height(style)), true);
		}
		return y + lines.size() * metrics.height(style);
	}
}
