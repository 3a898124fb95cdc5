package org.baywright.language.ide.grid;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.baywright.model.Conclusion;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Limits;

/** What each result of a rule's test proves, as it stands in the text or is about to. A change returns another table. */
public final class RuleTable {

	/**
	 * A result, or several that prove the same.
	 *
	 * @param origin number of the rule's outcome that it comes from; nothing if it is written anew
	 * @param label how the results are written: {@code on below 12.4 V}
	 * @param values the results; nothing for a rule without a test
	 * @param said what it proves
	 * @param open whether the text does not speak of these results, so that the line is written only if it says something
	 */
	record Line(Optional<Integer> origin, String label, Optional<IndexSet> values, List<Said> said, boolean open) {

		Line {
			said = List.copyOf(said);
		}

		boolean saysSomething() {
			return said.stream().anyMatch(one -> !one.isNothing());
		}

		private Line saying(List<Said> other) {
			return new Line(origin, label, values, other, open);
		}
	}

	static final List<Said> NOTHING = List.of(Said.nothing());
	private static final String REST = "otherwise";

	private final Optional<Rule> rule;
	private final Optional<Domain> domain;
	private final List<Line> lines;

	private RuleTable(Optional<Rule> rule, Optional<Domain> domain, List<Line> lines) {
		this.rule = rule;
		this.domain = domain;
		this.lines = List.copyOf(lines);
	}

	/**
	 * Returns the table of a rule: its outcomes in their order, then the results of which it says nothing.
	 *
	 * @param text the file in which it stands
	 */
	static RuleTable of(RuleBase base, Rule rule, String text) {
		Optional<Domain> domain = rule.test().flatMap(base::test).map(org.baywright.model.Test::domain);
		RuleText written = new RuleText(rule, text);
		List<Line> lines = new ArrayList<>();
		for (int i = 0; i < rule.outcomes().size(); i++) {
			Outcome outcome = rule.outcomes().get(i);
			lines.add(new Line(Optional.of(i), outcome.label(), domain.flatMap(of -> outcome.values().map(set -> set.in(of))), written.said(i), false));
		}
		domain.ifPresent(of -> Unsaid.lines(lines, of).forEach(line -> lines.add(place(lines, line), line)));
		return new RuleTable(Optional.of(rule), domain, lines);
	}

	/** Returns the table of a rule that is not written yet, with limits at which its test's results are told apart. */
	static RuleTable blank(Optional<Domain> domain, Collection<BigDecimal> limits) {
		List<Line> lines = new ArrayList<>();
		if (domain.isEmpty()) {
			lines.add(new Line(Optional.empty(), "then", Optional.empty(), NOTHING, true));
		} else if (domain.get() instanceof Domain.Quantity quantity) {
			lines.add(anew(IndexSet.all(quantity), quantity, NOTHING, true));
		} else {
			for (int i = 0; i < domain.get().size(); i++) {
				lines.add(anew(IndexSet.range(i, i), domain.get(), NOTHING, true));
			}
		}
		RuleTable table = new RuleTable(Optional.empty(), domain, lines);
		for (BigDecimal limit : limits) {
			table = table.split(limit);
		}
		return table;
	}

	static Line anew(IndexSet values, Domain domain, List<Said> said, boolean open) {
		return new Line(Optional.empty(), Results.label(values, domain), Optional.of(values), said, open);
	}

	/** New lines stand where their results do; the rest comes last. */
	private static int place(List<Line> lines, Line line) {
		int at = 0;
		for (int i = 0; i < lines.size(); i++) {
			Line other = lines.get(i);
			boolean before = !other.label().equals(REST) && other.values().filter(set -> !set.isEmpty())
					.filter(set -> set.first() < line.values().orElseThrow().first()).isPresent();
			at = before ? i + 1 : at;
		}
		return at;
	}

	// ---- what it says ----------------------------------------------------------------------------------------------

	/** Returns how many lines there are. */
	public int size() {
		return lines.size();
	}

	/** Returns the results of a line in words: "below 12.4 V"; the empty text where no test is done. */
	public String title(int line) {
		Line of = lines.get(line);
		if (domain.isEmpty() || of.values().isEmpty()) {
			return "";
		}
		// as the grid says it, with the author's limit, as long as the line is still the author's
		return of.origin().flatMap(number -> rule.orElseThrow().outcomes().get(number).values())
				.filter(set -> set.in(domain.get()).equals(of.values().get())).map(set -> Limits.say(set, domain.get()))
				.orElseGet(() -> Results.say(of.values().get(), domain.get()));
	}

	/** Returns what a line says of a fault; the strongest, if a text says several things. */
	public Optional<VerdictKind> verdict(int line, String fault) {
		return Said.of(lines.get(line).said(), fault);
	}

	/** Returns whether any line says anything of a fault. */
	public boolean speaksOf(String fault) {
		return lines.stream().anyMatch(line -> Said.of(line.said(), fault).isPresent());
	}

	/** Returns whether any line says anything. */
	public boolean saysSomething() {
		return lines.stream().anyMatch(Line::saysSomething);
	}

	/** Returns whether there are limits between the results. */
	public boolean isMeasured() {
		return domain.filter(Domain.Quantity.class::isInstance).isPresent();
	}

	/** Returns the unit of what is measured; the empty text for none. */
	public String unit() {
		return domain.filter(Domain.Quantity.class::isInstance).map(of -> ((Domain.Quantity) of).unit()).orElse("");
	}

	/** Returns whether any line has several named results, which {@link #apart} gives a line each. */
	public boolean canBeApart() {
		return domain.filter(Domain.Names.class::isInstance).isPresent()
				&& lines.stream().anyMatch(line -> line.values().filter(set -> !set.isEmpty() && set.first() < set.last()).isPresent());
	}

	/** Returns the rule; nothing for one that is not written yet. */
	public Optional<Rule> rule() {
		return rule;
	}

	List<Line> lines() {
		return lines;
	}

	// ---- changes ---------------------------------------------------------------------------------------------------

	/** Returns the table after which a line says this of a fault, or nothing of it. */
	public RuleTable with(int line, String fault, Optional<VerdictKind> verdict) {
		List<Line> now = new ArrayList<>(lines);
		now.set(line, lines.get(line).saying(Said.with(lines.get(line).said(), fault, verdict)));
		return new RuleTable(rule, domain, now);
	}

	/** Returns the results of the line that is called so, or is labelled so in the rule. */
	Optional<IndexSet> valuesOf(String title) {
		for (int i = 0; i < lines.size(); i++) {
			if (title(i).equalsIgnoreCase(title) || lines.get(i).label().equalsIgnoreCase("on " + title)) {
				return lines.get(i).values();
			}
		}
		return Optional.empty();
	}

	/** Returns the table after which just these results, with lines of their own where that is needed, say this of a fault. */
	RuleTable with(IndexSet results, String fault, Optional<VerdictKind> verdict) {
		RuleTable now = split(results);
		for (int i = 0; i < now.size(); i++) {
			if (now.lines.get(i).values().filter(results::meets).isPresent()) {
				now = now.with(i, fault, verdict);
			}
		}
		return now;
	}

	/** Returns the table after which no line says anything of a fault. */
	public RuleTable without(String fault) {
		RuleTable now = this;
		for (int i = 0; i < lines.size(); i++) {
			now = verdict(i, fault).isPresent() ? now.with(i, fault, Optional.empty()) : now;
		}
		return now;
	}

	/** Returns the table with a line of its own for what lies below a limit and for what lies on it or above. */
	public RuleTable split(BigDecimal limit) {
		return domain.filter(Domain.Quantity.class::isInstance).map(of -> split(Results.below(limit, (Domain.Quantity) of))).orElse(this);
	}

	/** Returns why a limit tells nothing apart, in one sentence. */
	public Optional<String> problem(BigDecimal limit) {
		Domain.Quantity quantity = (Domain.Quantity) domain.orElseThrow();
		if (limit.compareTo(quantity.low()) <= 0 || limit.compareTo(quantity.high()) > 0) {
			return Optional.of("The test measures " + quantity.range() + "; a limit lies above the least value and not above the greatest.");
		}
		return split(limit).size() == size() ? Optional.of("There is a limit at " + quantity.sayNumber(limit) + " already.") : Optional.empty();
	}

	/** Returns the table with a line for each named result. */
	public RuleTable apart() {
		RuleTable now = this;
		for (int i = 0; domain.isPresent() && i < domain.get().size(); i++) {
			now = now.split(IndexSet.range(i, i));
		}
		return now;
	}

	private RuleTable split(IndexSet part) {
		List<Line> now = new ArrayList<>();
		for (Line line : lines) {
			IndexSet inside = line.values().map(part::intersect).orElse(IndexSet.EMPTY);
			IndexSet outside = line.values().map(set -> Results.without(set, part, domain.orElseThrow())).orElse(IndexSet.EMPTY);
			if (inside.isEmpty() || outside.isEmpty()) {
				now.add(line);
			} else if (line.label().equals(REST)) {
				now.add(anew(inside, domain.orElseThrow(), line.said(), line.open()));
				now.add(new Line(line.origin(), REST, Optional.of(outside), line.said(), line.open()));
			} else {
				now.add(new Line(line.origin(), Results.label(inside, domain.orElseThrow()), Optional.of(inside), line.said(), line.open()));
				now.add(anew(outside, domain.orElseThrow(), line.said(), line.open()));
			}
		}
		return new RuleTable(rule, domain, now);
	}

	/** Returns the outcomes for a rule that is written anew; who chose nothing for a result has not forgotten it. */
	List<Outcome> outcomes() {
		List<Outcome> outcomes = new ArrayList<>();
		lines.stream().filter(Line::saysSomething).forEach(line -> outcomes.add(new Outcome(line.label(), Optional.empty(), true,
				Said.conclusions(line.said()), Span.NONE)));
		if (outcomes.size() < lines.size()) {
			outcomes.add(new Outcome(REST, Optional.empty(), false, List.of(new Conclusion.Nothing(Span.NONE)), Span.NONE));
		}
		return outcomes;
	}

	@Override
	public boolean equals(Object other) {
		return other instanceof RuleTable table && rule.equals(table.rule) && lines.equals(table.lines);
	}

	@Override
	public int hashCode() {
		return lines.hashCode();
	}
}
