package org.baywright.language.translate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Condition;
import org.baywright.language.bay.Law;
import org.baywright.language.bay.Published;
import org.baywright.language.bay.FromJobs;
import org.baywright.language.bay.Memory;
import org.baywright.language.bay.Practice;
import org.baywright.language.bay.Rule;
import org.baywright.language.index.Facts;
import org.baywright.language.index.Kind;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.index.Symbol;
import org.baywright.language.translate.Conditions.Place;
import org.baywright.language.translate.Conditions.Within;
import org.baywright.model.Domain;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.Scope;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.StateSetting;
import org.baywright.model.ValueSet;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** Rules and laws. */
final class Rules {

	private final Context context;
	private final Conditions conditions;
	private final Values values;
	private final Outcomes outcomes;
	private final Clauses clauses;

	Rules(Context context, Conditions conditions, Values values, Clauses clauses) {
		this.context = context;
		this.conditions = conditions;
		this.values = values;
		this.outcomes = new Outcomes(context, values);
		this.clauses = clauses;
	}

	/** Translates a rule; what is returned is right only if the report is not broken afterwards. */
	Optional<org.baywright.model.Rule> rule(Rule rule) {
		Span span = context.source.span(rule, BayPackage.Literals.RULE__NAME);
		if (rule.getName() == null) {
			return Optional.empty();
		}
		Scope scope = scope(rule, span);
		List<org.baywright.model.Condition> given = conditions(rule.getGiven(), new Within(Place.GIVEN, scope.families()));
		List<StateSetting> states = context.settings(rule.getStates());
		clauses.once(rule, BayPackage.Literals.RULE__TESTS, "run");
		if (NodeModelUtils.findNodesForFeature(rule, BayPackage.Literals.RULE__EXPECTED).size() > 1) {
			expectOnce(rule);
		}
		Optional<Ref> test = Refs.one(rule, BayPackage.Literals.RULE__TESTS);
		Optional<Symbol> symbol = test.flatMap(ref -> context.resolve(ref, Kind.TEST));
		symbol.ifPresent(made -> mustAgree(rule, states, made));
		List<Outcome> branches = List.of();
		if (rule.getOutcomes().isEmpty()) {
			context.report.error("empty-rule", span, "The rule `" + rule.getName() + "` comes to no conclusion.",
					"Add what it proves, such as `" + (test.isPresent() ? "met :" : "then") + " suspects battery.discharged`.");
		} else if (test.isEmpty()) {
			branches = untested(rule);
		} else if (symbol.isPresent()) {
			branches = tested(rule, symbol.get());
		}
		Span testSpan = test.map(ref -> context.source.span(ref.node())).orElse(span);
		return Optional.of(new org.baywright.model.Rule(rule.getName(), Context.title(rule.getTitle(), rule.getName()), scope,
				given, states, symbol.map(Symbol::name), branches, provenance(rule, span), testSpan, span));
	}

	/** A vehicle cannot be in two states at once: in that of the rule and in another one for the rule's test. */
	private void mustAgree(Rule rule, List<StateSetting> states, Symbol test) {
		Set<String> said = new HashSet<>();
		for (StateSetting setting : states) {
			String state = setting.state();
			List<String> ofTest = ((Facts.OfTest) test.facts()).states().stream()
					.filter(other -> other.state().equals(state)).map(Facts.Setting::value).toList();
			boolean agree = ofTest.isEmpty() || states.stream()
					.anyMatch(other -> other.state().equals(state) && ofTest.contains(other.value()));
			if (!agree && said.add(state)) {
				context.report.warning("states-disagree", place(rule, setting),
						"The rule is for `" + state + " " + setting.value() + "`, but its test `" + test.name()
								+ "` is made in `" + state + " " + ofTest.get(0) + "`.",
						"Correct the one that is wrong, or take it out of the rule: the test says it already.");
			}
		}
	}

	private Span place(Rule rule, StateSetting setting) {
		return rule.getStates().stream()
				.filter(written -> isWritten(written, BayPackage.Literals.STATE_SETTING__STATE, setting.state())
						&& isWritten(written, BayPackage.Literals.STATE_SETTING__VALUE, setting.value()))
				.findFirst().map(context.source::span).orElseThrow();
	}

	private static boolean isWritten(EObject owner, EReference reference, String name) {
		return Refs.first(owner, reference).filter(name::equals).isPresent();
	}

	private List<Outcome> untested(Rule rule) {
		if (!rule.getExpected().isEmpty()) {
			context.report.error("expect-without-test", context.source.span(rule.getExpected().get(0)),
					"The rule expects a result but runs no test.", "Name the test with `run`.");
		}
		return outcomes.untested(rule);
	}

	private List<Outcome> tested(Rule rule, Symbol test) {
		Optional<Domain> domain = ((Facts.OfTest) test.facts()).domain();
		if (domain.isEmpty()) {
			context.report.incomplete(); // reported where the test is declared
			return List.of();
		}
		Values.Owner owner = Values.Owner.of(test.name(), domain.get());
		Optional<ValueSet> expected = rule.getExpected().isEmpty() ? Optional.empty()
				: values.anyBand(rule.getExpected(), owner);
		return outcomes.tested(rule, owner, expected);
	}

	private void expectOnce(Rule rule) {
		INode first = Clauses.keyword(rule, "expect");
		for (INode next = first == null ? null : first.getNextSibling(); next != null; next = next.getNextSibling()) {
			if ("expect".equals(next.getText())) {
				context.report.error("clause-twice", context.source.span(next), "`expect` is given twice.",
						"Put all expected results after one `expect`, with commas between them.");
				return;
			}
		}
	}

	private List<org.baywright.model.Condition> conditions(List<Condition> written, Within within) {
		List<org.baywright.model.Condition> out = new ArrayList<>();
		for (Condition condition : written) {
			conditions.translate(condition, within).ifPresent(out::add);
		}
		return out;
	}

	private Scope scope(Rule rule, Span ruleSpan) {
		List<String> families = context.resolveAll(rule, BayPackage.Literals.RULE__FAMILIES, Kind.FAMILY);
		List<String> except = context.resolveAll(rule, BayPackage.Literals.RULE__EXCEPT, Kind.FAMILY);
		List<org.baywright.model.Condition> where = conditions(rule.getWhere(), new Within(Place.WHERE, families));
		Optional<org.baywright.model.Condition> all = where.isEmpty() ? Optional.empty()
				: where.size() == 1 ? Optional.of(where.get(0))
						: Optional.of(new org.baywright.model.Condition.And(where, where.get(0).span()));
		return new Scope(families, except, all, scopeSpan(rule, ruleSpan));
	}

	private Span scopeSpan(Rule rule, Span ruleSpan) {
		INode first = Clauses.keyword(rule, "for");
		if (first == null) {
			return ruleSpan;
		}
		INode last = first;
		INode every = Clauses.keyword(rule, "family");
		if (every != null) {
			last = every;
		}
		for (var feature : List.of(BayPackage.Literals.RULE__FAMILIES, BayPackage.Literals.RULE__EXCEPT,
				BayPackage.Literals.RULE__WHERE)) {
			for (INode node : NodeModelUtils.findNodesForFeature(rule, feature)) {
				last = node.getEndOffset() > last.getEndOffset() ? node : last;
			}
		}
		return context.source.span(first, last);
	}

	private Provenance provenance(Rule rule, Span span) {
		clauses.once(rule, BayPackage.Literals.RULE__AUTHORS, "by");
		clauses.once(rule, BayPackage.Literals.RULE__SOURCE, "source");
		Optional<String> author = rule.getAuthors().stream().findFirst();
		Optional<LocalDate> date = rule.getDates().isEmpty() ? Optional.empty() : clauses.date(rule.getDates().get(0));
		Optional<String> because = rule.getBecause().isEmpty() ? Optional.empty()
				: Optional.of(String.join(" ", rule.getBecause()));
		List<String> missing = new ArrayList<>();
		if (rule.getSource().isEmpty()) {
			missing.add("`source`");
		}
		if (rule.getAuthors().isEmpty()) {
			missing.add("`by`");
		}
		if (rule.getBecause().isEmpty()) {
			missing.add("`because`");
		}
		if (!missing.isEmpty()) {
			context.report.warning("no-provenance", span,
					"The rule `" + rule.getName() + "` does not say where its knowledge comes from.",
					"Add " + String.join(" and ", missing) + ".");
		}
		return new Provenance(author, date, source(rule), because);
	}

	private static Source source(Rule rule) {
		if (rule.getSource().isEmpty()) {
			return new Source(Source.Kind.NONE, "");
		}
		org.baywright.language.bay.Source source = rule.getSource().get(0);
		if (source instanceof Published published) {
			return new Source(Source.Kind.PUBLISHED, published.getText() == null ? "" : published.getText());
		}
		if (source instanceof Practice) {
			return new Source(Source.Kind.PRACTICE, "");
		}
		if (source instanceof Memory) {
			return new Source(Source.Kind.MEMORY, "");
		}
		return new Source(source instanceof FromJobs ? Source.Kind.JOBS : Source.Kind.NONE, "");
	}

	/** Translates a law; what is returned is right only if the report is not broken afterwards. */
	Optional<org.baywright.model.Law> law(Law law) {
		List<String> families = context.resolveAll(law, BayPackage.Literals.LAW__FAMILIES, Kind.FAMILY);
		Within within = new Within(Place.LAW, families);
		Span span = context.source.span(law);
		Optional<org.baywright.model.Condition> when = conditions.translate(law.getNever() == null ? law.getWhen()
				: law.getNever(), within);
		Optional<org.baywright.model.Condition> then = law.getNever() == null ? conditions.translate(law.getThen(), within)
				: Optional.of(new org.baywright.model.Condition.Or(List.of(), context.source.span(law.getNever())));
		if (when.isEmpty() || then.isEmpty()) {
			return Optional.empty();
		}
		String title = law.getTitle() == null ? "" : law.getTitle();
		return Optional.of(new org.baywright.model.Law(title, families, when.get(), then.get(), span));
	}
}
