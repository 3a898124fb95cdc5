package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Conclusion;
import org.baywright.language.bay.FaultConclusion;
import org.baywright.language.bay.Outcome;
import org.baywright.language.bay.OutcomeLabel;
import org.baywright.language.bay.ProvesNothing;
import org.baywright.language.bay.Referral;
import org.baywright.language.bay.Rule;
import org.baywright.language.index.Kind;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.text.Spelling;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** The branches of a rule, each with the results that lead to it. */
final class Outcomes {

	private final Context context;
	private final Values values;

	Outcomes(Context context, Values values) {
		this.context = context;
		this.values = values;
	}

	/** Translates the branches of a rule without a test: one {@code then}. */
	List<org.baywright.model.Outcome> untested(Rule rule) {
		List<org.baywright.model.Outcome> out = new ArrayList<>();
		for (Outcome outcome : rule.getOutcomes()) {
			if (!outcome.isPlain()) {
				context.report.error(ProblemKind.OUTCOME_WITHOUT_TEST, span(outcome),
						"The rule runs no test, so nothing can be `" + label(outcome) + "`.",
						"Name the test with `run`, or write `then`.");
			} else if (!out.isEmpty()) {
				context.report.error(ProblemKind.OUTCOME_TWICE, span(outcome), "`then` is given twice.",
						"Put all conclusions after one `then`.");
			} else {
				out.add(new org.baywright.model.Outcome("then", Optional.empty(), false, conclusions(outcome), span(outcome)));
			}
		}
		return out;
	}

	/**
	 * Translates the branches of a rule with a test.
	 *
	 * @param rule the rule
	 * @param owner the test's values
	 * @param expected the expected result, if there is a right one
	 */
	List<org.baywright.model.Outcome> tested(Rule rule, Values.Owner owner, Optional<ValueSet> expected) {
		List<org.baywright.model.Outcome> out = new ArrayList<>();
		List<ValueSet> named = new ArrayList<>();
		Set<String> labels = new LinkedHashSet<>();
		int rest = -1;
		for (Outcome outcome : rule.getOutcomes()) {
			String label = label(outcome);
			if (outcome.isPlain()) {
				context.report.error(ProblemKind.THEN_WITH_TEST, span(outcome),
						"The rule runs a test, so it must say which result leads here.",
						"Write `met`, `below`, `above`, `otherwise` or `on` with a result in place of `then`.");
				continue;
			}
			if (!labels.add(label)) {
				context.report.error(ProblemKind.OUTCOME_TWICE, span(outcome), "`" + label + "` is given twice.",
						"Put all conclusions after one of them.");
				continue;
			}
			boolean listed = outcome.getWhen().size() > 0 || outcome.getLabel() == OutcomeLabel.MET;
			Optional<ValueSet> set = outcome.getWhen().isEmpty() && outcome.getLabel() == OutcomeLabel.OTHERWISE
					? Optional.empty() : set(rule, outcome, owner, expected);
			if (set.isPresent()) {
				named.add(set.get());
			} else if (outcome.getWhen().isEmpty() && outcome.getLabel() == OutcomeLabel.OTHERWISE) {
				rest = out.size();
			} else {
				context.report.incomplete();
				continue;
			}
			out.add(new org.baywright.model.Outcome(label, set, listed, conclusions(outcome), span(outcome)));
		}
		if (rest >= 0) {
			if (expected.isPresent() && out.stream().noneMatch(org.baywright.model.Outcome::listed)) {
				context.report.error(ProblemKind.OTHERWISE_TAKES_EXPECTED, out.get(rest).span(),
						"`otherwise` also takes the expected result, since no `met` says what that proves.",
						"Write `met : ` with what the expected result proves, such as `met : proves nothing`, before `otherwise`.");
			}
			org.baywright.model.Outcome open = out.get(rest);
			out.set(rest, new org.baywright.model.Outcome(open.label(),
					Optional.of(new ValueSet.Except(new ValueSet.Union(named))), false, open.conclusions(), open.span()));
		}
		return out;
	}

	private Optional<ValueSet> set(Rule rule, Outcome outcome, Values.Owner owner, Optional<ValueSet> expected) {
		if (!outcome.getWhen().isEmpty()) {
			return values.anyBand(outcome.getWhen(), owner);
		}
		String label = label(outcome);
		if (rule.getExpected().isEmpty()) {
			context.report.error(ProblemKind.MET_WITHOUT_EXPECT, span(outcome),
					"`" + label + "` compares with the expected result, and the rule names none.",
					"Add `expect` with the right result, or write `on` with the results meant.");
			return Optional.empty();
		}
		if (expected.isEmpty() || outcome.getLabel() == OutcomeLabel.MET) {
			return expected;
		}
		if (!owner.isQuantity()) {
			context.report.error(ProblemKind.BELOW_NEEDS_NUMBER, span(outcome),
					"`" + owner.name() + "` gives no number, so nothing is `" + label + "` the expected result.",
					"Write `otherwise`, or `on` with one of " + Spelling.either(owner.names()) + ".");
			return Optional.empty();
		}
		Optional<ValueSet> beyond = beyond(outcome.getLabel() == OutcomeLabel.BELOW, expected.get(), (Domain.Quantity) owner.domains().get(0));
		if (beyond.isEmpty()) {
			context.report.error(ProblemKind.NOTHING_BEYOND, span(outcome),
					"No result lies " + label + " the expected one, which has no limit on that side.",
					"Take the outcome out, or give the expected result the limit.");
		}
		return beyond;
	}

	/** Returns what lies below, or above, of all that is expected: also what is shown beyond the range, unless it is expected. */
	private static Optional<ValueSet> beyond(boolean below, ValueSet expected, Domain.Quantity quantity) {
		IndexSet right = expected.in(quantity);
		boolean under = quantity.under().isPresent() && right.contains(0);
		boolean over = quantity.over().isPresent() && right.contains(quantity.size() - 1);
		if (below ? under : over) {
			return Optional.empty();
		}
		if (bands(expected).isEmpty()) {
			// what is shown at the other end is all that is expected
			return Optional.of(new ValueSet.Except(expected));
		}
		return below ? below(expected) : above(expected);
	}

	private static List<ValueSet.Band> bands(ValueSet set) {
		if (set instanceof ValueSet.Union union) {
			return union.parts().stream().flatMap(part -> bands(part).stream()).toList();
		}
		return set instanceof ValueSet.Band band ? List.of(band) : List.of();
	}

	private static Optional<ValueSet> below(ValueSet expected) {
		ValueSet.Band lowest = null;
		for (ValueSet.Band band : bands(expected)) {
			if (band.low().isEmpty()) {
				return Optional.empty();
			}
			int order = lowest == null ? -1 : band.low().get().compareTo(lowest.low().get());
			if (order < 0 || order == 0 && !band.lowOpen()) {
				lowest = band;
			}
		}
		return lowest == null ? Optional.empty()
				: Optional.of(new ValueSet.Band(Optional.empty(), false, lowest.low(), !lowest.lowOpen()));
	}

	private static Optional<ValueSet> above(ValueSet expected) {
		ValueSet.Band highest = null;
		for (ValueSet.Band band : bands(expected)) {
			if (band.high().isEmpty()) {
				return Optional.empty();
			}
			Optional<BigDecimal> high = band.high();
			int order = highest == null ? 1 : high.get().compareTo(highest.high().get());
			if (order > 0 || order == 0 && !band.highOpen()) {
				highest = band;
			}
		}
		return highest == null ? Optional.empty()
				: Optional.of(new ValueSet.Band(highest.high(), !highest.highOpen(), Optional.empty(), false));
	}

	private List<org.baywright.model.Conclusion> conclusions(Outcome outcome) {
		List<org.baywright.model.Conclusion> out = new ArrayList<>();
		for (Conclusion conclusion : outcome.getConclusions()) {
			if (conclusion instanceof FaultConclusion onFault) {
				VerdictKind verdict = switch (onFault.getVerdict()) {
				case CONFIRMS -> VerdictKind.CONFIRMED;
				case SUSPECTS -> VerdictKind.SUSPECTED;
				case CLEARS -> VerdictKind.CLEARED;
				};
				for (Ref ref : Refs.all(onFault, BayPackage.Literals.FAULT_CONCLUSION__FAULTS)) {
					context.resolve(ref, Kind.FAULT).ifPresent(fault -> out.add(new org.baywright.model.Conclusion.OnFault(
							verdict, fault.name(), context.source.span(ref.node()))));
				}
			} else if (conclusion instanceof Referral referral && referral.getToWhom() != null) {
				out.add(new org.baywright.model.Conclusion.Refers(referral.getToWhom(), context.source.span(conclusion)));
			} else if (conclusion instanceof ProvesNothing) {
				out.add(new org.baywright.model.Conclusion.Nothing(context.source.span(conclusion)));
			}
		}
		return out;
	}

	private String label(Outcome outcome) {
		if (outcome.isPlain()) {
			return "then";
		}
		if (outcome.getWhen().isEmpty()) {
			return outcome.getLabel().getLiteral();
		}
		return outcome.getWhen().stream().map(context.source::written).collect(Collectors.joining(", ", "on ", ""));
	}

	/** The place of the label and its values, without the conclusions. */
	private Span span(Outcome outcome) {
		INode whole = NodeModelUtils.findActualNodeFor(outcome);
		List<INode> when = NodeModelUtils.findNodesForFeature(outcome, BayPackage.Literals.OUTCOME__WHEN);
		if (!when.isEmpty()) {
			return context.source.span(whole, when.get(when.size() - 1));
		}
		List<INode> words = NodeModelUtils.findNodesForFeature(outcome,
				outcome.isPlain() ? BayPackage.Literals.OUTCOME__PLAIN : BayPackage.Literals.OUTCOME__LABEL);
		return context.source.span(words.isEmpty() ? whole : words.get(0));
	}
}
