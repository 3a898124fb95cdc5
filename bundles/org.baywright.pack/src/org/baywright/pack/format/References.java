package org.baywright.pack.format;

import java.util.Collection;
import java.util.Optional;
import java.util.function.Function;

import org.baywright.model.Case;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Outcome;
import org.baywright.model.Reading;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.StateSetting;
import org.baywright.model.Test;
import org.baywright.model.VerifyStep;
import org.baywright.pack.PackException;

/** Makes sure that every name a rule base uses is also declared in it, so that no user of it has to fear a hole. */
public final class References {

	private final RuleBase base;
	private String user = "";

	private References(RuleBase base) {
		this.base = base;
	}

	/**
	 * Follows all names.
	 *
	 * @throws PackException if a name leads nowhere; it says which one and who uses it
	 */
	public static void check(RuleBase base) throws PackException {
		new References(base).all();
	}

	private void all() throws PackException {
		for (Family family : base.families()) {
			user = "family " + family.name();
			need("family", family.parent(), base::family);
		}
		for (var module : base.modules()) {
			user = "module " + module.name();
			need("family", module.families(), base::family);
			settings(module.answersIn());
		}
		for (var code : base.codes()) {
			user = "code " + code.name();
			need("module", Optional.of(code.module()), base::module);
		}
		for (var part : base.parts()) {
			user = "part " + part.name();
			need("hazard", part.hazards(), base::hazard);
		}
		for (var exclusive : base.exclusives()) {
			user = "exclusive";
			need("fault", exclusive.faults(), base::fault);
		}
		for (Test test : base.tests()) {
			user = "test " + test.name();
			test(test);
		}
		for (var law : base.laws()) {
			user = "law \"" + law.title() + "\"";
			need("family", law.families(), base::family);
			condition(law.when());
			condition(law.then());
		}
		for (Rule rule : base.rules()) {
			user = "rule " + rule.name();
			rule(rule);
		}
		for (Repair repair : base.repairs()) {
			user = "repair " + repair.name();
			repair(repair);
		}
		for (Case job : base.cases()) {
			user = "case \"" + job.name() + "\"";
			job(job);
		}
		for (var review : base.reviews()) {
			user = "review by " + review.reviewer();
			need("rule", Optional.of(review.rule()), base::rule);
		}
	}

	private void test(Test test) throws PackException {
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

	private void rule(Rule rule) throws PackException {
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

	private void condition(Condition condition) throws PackException {
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

	private void conditions(Collection<Condition> parts) throws PackException {
		for (Condition part : parts) {
			condition(part);
		}
	}

	private void trait(String name) throws PackException {
		if (base.families().stream().noneMatch(family -> base.traitsOf(family.name()).containsKey(name))) {
			throw missing("trait", name);
		}
	}

	private void repair(Repair repair) throws PackException {
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

	private void job(Case job) throws PackException {
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

	private void settings(Collection<StateSetting> settings) throws PackException {
		for (StateSetting setting : settings) {
			setting(setting);
		}
	}

	private void setting(StateSetting setting) throws PackException {
		need("state", Optional.of(setting.state()), base::state);
		if (new Domain.Names(base.state(setting.state()).orElseThrow().values()).indexOf(setting.value()) < 0) {
			throw missing("value of state " + setting.state(), setting.value());
		}
	}

	private void need(String kind, Optional<String> name, Function<String, Optional<?>> lookUp) throws PackException {
		if (name.isPresent() && lookUp.apply(name.get()).isEmpty()) {
			throw missing(kind, name.get());
		}
	}

	private void need(String kind, Collection<String> names, Function<String, Optional<?>> lookUp) throws PackException {
		for (String name : names) {
			need(kind, Optional.of(name), lookUp);
		}
	}

	private PackException missing(String kind, String name) {
		return new PackException(user + " speaks of " + kind + " " + name + ", which the rules do not declare.");
	}
}
