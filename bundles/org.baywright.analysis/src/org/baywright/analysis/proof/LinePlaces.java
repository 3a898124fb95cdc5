package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

import org.baywright.analysis.Place;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Trait;

/** Finds the place of a source line of a rule in the text as it stands now. */
final class LinePlaces {

	private LinePlaces() {
	}

	/**
	 * Returns the place of the line: all its conditions, or the outcome that stands there; and for a value outside of
	 * what was declared also the declaration.
	 */
	static List<Place> of(RuleBase base, Rule rule, SourceLine line) {
		TreeMap<Integer, Span> spans = new TreeMap<>();
		List<Place> declarations = new ArrayList<>();
		rule.scope().where().ifPresent(
				where -> where.eachAtom(atom -> collect(base, atom, line(rule, line), spans, declarations)));
		rule.given().forEach(
				given -> given.eachAtom(atom -> collect(base, atom, line(rule, line), spans, declarations)));
		for (Outcome outcome : rule.outcomes()) {
			if (outcome.span().line() == line(rule, line)) {
				spans.put(outcome.span().offset(), outcome.span());
			}
		}
		List<Place> places = new ArrayList<>();
		if (!spans.isEmpty()) {
			places.add(new Place(join(spans.firstEntry().getValue(), spans.lastEntry().getValue()),
					"rule " + rule.name()));
		}
		places.addAll(declarations);
		return places;
	}

	private static int line(Rule rule, SourceLine line) {
		return rule.span().line() + line.offset();
	}

	private static Span join(Span first, Span last) {
		return new Span(first.file(), first.line(), first.column(), last.endLine(), last.endColumn(), first.offset(),
				last.offset() + last.length() - first.offset());
	}

	private static void collect(RuleBase base, Condition.Atom atom, int line, TreeMap<Integer, Span> into,
			List<Place> declarations) {
		if (atom.span().line() == line) {
			into.put(atom.span().offset(), atom.span());
			atom.visit(
					(Condition.TraitIs is) -> base.families().stream().map(family -> base.traitsOf(family.name()).get(is.trait()))
							.filter(java.util.Objects::nonNull).distinct()
							.filter(trait -> isOutside(is.values().in(trait.domain()).isEmpty(), trait.domain()))
							.map(Trait::span).forEach(span -> declarations.add(new Place(span, "values of " + is.trait()))),
					(Condition.SignIs is) -> { },
					(Condition.TestIs is) -> base.test(is.test())
							.filter(test -> isOutside(is.values().in(test.domain()).isEmpty(), test.domain()))
							.ifPresent(test -> declarations.add(new Place(test.span(), "values of " + test.name()))),
					(Condition.CodeIs is) -> { },
					(Condition.ModuleIs is) -> { },
					(Condition.VerdictIs is) -> { },
					(Condition.Unexplained is) -> { });
		}
	}

	private static boolean isOutside(boolean empty, Domain domain) {
		return empty && domain.size() > 0;
	}
}
