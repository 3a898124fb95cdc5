package org.baywright.language.ide.grid;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Chain;
import org.baywright.model.Domain;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.ValueSet;

/**
 * The rules in which a cell of the grid can be changed: all that run its test.
 *
 * @param test the test; the empty text where none is done
 * @param fault the fault
 * @param rules the tables of the rules, first those that speak of the fault
 * @param locked of each rule that cannot be changed here why and where, in a sentence; first those that speak of the fault
 * @param isLocked whether a rule that cannot be changed here speaks of the fault
 * @param blank the table for a rule that is written anew, which tells apart what the rules of the test tell apart
 */
public record CellRules(String test, String fault, List<RuleTable> rules, List<String> locked, boolean isLocked, RuleTable blank) {

	public CellRules {
		rules = List.copyOf(rules);
		locked = List.copyOf(locked);
	}

	/**
	 * Finds the rules of a cell.
	 *
	 * @param snapshot the project
	 * @param among the rules that are shown
	 * @param test name of the test; the empty text for what signs and codes say alone
	 * @param fault name of the fault
	 */
	public static CellRules of(Snapshot snapshot, List<Rule> among, String test, String fault) {
		return of(new GridChange(snapshot), snapshot, among, test, fault);
	}

	/** As {@link #of(Snapshot, List, String, String)}, with what was changed so far. */
	static CellRules of(GridChange change, Snapshot snapshot, List<Rule> among, String test, String fault) {
		RuleBase base = snapshot.rules();
		List<RuleTable> tables = new ArrayList<>();
		List<String> locked = new ArrayList<>();
		boolean speaks = false;
		for (Rule rule : among.stream().filter(each -> each.test().orElse("").equals(test)).toList()) {
			Optional<String> why = locked(base, rule);
			boolean about = rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream())
					.anyMatch(said -> said instanceof org.baywright.model.Conclusion.OnFault on && on.fault().equals(fault));
			if (why.isEmpty()) {
				tables.add(change.table(rule));
			} else {
				speaks |= about;
				locked.add(about ? 0 : locked.size(), why.get());
			}
		}
		tables.sort(Comparator.comparing(table -> !table.speaksOf(fault)));
		return new CellRules(test, fault, tables, locked, speaks, blank(base, test));
	}

	/** Returns why a rule cannot be changed in the grid, and where it can. */
	static Optional<String> locked(RuleBase base, Rule rule) {
		Span span = rule.span();
		String called = "“" + rule.title() + "” ";
		for (Chain chain : base.chains()) {
			if (chain.rules().stream().anyMatch(made -> made.name().equals(rule.name()))) {
				return Optional.of(called + "follows from the chain “" + chain.title() + "”. Change the chain: " + chain.span().file() + ", line " + chain.span().line() + ".");
			}
		}
		if (span.file().endsWith(Span.PACK)) {
			return Optional.of(called + "comes from the rule pack " + span.file() + ", which only those who made it can change.");
		}
		return span.isElsewhere() ? Optional.of(called + "belongs to a project that this one builds on. Change it there: " + span.file() + ", line " + span.line() + ".")
				: Optional.empty();
	}

	private static RuleTable blank(RuleBase base, String test) {
		Optional<Domain> domain = base.test(test).map(Test::domain);
		TreeSet<BigDecimal> limits = new TreeSet<>();
		if (domain.isPresent() && domain.get() instanceof Domain.Quantity quantity) {
			for (Rule rule : base.rules()) {
				if (rule.test().filter(test::equals).isPresent()) {
					rule.outcomes().stream().map(Outcome::values).flatMap(Optional::stream).forEach(values -> limits(values, quantity, limits));
				}
			}
		}
		return RuleTable.blank(domain, limits);
	}

	private static void limits(ValueSet values, Domain.Quantity quantity, TreeSet<BigDecimal> to) {
		var set = values.in(quantity);
		for (int run = 0; run < set.runCount(); run++) {
			if (set.low(run) > quantity.first() && set.low(run) <= quantity.last()) {
				to.add(quantity.value(set.low(run)));
			}
			if (set.high(run) >= quantity.first() && set.high(run) < quantity.last()) {
				to.add(quantity.value(set.high(run) + 1));
			}
		}
	}
}
