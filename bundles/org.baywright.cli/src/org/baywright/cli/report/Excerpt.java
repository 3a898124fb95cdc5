package org.baywright.cli.report;

import java.util.ArrayList;
import java.util.List;

import org.baywright.model.Span;

/** The line of a source text that holds a place, and carets beneath the place. */
public final class Excerpt {

	private static final int MAX_WIDTH = 160;
	private static final int TAB = 4;

	private Excerpt() {
	}

	/**
	 * Returns the line with its number and the line of carets; nothing if the text has no such line.
	 *
	 * @param text the whole source text
	 * @param span the place; of one that goes on in further lines only the part in the first line is marked
	 * @param style how to mark
	 * @param marked what a mark does to the carets
	 */
	public static List<String> of(String text, Span span, Style style, java.util.function.UnaryOperator<String> marked) {
		return of(linesOf(text), span, style, marked);
	}

	/** Returns the lines of a text, for {@link #of(String[], Span, Style, java.util.function.UnaryOperator)}. */
	static String[] linesOf(String text) {
		return text.split("\r\n|\r|\n", -1);
	}

	/** As above, of a text that was cut into lines once for all its places. */
	static List<String> of(String[] all, Span span, Style style, java.util.function.UnaryOperator<String> marked) {
		if (span.line() > all.length) {
			return List.of();
		}
		String line = all[span.line() - 1];
		int from = Math.min(span.column() - 1, line.length());
		int to = span.endLine() > span.line() ? line.length() : Math.min(span.endColumn() - 1, line.length());
		int cut = from < MAX_WIDTH * 3 / 4 ? 0 : from - MAX_WIDTH / 4;
		String shown = line.substring(cut, Math.min(line.length(), cut + MAX_WIDTH));
		int lead = width(line.substring(cut, from));
		int carets = Math.max(1, width(line.substring(from, Math.max(from, Math.min(to, cut + shown.length())))));

		String number = String.format(java.util.Locale.ROOT, "%5d", span.line());
		List<String> lines = new ArrayList<>();
		lines.add(style.faint(number + " |") + " " + Style.safe(expand(shown)).stripTrailing());
		lines.add(style.faint("      |") + " " + " ".repeat(lead) + marked.apply("^".repeat(carets)));
		return lines;
	}

	private static String expand(String text) {
		return text.replace("\t", " ".repeat(TAB));
	}

	/** Returns how many columns the text takes; letters of East Asian scripts take two. */
	private static int width(String text) {
		return text.codePoints().map(c -> c == '\t' ? TAB : isWide(c) ? 2 : 1).sum();
	}

	// Unicode Standard Annex 11: the blocks whose characters are all wide or full-width.
	private static boolean isWide(int c) {
		return c >= 0x1100 && c <= 0x115F || c >= 0x2E80 && c <= 0xA4CF || c >= 0xAC00 && c <= 0xD7A3
				|| c >= 0xF900 && c <= 0xFAFF || c >= 0xFE30 && c <= 0xFE6F || c >= 0xFF00 && c <= 0xFF60
				|| c >= 0xFFE0 && c <= 0xFFE6 || c >= 0x1F300 && c <= 0x1F64F || c >= 0x20000 && c <= 0x3FFFD;
	}
}
