package org.baywright.presenter.picture;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines. */
final class Wrap {

	private Wrap() {
	}

	/** Returns lines no wider than {@code width}, broken at spaces; a longer word has a line of its own. */
	static List<String> lines(String text, double width, TextMetrics metrics, TextMetrics.Style style) {
		List<String> lines = new ArrayList<>();
		StringBuilder line = new StringBuilder();
		for (String word : text.strip().split("\\s+")) {
			if (line.length() > 0 && metrics.width(line + " " + word, style) > width) {
				lines.add(line.toString());
				line.setLength(0);
			}
			line.append(line.length() > 0 ? " " : "").append(word);
		}
		lines.add(line.toString());
		return lines;
	}
}
