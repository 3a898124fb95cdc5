package org.baywright.presenter.grid;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

import org.baywright.presenter.ProjectState;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.Say;

/**
 * Tests against faults.
 *
 * @param columns the faults that the rules speak of, by part and name, then those that no rule speaks of if these are wanted
 * @param rows the tests that the rules run, in the order asked for, then those that no rule runs if these are wanted
 * @param groups faults that no set of tests can tell apart, as names; only those among the columns
 * @param summary the grid in one or two sentences
 */
public record Grid(List<Column> columns, List<Row> rows, List<List<String>> groups, String summary) {

	/** Orders of the rows. */
	public enum Order {
		/** The cheapest first, then the quickest. */
		COST,
		/** The quickest first, then the cheapest. */
		TIME,
		/** By title. */
		TITLE
	}

	public Grid {
		columns = List.copyOf(columns);
		rows = List.copyOf(rows);
		groups = List.copyOf(groups);
	}

	/** Makes the grid of some rules. */
	public static Grid of(ProjectState state, RuleScope scope, Order order) {
		return of(state, scope, order, false);
	}

	/**
	 * Makes the grid of some rules.
	 *
	 * @param unused whether it also has the tests and faults that no rule uses, so that it can be filled; they come last
	 */
	public static Grid of(ProjectState state, RuleScope scope, Order order, boolean unused) {
		return new GridMaker(state, scope, unused).grid(order);
	}

	/** Returns the same grid in another order. */
	public Grid sorted(Order order) {
		return new Grid(columns, rows.stream().sorted(comparator(order)).toList(), groups, summary);
	}

	/** What signs and codes say alone costs nothing and always stands first. */
	static Comparator<Row> comparator(Order order) {
		Comparator<Row> testless = Comparator.comparing(row -> !row.test().isEmpty());
		Comparator<Row> byOrder = switch (order) {
		case COST -> Comparator.comparing(Row::cost).thenComparing(Row::minutes);
		case TIME -> Comparator.comparing(Row::minutes).thenComparing(Row::cost);
		case TITLE -> Comparator.comparing(Row::title, String.CASE_INSENSITIVE_ORDER);
		};
		Comparator<Row> unused = Comparator.comparing(row -> !row.used());
		return testless.thenComparing(unused).thenComparing(byOrder).thenComparing(Row::title).thenComparing(Row::test);
	}

	/** Returns the whole grid with its headers as lines of text separated by tabs, as spreadsheets read it. */
	public String tsv() {
		List<String> lines = new ArrayList<>();
		List<String> head = new ArrayList<>(List.of("Test", "Minutes", "Cost", "Skill"));
		columns.forEach(column -> head.add(column.title()));
		lines.add(line(head));
		for (Row row : rows) {
			List<String> fields = new ArrayList<>(row.seenWith().isEmpty()
					? List.of(row.title(), row.minutes().toPlainString(), row.cost().toPlainString(), row.skill())
					: List.of(row.title(), "0", "0", row.effort())); // so that who adds them up counts each test once
			row.cells().forEach(cell -> fields.add(cell.text()));
			lines.add(line(fields));
		}
		return lines.stream().collect(Collectors.joining("\n", "", "\n"));
	}

	private static String line(List<String> fields) {
		return fields.stream().map(Say::oneLine).map(Grid::plain).collect(Collectors.joining("\t"));
	}

	/** A spreadsheet would take a text that begins like a formula for one. */
	private static String plain(String field) {
		return !field.isEmpty() && "=+-@".indexOf(field.charAt(0)) >= 0 ? "'" + field : field;
	}
}
