package org.baywright.model.write;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.baywright.model.Skill;
import org.baywright.model.Written;

/** An element being written: its first line, and its clauses between braces. */
final class Block {

	private static final String INDENT = "  ";
	/** Wider beginnings are no table, as where a file is tidied. */
	private static final int WIDEST = 32;
	/** The same for what stands further to the right. */
	private static final int WIDEST_LINE = 80;
	/** Lists that would be wider go on in another line. */
	private static final int WIDTH = 100;

	private final StringBuilder first;
	private final List<Line> lines = new ArrayList<>();
	private boolean open;

	/**
	 * A clause.
	 *
	 * @param cells what stands beside each other; the empty text for what a row lacks
	 * @param row whether it is a row of the table that the lines beside it make
	 * @param below whether the cells behind the second stand below that
	 */
	private record Line(List<String> cells, boolean row, boolean below) {

		String plain() {
			return below ? cells.get(0) + " " + String.join("\n    ", cells.subList(1, cells.size()))
					: cells.stream().filter(cell -> !cell.isEmpty()).collect(Collectors.joining(" "));
		}

		String laidOut() {
			return below ? cells.get(0) + " " + String.join("\n" + INDENT + " ".repeat(cells.get(0).length() + 1), cells.subList(1, cells.size()))
					: plain();
		}
	}

	/** Begins an element with its word, its name and its title, which is left out where the name stands for it. */
	Block(String word, String name, String title) {
		first = new StringBuilder(word).append(' ').append(Written.name(name));
		if (!title.equals(name)) {
			first.append(' ').append(Written.text(title));
		}
	}

	/** Begins an element with its first words. */
	Block(String words) {
		first = new StringBuilder(words);
	}

	/** Goes on in the first line. */
	Block more(String text) {
		first.append(' ').append(text);
		return this;
	}

	/** As {@link #more}, unless there is nothing to list. */
	Block more(String word, String list) {
		return list.isEmpty() ? this : more(word + " " + list);
	}

	/** Makes braces, also around nothing. */
	Block open() {
		open = true;
		return this;
	}

	/** Adds a clause. */
	Block line(String text) {
		return add(new Line(List.of(text), false, false));
	}

	/** Adds a clause, unless there is nothing to list. */
	Block line(String word, String list) {
		return list.isEmpty() ? this : line(word + " " + list);
	}

	/** Adds a clause for each of some texts. */
	Block texts(String word, List<String> texts) {
		texts.forEach(text -> line(word, Written.text(text)));
		return this;
	}

	/** Adds a clause that is a row of a table: cells of neighbouring rows stand below each other. */
	Block row(String... cells) {
		return add(new Line(List.of(cells), true, false));
	}

	/** Adds a clause of texts, each in a line of its own, unless there are none. */
	Block below(String word, List<String> texts) {
		return texts.isEmpty() ? this
				: add(new Line(Stream.concat(Stream.of(word), texts.stream().map(Written::text)).toList(), false, true));
	}

	/** Adds a clause with a list that may take several lines, unless it is empty. */
	Block list(String word, List<String> parts) {
		if (parts.isEmpty()) {
			return this;
		}
		int start = INDENT.length() + word.length() + 1;
		int width = start;
		StringBuilder text = new StringBuilder(word);
		for (int i = 0; i < parts.size(); i++) {
			String part = parts.get(i) + (i + 1 < parts.size() ? "," : "");
			boolean breaks = i > 0 && width + part.length() + 1 > WIDTH;
			text.append(breaks ? "\n" + " ".repeat(start) : " ").append(part);
			width = (breaks ? start : width + 1) + part.length();
		}
		return line(text.toString());
	}

	private Block add(Line line) {
		lines.add(line);
		return open();
	}

	/** Adds a number, unless it is 0. */
	Block cost(BigDecimal cost) {
		return cost.signum() == 0 ? this : line("cost " + Values.number(cost));
	}

	Block takes(String word, BigDecimal minutes) {
		return minutes.signum() == 0 ? this : line(word + " " + Values.time(minutes));
	}

	Block skill(Skill skill) {
		return skill == Skill.BASIC ? this : line("skill " + skill.name().toLowerCase(Locale.ROOT));
	}

	/** Returns the element in a layout that never changes. */
	String plain() {
		return first + (open ? " {\n" + clauses(lines.stream().map(Line::plain).toList()) + "}\n" : "\n");
	}

	/** Returns the element as it stays when its file is tidied. */
	String laidOut() {
		return !lines.isEmpty() || !open ? first + (open ? " {\n" + clauses(texts()) + "}\n" : "\n") : first + " { }\n";
	}

	private static String clauses(List<String> texts) {
		return texts.stream().map(text -> INDENT + text + "\n").collect(Collectors.joining());
	}

	private List<String> texts() {
		List<String> texts = new ArrayList<>();
		for (int i = 0; i < lines.size();) {
			int from = i;
			while (i < lines.size() && lines.get(i).row()) {
				i++;
			}
			texts.addAll(columns(lines.subList(from, i).stream().map(Line::cells).toList()));
			if (i < lines.size()) {
				texts.add(lines.get(i++).laidOut());
			}
		}
		return texts;
	}

	private static List<String> columns(List<List<String>> rows) {
		List<String> texts = new ArrayList<>(rows.stream().map(row -> row.get(0)).toList());
		int columns = rows.stream().mapToInt(List::size).max().orElse(0);
		for (int column = 1; column < columns; column++) {
			int at = column;
			int most = column == 1 ? WIDEST : WIDEST_LINE;
			int widest = 0;
			for (int i = 0; i < rows.size(); i++) {
				int width = texts.get(i).length();
				widest = has(rows.get(i), at) && width <= most ? Math.max(widest, width) : widest;
			}
			for (int i = 0; i < rows.size(); i++) {
				if (has(rows.get(i), at)) {
					String text = texts.get(i);
					texts.set(i, text + " ".repeat(Math.max(0, widest - text.length()) + 1) + rows.get(i).get(at));
				}
			}
		}
		return texts;
	}

	private static boolean has(List<String> row, int column) {
		return column < row.size() && !row.get(column).isEmpty();
	}
}
