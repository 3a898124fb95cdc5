package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.Variable;
import org.baywright.model.Code;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Trait;
import org.baywright.model.words.Words;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.bench.Subject.Choice;

/** Lists what can be entered on the bench: the traits of the family, and what its rules and laws look at. */
final class Subjects {

	/** As somebody asks who works on a vehicle: what is seen comes first, what the vehicle is like is known. */
	private static final List<Variable.Kind> KINDS = List.of(Variable.Kind.SIGN, Variable.Kind.TEST, Variable.Kind.CODE, Variable.Kind.MODULE,
			Variable.Kind.TRAIT);

	private static final Comparator<Subject> ORDER = Comparator.comparing((Subject subject) -> KINDS.indexOf(subject.variable().kind()))
			.thenComparing(Subject::title, String.CASE_INSENSITIVE_ORDER).thenComparing(Subject::variable);

	private final RuleBase base;
	private final String family;
	private final Words words;

	Subjects(RuleBase base, String family) {
		this.base = base;
		this.family = family;
		words = new Words(base);
	}

	/** Returns everything, by kind and title. */
	List<Subject> all() {
		Set<Variable> variables = new HashSet<>();
		base.traitsOf(family).keySet().forEach(trait -> variables.add(new Variable(Variable.Kind.TRAIT, trait)));
		for (Rule rule : RuleScope.family(family).rules(base)) {
			RuleScope.atoms(rule).forEach(atom -> add(atom, variables));
			rule.test().ifPresent(test -> variables.add(new Variable(Variable.Kind.TEST, test)));
		}
		base.laws().stream().filter(law -> base.reaches(law.families(), family)).forEach(law -> {
			law.when().eachAtom(atom -> add(atom, variables));
			law.then().eachAtom(atom -> add(atom, variables));
		});
		List<Subject> subjects = new ArrayList<>();
		variables.forEach(variable -> subject(variable).ifPresent(subjects::add));
		subjects.sort(ORDER);
		return subjects;
	}

	private void add(Condition.Atom atom, Set<Variable> into) {
		Variable.of(atom).ifPresent(into::add);
		if (atom instanceof Condition.CodeIs is) {
			base.code(is.code()).ifPresent(code -> into.add(new Variable(Variable.Kind.MODULE, code.module())));
		}
	}

	/** Returns how to enter a variable; nothing if vehicles of the family do not have it. */
	Optional<Subject> subject(Variable variable) {
		String name = variable.name();
		return switch (variable.kind()) {
		case TRAIT -> Optional.ofNullable(base.traitsOf(family).get(name)).map(Trait::domain)
				.map(domain -> valued(variable, name, domain));
		case TEST -> base.test(name).filter(test -> base.reaches(base.scopeOf(test), family)).map(test -> valued(variable, test.title(), test.domain()));
		case SIGN -> base.sign(name).filter(sign -> base.reaches(sign.scope(), family)).map(sign -> new Subject(variable, sign.title(),
				List.of(new Choice("present", "present"), new Choice("absent", "absent")), ""));
		case MODULE -> base.module(name).filter(module -> base.reaches(module.families(), family))
				.map(module -> new Subject(variable, module.title(),
						List.of(new Choice("answers", "answers"), new Choice("silent", "silent")), ""));
		case CODE -> base.code(name).map(Code::module).flatMap(base::module)
				.filter(module -> base.reaches(module.families(), family))
				.map(module -> new Subject(variable, words.code(name) + " in " + module.title(),
						readings(name), ""));
		};
	}

	/** The states of a code are offered where some rule asks for one. */
	private List<Choice> readings(String code) {
		List<Choice> choices = new ArrayList<>(List.of(new Choice("present", "present"), new Choice("absent", "absent"),
				new Choice("unread", "unread: the module is silent")));
		if (base.asksForState(code)) {
			choices.set(0, new Choice("present", "present, its state not read"));
			choices.addAll(List.of(new Choice("active", "active: found right now"), new Choice("stored", "stored: not found right now"),
					new Choice("pending", "pending: not yet confirmed"), new Choice("untested", "untested since it was cleared")));
		}
		return choices;
	}

	private static Subject valued(Variable variable, String title, Domain domain) {
		if (domain instanceof Domain.Names names) {
			return new Subject(variable, title,
					names.values().stream().map(value -> new Choice(value.name(), value.title())).toList(), "");
		}
		return new Subject(variable, title, List.of(), ((Domain.Quantity) domain).range());
	}
}
