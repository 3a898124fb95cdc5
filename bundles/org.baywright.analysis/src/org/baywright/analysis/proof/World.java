package org.baywright.analysis.proof;

import java.util.List;
import java.util.function.BiPredicate;

import org.baywright.analysis.Variable;
import org.baywright.model.Meaning;
import org.baywright.model.Module;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;
import org.baywright.model.Test;

/** What rules speak of, apart from where and under which title it is declared. */
final class World {

	private World() {
	}

	/** Returns whether rules mean the same in both: findings have the same values, modules answer in the same states. */
	static boolean isSame(RuleBase a, RuleBase b) {
		return same(a.tests(), b.tests(), (x, y) -> x.name().equals(y.name()) && text(a, x).equals(text(b, y)))
				&& same(a.signs(), b.signs(), (x, y) -> x.name().equals(y.name()) && text(x).equals(text(y)))
				&& same(a.modules(), b.modules(), (x, y) -> x.name().equals(y.name()) && text(x).equals(text(y)))
				&& same(a.codes(), b.codes(), (x, y) -> x.name().equals(y.name()) && x.module().equals(y.module())
						&& a.asksForState(x.name()) == b.asksForState(y.name()))
				&& same(a.families(), b.families(), (x, y) -> x.name().equals(y.name()) && x.parent().equals(y.parent())
						&& x.systems().equals(y.systems()));
	}

	private static <T> boolean same(List<T> a, List<T> b, BiPredicate<T, T> alike) {
		if (a.size() != b.size()) {
			return false;
		}
		for (int i = 0; i < a.size(); i++) {
			if (a.get(i) != b.get(i) && !alike.test(a.get(i), b.get(i))) {
				return false;
			}
		}
		return true;
	}

	private static String text(RuleBase base, Test test) {
		return Meaning.text(test.domain()) + base.doneBy(test).states() + Meaning.text(base.scopeOf(test));
	}

	private static String text(Sign sign) {
		return sign.intermittent() + Meaning.text(sign.scope());
	}

	private static String text(Module module) {
		return module.families() + "" + module.answersIn();
	}

	/** Returns the variable with everything that rules can mean by it. */
	static String describe(RuleBase base, Variable finding) {
		String name = finding.name();
		String text = switch (finding.kind()) {
		case TEST -> base.test(name).map(test -> text(base, test)).orElse("");
		case SIGN -> base.sign(name).map(World::text).orElse("");
		case MODULE -> base.module(name).map(World::text).orElse("");
		case CODE -> base.code(name).map(
				code -> code.module() + (base.asksForState(name) ? " with states" : "") + base.module(code.module()).map(World::text).orElse("")).orElse("");
		default -> "";
		};
		return finding + text;
	}
}
