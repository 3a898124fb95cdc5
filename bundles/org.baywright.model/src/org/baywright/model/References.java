package org.baywright.model;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Follows the names by which the elements of a rule base speak of each other. Acceptances name findings, which come and
 * go, and what was left out may name anything; neither is followed.
 */
public final class References {

	private static final ValueSet ANY = new ValueSet.Choices(List.of());

	private final RuleBase base;
	private String user = "";

	private References(RuleBase base) {
		this.base = base;
	}

	/** A name that leads nowhere or to what cannot be meant, or one that is declared twice. The message is a plain sentence. */
	public static final class Missing extends IllegalArgumentException {

		private static final long serialVersionUID = 1L;

		Missing(String message) {
			super(message);
		}
	}

	/**
	 * Follows all names.
	 *
	 * @throws Missing if a name leads nowhere; it says which one and who uses it
	 */
	static void check(RuleBase base) {
		References references = new References(base);
		base.families().forEach(references::family);
		base.workshops().forEach(references::workshop);
		base.modules().forEach(references::module);
		base.codes().forEach(references::code);
		base.parts().forEach(references::part);
		base.exclusives().forEach(references::exclusive);
		base.signs().forEach(references::sign);
		base.tests().forEach(references::test);
		base.laws().forEach(references::law);
		base.chains().forEach(references::chain);
		base.rules().forEach(references::rule);
		base.repairs().forEach(references::repair);
		base.cases().forEach(references::job);
		base.signOffs().forEach(references::signOff);
		base.reviews().forEach(references::review);
		base.remarks().forEach(references::remark);
	}

	/**
	 * Returns the rule base without the elements that speak of something that is not declared in it, and without those
	 * that speak of them. Of rules and laws that go it keeps what is known.
	 *
	 * @param base a rule base that was not checked
	 * @param dropped hears of each element that goes, as {@code kind name}
	 */
	static RuleBase whole(RuleBase base, Consumer<String> dropped) {
		RuleBase now = base;
		while (true) {
			References references = new References(now);
			List<String> gone = new ArrayList<>();
			RuleBase.Builder kept = new RuleBase.Builder(now.name());
			kept.states.addAll(now.states());
			kept.tools.addAll(now.tools());
			kept.hazards.addAll(now.hazards());
			kept.reviewers.addAll(now.reviewers());
			kept.acceptances.addAll(now.acceptances());
			kept.leftOut.addAll(now.leftOut());
			kept.builtOn.addAll(now.builtOn());
			references.keep(now.families(), kept.families, references::family, gone);
			references.keep(now.workshops(), kept.workshops, references::workshop, gone);
			references.keep(now.modules(), kept.modules, references::module, gone);
			references.keep(now.codes(), kept.codes, references::code, gone);
			references.keep(now.parts(), kept.parts, references::part, gone);
			references.keep(now.exclusives(), kept.exclusives, references::exclusive, gone);
			references.keep(now.signs(), kept.signs, references::sign, gone);
			references.keep(now.tests(), kept.tests, references::test, gone);
			references.keep(now.laws(), kept.laws, references::law, gone).map(LeftOut::of).forEach(kept.leftOut::add);
			references.keep(now.chains(), kept.chains, references::chain, gone);
			references.keep(now.rules(), kept.rules, references::rule, gone).map(LeftOut::of).forEach(kept.leftOut::add);
			references.keep(now.repairs(), kept.repairs, references::repair, gone);
			references.keep(now.cases(), kept.cases, references::job, gone);
			references.keep(now.signOffs(), kept.signOffs, references::signOff, gone);
			references.keep(now.reviews(), kept.reviews, references::review, gone);
			references.keep(now.remarks(), kept.remarks, references::remark, gone);
			if (gone.isEmpty()) {
				return now;
			}
			gone.forEach(dropped);
			now = kept.unchecked();
		}
	}

	/** Returns the elements that go. */
	private <T> Stream<T> keep(Collection<T> elements, Collection<T> kept, Consumer<T> look, List<String> gone) {
		Stream.Builder<T> going = Stream.builder();
		for (T element : elements) {
			try {
				look.accept(element);
				kept.add(element);
			} catch (Missing e) {
				gone.add(user);
				going.add(element);
			}
		}
		return going.build();
	}

	/**
	 * Looks whether each name is declared once, as whoever looks elements up by name needs it.
	 *
	 * @throws Missing if a name is declared twice
	 */
	public static void unique(RuleBase base) {
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
		once(base.chains().stream().map(Chain::name).toList(), "chain");
		once(base.repairs().stream().map(Repair::name).toList(), "repair");
		for (State state : base.states()) {
			once(state.values().stream().map(NamedValue::name).toList(), "value of state " + state.name());
		}
		for (Family family : base.families()) {
			once(family.traits().stream().map(Trait::name).toList(), "trait of family " + family.name());
		}
	}

	private void family(Family family) {
		user = "family " + family.name();
		need("family", family.parent(), base::family);
		need("family", family.systems(), base::family);
		for (Cycle cycle : family.cycles()) {
			need("state", Optional.of(cycle.state()), base::state);
			for (String value : cycle.values()) {
				setting(new StateSetting(cycle.state(), value));
			}
		}
	}

	private void workshop(Workshop workshop) {
		user = "workshop";
		need("tool", workshop.lacks(), base::tool);
		workshop.each().ifPresent(scan -> need("tool", scan.tools(), base::tool));
		workshop.all().ifPresent(scan -> need("tool", scan.tools(), base::tool));
	}

	private void module(Module module) {
		user = "module " + module.name();
		need("family", module.families(), base::family);
		need("tool", module.tools(), base::tool);
		settings(module.answersIn());
	}

	private void code(Code code) {
		user = "code " + code.name();
		need("module", Optional.of(code.module()), base::module);
		settings(code.runsIn());
	}

	private void part(Part part) {
		user = "part " + part.name();
		need("hazard", part.hazards(), base::hazard);
		need("part", part.faults().stream().map(Fault::part).toList(), base::part);
	}

	private void exclusive(Exclusive exclusive) {
		user = "exclusive";
		need("fault", exclusive.faults(), base::fault);
	}

	private void law(Law law) {
		user = "law \"" + law.title() + "\"";
		need("family", law.families(), base::family);
		condition(law.when());
		condition(law.then());
	}

	private void review(Review review) {
		user = "review of " + review.rule();
		need("rule", Optional.of(review.rule()), base::meaning);
	}

	private void remark(Remark remark) {
		user = remark.rule().map(rule -> "remark on " + rule).orElse("remark on a change");
		need("rule", remark.rule(), base::meaning);
	}

	private void signOff(SignOff signOff) {
		user = "sign-off";
		need("hazard", signOff.hazards().stream().map(SignOff.OfHazard::hazard).toList(), base::hazard);
	}

	private void scope(Scope scope) {
		need("family", scope.families(), base::family);
		need("family", scope.except(), base::family);
		scope.where().ifPresent(this::condition);
	}

	/** Which vehicles something is for cannot depend on what is found on them. */
	private void onTraits(Scope scope) {
		scope.where().ifPresent(where -> where.eachAtom(atom -> {
			if (!(atom instanceof Condition.TraitIs)) {
				throw missing("trait", atom.about());
			}
		}));
	}

	private void sign(Sign sign) {
		user = "sign " + sign.name();
		scope(sign.scope());
		onTraits(sign.scope());
	}

	private void test(Test test) {
		user = "test " + test.name();
		scope(test.scope());
		onTraits(test.scope());
		need("test", test.seenWith(), base::test);
		if (base.doneBy(test).seenWith().isPresent()) {
			throw new Missing(user + " is seen with test " + test.seenWith().get() + ", which is itself seen with another one.");
		}
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

	private void rule(Rule rule) {
		user = "rule " + rule.name();
		scope(rule.scope());
		rule.given().forEach(this::condition);
		settings(rule.states());
		need("test", rule.test(), base::test);
		for (Outcome outcome : rule.outcomes()) {
			rule.test().ifPresent(test -> results(test, outcome.values().orElse(ANY)));
			for (Conclusion conclusion : outcome.conclusions()) {
				if (conclusion instanceof Conclusion.OnFault on) {
					need("fault", Optional.of(on.fault()), base::fault);
				}
			}
		}
	}

	/** What its points say is looked for in the rules that follow. */
	private void chain(Chain chain) {
		user = "chain " + chain.name();
		chain.rules().forEach(rule -> need("rule", Optional.of(rule.name()), base::rule));
	}

	private void condition(Condition condition) {
		condition.eachAtom(atom -> atom.visit(
				(Condition.TraitIs is) -> trait(is.trait(), is.values()),
				(Condition.SignIs is) -> need("sign", Optional.of(is.sign()), base::sign),
				(Condition.TestIs is) -> results(is.test(), is.values()),
				(Condition.CodeIs is) -> need("code", Optional.of(is.code()), base::code),
				(Condition.ModuleIs is) -> need("module", Optional.of(is.module()), base::module),
				(Condition.VerdictIs is) -> need("fault", Optional.of(is.fault()), base::fault),
				(Condition.Unexplained is) -> need("sign", Optional.of(is.sign()), base::sign)));
	}

	/** A value may be one that only some families know; in the others the condition is false. */
	private void trait(String name, ValueSet values) {
		List<Domain> domains = base.families().stream().map(family -> base.traitsOf(family.name()).get(name))
				.filter(Objects::nonNull).map(Trait::domain).toList();
		if (domains.isEmpty()) {
			throw missing("trait", name);
		}
		values("trait", name, values, domains);
	}

	private void results(String test, ValueSet values) {
		need("test", Optional.of(test), base::test);
		values("test", test, values, List.of(base.test(test).orElseThrow().domain()));
	}

	private void values(String kind, String name, ValueSet values, List<Domain> domains) {
		named(values).filter(value -> domains.stream().noneMatch(domain -> has(domain, value))).findFirst().ifPresent(value -> {
			throw missing("value of " + kind + " " + name, value);
		});
	}

	private static boolean has(Domain domain, String value) {
		return domain.indexOf(value) >= 0;
	}

	/** Returns the values that are given by name. */
	private static Stream<String> named(ValueSet values) {
		if (values instanceof ValueSet.Choices choices) {
			return choices.names().stream();
		} else if (values instanceof ValueSet.Union union) {
			return union.parts().stream().flatMap(References::named);
		}
		return values instanceof ValueSet.Except except ? named(except.part()) : Stream.empty();
	}

	private void repair(Repair repair) {
		user = "repair " + repair.name();
		scope(repair.scope());
		onTraits(repair.scope());
		need("fault", repair.fixes(), base::fault);
		need("hazard", repair.cautions(), base::hazard);
		need("tool", repair.tools(), base::tool);
		for (VerifyStep step : repair.verify()) {
			step.visit(
					(VerifyStep.Clear clear) -> need("module", Optional.of(clear.module()), base::module),
					(VerifyStep.Cycle cycle) -> need("state", Optional.of(cycle.state()), base::state),
					(VerifyStep.Put put) -> setting(put.setting()),
					(VerifyStep.Read read) -> need("module", Optional.of(read.module()), base::module),
					(VerifyStep.Expect expect) -> need("code", Optional.of(expect.code()), base::code),
					(VerifyStep.ExpectSign expect) -> need("sign", Optional.of(expect.sign()), base::sign),
					(VerifyStep.Prepare prepare) -> { },
					(VerifyStep.Repeat repeat) -> results(repeat.test(), repeat.values().orElse(ANY)),
					(VerifyStep.RepeatWhatConfirmed repeat) -> { });
		}
	}

	private void job(Case job) {
		user = "job \"" + job.name() + "\"";
		need("family", Optional.of(job.family()), base::family);
		need("fault", job.causes(), base::fault);
		for (Reading trait : job.traits()) {
			trait(trait.subject(), said(trait));
		}
		List<Reading> all = new ArrayList<>(job.found());
		all.addAll(job.record().afterwards());
		for (Reading found : all) {
			if (found instanceof Reading.SignSeen seen) {
				need("sign", Optional.of(seen.subject()), base::sign);
			} else if (found instanceof Reading.CodeRead read) {
				need("code", Optional.of(read.subject()), base::code);
			} else if (found instanceof Reading.ModuleAsked asked) {
				need("module", Optional.of(asked.subject()), base::module);
			} else {
				results(found.subject(), said(found));
			}
		}
	}

	private static ValueSet said(Reading reading) {
		return reading instanceof Reading.Named named ? new ValueSet.Choices(List.of(named.value())) : ANY;
	}

	private void settings(Collection<StateSetting> settings) {
		settings.forEach(this::setting);
	}

	private void setting(StateSetting setting) {
		need("state", Optional.of(setting.state()), base::state);
		values("state", setting.state(), new ValueSet.Choices(List.of(setting.value())),
				List.of(new Domain.Names(base.state(setting.state()).orElseThrow().values())));
	}

	private void need(String kind, Optional<String> name, Function<String, Optional<?>> lookUp) {
		if (name.isPresent() && lookUp.apply(name.get()).isEmpty()) {
			throw missing(kind, name.get());
		}
	}

	private void need(String kind, Collection<String> names, Function<String, Optional<?>> lookUp) {
		names.forEach(name -> need(kind, Optional.of(name), lookUp));
	}

	private static void once(Collection<String> names, String what) {
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
