package org.baywright.model;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;

/** Follows the names by which the elements of a rule base speak of each other. */
public final class References {

	private final RuleBase base;
	private String user = "";

	private References(RuleBase base) {
		this.base = base;
	}

	/** A name that leads nowhere, or one that is declared twice. The message is a plain sentence. */
	public static final class Missing extends Exception {

		private static final long serialVersionUID = 1L;

		Missing(String message) {
			super(message);
		}
	}

	/** Looks at one element. */
	private interface Look<T> {
		void at(T element) throws Missing;
	}

	/**
	 * Follows all names.
	 *
	 * @throws Missing if a name leads nowhere or is declared twice; it says which one and who uses it
	 */
	public static void check(RuleBase base) throws Missing {
		References references = new References(base);
		references.unique();
		references.each(base.families(), references::family);
		references.each(base.modules(), references::module);
		references.each(base.codes(), references::code);
		references.each(base.parts(), references::part);
		references.each(base.exclusives(), references::exclusive);
		references.each(base.tests(), references::test);
		references.each(base.laws(), references::law);
		references.each(base.rules(), references::rule);
		references.each(base.repairs(), references::repair);
		references.each(base.cases(), references::job);
		references.each(base.reviews(), references::review);
	}

	/**
	 * Returns the rule base without the elements that speak of something that is not declared in it, and without those
	 * that speak of them.
	 *
	 * @param base a rule base of which some elements were left out, as because of an error
	 * @param dropped hears of each element that goes, as {@code kind name}
	 */
	public static RuleBase whole(RuleBase base, Consumer<String> dropped) {
		RuleBase now = base;
		while (true) {
			References references = new References(now);
			List<String> gone = new ArrayList<>();
			RuleBase.Builder kept = new RuleBase.Builder(now.name());
			kept.states.addAll(now.states());
			kept.tools.addAll(now.tools());
			kept.hazards.addAll(now.hazards());
			kept.signs.addAll(now.signs());
			kept.acceptances.addAll(now.acceptances());
			kept.leftOut.addAll(now.leftOut());
			references.keep(now.families(), kept.families, references::family, gone);
			references.keep(now.modules(), kept.modules, references::module, gone);
			references.keep(now.codes(), kept.codes, references::code, gone);
			references.keep(now.parts(), kept.parts, references::part, gone);
			references.keep(now.exclusives(), kept.exclusives, references::exclusive, gone);
			references.keep(now.tests(), kept.tests, references::test, gone);
			references.keep(now.laws(), kept.laws, references::law, gone);
			references.keep(now.rules(), kept.rules, references::rule, gone);
			references.keep(now.repairs(), kept.repairs, references::repair, gone);
			references.keep(now.cases(), kept.cases, references::job, gone);
			references.keep(now.reviews(), kept.reviews, references::review, gone);
			if (gone.isEmpty()) {
				return now;
			}
			now.laws().stream().filter(law -> !kept.laws.contains(law)).map(LeftOut::of).forEach(kept.leftOut::add);
			now.rules().stream().filter(rule -> !kept.rules.contains(rule)).map(LeftOut::of).forEach(kept.leftOut::add);
			gone.forEach(dropped);
			now = kept.build();
		}
	}

	private <T> void each(Collection<T> elements, Look<T> look) throws Missing {
		for (T element : elements) {
			look.at(element);
		}
	}

	private <T> void keep(Collection<T> elements, Collection<T> kept, Look<T> look, List<String> gone) {
		for (T element : elements) {
			try {
				look.at(element);
				kept.add(element);
			} catch (Missing e) {
				gone.add(user);
			}
		}
	}

	private void unique() throws Missing {
		once(base.families().stream().map(Family::name).toList(), "family");
		once(base.states().stream().map(State::name).toList(), "state");
		once(base.tools().stream().map(Tool::name).toList(), "tool");
		once(base.hazards().stream().map(Hazard::name).toList(), "hazard");
		once(base.modules().stream().map(Module::name).toList(), "module");
		once(base.codes().stream().map(Code::name).toList(), "code");
		once(base.signs().stream().map(Sign::name).toList(), "sign");
		once(base.parts().stream().map(Part::name).toList(), "part");
		once(base.faults().stream().map(Fault::name).toList(), "fault");
		once(base.tests().stream().map(Test::name).toList(), "test");
		once(base.rules().stream().map(Rule::name).toList(), "rule");
		once(base.repairs().stream().map(Repair::name).toList(), "repair");
		for (State state : base.states()) {
			once(state.values().stream().map(NamedValue::name).toList(), "value of state " + state.name());
		}
		for (Family family : base.families()) {
			once(family.traits().stream().map(Trait::name).toList(), "trait of family " + family.name());
		}
	}

	private void family(Family family) throws Missing {
		user = "family " + family.name();
		need("family", family.parent(), base::family);
	}

	private void module(Module module) throws Missing {
		user = "module " + module.name();
		need("family", module.families(), base::family);
		settings(module.answersIn());
	}

	private void code(Code code) throws Missing {
		user = "code " + code.name();
		need("module", Optional.of(code.module()), base::module);
	}

	private void part(Part part) throws Missing {
		user = "part " + part.name();
		need("hazard", part.hazards(), base::hazard);
	}

	private void exclusive(Exclusive exclusive) throws Missing {
		user = "exclusive";
		need("fault", exclusive.faults(), base::fault);
	}

	private void law(Law law) throws Missing {
		user = "law \"" + law.title() + "\"";
		need("family", law.families(), base::family);
		condition(law.when());
		condition(law.then());
	}

	private void review(Review review) throws Missing {
		user = "review of " + review.rule();
		need("rule", Optional.of(review.rule()), base::rule);
	}

	private void test(Test test) throws Missing {
		user = "test " + test.name();
		need("part", test.part(), base::part);
		need("tool", test.tools(), base::tool);
		need("hazard", test.cautions(), base::hazard);
		settings(test.states());
		for (String finding : test.disturbs()) {
			if (base.sign(finding).isEmpty() && base.test(finding).isEmpty() && base.code(finding).isEmpty()
					&& base.module(finding).isEmpty()) {
				throw missing("finding", finding);
			}
		}
	}

	private void rule(Rule rule) throws Missing {
		user = "rule " + rule.name();
		need("family", rule.scope().families(), base::family);
		need("family", rule.scope().except(), base::family);
		if (rule.scope().where().isPresent()) {
			condition(rule.scope().where().get());
		}
		for (Condition given : rule.given()) {
			condition(given);
		}
		settings(rule.states());
		need("test", rule.test(), base::test);
		for (Outcome outcome : rule.outcomes()) {
			for (Conclusion conclusion : outcome.conclusions()) {
				if (conclusion instanceof Conclusion.OnFault on) {
					need("fault", Optional.of(on.fault()), base::fault);
				}
			}
		}
	}

	private void condition(Condition condition) throws Missing {
		if (condition instanceof Condition.And and) {
			conditions(and.parts());
		} else if (condition instanceof Condition.Or or) {
			conditions(or.parts());
		} else if (condition instanceof Condition.Not not) {
			condition(not.part());
		} else if (condition instanceof Condition.TraitIs is) {
			trait(is.trait());
		} else if (condition instanceof Condition.SignIs is) {
			need("sign", Optional.of(is.sign()), base::sign);
		} else if (condition instanceof Condition.TestIs is) {
			need("test", Optional.of(is.test()), base::test);
		} else if (condition instanceof Condition.CodeIs is) {
			need("code", Optional.of(is.code()), base::code);
		} else if (condition instanceof Condition.ModuleIs is) {
			need("module", Optional.of(is.module()), base::module);
		} else if (condition instanceof Condition.VerdictIs is) {
			need("fault", Optional.of(is.fault()), base::fault);
		} else {
			need("sign", Optional.of(((Condition.Unexplained) condition).sign()), base::sign);
		}
	}

	private void conditions(Collection<Condition> parts) throws Missing {
		for (Condition part : parts) {
			condition(part);
		}
	}

	private void trait(String name) throws Missing {
		if (base.families().stream().noneMatch(family -> base.traitsOf(family.name()).containsKey(name))) {
			throw missing("trait", name);
		}
	}

	private void repair(Repair repair) throws Missing {
		user = "repair " + repair.name();
		need("fault", repair.fixes(), base::fault);
		need("hazard", repair.cautions(), base::hazard);
		need("tool", repair.tools(), base::tool);
		for (VerifyStep step : repair.verify()) {
			if (step instanceof VerifyStep.Clear clear) {
				need("module", Optional.of(clear.module()), base::module);
			} else if (step instanceof VerifyStep.Cycle cycle) {
				need("state", Optional.of(cycle.state()), base::state);
			} else if (step instanceof VerifyStep.Put put) {
				setting(put.setting());
			} else if (step instanceof VerifyStep.Read read) {
				need("module", Optional.of(read.module()), base::module);
			} else if (step instanceof VerifyStep.Expect expect) {
				need("code", Optional.of(expect.code()), base::code);
			} else if (step instanceof VerifyStep.Repeat repeat) {
				need("test", Optional.of(repeat.test()), base::test);
			}
		}
	}

	private void job(Case job) throws Missing {
		user = "job \"" + job.name() + "\"";
		need("family", Optional.of(job.family()), base::family);
		need("fault", job.causes(), base::fault);
		for (Reading trait : job.traits()) {
			trait(trait.subject());
		}
		for (Reading found : job.found()) {
			if (found instanceof Reading.SignSeen seen) {
				need("sign", Optional.of(seen.subject()), base::sign);
			} else if (found instanceof Reading.CodeRead read) {
				need("code", Optional.of(read.subject()), base::code);
			} else if (found instanceof Reading.ModuleAsked asked) {
				need("module", Optional.of(asked.subject()), base::module);
			} else {
				need("test", Optional.of(found.subject()), base::test);
			}
		}
	}

	private void settings(Collection<StateSetting> settings) throws Missing {
		for (StateSetting setting : settings) {
			setting(setting);
		}
	}

	private void setting(StateSetting setting) throws Missing {
		need("state", Optional.of(setting.state()), base::state);
		if (new Domain.Names(base.state(setting.state()).orElseThrow().values()).indexOf(setting.value()) < 0) {
			throw missing("value of state " + setting.state(), setting.value());
		}
	}

	private void need(String kind, Optional<String> name, Function<String, Optional<?>> lookUp) throws Missing {
		if (name.isPresent() && lookUp.apply(name.get()).isEmpty()) {
			throw missing(kind, name.get());
		}
	}

	private void need(String kind, Collection<String> names, Function<String, Optional<?>> lookUp) throws Missing {
		for (String name : names) {
			need(kind, Optional.of(name), lookUp);
		}
	}

	private static void once(Collection<String> names, String what) throws Missing {
		Set<String> seen = new HashSet<>();
		for (String name : names) {
			if (!seen.add(name)) {
				throw new Missing("The rules define " + what + " " + name + " twice.");
			}
		}
	}

	private Missing missing(String kind, String name) {
		return new Missing(user + " speaks of " + kind + " " + name + ", which the rules do not define.");
	}
}
