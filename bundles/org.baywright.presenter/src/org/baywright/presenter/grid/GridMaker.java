package org.baywright.presenter.grid;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

import org.baywright.analysis.Verdict;
import org.baywright.model.Conclusion;
import org.baywright.model.Fault;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.words.Words;
import org.baywright.presenter.ProjectState;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.Say;

/** Makes the grid of some rules. */
final class GridMaker {

	private static final String UNSPLIT = "unsplit-faults";

	private final ProjectState state;
	private final RuleBase base;
	private final Words words;
	private final List<Rule> rules;
	private final RuleScope scope;
	private final boolean unused;

	GridMaker(ProjectState state, RuleScope scope, boolean unused) {
		this.state = state;
		this.scope = scope;
		this.unused = unused;
		base = state.rules();
		words = new Words(base);
		rules = scope.rules(base);
	}

	Grid grid(Grid.Order order) {
		TreeSet<String> named = new TreeSet<>();
		rules.forEach(rule -> RuleScope.says(rule).stream().filter(verdict -> !verdict.isReferral()).map(Verdict::fault)
				.forEach(named::add));
		List<Fault> faults = faults(named);
		List<String> names = faults.stream().map(Fault::name).toList();
		List<List<String>> groups = groups(names);
		Map<String, Integer> groupOf = new HashMap<>();
		groups.forEach(group -> group.forEach(fault -> groupOf.put(fault, groups.indexOf(group))));
		List<Column> columns = faults.stream().map(fault -> new Column(fault.name(), words.fault(fault.name()), fault.seen(),
				groupOf.getOrDefault(fault.name(), -1), named.contains(fault.name()), fault.span())).toList();
		List<Row> rows = rows(names);
		rows.sort(Grid.comparator(order));
		return new Grid(columns, rows, groups, summary(rows, columns, groups));
	}

	private List<Fault> faults(TreeSet<String> named) {
		return base.faults().stream().filter(fault -> unused || named.contains(fault.name()))
				.sorted(Comparator.comparing((Fault fault) -> !named.contains(fault.name()))
						.thenComparing(fault -> words.fault(fault.name())).thenComparing(Fault::name)).toList();
	}

	// ---- rows --------------------------------------------------------------------------------------------------

	private List<Row> rows(List<String> faults) {
		Map<String, Map<String, List<Cell.Mark>>> marks = new TreeMap<>();
		for (Rule rule : rules) {
			Map<String, List<Cell.Mark>> row = marks.computeIfAbsent(rule.test().orElse(""), key -> new HashMap<>());
			for (Outcome outcome : rule.outcomes()) {
				for (Conclusion said : outcome.conclusions()) {
					if (said instanceof Conclusion.OnFault on) {
						row.computeIfAbsent(on.fault(), key -> new ArrayList<>()).add(
								new Cell.Mark(on.verdict(), words.result(rule, outcome), rule.title(), outcome.span()));
					}
				}
			}
		}
		List<Row> rows = new ArrayList<>();
		marks.forEach((test, row) -> {
			if (!row.isEmpty() || !test.isEmpty()) {
				rows.add(row(test, true, faults.stream().map(fault -> row.containsKey(fault) ? new Cell(row.get(fault)) : Cell.BLANK)
						.toList()));
			}
		});
		if (unused) {
			List<Cell> blank = faults.stream().map(fault -> Cell.BLANK).toList();
			TreeSet<String> others = new TreeSet<>();
			others.add("");
			base.tests().stream().filter(test -> scope.family().isEmpty() || base.reach(base.scopeOf(test)).contains(scope.family().get()))
					.map(Test::name).forEach(others::add);
			rows.forEach(row -> others.remove(row.test()));
			others.forEach(test -> rows.add(row(test, false, blank)));
		}
		return rows;
	}

	private Row row(String name, boolean used, List<Cell> cells) {
		Optional<Test> test = base.test(name);
		if (test.isEmpty()) {
			return new Row("", "Signs and codes alone", "", BigDecimal.ZERO, BigDecimal.ZERO, "", cells, used, Span.NONE);
		}
		Test done = base.doneBy(test.get());
		return new Row(name, test.get().title(), test.get().seenWith().map(words::test).orElse(""), done.cost(base), done.takes(),
				Say.lower(done.skill()), cells, used, test.get().span());
	}

	// ---- what cannot be told apart -----------------------------------------------------------------------------

	/** The proof was made by the check; a group is told if all of its faults are here. */
	private List<List<String>> groups(List<String> faults) {
		return state.report().stream().flatMap(report -> report.flaws().stream())
				.filter(flaw -> flaw.check().equals(UNSPLIT))
				.map(flaw -> Arrays.asList(flaw.id().substring(UNSPLIT.length() + 1).split("\\+")))
				.filter(faults::containsAll).distinct().toList();
	}

	private String summary(List<Row> rows, List<Column> columns, List<List<String>> groups) {
		long tests = rows.stream().filter(row -> row.used() && !row.test().isEmpty()).count();
		long faults = columns.stream().filter(Column::used).count();
		if (faults == 0) {
			return "No rule here says anything about a fault.";
		}
		String size = Say.upper(Say.count(tests, "test")) + " and " + Say.count(faults, "fault") + ". ";
		if (state.report().isEmpty()) {
			return size + "Whether the tests can tell all faults apart has not been checked yet.";
		}
		String since = state.isCurrent() ? "" : " The rules have changed since this was checked.";
		if (groups.isEmpty()) {
			return size + "No two of these faults are always confirmed and cleared together." + since;
		}
		return size + String.join(" ", groups.stream().map(group -> Say.upper(Say.count(group.size(), "fault"))
				+ " that no test can tell apart: " + Words.and(group.stream().map(words::fault).toList()) + ".").toList()) + since;
	}
}
