package org.baywright.presenter.draft;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.ValueSet;
import org.baywright.model.words.Names;
import org.baywright.model.write.RuleWriter;
import org.baywright.presenter.Say;

/**
 * A rule about to be written.
 *
 * @param title the rule in words
 * @param name its name
 * @param families families it speaks of; none for every family
 * @param sign the sign it is given, or the empty text
 * @param test the test to run
 * @param low lower end of the expected values, or the empty text; only for a test that measures
 * @param high upper end of the expected values, or the empty text
 * @param endings what each result leads to, by the labels that {@link #results} tells
 * @param because why, in the author's words
 * @param author who writes it
 * @param date when
 */
public record RuleDraft(String title, String name, List<String> families, String sign, String test, String low, String high,
		Map<String, Ending> endings, String because, String author, LocalDate date) {

	public RuleDraft {
		families = List.copyOf(families);
		endings = new LinkedHashMap<>(endings);
	}

	/** Returns the results of a test that can lead somewhere: its names, or where a value can lie to what is expected. */
	public static List<String> results(Test test) {
		if (test.domain() instanceof Domain.Names names) {
			return names.values().stream().map(value -> value.name()).toList();
		}
		return List.of("met", "below", "above");
	}

	/** Returns the unit of what a test measures; the empty text for named results. */
	public static String unit(Test test) {
		return test.domain() instanceof Domain.Quantity quantity ? quantity.unit() : "";
	}

	/**
	 * Returns what is still wrong, in one sentence.
	 *
	 * @param rules the rules that are there
	 */
	public Optional<String> problem(RuleBase rules) {
		if (title.isBlank()) {
			return Optional.of("Say in a few words what the rule is about.");
		}
		Collection<String> taken = rules.rules().stream().map(rule -> rule.name()).toList();
		Optional<String> named = Names.problem("rule", name, taken);
		if (named.isPresent()) {
			return named;
		}
		Optional<Test> chosen = rules.test(test);
		if (chosen.isEmpty()) {
			return Optional.of("Choose the test to run. A rule that only guesses needs none; write it in the editor.");
		}
		Optional<String> expected = expectedProblem(chosen.get());
		if (expected.isPresent()) {
			return expected;
		}
		for (String result : shown(chosen.get())) {
			Optional<String> ending = endings.getOrDefault(result, Ending.LEFT_OUT).problem(result);
			if (ending.isPresent()) {
				return ending;
			}
		}
		if (said(chosen.get()).isEmpty()) {
			return Optional.of("Say what at least one result proves.");
		}
		if (because.isBlank()) {
			return Optional.of("Say why: others have to trust the rule.");
		}
		return author.isBlank() ? Optional.of("Say who writes the rule.") : Optional.empty();
	}

	private Optional<String> expectedProblem(Test chosen) {
		if (!(chosen.domain() instanceof Domain.Quantity quantity)) {
			return Optional.empty();
		}
		if (low.isBlank() && high.isBlank()) {
			return Optional.of("Say which values are expected: from, to, or both.");
		}
		Optional<BigDecimal> from = number(low);
		Optional<BigDecimal> to = number(high);
		if (!low.isBlank() && from.isEmpty() || !high.isBlank() && to.isEmpty()) {
			return Optional.of("A value is a number such as 12.4.");
		}
		if (from.isPresent() && to.isPresent() && from.get().compareTo(to.get()) > 0) {
			return Optional.of("The expected values end before they begin.");
		}
		BigDecimal least = from.or(() -> to).orElseThrow();
		BigDecimal greatest = to.or(() -> from).orElseThrow();
		if (greatest.compareTo(quantity.low()) < 0 || least.compareTo(quantity.high()) > 0) {
			return Optional.of("The test measures " + quantity.sayNumber(quantity.low()) + " to "
					+ quantity.sayNumber(quantity.high()) + "; nothing expected lies there.");
		}
		return Optional.empty();
	}

	private static Optional<BigDecimal> number(String text) {
		try {
			return text.isBlank() ? Optional.empty() : Optional.of(new BigDecimal(text.strip().replace(',', '.')));
		} catch (NumberFormatException e) {
			return Optional.empty();
		}
	}

	/** Returns the results that can occur: nothing lies above what has no upper end. */
	public List<String> shown(Test chosen) {
		List<String> shown = new ArrayList<>(results(chosen));
		if (chosen.domain() instanceof Domain.Quantity) {
			if (low.isBlank()) {
				shown.remove("below");
			}
			if (high.isBlank()) {
				shown.remove("above");
			}
		}
		return shown;
	}

	private List<String> said(Test chosen) {
		return shown(chosen).stream()
				.filter(result -> endings.getOrDefault(result, Ending.LEFT_OUT).kind() != Ending.Kind.LEFT_OUT).toList();
	}

	/**
	 * Returns the rule in the language.
	 *
	 * @param rules the rules that are there; the draft must have no problem with them
	 */
	public String text(RuleBase rules) {
		Test chosen = rules.test(test).orElseThrow();
		Scope scope = families.isEmpty() ? Scope.EVERY : new Scope(families, List.of(), Optional.empty(), Span.NONE);
		List<Condition> given = sign.isBlank() ? List.of() : List.of(new Condition.SignIs(sign, true, Span.NONE));
		Provenance provenance = new Provenance(Optional.of(Say.inLine(author)), Optional.of(date), new Source(Source.Kind.PRACTICE, ""),
				Optional.of(Say.inLine(because)));
		return new RuleWriter(rules).text(new Rule(name, Say.inLine(title), scope, given, List.of(), Optional.of(test),
				shown(chosen).stream().map(result -> outcome(chosen, result)).toList(), provenance, Span.NONE, Span.NONE));
	}

	private Outcome outcome(Test chosen, String result) {
		List<Conclusion> conclusions = endings.getOrDefault(result, Ending.LEFT_OUT).conclusions();
		if (chosen.domain() instanceof Domain.Names) {
			ValueSet values = new ValueSet.Choices(List.of(result));
			return new Outcome("on " + RuleWriter.results(values, ""), Optional.of(values), true, conclusions, Span.NONE);
		}
		ValueSet values = switch (result) {
		case "below" -> ValueSet.Band.below(number(low).orElseThrow());
		case "above" -> ValueSet.Band.above(number(high).orElseThrow());
		default -> new ValueSet.Band(number(low), false, number(high), false);
		};
		return new Outcome(result, Optional.of(values), result.equals("met"), conclusions, Span.NONE);
	}
}
