package org.baywright.presenter.bench;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Variable;
import org.baywright.model.Bands;
import org.baywright.model.Case;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Fault;
import org.baywright.model.IndexSet;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;
import org.baywright.model.Written;
import org.baywright.model.words.Names;
import org.baywright.model.words.Words;
import org.baywright.model.write.RuleWriter;
import org.baywright.presenter.Say;

/**
 * A rule that a job teaches: given its complaint, the result of the test that decided confirms the cause.
 *
 * @param base the rules that are there
 * @param family the family of the vehicle
 * @param readings what is known of it, traits and findings
 * @param test name of the test that decided
 * @param cause name of the fault that was the cause
 * @param known names of the faults that the job says were the cause; none if nobody has said it
 * @param author who writes the rule; a blank one is left out
 * @param date when
 */
public record JobRule(RuleBase base, String family, List<Reading> readings, String test, String cause, List<String> known, String author, LocalDate date) {

	/** What stands in the text where the author has to say why. */
	public static final String WHY = "Write why the result proves it.";

	/**
	 * Something to choose from.
	 *
	 * @param name its name in the rules
	 * @param title what a technician calls it
	 */
	public record Choice(String name, String title) {
	}

	/**
	 * A place in the text that waits for its author.
	 *
	 * @param offset characters before it
	 * @param length its characters
	 */
	public record Blank(int offset, int length) {
	}

	/** A rule that asks for the sign counts more than all that do not. */
	private static final int MANY = 1000;

	public JobRule {
		readings = List.copyOf(readings);
		known = List.copyOf(known);
	}

	/** Returns the rule of the job on a bench. */
	public static JobRule of(Bench bench, String test, String cause, String author, LocalDate date) {
		return new JobRule(bench.base(), bench.now().family(), bench.now().readings(), test, cause, Stream.of(bench.now().done().cause()).filter(named -> !named.isEmpty()).toList(), author, date);
	}

	/** Returns the rule of a finished job. */
	public static JobRule of(RuleBase base, Case job, String test, String cause, String author, LocalDate date) {
		return new JobRule(base, job.family(), Stream.concat(job.traits().stream(), job.found().stream()).toList(), test, cause, job.causes(), author, date);
	}

	/** Returns the tests that were done, the last one first: one of them decided. */
	public static List<Choice> tests(RuleBase base, List<Reading> readings) {
		List<Choice> tests = new ArrayList<>();
		readings.forEach(reading -> base.test(reading.subject()).ifPresent(test -> tests.add(0, new Choice(test.name(), test.title()))));
		return tests;
	}

	/** Returns the faults of the project by title: one of them was the cause. */
	public static List<Choice> faults(RuleBase base) {
		Words words = new Words(base);
		return base.faults().stream().map(Fault::name).distinct().map(name -> new Choice(name, words.fault(name)))
				.sorted(Comparator.comparing(Choice::title, String.CASE_INSENSITIVE_ORDER).thenComparing(Choice::name)).toList();
	}

	/** Returns the file to which such a rule goes: the one with most rules that ask for a sign of the job, or else with most rules. */
	public static String file(RuleBase base, List<Reading> readings) {
		Set<String> signs = readings.stream().filter(reading -> reading instanceof Reading.SignSeen seen && seen.present()).map(Reading::subject).collect(Collectors.toSet());
		Map<String, Integer> files = new TreeMap<>();
		for (Rule rule : base.rules()) {
			boolean[] asks = { false };
			rule.given().forEach(given -> given.eachAtom(atom -> asks[0] |= atom instanceof Condition.SignIs is && signs.contains(is.sign())));
			if (!rule.span().isElsewhere()) {
				files.merge(rule.span().file(), asks[0] ? MANY : 1, Integer::sum);
			}
		}
		return files.entrySet().stream().max(Map.Entry.<String, Integer>comparingByValue().thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
				.map(Map.Entry::getKey).orElse("rules.bay");
	}

	/** Returns what is still missing, in one sentence. */
	public Optional<String> problem() {
		if (base.fault(cause).isEmpty()) {
			return Optional.of("Choose the fault that was the cause.");
		} else if (base.test(test).isEmpty()) {
			return Optional.of("Choose the test that decided.");
		}
		return result().isPresent() ? Optional.empty() : Optional.of("The test “" + base.test(test).get().title() + "” was not done in this job.");
	}

	private Optional<Reading> result() {
		return readings.stream().filter(reading -> reading.subject().equals(test)).findFirst();
	}

	/** Returns the rule. It must have no problem. */
	public Rule rule() {
		Test decided = base.test(test).orElseThrow();
		ValueSet values = values(decided.domain(), result().orElseThrow());
		List<Condition> given = readings.stream().filter(reading -> reading instanceof Reading.SignSeen seen && seen.present()).findFirst()
				.<Condition>map(reading -> new Condition.SignIs(reading.subject(), true, Span.NONE)).stream().toList();
		String unit = decided.domain() instanceof Domain.Quantity quantity ? quantity.unit() : "";
		Outcome outcome = new Outcome("on " + RuleWriter.results(values, unit), Optional.of(values), true,
				List.of(new Conclusion.OnFault(VerdictKind.CONFIRMED, cause, Span.NONE)), Span.NONE);
		Optional<String> by = Optional.of(Say.inLine(author)).filter(name -> !name.isEmpty());
		return new Rule(name(), base.fault(cause).orElseThrow().title() + ", by " + decided.title(),
				new Scope(List.of(family), List.of(), Optional.empty(), Span.NONE), given, List.of(), Optional.of(test), List.of(outcome),
				new Provenance(by, by.map(name -> date), new Source(Source.Kind.JOBS, ""), Optional.of(WHY)), Span.NONE, Span.NONE);
	}

	private String name() {
		Set<String> taken = new LinkedHashSet<>(base.rules().stream().map(Rule::name).toList());
		base.chains().forEach(chain -> taken.add(chain.name()));
		return Names.free(Names.suggest(cause + " by " + test), taken);
	}

	/** Returns the rule in the language. It must have no problem. */
	public String text() {
		return new RuleWriter(base).text(rule());
	}

	/** Returns the places in the text that wait for their author, in their order. */
	public List<Blank> blanks() {
		return List.of(new Blank(text().indexOf(Written.text(WHY)) + 1, WHY.length()));
	}

	/** Returns the job as one that is finished. */
	Case job() {
		List<Reading> traits = readings.stream().filter(reading -> Variable.of(base, reading).kind() == Variable.Kind.TRAIT).toList();
		return new Case("", family, traits, readings.stream().filter(reading -> !traits.contains(reading)).toList(), List.of(cause), false, Optional.empty(), Span.NONE);
	}

	// ---- the band around the result ----------------------------------------------------------------------------------

	/** Returns the narrowest band with the result that some rule has for this test; the result alone where none has. */
	private ValueSet values(Domain domain, Reading result) {
		int index = domain.indexOf(result);
		if (result instanceof Reading.Named named) {
			return new ValueSet.Choices(List.of(named.value()));
		}
		Domain.Quantity quantity = (Domain.Quantity) domain;
		ValueSet alone = ValueSet.Band.closed(quantity.value(index), quantity.value(index));
		return base.rules().stream().flatMap(rule -> named(rule).stream()).flatMap(values -> bands(values, quantity).stream())
				.filter(values -> values.in(quantity).contains(index)).min(Comparator.comparingLong(values -> count(values.in(quantity)))).orElse(alone);
	}

	/** Returns the values of the test that a rule names. */
	private Collection<ValueSet> named(Rule rule) {
		List<ValueSet> named = new ArrayList<>();
		if (rule.test().filter(test::equals).isPresent()) {
			rule.outcomes().forEach(outcome -> outcome.values().ifPresent(named::add));
		}
		rule.given().forEach(given -> given.eachAtom(atom -> {
			if (atom instanceof Condition.TestIs is && is.test().equals(test)) {
				named.add(is.values());
			}
		}));
		return named;
	}

	/** Returns the bands of a set, as their author wrote them where that can be written. */
	private static List<ValueSet> bands(ValueSet values, Domain.Quantity quantity) {
		if (values instanceof ValueSet.Band) {
			return List.of(values);
		} else if (values instanceof ValueSet.Union union) {
			return union.parts().stream().flatMap(part -> bands(part, quantity).stream()).toList();
		}
		return Bands.of(values, quantity).bands().stream().flatMap(band -> written(band, quantity).stream()).toList();
	}

	/** A band with two ends is written with both of them in it. */
	private static Optional<ValueSet> written(Bands.Band band, Domain.Quantity quantity) {
		boolean fromLeast = band.low().compareTo(quantity.low()) == 0 && !band.lowOpen();
		boolean toGreatest = band.high().compareTo(quantity.high()) == 0 && !band.highOpen();
		if (fromLeast != toGreatest) {
			return Optional.of(new ValueSet.Band(fromLeast ? Optional.empty() : Optional.of(band.low()), band.lowOpen(),
					toGreatest ? Optional.empty() : Optional.of(band.high()), band.highOpen()));
		}
		return band.lowOpen() || band.highOpen() ? Optional.empty() : Optional.of(ValueSet.Band.closed(band.low(), band.high()));
	}

	private static long count(IndexSet values) {
		long count = 0;
		for (int run = 0; run < values.runCount(); run++) {
			count += values.high(run) - values.low(run) + 1L;
		}
		return count;
	}
}
