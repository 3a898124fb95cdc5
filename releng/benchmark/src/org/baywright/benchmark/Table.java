package org.baywright.benchmark;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Prints the figures of {@link WholeProcess} as a table, with the growth exponent and the ratio to the plain way. */
public final class Table {

	private Table() {
	}

	public static void main(String[] args) throws IOException {
		Map<Integer, String[]> ours = new TreeMap<>();
		Map<Integer, String[]> plain = new TreeMap<>();
		for (String line : Files.readAllLines(Path.of(args[0]))) {
			String[] cells = line.split("\t");
			(cells[0].equals("ours") ? ours : plain).put(Integer.parseInt(cells[1]), cells);
		}
		print("| rules | full check | growth exponent | re-check after an edit, median (90 %) | peak memory | plain way | ratio |");
		print("| ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
		String[] before = null;
		for (String[] row : ours.values()) {
			String[] slow = plain.get(Integer.parseInt(row[1]));
			print("| %s | %s s | %s | %s ms (%s ms) | %s MB | %s | %s |", row[1], row[2], growth(before, row), row[3],
					row[4], row[5], slow == null ? "" : slow[2] + " s, " + slow[6] + " questions",
					slow == null ? "" : String.format(Locale.ROOT, "%.0f", number(slow[2]) / number(row[2])));
			before = row;
		}
		List<String[]> rows = List.copyOf(ours.values());
		print("");
		print("Growth exponent from %s to %s rules: %s", rows.get(0)[1], rows.get(rows.size() - 1)[1],
				growth(rows.get(0), rows.get(rows.size() - 1)));
	}

	private static String growth(String[] from, String[] to) {
		if (from == null || from == to) {
			return "";
		}
		double times = Math.log(number(to[2]) / number(from[2]));
		return String.format(Locale.ROOT, "%.2f", times / Math.log(number(to[1]) / number(from[1])));
	}

	private static double number(String text) {
		return Double.parseDouble(text);
	}

	private static void print(String format, Object... cells) {
		System.out.println(String.format(Locale.ROOT, format.replace("%)", "%%)"), cells));
	}
}
