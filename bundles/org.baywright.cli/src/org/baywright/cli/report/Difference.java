package org.baywright.cli.report;

import java.util.ArrayList;
import java.util.List;

/** The difference of two texts in the unified form of POSIX diff -u, with three lines around each change. */
public final class Difference {

	private static final int AROUND = 3;
	/** Beyond so many pairs of lines the changed part is shown as a whole. */
	private static final long MOST_PAIRS = 4_000_000;

	private final List<String> marked = new ArrayList<>();

	private Difference() {
	}

	/**
	 * Returns the lines of the difference; none if the texts are alike.
	 *
	 * @param name name of the file
	 * @param old the text as it is
	 * @param now the text as it would be
	 */
	public static List<String> of(String name, String old, String now) {
		if (old.equals(now)) {
			return List.of();
		}
		Difference difference = new Difference();
		difference.compare(lines(old), lines(now));
		List<String> all = new ArrayList<>(List.of("--- " + name, "+++ " + name));
		all.addAll(difference.hunks());
		return all;
	}

	/** Without a new line at the end the last line is another one. */
	private static List<String> lines(String text) {
		List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
		if (lines.get(lines.size() - 1).isEmpty()) {
			lines.remove(lines.size() - 1);
		} else {
			lines.set(lines.size() - 1, lines.get(lines.size() - 1) + "\n\\ No newline at end of file");
		}
		return lines;
	}

	private void compare(List<String> old, List<String> now) {
		int head = 0;
		while (head < old.size() && head < now.size() && old.get(head).equals(now.get(head))) {
			head++;
		}
		int tail = 0;
		while (tail < old.size() - head && tail < now.size() - head
				&& old.get(old.size() - 1 - tail).equals(now.get(now.size() - 1 - tail))) {
			tail++;
		}
		old.subList(0, head).forEach(line -> marked.add(" " + line));
		changed(old.subList(head, old.size() - tail), now.subList(head, now.size() - tail));
		old.subList(old.size() - tail, old.size()).forEach(line -> marked.add(" " + line));
	}

	/** By the longest common sequence of lines. */
	private void changed(List<String> old, List<String> now) {
		if ((long) old.size() * now.size() > MOST_PAIRS) {
			old.forEach(line -> marked.add("-" + line));
			now.forEach(line -> marked.add("+" + line));
			return;
		}
		int[][] common = new int[old.size() + 1][now.size() + 1];
		for (int i = old.size() - 1; i >= 0; i--) {
			for (int j = now.size() - 1; j >= 0; j--) {
				common[i][j] = old.get(i).equals(now.get(j)) ? common[i + 1][j + 1] + 1
						: Math.max(common[i + 1][j], common[i][j + 1]);
			}
		}
		int i = 0;
		int j = 0;
		while (i < old.size() || j < now.size()) {
			if (i < old.size() && j < now.size() && old.get(i).equals(now.get(j))) {
				marked.add(" " + old.get(i++));
				j++;
			} else if (i < old.size() && (j == now.size() || common[i + 1][j] >= common[i][j + 1])) {
				marked.add("-" + old.get(i++));
			} else {
				marked.add("+" + now.get(j++));
			}
		}
	}

	private List<String> hunks() {
		List<String> out = new ArrayList<>();
		int oldLine = 1;
		int newLine = 1;
		for (int at = 0; at < marked.size();) {
			int next = nextChange(at);
			if (next < 0) {
				break;
			}
			int from = Math.max(at, next - AROUND);
			oldLine += from - at;
			newLine += from - at;
			int end = next;
			for (int more = next; more >= 0 && more <= end + 2 * AROUND; more = nextChange(end)) {
				end = more + 1;
			}
			end = Math.min(marked.size(), end + AROUND);
			List<String> hunk = marked.subList(from, end);
			int olds = (int) hunk.stream().filter(line -> line.charAt(0) != '+').count();
			int news = (int) hunk.stream().filter(line -> line.charAt(0) != '-').count();
			out.add("@@ -" + range(oldLine, olds) + " +" + range(newLine, news) + " @@");
			hunk.forEach(line -> out.addAll(List.of(line.split("\n"))));
			oldLine += olds;
			newLine += news;
			at = end;
		}
		return out;
	}

	private static String range(int line, int count) {
		return count == 0 ? line - 1 + ",0" : line + "," + count;
	}

	private int nextChange(int from) {
		for (int i = from; i < marked.size(); i++) {
			if (marked.get(i).charAt(0) != ' ') {
				return i;
			}
		}
		return -1;
	}
}
