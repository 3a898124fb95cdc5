package org.baywright.analysis.proof;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.Variable;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;

/**
 * What a rule or law touches, and what it means, without its place. Two rules that touch nothing in common but traits
 * have nothing to do with each other.
 *
 * @param findings signs, modules, codes and tests it speaks of
 * @param faults faults it speaks of
 * @param traits traits it speaks of
 * @param unasked whether it can fire before anybody has found anything; such rules belong together
 * @param text its meaning, name and line layout
 */
record Footprint(List<Variable> findings, List<String> faults, List<String> traits, boolean unasked, String text) {

	static Footprint of(Rule rule) {
		Walk walk = new Walk(rule.span());
		rule.scope().where().ifPresent(walk::visit);
		rule.given().forEach(walk::visit);
		rule.test().ifPresent(test -> walk.findings.add(new Variable(Variable.Kind.TEST, test)));
		for (Outcome outcome : rule.outcomes()) {
			walk.layout.append(' ').append(outcome.span().line() - rule.span().line()).append(outcome.listed());
			for (Conclusion conclusion : outcome.conclusions()) {
				if (conclusion instanceof Conclusion.OnFault on) {
					walk.faults.add(on.fault());
				}
			}
		}
		return walk.done("rule " + rule.name() + Meaning.text(rule) + order(rule));
	}

	/** Results name outcomes by number, so that their order counts. */
	private static String order(Rule rule) {
		StringBuilder order = new StringBuilder();
		for (Outcome outcome : rule.outcomes()) {
			order.append(outcome.label()).append(outcome.values().map(Meaning::text).orElse("")).append(';');
		}
		return order.toString();
	}

	/** Returns the traits that count for a rule or law: those that it speaks of, and those that limit what it speaks of. */
	static Set<String> traits(RuleBase base, Footprint print) {
		Set<String> traits = new TreeSet<>(print.traits());
		for (Variable finding : print.findings()) {
			base.scopeOf(finding.name()).where().ifPresent(where -> where.eachAtom(atom -> traits.add(atom.about())));
		}
		return traits;
	}

	static Footprint of(Law law) {
		Walk walk = new Walk(law.span());
		walk.visit(law.when());
		walk.visit(law.then());
		return walk.done("law " + law.title() + Meaning.text(law));
	}

	private static final class Walk {
		private final Span origin;
		private final Set<Variable> findings = new LinkedHashSet<>();
		private final Set<String> faults = new LinkedHashSet<>();
		private final Set<String> traits = new TreeSet<>();
		private final StringBuilder layout = new StringBuilder();
		private boolean waits;

		Walk(Span origin) {
			this.origin = origin;
		}

		Footprint done(String text) {
			return new Footprint(List.copyOf(findings), List.copyOf(faults), List.copyOf(traits),
					findings.isEmpty() && !waits, text + layout);
		}

		void visit(Condition condition) {
			condition.eachAtom(this::visitAtom);
		}

		private void visitAtom(Condition.Atom atom) {
			layout.append(' ').append(atom.span().line() - origin.line());
			atom.visit(
					(Condition.TraitIs is) -> traits.add(is.trait()),
					this::finding,
					this::finding,
					this::finding,
					this::finding,
					(Condition.VerdictIs is) -> {
						faults.add(is.fault());
						waits |= is.stands();
					},
					this::finding);
		}

		private void finding(Condition.Atom atom) {
			Variable.of(atom).ifPresent(findings::add);
		}
	}
}
