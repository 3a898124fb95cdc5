package org.baywright.language.translate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Chain;
import org.baywright.language.bay.Condition;
import org.baywright.language.bay.Law;
import org.baywright.language.bay.Published;
import org.baywright.language.bay.FromJobs;
import org.baywright.language.bay.Memory;
import org.baywright.language.bay.Point;
import org.baywright.language.bay.OutcomeLabel;
import org.baywright.language.bay.Practice;
import org.baywright.language.bay.Rule;
import org.baywright.language.index.Facts;
import org.baywright.language.index.Kind;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.index.Symbol;
import org.baywright.language.text.Advice;
import org.baywright.language.translate.Conditions.Place;
import org.baywright.language.translate.Conditions.Within;
import org.baywright.model.Domain;
import org.baywright.model.Mend;
import org.baywright.model.Outcome;
import org.baywright.model.ProblemKind;
import org.baywright.model.Provenance;
import org.baywright.model.Scope;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.StateSetting;
import org.baywright.model.ValueSet;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EReference;

/** Rules and laws. */
final class Rules {

	private final Context context;
	private final Conditions conditions;
	private final Values values;
	private final Outcomes outcomes;
	private final Clauses clauses;
	private final Scopes scopes;

	Rules(Context context, Conditions conditions, Values values, Clauses clauses, Scopes scopes) {
		this.scopes = scopes;
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
		Optional<Ref> test = Refs.one(rule, BayPackage.Literals.RULE__TESTS);
		Optional<Symbol> symbol = test.flatMap(ref -> context.resolve(ref, Kind.TEST, define(rule, ref.name())));
		symbol.ifPresent(made -> mustAgree(rule, states, made));
		symbol.ifPresent(made -> conditions.checkReached(context.source.span(test.get().node()), made, scope.families()));
		List<Outcome> branches = List.of();
		if (rule.getOutcomes().isEmpty()) {
			context.report.error(ProblemKind.EMPTY_RULE, span, "The rule `" + rule.getName() + "` comes to no conclusion.",
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

	/** Returns the definition of a test that the rule can run as it stands. */
	private static List<Mend> define(Rule rule, String test) {
		List<EObject> results = new ArrayList<>(rule.getExpected());
		for (org.baywright.language.bay.Outcome outcome : rule.getOutcomes()) {
			boolean ofNumbers = outcome.getWhen().isEmpty()
					&& (outcome.getLabel() == OutcomeLabel.BELOW || outcome.getLabel() == OutcomeLabel.ABOVE);
			if (outcome.isPlain() || ofNumbers) {
				return List.of();
			}
			results.addAll(outcome.getWhen());
		}
		return Defining.test(test, results);
	}

	/** A vehicle cannot be in two states at once: in that of the rule and in another one for the rule's test. */
	private void mustAgree(Rule rule, List<StateSetting> states, Symbol test) {
		Set<String> said = new HashSet<>();
		Facts.OfTest own = (Facts.OfTest) test.facts();
		Facts.OfTest done = own.seenWith().flatMap(other -> context.find(Kind.TEST, other)).map(other -> (Facts.OfTest) other.facts()).orElse(own);
		for (StateSetting setting : states) {
			String state = setting.state();
			List<String> ofTest = done.states().stream()
					.filter(other -> other.state().equals(state)).map(Facts.Setting::value).toList();
			boolean agree = ofTest.isEmpty() || states.stream()
					.anyMatch(other -> other.state().equals(state) && ofTest.contains(other.value()));
			if (!agree && said.add(state)) {
				context.report.tell(ProblemKind.STATES_DISAGREE, place(rule, setting),
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
			context.report.error(ProblemKind.EXPECT_WITHOUT_TEST, context.source.span(rule.getExpected().get(0)),
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

	private List<org.baywright.model.Condition> conditions(List<Condition> written, Within within) {
		List<org.baywright.model.Condition> out = new ArrayList<>();
		for (Condition condition : written) {
			conditions.translate(condition, within).ifPresent(out::add);
		}
		return out;
	}

	private Scope scope(Rule rule, Span span) {
		return scopes.of(rule, BayPackage.Literals.RULE__FAMILIES, BayPackage.Literals.RULE__EXCEPT, BayPackage.Literals.RULE__WHERE,
				rule.getWhere(), span);
	}

	private Provenance provenance(Rule rule, Span span) {
		Optional<String> author = rule.getAuthors().stream().findFirst();
		Optional<LocalDate> date = rule.getDates().isEmpty() ? Optional.empty() : clauses.date(rule.getDates().get(0));
		Optional<String> because = rule.getBecause().isEmpty() ? Optional.empty()
				: Optional.of(String.join(" ", rule.getBecause()));
		List<String> missing = new ArrayList<>();
		List<String> lines = new ArrayList<>();
		if (rule.getSource().isEmpty()) {
			missing.add("`source`");
			lines.add("source practice");
		}
		if (rule.getAuthors().isEmpty()) {
			missing.add("`by`");
		}
		if (rule.getBecause().isEmpty()) {
			missing.add("`because`");
			lines.add(0, "because \"\"");
		}
		if (!missing.isEmpty()) {
			context.report.tell(ProblemKind.NO_PROVENANCE, span,
					"The " + (rule instanceof Chain ? "chain" : "rule") + " `" + rule.getName() + "` does not say where its knowledge comes from.",
					new Advice("Add " + String.join(" and ", missing) + ".", List.of(new Mend.AddClauses("Say where it comes from",
							rule instanceof Chain ? "chain" : "rule", rule.getName(), lines, rule.getAuthors().isEmpty()))));
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

	/** Translates a chain; what is returned is right only if the report is not broken afterwards. */
	Optional<org.baywright.model.Chain> chain(Chain chain) {
		Span span = context.source.span(chain, BayPackage.Literals.RULE__NAME);
		Scope scope = scope(chain, span);
		List<org.baywright.model.Condition> given = conditions(chain.getGiven(), new Within(Place.GIVEN, scope.families()));
		List<org.baywright.model.Chain.Point> points = new ArrayList<>();
		Set<String> tests = new HashSet<>();
		for (Point point : chain.getPoints()) {
			Optional<Ref> ref = Refs.one(point, BayPackage.Literals.POINT__TEST);
			Optional<Symbol> test = ref.flatMap(found -> context.resolve(found, Kind.TEST));
			Optional<Domain> domain = test.flatMap(symbol -> ((Facts.OfTest) symbol.facts()).domain());
			List<String> faults = context.resolveAll(point, BayPackage.Literals.POINT__FAULTS, Kind.FAULT);
			if (domain.isEmpty()) {
				context.report.incomplete();
				continue;
			}
			if (!tests.add(test.get().name())) {
				context.report.error(ProblemKind.POINT_TWICE, context.source.span(ref.get().node()),
						"`" + test.get().name() + "` is a point of this chain already.", "Name another test, or take the point out.");
			}
			values.anyBand(point.getExpected(), Values.Owner.of(test.get().name(), domain.get()))
					.ifPresent(good -> points.add(new org.baywright.model.Chain.Point(test.get().name(),
							Context.title(((org.baywright.language.bay.Test) test.get().element()).getTitle(), test.get().name()), good, faults, context.source.span(point))));
		}
		limitsFall(chain, points);
		Set<String> faults = new HashSet<>();
		List<Ref> written = new ArrayList<>();
		chain.getPoints().forEach(point -> written.addAll(Refs.all(point, BayPackage.Literals.POINT__FAULTS)));
		written.addAll(Refs.all(chain, BayPackage.Literals.CHAIN__BEYOND));
		for (Ref ref : written) {
			if (!faults.add(ref.name())) {
				context.report.error(ProblemKind.CHAIN_FAULT_TWICE, context.source.span(ref.node()),
						"`" + ref.name() + "` lies at two places of this chain.", "Name it where it lies, once.");
			}
		}
		if (chain.getPoints().size() < 2) {
			context.report.error(ProblemKind.CHAIN_SHORT, span, "The chain `" + chain.getName() + "` has fewer than two points.",
					"Add a `point` with its test and what the test must give, or write a rule.");
		}
		org.baywright.model.Chain made = new org.baywright.model.Chain(chain.getName(), Context.title(chain.getTitle(), chain.getName()),
				scope, given, points, context.resolveAll(chain, BayPackage.Literals.CHAIN__BEYOND, Kind.FAULT), provenance(chain, span), span);
		for (org.baywright.model.Rule rule : made.rules()) {
			if (context.find(Kind.RULE, rule.name()).isPresent()) {
				context.report.error(ProblemKind.CHAIN_RULE_TAKEN, rule.span(),
						"The chain makes a rule `" + rule.name() + "` here, and there is one already.", "Give the other rule another name.");
			}
		}
		return Optional.of(made);
	}

	/** What is lost on the way is not found again: a reading that is right behind must be right before. */
	private void limitsFall(Chain chain, List<org.baywright.model.Chain.Point> points) {
		for (int i = 1; i < points.size(); i++) {
			org.baywright.model.Chain.Point near = points.get(i - 1);
			org.baywright.model.Chain.Point far = points.get(i);
			Optional<Domain> one = domain(near.test());
			Optional<Domain> other = domain(far.test());
			if (one.isPresent() && one.equals(other) && one.get() instanceof Domain.Quantity) {
				var good = far.good().in(other.get());
				if (!good.intersect(near.good().in(one.get())).equals(good)) {
					context.report.tell(ProblemKind.CHAIN_LIMITS_FALL, far.span(),
							"`" + far.test() + "` is right at values at which `" + near.test() + "`, which lies before it, is wrong.",
							"Give both the same limits, or the later point the narrower ones.");
				}
			}
		}
	}

	private Optional<Domain> domain(String test) {
		return context.find(Kind.TEST, test).flatMap(symbol -> ((Facts.OfTest) symbol.facts()).domain());
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
