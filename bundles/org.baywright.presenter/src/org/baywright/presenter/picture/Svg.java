package org.baywright.presenter.picture;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;

import org.baywright.presenter.picture.LaidOut.Box;
import org.baywright.presenter.picture.LaidOut.Point;
import org.baywright.presenter.picture.LaidOut.Rect;
import org.baywright.presenter.picture.LaidOut.Route;

/** Writes a picture as a file of its own: SVG 1.1, with everything it says also as text for those who cannot see it. */
public final class Svg {

	private static final String FONT = "sans-serif";

	private final StringBuilder out = new StringBuilder();
	private final Theme theme;

	private Svg(Theme theme) {
		this.theme = theme;
	}

	/** Returns the whole text of the file. */
	public static String write(LaidOut laidOut, Theme theme) {
		return new Svg(theme).whole(laidOut);
	}

	private String whole(LaidOut laidOut) {
		String width = number(laidOut.width());
		String height = number(laidOut.height());
		out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
		out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"" + width + "\" height=\"" + height
				+ "\" viewBox=\"0 0 " + width + " " + height + "\" role=\"img\" aria-labelledby=\"title desc\" font-family=\""
				+ FONT + "\">\n");
		out.append("<title id=\"title\">" + escape(laidOut.picture().title()) + "</title>\n");
		out.append("<desc id=\"desc\">" + escape(description(laidOut)) + "</desc>\n");
		out.append("<rect width=\"" + width + "\" height=\"" + height + "\" fill=\"" + theme.background() + "\"/>\n");
		laidOut.routes().forEach(this::line);
		laidOut.boxes().forEach(this::box);
		laidOut.routes().forEach(this::label);
		return out.append("</svg>\n").toString();
	}

	private static String description(LaidOut laidOut) {
		return laidOut.picture().about() + " " + laidOut.boxes().size() + " boxes, " + laidOut.routes().size() + " lines.";
	}

	private void line(Route route) {
		String colour = colour(route.edge());
		int dash = Shape.dash(route.edge().kind());
		out.append("<g><title>" + escape(says(route.edge())) + "</title><polyline points=\"" + points(route.points())
				+ "\" fill=\"none\" stroke=\"" + colour + "\" stroke-width=\"1.3\""
				+ (dash == 0 ? "" : " stroke-dasharray=\"" + dash + "\"") + "/>");
		out.append("<polygon points=\"" + points(Shape.arrow(route.points())) + "\" fill=\"" + colour + "\"/></g>\n");
	}

	private static String says(Edge edge) {
		String word = switch (edge.kind()) {
		case GIVEN -> "asked for";
		case ALTERNATIVE -> "asked for, or something else";
		case FOLLOWS -> "then";
		};
		return word + (edge.label().isEmpty() ? "" : ": " + edge.label());
	}

	private String colour(Edge edge) {
		return edge.kind() == Edge.Kind.ALTERNATIVE ? theme.alternative() : theme.line();
	}

	private void box(Box box) {
		Theme.Paint paint = theme.boxes().get(box.node().kind());
		Rect at = box.bounds();
		out.append("<g><title>" + escape(box.node().description()) + "</title>");
		out.append("<rect" + rect(at) + " rx=\"" + number(Shape.radius(box.node().kind())) + "\" fill=\"" + paint.fill()
				+ "\" stroke=\"" + paint.outline() + "\" stroke-width=\"1.3\"/>");
		double y = text(box.title(), at.x() + Shape.PADDING, at.y() + Shape.PADDING, TextMetrics.Style.TITLE, theme.text());
		text(box.detail(), at.x() + Shape.PADDING, y, TextMetrics.Style.DETAIL, theme.label());
		out.append("</g>\n");
	}

	private void label(Route route) {
		if (!route.lines().isEmpty()) {
			out.append("<g><rect" + rect(route.label()) + " fill=\"" + theme.background() + "\" fill-opacity=\"0.85\"/>");
			text(route.lines(), route.label().x(), route.label().y(), TextMetrics.Style.LABEL, theme.label());
			out.append("</g>\n");
		}
	}

	/** Writes lines of text below each other and returns where they end. */
	private double text(List<String> lines, double x, double y, TextMetrics.Style style, String colour) {
		double height = TextMetrics.FIXED.height(style);
		double size = TextMetrics.size(style);
		for (int i = 0; i < lines.size(); i++) {
			out.append("<text x=\"" + number(x) + "\" y=\"" + number(y + i * height + size) + "\" font-size=\"" + number(size)
					+ "\" fill=\"" + colour + "\"" + (style == TextMetrics.Style.TITLE ? " font-weight=\"600\"" : "") + ">"
					+ escape(lines.get(i)) + "</text>");
		}
		return y + lines.size() * height;
	}

	private static String rect(Rect at) {
		return " x=\"" + number(at.x()) + "\" y=\"" + number(at.y()) + "\" width=\"" + number(at.width()) + "\" height=\""
				+ number(at.height()) + "\"";
	}

	private static String points(List<Point> points) {
		return points.stream().map(point -> number(point.x()) + "," + number(point.y())).collect(Collectors.joining(" "));
	}

	/** Numbers have two decimals at most and a point, whatever the locale. */
	private static String number(double value) {
		BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
		return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
	}

	/** Characters that XML 1.0 has no way to write become the replacement character. */
	private static String escape(String text) {
		StringBuilder escaped = new StringBuilder();
		text.codePoints().forEach(c -> {
			boolean allowed = c == '\t' || c == '\n' || c == '\r' || c >= 0x20 && c < 0xD800 || c >= 0xE000 && c < 0xFFFE
					|| c >= 0x10000;
			switch (allowed ? c : 0xFFFD) {
			case '&' -> escaped.append("&amp;");
			case '<' -> escaped.append("&lt;");
			case '>' -> escaped.append("&gt;");
			case '"' -> escaped.append("&quot;");
			default -> escaped.appendCodePoint(allowed ? c : 0xFFFD);
			}
		});
		return escaped.toString();
	}
}
