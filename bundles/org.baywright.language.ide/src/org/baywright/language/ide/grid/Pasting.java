package org.baywright.language.ide.grid;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import org.baywright.language.ide.grid.CellText.Part;
import org.baywright.language.ide.grid.CellText.Unread;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Rule;
import org.baywright.model.VerdictKind;

/** Reads cells of a spreadsheet, separated by tabs, as changes of the grid. It reads texts, so it is not for a screen's thread. */
public final class Pasting {

	/**
	 * A test or a fault of the grid.
	 *
	 * @param name its name; the empty text for what signs and codes say alone
	 * @param title its title
	 */
	public record Head(String name, String title) {

		private boolean is(String text) {
			return !text.isEmpty() && (name.equalsIgnoreCase(text) || title.equalsIgnoreCase(text));
		}
	}

	/** Columns that a copy of the grid has beside the faults; nothing can be pasted into them. */
	private static final Set<String> SIDE = Set.of("", "test", "minutes", "cost", "skill");

	private final Snapshot snapshot;
	private final List<Rule> among;
	private final List<Head> tests;
	private final List<Head> faults;
	private final BiFunction<Integer, Integer, String> now;
	private final GridChange change;
	private final Map<String, RuleTable> changed = new LinkedHashMap<>();
	private final Map<String, RuleTable> added = new LinkedHashMap<>();
	private final Map<String, String> files = new LinkedHashMap<>();
	private final List<String> changes = new ArrayList<>();
	private final List<String> troubles = new ArrayList<>();

	/**
	 * @param snapshot the project
	 * @param among the rules that are shown
	 * @param tests the rows of the grid
	 * @param faults its columns
	 * @param now what stands in a cell now, by row and column
	 */
	public Pasting(Snapshot snapshot, List<Rule> among, List<Head> tests, List<Head> faults, BiFunction<Integer, Integer, String> now) {
		this.snapshot = snapshot;
		this.among = List.copyOf(among);
		this.tests = List.copyOf(tests);
		this.faults = List.copyOf(faults);
		this.now = now;
		change = new GridChange(snapshot);
	}

	/**
	 * Reads a text. With the faults in its first row and the tests in its first column, cells are found by these; else they
	 * go to the cell that is chosen and those right of it and below.
	 *
	 * @param row number of the row that is chosen
	 * @param column number of the column that is chosen
	 */
	public Pasted read(String text, int row, int column) {
		List<List<String>> lines = fields(text);
		boolean named = !lines.isEmpty() && lines.get(0).stream().anyMatch(field -> faults.stream().anyMatch(fault -> fault.is(field)));
		if (named) {
			named(lines);
		} else {
			int outside = 0;
			for (int i = 0; i < lines.size(); i++) {
				for (int j = 0; j < lines.get(i).size(); j++) {
					if (row + i < tests.size() && column + j < faults.size()) {
						cell(i, j, row + i, column + j, lines.get(i).get(j));
					} else if (outside++ == 0) {
						trouble(i, j, "it lies outside of the grid. Choose a cell further up or left, or show also what no rule uses.");
					}
				}
			}
			if (outside > 1) {
				troubles.add(String.format(java.util.Locale.ROOT, "In all %,d cells lie outside of the grid.", outside));
			}
		}
		return new Pasted(snapshot, changes, troubles, List.copyOf(changed.values()), added, files);
	}

	private void named(List<List<String>> lines) {
		List<Optional<Integer>> columns = new ArrayList<>();
		for (int j = 0; j < lines.get(0).size(); j++) {
			String head = lines.get(0).get(j);
			Optional<Integer> found = find(faults, head);
			if (found.isEmpty() && !SIDE.contains(head.toLowerCase(java.util.Locale.ROOT))) {
				trouble(0, j, "the grid has no single fault “" + head + "”. Write its title as the grid does, or its name, or show also what no rule uses.");
			}
			columns.add(found);
		}
		for (int i = 1; i < lines.size(); i++) {
			String head = lines.get(i).get(0);
			Optional<Integer> test = find(tests, head);
			if (test.isEmpty()) {
				trouble(i, 0, "the grid has no single test “" + head + "”. Write its title as the grid does, or its name, or show also what no rule uses.");
				continue;
			}
			for (int j = 1; j < lines.get(i).size(); j++) {
				if (j < columns.size() && columns.get(j).isPresent()) {
					cell(i, j, test.get(), columns.get(j).get(), lines.get(i).get(j));
				}
			}
		}
	}

	private static Optional<Integer> find(List<Head> heads, String text) {
		List<Head> found = heads.stream().filter(head -> head.is(text)).toList();
		Optional<Head> named = found.stream().filter(head -> head.name().equals(text)).findFirst();
		return named.or(() -> found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty()).map(heads::indexOf);
	}

	private void trouble(int row, int column, String what) {
		troubles.add("Row " + (row + 1) + ", column " + (column + 1) + ": " + what);
	}

	// ---- one cell --------------------------------------------------------------------------------------------------

	private void cell(int line, int field, int row, int column, String text) {
		String before = now.apply(row, column);
		if (pieces(before).equals(pieces(text))) {
			return;
		}
		try {
			String test = tests.get(row).name();
			String fault = faults.get(column).name();
			List<Part> parts = CellText.parts(text);
			if (pieces(text).stream().allMatch(piece -> piece.equals("nothing") || piece.equals("proves nothing")) && before.isEmpty()) {
				return;
			}
			set(CellRules.of(change, snapshot, among, test, fault), parts);
			changes.add(tests.get(row).title() + " – " + faults.get(column).title() + ": " + said(before) + " → " + said(text));
		} catch (Unread e) {
			trouble(line, field, e.getMessage());
		}
	}

	private static String said(String cell) {
		return cell.isBlank() ? "nothing" : "“" + String.join("; ", cell.strip().split("\\s*[;\n\r]+\\s*")) + "”";
	}

	private static Set<String> pieces(String cell) {
		Set<String> pieces = new HashSet<>();
		for (String piece : cell.split("[;\n\r]+")) {
			if (!piece.isBlank()) {
				pieces.add(piece.strip());
			}
		}
		return pieces;
	}

	private void set(CellRules cell, List<Part> parts) throws Unread {
		String fault = cell.fault();
		if (cell.isLocked()) {
			throw new Unread(cell.locked().get(0));
		}
		List<RuleTable> speaking = cell.rules().stream().filter(table -> table.speaksOf(fault)).toList();
		if (parts.stream().allMatch(part -> part.verdict().isEmpty())) {
			speaking.forEach(table -> keep(table.without(fault)));
		} else if (speaking.size() > 1) {
			several(speaking, fault, parts);
		} else if (speaking.size() == 1 || cell.rules().size() == 1 && !cell.test().isEmpty()) {
			keep(with(cell.rules().get(0), cell, parts));
		} else if (cell.rules().size() > 1 || cell.test().isEmpty()) {
			throw new Unread(cell.test().isEmpty() ? "it does not tell the sign that a rule without a test is given. Edit this cell by itself (F2)."
					: "several rules run this test. Edit this cell by itself (F2) and choose the rule.");
		} else if (!cell.locked().isEmpty()) {
			throw new Unread(cell.locked().get(0));
		} else {
			RuleTable table = added.getOrDefault(cell.test(), RuleTable.blank(snapshot.rules().test(cell.test()).map(org.baywright.model.Test::domain), List.of()));
			added.put(cell.test(), with(table, cell, parts));
			files.putIfAbsent(cell.test(), CellForm.file(snapshot, among, cell.test(), fault));
		}
	}

	private void keep(RuleTable table) {
		change.set(table);
		changed.put(table.rule().orElseThrow().name(), table);
	}

	/** Of several rules each keeps what the cell still says of it. */
	private void several(List<RuleTable> tables, String fault, List<Part> parts) throws Unread {
		Set<Part> open = new HashSet<>(parts);
		List<RuleTable> now = new ArrayList<>();
		for (RuleTable table : tables) {
			RuleTable made = table;
			for (int line = 0; line < table.size(); line++) {
				String title = table.title(line);
				List<Part> about = parts.stream().filter(part -> part.result().equalsIgnoreCase(title)).toList();
				open.removeAll(about);
				// a rule that said nothing with this result says nothing now either, unless no other one does
				if (table.verdict(line, fault).isPresent() || !about.isEmpty() && tables.stream().noneMatch(other -> speaks(other, title, fault))) {
					made = made.with(line, fault, about.isEmpty() ? Optional.empty() : about.get(0).verdict());
				}
			}
			now.add(made);
		}
		if (!open.isEmpty()) {
			throw new Unread("several rules run this test, and none of them tells “" + open.iterator().next().result()
					+ "” apart. Edit this cell by itself (F2) and choose the rule.");
		}
		now.forEach(this::keep);
	}

	private static boolean speaks(RuleTable table, String title, String fault) {
		for (int line = 0; line < table.size(); line++) {
			if (table.title(line).equals(title) && table.verdict(line, fault).isPresent()) {
				return true;
			}
		}
		return false;
	}

	private RuleTable with(RuleTable table, CellRules cell, List<Part> parts) throws Unread {
		RuleTable made = table.without(cell.fault());
		Optional<Domain> domain = snapshot.rules().test(cell.test()).map(org.baywright.model.Test::domain);
		Optional<IndexSet> before = Optional.empty();
		IndexSet all = IndexSet.EMPTY;
		for (Part part : parts) {
			if (domain.isEmpty()) {
				made = made.with(0, cell.fault(), part.verdict());
				continue;
			}
			if (part.result().isEmpty()) {
				throw new Unread("say with which result: " + titles(table) + ".");
			}
			Optional<IndexSet> titled = made.valuesOf(part.result());
			IndexSet results = titled.isPresent() ? titled.get() : CellText.results(part.result(), domain.get(), before);
			if (results.meets(all)) {
				throw new Unread("“" + part.result() + "” overlaps with another result of the cell.");
			}
			before = Optional.of(results);
			all = all.union(results);
			made = made.with(results, cell.fault(), part.verdict());
		}
		return made;
	}

	private static String titles(RuleTable table) {
		List<String> titles = new ArrayList<>();
		for (int line = 0; line < table.size(); line++) {
			titles.add("“" + table.title(line) + "”");
		}
		return titles.stream().collect(Collectors.joining(", "));
	}

	// ---- fields ----------------------------------------------------------------------------------------------------

	/** Returns the fields of each line; a spreadsheet puts those with line breaks in quotes. */
	static List<List<String>> fields(String text) {
		List<List<String>> lines = new ArrayList<>();
		List<String> line = new ArrayList<>();
		StringBuilder field = new StringBuilder();
		boolean quoted = false;
		String all = text.replace("\r\n", "\n").replace('\r', '\n');
		for (int i = 0; i < all.length(); i++) {
			char c = all.charAt(i);
			if (quoted && c == '"' && i + 1 < all.length() && all.charAt(i + 1) == '"') {
				field.append(c);
				i++;
			} else if (c == '"' && (quoted || field.isEmpty())) {
				quoted = !quoted;
			} else if (!quoted && (c == '\t' || c == '\n')) {
				line.add(plain(field));
				if (c == '\n') {
					lines.add(List.copyOf(line));
					line.clear();
				}
			} else {
				field.append(c);
			}
		}
		if (!field.isEmpty() || !line.isEmpty()) {
			line.add(plain(field));
			lines.add(List.copyOf(line));
		}
		return lines;
	}

	/** A copy of the grid has a mark before what a spreadsheet would take for a formula. */
	private static String plain(StringBuilder field) {
		String text = field.toString().strip();
		field.setLength(0);
		return text.length() > 1 && text.charAt(0) == '\'' && "=+-@".indexOf(text.charAt(1)) >= 0 ? text.substring(1) : text;
	}
}
