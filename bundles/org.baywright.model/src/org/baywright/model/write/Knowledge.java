package org.baywright.model.write;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.baywright.model.Chain;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Law;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.Rule;
import org.baywright.model.Scope;
import org.baywright.model.Source;
import org.baywright.model.ValueSet;
import org.baywright.model.Written;

/** Laws, rules and chains as text. */
final class Knowledge {

	private final Values values;

	Knowledge(Values values) {
		this.values = values;
	}

	Block law(Law law) {
		String what = law.then() instanceof Condition.Or or && or.parts().isEmpty() ? "never " + values.condition(law.when())
				: "when " + values.condition(law.when()) + "\n  then " + values.condition(law.then());
		return new Block("law " + Written.text(law.title()) + (law.families().isEmpty() ? "" : " for " + Values.names(law.families())) + " : " + what);
	}

	Block rule(Rule rule) {
		Block block = new Block("rule", rule.name(), rule.title());
		begin(block, rule.scope(), rule.given());
		block.line("in", Values.settings(rule.states()));
		String unit = rule.test().map(values::unit).orElse("");
		rule.test().ifPresent(test -> block.line("run", Written.name(test)));
		expected(rule.outcomes()).ifPresent(expected -> block.line("expect", Values.expected(expected, unit)));
		// what proves nothing yet only tells what is expected
		rule.outcomes().stream().filter(outcome -> !outcome.conclusions().isEmpty()).forEach(outcome -> outcome(block, outcome));
		return provenance(block, rule.provenance());
	}

	Block chain(Chain chain) {
		Block block = new Block("chain", chain.name(), chain.title());
		begin(block, chain.scope(), chain.given());
		chain.points().forEach(point -> block.row("point " + Written.name(point.test()),
				"expect " + Values.expected(point.good(), values.unit(point.test())),
				point.faults().isEmpty() ? "" : ": " + Values.names(point.faults())));
		return provenance(block.line("beyond", Values.names(chain.beyond())), chain.provenance());
	}

	private void begin(Block block, Scope scope, List<Condition> given) {
		block.line("for", values.vehicles(scope));
		given.forEach(condition -> block.line("given " + values.condition(condition)));
	}

	/** Returns what must have been expected, so that the outcomes are met, below and above as they are. */
	private static Optional<ValueSet> expected(List<Outcome> outcomes) {
		Optional<ValueSet> met = values(outcomes, "met");
		if (met.isPresent()) {
			return met;
		}
		Optional<ValueSet.Band> below = values(outcomes, "below").map(ValueSet.Band.class::cast);
		Optional<ValueSet.Band> above = values(outcomes, "above").map(ValueSet.Band.class::cast);
		if (below.isEmpty() && above.isEmpty()) {
			return Optional.empty();
		}
		Optional<BigDecimal> low = below.flatMap(ValueSet.Band::high);
		Optional<BigDecimal> high = above.flatMap(ValueSet.Band::low);
		return Optional.of(new ValueSet.Band(low, below.isPresent() && !below.get().highOpen(), high, above.isPresent() && !above.get().lowOpen()));
	}

	private static Optional<ValueSet> values(List<Outcome> outcomes, String label) {
		return outcomes.stream().filter(outcome -> outcome.label().equals(label)).flatMap(outcome -> outcome.values().stream()).findFirst();
	}

	private static void outcome(Block block, Outcome outcome) {
		String said = outcome.conclusions().stream().map(Knowledge::conclusion).collect(Collectors.joining("  "));
		if (outcome.label().equals("then")) {
			block.line("then", said);
		} else {
			// behind "on" it is the text that its author wrote
			block.row(outcome.label(), ": " + said);
		}
	}

	private static String conclusion(Conclusion conclusion) {
		if (conclusion instanceof Conclusion.OnFault fault) {
			return fault.verdict().verb() + " " + Written.name(fault.fault());
		}
		return conclusion instanceof Conclusion.Refers refers ? "refers " + Written.text(refers.toWhom()) : "proves nothing";
	}

	private static Block provenance(Block block, Provenance provenance) {
		provenance.because().ifPresent(because -> block.line("because", Written.text(because)));
		Source source = provenance.source();
		if (source.kind() != Source.Kind.NONE) {
			block.line("source " + source.kind().name().toLowerCase(Locale.ROOT)
					+ (source.kind() == Source.Kind.PUBLISHED ? " " + Written.text(source.text()) : ""));
		}
		if (provenance.author().isPresent() && provenance.date().isPresent()) {
			block.line("by " + Written.text(provenance.author().get()) + " on " + provenance.date().get());
		}
		return block;
	}
}
