package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.analysis.Place;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Story;
import org.baywright.analysis.Variable;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Acceptance;
import org.baywright.model.Case;
import org.baywright.model.Condition;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.model.write.RuleWriter;

/** A rule base whose parts are proved: where checks read the proofs and put their flaws. */
public final class Checked {

	private final RuleBase base;
	private final List<Component> components;
	private final Map<String, FamilyParts> families;
	private final List<Flaw> flaws = new ArrayList<>();
	private final RuleMemory memory;
	private final int conflictLimit;
	private final Map<String, Object> shared = new HashMap<>();
	private List<CaseResult> cases;

	Checked(RuleBase base, List<Component> components, Map<String, FamilyParts> families,
			RuleMemory memory, int conflictLimit) {
		this.conflictLimit = conflictLimit;
		this.memory = memory;
		this.base = base;
		this.components = components;
		this.families = families;
	}

	public RuleBase base() {
		return base;
	}

	/** Returns the vehicle families that a rule of this rule base reaches. */
	public Set<String> reach(Rule rule) {
		return memory.of(rule).reach;
	}

	/** Returns the rules that reach no vehicle family. */
	public List<Rule> unreached() {
		return memory.rules().stream().filter(facts -> facts.reach.isEmpty()).map(facts -> facts.rule).toList();
	}

	/**
	 * Calls {@code use} for each rule with something worked out of it alone and of what it speaks of; that is worked out
	 * again only when the rule changes.
	 */
	@SuppressWarnings("unchecked") // each name is used with one type
	public <T> void eachRule(String name, Function<Rule, T> work, BiConsumer<Rule, T> use) {
		for (RuleFacts facts : memory.rules()) {
			Object known = facts.remembered.get(name);
			if (known == null) {
				known = work.apply(facts.rule);
				facts.remembered = new HashMap<>(facts.remembered);
				facts.remembered.put(name, known);
			}
			use.accept(facts.rule, (T) known);
		}
	}

	/** Returns the faults that a rule of this rule base speaks of, in its conditions or its conclusions. */
	public List<String> faults(Rule rule) {
		return memory.of(rule).print.faults();
	}

	/** Returns something that several checks need, worked out once for each run. */
	@SuppressWarnings("unchecked") // each name is used with one type
	public <T> T shared(String name, Supplier<T> work) {
		Object known = shared.get(name);
		if (known == null) {
			known = work.get();
			shared.put(name, known);
		}
		return (T) known;
	}

	/** Returns what the checks before this one found. */
	public List<Flaw> flaws() {
		return Collections.unmodifiableList(flaws);
	}

	/** Runs all finished jobs; one of a family that no vehicle belongs to is left to the language to report. */
	public List<CaseResult> cases() {
		if (cases == null) {
			cases = new ArrayList<>();
			for (Case job : base.cases()) {
				FamilyParts parts = families.get(job.family());
				if (parts != null) {
					cases.add(parts.run(base, job));
				}
			}
		}
		return cases;
	}

	/** Calls {@code use} for each part with what the check proved of it. */
	public <F> void each(ProofCheck<F> check, BiConsumer<Component, F> use) {
		for (Component component : components) {
			use.accept(component, component.fact(check));
		}
	}

	/** Returns the parts a rule belongs to, one for each different way it is used in; none if it reaches no family. */
	public List<Component> partsOf(String rule) {
		Map<Key, Component> parts = new LinkedHashMap<>();
		base.rule(rule).ifPresent(found -> {
			for (String family : memory.of(found).reach) {
				Component part = families.get(family).partOf(rule);
				parts.put(part.key, part);
			}
		});
		return List.copyOf(parts.values());
	}

	/** Returns all parts, in a fixed order. */
	public List<Component> parts() {
		return components;
	}

	/** Returns the parts of a family. */
	public List<Component> partsOfFamily(String family) {
		return families.get(family).parts();
	}

	/** Returns conditions on traits under which the part always ends in a verdict. */
	public static List<Condition> unquiet(Component part) {
		return part.unquiet;
	}

	/** Returns a prover for a part again, told when the other parts of the family cannot be quiet. */
	public Prover prover(Component part, String family, List<Condition> unquiet) {
		Draft draft = families.get(family).draftOf(part);
		return new Prover(base, new ProgramBuilder(base, family, draft.rules(), draft.laws(), draft.exclusives())
				.limits(draft.limits()).unquiet(unquiet).build(), conflictLimit);
	}

	/**
	 * Returns whether the sign makes sense on some vehicle of the family and the laws leave one that shows it; true if the
	 * limit was reached on the way.
	 */
	public boolean mayShow(String family, String sign) {
		if (!base.reaches(base.scopeOf(sign), family)) {
			return false;
		}
		Program laws = shared("laws of " + family, () -> new Draft(family, List.of(),
				Stream.concat(Draft.of(base, family).laws().stream(), limitedSigns()).toList(), List.of()).program(base));
		int var = laws.numberOf(new Variable(Variable.Kind.SIGN, sign));
		if (var < 0) {
			return true; // no law speaks of it, and it is for all vehicles
		}
		Encoding encoding = new Encoding(laws, conflictLimit, false);
		return encoding.ask(encoding.shows(var)) != Answer.NO;
	}

	/** Returns laws that forbid nothing and speak of each sign that is for some vehicles only, so that this is looked at. */
	private Stream<Law> limitedSigns() {
		return base.signs().stream().filter(sign -> sign.scope().where().isPresent()).map(sign -> {
			Condition shown = new Condition.SignIs(sign.name(), true, Span.NONE);
			return new Law("", List.of(), shown, shown, Span.NONE);
		});
	}

	// ---- making flaws ---------------------------------------------------------------------------------------

	/** Collects what makes up one flaw. */
	public final class Draftsman {
		private final Check check;
		private final String subject;
		private final Span span;
		private Severity severity;
		private String message = "";
		private Evidence evidence = new Evidence.Text();
		private final List<Place> related = new ArrayList<>();
		private final List<Fix> fixes = new ArrayList<>();
		private final TreeSet<String> meanings = new TreeSet<>();

		private Draftsman(Check check, String subject, Span span) {
			this.check = check;
			this.subject = subject;
			this.span = span;
			severity = check.about().severity();
		}

		public Draftsman severity(Severity other) {
			severity = other;
			return this;
		}

		public Draftsman says(String text) {
			message = text;
			return this;
		}

		public Draftsman shownBy(Evidence shows) {
			evidence = shows;
			return this;
		}

		public Draftsman near(Span place, String note) {
			related.add(new Place(place, note));
			return this;
		}

		public Draftsman near(List<Place> places) {
			related.addAll(places);
			return this;
		}

		public Draftsman fix(Fix fix) {
			boolean ofChain = fix instanceof Fix.Withdraw withdraw && base.isOfChain(withdraw.rule())
					|| fix instanceof Fix.RemoveRule remove && base.isOfChain(remove.rule());
			if (!ofChain) { // such a rule stands nowhere in the text
				fixes.add(fix);
			}
			return this;
		}

		/** Ties the flaw to the meaning of a rule: an acceptance goes stale when it changes. */
		public Draftsman about(Rule rule) {
			meanings.add(Meaning.text(rule));
			return this;
		}

		/** Ties the flaw to some other meaning. */
		public Draftsman about(String meaning) {
			meanings.add(meaning);
			return this;
		}

		public void add() {
			String id = check.about().id() + ":" + subject;
			String meaning = Meaning.fingerprint(id + meanings);
			boolean breach = check.about().signOff() && base.signOff().isPresent() && !span.isElsewhere();
			if (severity == Severity.WARNING && !breach) {
				fixes.add(new Fix.AddElement("Accept this with a reason",
						new RuleWriter().text(new Acceptance(id + "@" + meaning, "", Optional.empty(), Optional.empty(), Span.NONE))));
			}
			flaws.add(new Flaw(id, check.about().id(), severity, span, message, related, evidence,
					Story.tell(base, evidence), meaning, fixes, Optional.empty(), breach));
		}
	}

	/** Begins a flaw. */
	public Draftsman flaw(Check check, String subject, Span span) {
		return new Draftsman(check, subject, span);
	}

	/** Returns a witness that names the first family of the part. */
	public Evidence witness(Component part, Situation situation) {
		return new Evidence.Witness(new Situation(part.families().get(0), situation.facts()));
	}

	/** Returns the lines with the places where they stand now, and the declarations that empty values clash with. */
	public Evidence core(List<SourceLine> lines) {
		List<Place> places = new ArrayList<>();
		lines.stream().flatMap(line -> line.lines().stream()).forEach(line -> {
			if (line.kind().equals("law")) {
				law(line).ifPresent(law -> places.add(new Place(law.span(), "law: " + law.title())));
			} else {
				base.rule(line.element()).ifPresent(rule -> places.addAll(LinePlaces.of(base, rule, line)));
			}
		});
		return new Evidence.Core(places.stream().distinct().toList());
	}

	/** Returns the law that a line stands for. */
	public Optional<Law> law(SourceLine line) {
		return base.laws().stream().filter(law -> law.title().equals(line.element()) && SourceLine.of(law).equals(line)).findFirst();
	}

	/** Returns where an outcome of a rule stands. */
	public Place place(String rule, int outcome) {
		Rule found = base.rule(rule).orElseThrow();
		return new Place(found.outcomes().get(outcome).span(),
				"rule " + rule + ", " + found.outcomes().get(outcome).label());
	}
}
