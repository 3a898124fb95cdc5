package org.baywright.presenter.picture;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines. */
final class Wrap {

	private Wrap() {
	}

	/** Returns lines no wider than {@code width}, broken at spaces, and within a longer word behind a sign or else anywhere. */
	static List<String> lines(String text, double width, TextMetrics metrics, TextMetrics.Style style) {
		List<String> lines = new ArrayList<>();
		StringBuilder line = new StringBuilder();
		for (String word : text.strip().split("\\s+")) {
			while (metrics.width(word, style) > width && word.length() > 1) {
				if (line.length() > 0) {
					lines.add(line.toString());
					line.setLength(0);
				}
				int fits = fits(word, width, metrics, style);
				lines.add(word.substring(0, fits));
				word = word.substring(fits);
			}
			if (line.length() > 0 && metrics.width(line + " " + word, style) > width) {
				lines.add(line.toString());
				line.setLength(0);
			}
			line.append(line.length() > 0 ? " " : "").append(word);
		}
		lines.add(line.toString());
		return lines;
	}

	/** Returns how much of a word that is too long stands on a line: up to its last sign, or else as much as there is room for. */
	private static int fits(String word, double width, TextMetrics metrics, TextMetrics.Style style) {
		int most = 1;
		while (most < word.length() - 1 && metrics.width(word.substring(0, most + 1), style) <= width) {
			most++;
		}
		if (Character.isHighSurrogate(word.charAt(most - 1))) {
			most += most > 1 ? -1 : 1;
		}
		for (int i = most; i > 1; i--) {
			if (!Character.isLetterOrDigit(word.codePointBefore(i))) {
				return i;
			}
		}
		return most;
	}
}
