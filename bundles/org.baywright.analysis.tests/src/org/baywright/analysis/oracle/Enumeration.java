package org.baywright.analysis.oracle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Law;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;

/**
 * Lists every situation of a small rule base and derives every verdict in it, straight from the definitions. Verdicts
 * come from the alternating fixpoint (Van Gelder 1989), which for stratified rules is their one stable model and is
 * computed in quite another way than the product does.
 */
final class Enumeration {

	static final int OPEN = -1;

	/** Everything known of one vehicle: value numbers by "kind name"; open findings are absent. */
	record Sit(String family, Map<String, Integer> known) {
		long findings() {
			return known.entrySet().stream().filter(entry -> !entry.getKey().startsWith("trait "))
					.filter(entry -> !entry.getKey().startsWith("code ") || entry.getValue() != 2).count();
		}
	}

	private final RuleBase base;
	private final Map<String, Set<String>> answering = new HashMap<>();
	private final Map<String, Set<String>> related = new HashMap<>();
	/** For which vehicles signs and tests are that are not for all. */
	private final Map<String, Scope> limited = new HashMap<>();
	/** What each law names; the text of a law is long. */
	private final Map<Law, Set<String>> named = new IdentityHashMap<>();

	Enumeration(RuleBase base) {
		this.base = base;
		base.signs().stream().filter(sign -> !sign.scope().isEvery()).forEach(sign -> limited.put(sign.name(), sign.scope()));
		base.tests().stream().filter(test -> !test.scope().isEvery()).forEach(test -> limited.put(test.name(), test.scope()));
	}

	/** Returns the rules of a base that reach a family. */
	static List<Rule> rulesOf(RuleBase base, String family) {
		return base.rules().stream().filter(rule -> base.reach(rule.scope()).contains(family)).toList();
	}

	/** Returns what can vary in a family: variable to number of values. */
	Map<String, Integer> variables(String family) {
		Map<String, Integer> all = new LinkedHashMap<>();
		base.traitsOf(family).values().forEach(trait -> all.put("trait " + trait.name(), trait.domain().size()));
		base.signs().stream().filter(sign -> isFor(sign.scope(), family)).forEach(sign -> all.put("sign " + sign.name(), 2));
		base.tests().stream().filter(test -> isFor(test.scope(), family)).forEach(test -> all.put("test " + test.name(), test.domain().size()));
		base.modules().stream().filter(module -> base.reaches(module.families(), family))
				.forEach(module -> all.put("module " + module.name(), 2));
		codes(family).forEach(code -> all.put("code " + code.name(), base.asksForState(code.name()) ? 7 : 3));
		return all;
	}

	/** Whether a sign or a test is for some vehicle of a family: itself, or one that it is like or has, is named. */
	private boolean isFor(Scope scope, String family) {
		List<String> line = base.lineage(family);
		return (scope.families().isEmpty() || line.stream().anyMatch(scope.families()::contains)) && line.stream().noneMatch(scope.except()::contains);
	}

	/** Whether a sign or a test makes sense on the very vehicle. */
	boolean isForVehicle(String finding, Sit sit) {
		Scope scope = limited.get(finding);
		return scope == null || isFor(scope, sit.family()) && scope.where().map(where -> truth(where, sit, Set.of(), Set.of()) == 1).orElse(true);
	}

	private List<Code> codes(String family) {
		return base.codes().stream()
				.filter(code -> base.reaches(base.module(code.module()).orElseThrow().families(), family)).toList();
	}

	/**
	 * Returns the variables that have to do with a sign: that stand in a rule, a law or a code with it, or with something
	 * that has to do with it.
	 */
	Set<String> connected(String family, String sign) {
		return connected(family, Set.of("sign " + sign));
	}

	/** Returns what has to do with a rule. */
	Set<String> connected(String family, Rule rule) {
		return related.computeIfAbsent(family + "/" + rule.name(), key -> {
			Set<String> own = names(rule);
			return connected(family, own);
		});
	}

	private static Set<String> names(Rule rule) {
		String given = rule.given().toString();
		Set<String> names = names(given + " " + rule.outcomes());
		rule.test().ifPresent(test -> names.add("test " + test));
		boolean asks = names(given.replace("fault=", "")).isEmpty() && rule.test().isEmpty()
				&& !given.contains("stands=true");
		if (asks) {
			names.add("nothing"); // rules that ask for nothing have that in common
		}
		return names;
	}

	private Set<String> connected(String family, Set<String> from) {
		List<Set<String>> groups = new ArrayList<>();
		base.codes().forEach(code -> groups.add(Set.of("code " + code.name(), "module " + code.module())));
		base.exclusives().forEach(group -> groups.add(new HashSet<>(group.faults())));
		base.laws().forEach(law -> groups.add(names(law.when() + " " + law.then())));
		for (Rule rule : base.rules()) {
			if (base.reach(rule.scope()).contains(family)) {
				groups.add(names(rule));
			}
		}
		Set<String> connected = new HashSet<>(from);
		int before = 0;
		while (before != connected.size()) {
			before = connected.size();
			groups.stream().filter(group -> group.stream().anyMatch(connected::contains)).forEach(connected::addAll);
		}
		return connected;
	}

	private static Set<String> names(String text) {
		Set<String> names = new HashSet<>();
		java.util.regex.Matcher matcher = java.util.regex.Pattern
				.compile("(sign|test|code|module|fault)=([A-Za-z0-9.]+)").matcher(text);
		while (matcher.find()) {
			names.add(matcher.group(1).equals("fault") ? matcher.group(2) : matcher.group(1) + " " + matcher.group(2));
		}
		return names;
	}

	/**
	 * What a reading says of a condition: unread is neither present nor absent, and in which state a present code is that
	 * nobody looked closer at is not known.
	 */
	private static int read(CodeReading asked, CodeReading found) {
		boolean held = found == CodeReading.PRESENT || CodeReading.OF_PRESENT.contains(found);
		if (asked == CodeReading.MISSING) {
			return held ? 0 : 1;
		} else if (found == CodeReading.UNREAD) {
			return asked == CodeReading.UNREAD ? 1 : OPEN;
		} else if (found == CodeReading.PRESENT && CodeReading.OF_PRESENT.contains(asked)) {
			return OPEN;
		}
		return asked == found || asked == CodeReading.PRESENT && held ? 1 : 0;
	}

	/** Returns all complete situations that the laws allow. */
	List<Sit> complete(String family) {
		List<Sit> found = new ArrayList<>();
		fill(family, new ArrayList<>(variables(family).entrySet()), 0, new HashMap<>(), found);
		found.removeIf(sit -> !isLawful(sit));
		return found;
	}

	private void fill(String family, List<Map.Entry<String, Integer>> variables, int at, Map<String, Integer> values,
			List<Sit> found) {
		if (at == variables.size()) {
			found.add(new Sit(family, new HashMap<>(values)));
			return;
		}
		for (int value = 0; value < variables.get(at).getValue(); value++) {
			values.put(variables.get(at).getKey(), value);
			fill(family, variables, at + 1, values, found);
		}
	}

	private boolean isLawful(Sit sit) {
		for (Code code : codes(sit.family())) {
			boolean silent = sit.known().get("module " + code.module()) == 1;
			int value = sit.known().get("code " + code.name());
			if (silent != (value == 2) || value == 0 && base.asksForState(code.name())) {
				return false; // "present" is then only what somebody says who has not looked closer
			}
		}
		for (Law law : base.laws()) {
			if (base.reaches(law.families(), sit.family()) && isOfWhatIsFitted(law, sit) && truth(law.when(), sit, Set.of(), Set.of()) == 1
					&& truth(law.then(), sit, Set.of(), Set.of()) != 1) {
				return false;
			}
		}
		return true;
	}

	/** A law that names a module the family lacks does not bind it. */
	private boolean isOfWhatIsFitted(Law law, Sit sit) {
		return named.computeIfAbsent(law, one -> names(one.when() + " " + one.then())).stream().filter(name -> !name.contains(".")).allMatch(name -> name.startsWith("code ") || name.startsWith("module ")
				? sit.known().containsKey(name) : isForVehicle(name.substring(name.indexOf(' ') + 1), sit));
	}

	/** Returns all situations, complete or not, that some lawful vehicle shows. */
	Set<Sit> all(String family) {
		Set<Sit> found = new HashSet<>();
		for (Sit sit : complete(family)) {
			open(sit, new ArrayList<>(sit.known().keySet().stream().filter(key -> !key.startsWith("trait ")).sorted()
					.toList()), 0, new HashMap<>(sit.known()), found);
		}
		return found;
	}

	private void open(Sit from, List<String> keys, int at, Map<String, Integer> values, Set<Sit> found) {
		if (at == keys.size()) {
			if (isReadable(values)) {
				found.add(new Sit(from.family(), new HashMap<>(values)));
			}
			return;
		}
		open(from, keys, at + 1, values, found);
		Integer value = values.remove(keys.get(at));
		open(from, keys, at + 1, values, found);
		values.put(keys.get(at), value);
	}

	/** Who knows a code has asked its module; who found the module silent knows that its codes are unread. */
	private boolean isReadable(Map<String, Integer> values) {
		for (Code code : base.codes()) {
			Integer module = values.get("module " + code.module());
			boolean codeKnown = values.containsKey("code " + code.name());
			if (codeKnown && module == null || !codeKnown && module != null && module == 1) {
				return false;
			}
		}
		return true;
	}

	/** What fires and what it derives. */
	record Result(Set<String> verdicts, Set<String> fired) {
	}

	/** Derives, leaving out one rule ({@code null} for none). */
	Result derive(Sit sit, String without) {
		Set<String> certain = new HashSet<>();
		Set<String> possible = new HashSet<>();
		while (true) {
			Set<String> nextPossible = closure(sit, certain, without);
			Set<String> nextCertain = closure(sit, nextPossible, without);
			if (nextCertain.equals(certain) && nextPossible.equals(possible)) {
				break;
			}
			certain = nextCertain;
			possible = nextPossible;
		}
		Set<String> fired = new TreeSet<>();
		for (Rule rule : base.rules()) {
			for (int i = 0; i < rule.outcomes().size(); i++) {
				if (!rule.name().equals(without) && fires(rule, i, sit, certain, certain)) {
					fired.add(rule.name() + "/" + i);
				}
			}
		}
		return new Result(certain, fired);
	}

	/** Returns whether a condition holds with what is known and what was derived from it. */
	boolean holds(Condition condition, Sit sit, Set<String> verdicts) {
		return truth(condition, sit, verdicts, verdicts) == 1;
	}

	/** Least fixpoint in which what must be absent is judged by a fixed set. */
	private Set<String> closure(Sit sit, Set<String> judged, String without) {
		Set<String> derived = new HashSet<>();
		boolean changed = true;
		while (changed) {
			changed = false;
			for (Rule rule : base.rules()) {
				for (int i = 0; i < rule.outcomes().size(); i++) {
					if (!rule.name().equals(without) && fires(rule, i, sit, derived, judged)) {
						changed |= derived.addAll(says(rule, i));
					}
				}
			}
		}
		return derived;
	}

	static Set<String> says(Rule rule, int outcome) {
		Set<String> said = new TreeSet<>();
		for (Conclusion conclusion : rule.outcomes().get(outcome).conclusions()) {
			if (conclusion instanceof Conclusion.OnFault on) {
				said.add(on.verdict() + " " + on.fault());
			} else if (conclusion instanceof Conclusion.Refers refers) {
				said.add("REFERS " + refers.toWhom());
			}
		}
		return said;
	}

	private boolean fires(Rule rule, int outcome, Sit sit, Set<String> present, Set<String> absent) {
		if (!base.reach(rule.scope()).contains(sit.family())) {
			return false;
		}
		if (rule.scope().where().isPresent() && truth(rule.scope().where().get(), sit, present, absent) != 1) {
			return false;
		}
		for (Condition given : rule.given()) {
			if (truth(given, sit, present, absent) != 1) {
				return false;
			}
		}
		Outcome branch = rule.outcomes().get(outcome);
		if (rule.test().isEmpty()) {
			return true;
		}
		Domain domain = base.test(rule.test().get()).orElseThrow().domain();
		Integer value = sit.known().get("test " + rule.test().get());
		return value != null && isForVehicle(rule.test().get(), sit) && branch.values().orElseThrow().in(domain).contains(value);
	}

	/** Returns 1 for known and true, 0 for known and false, -1 for open: Kleene's logic, verdicts being two-valued. */
	private int truth(Condition condition, Sit sit, Set<String> present, Set<String> absent) {
		return condition.match(
				(Condition.And and) -> and.parts().stream().mapToInt(part -> truth(part, sit, present, absent))
						.map(value -> value == OPEN ? 1 : value == 1 ? 2 : 0).min().orElse(2) == 2 ? 1
								: and.parts().stream().anyMatch(part -> truth(part, sit, present, absent) == 0) ? 0 : OPEN,
				(Condition.Or or) -> {
					if (or.parts().stream().anyMatch(part -> truth(part, sit, present, absent) == 1)) {
						return 1;
					}
					return or.parts().stream().allMatch(part -> truth(part, sit, present, absent) == 0) ? 0 : OPEN;
				},
				(Condition.Not not) -> {
					int value = truth(not.part(), sit, absent, present); // what was waited for now must not be
					return value == OPEN ? OPEN : 1 - value;
				},
				(Condition.Atom atom) -> truth(atom, sit, present, absent));
	}

	private int truth(Condition.Atom atom, Sit sit, Set<String> present, Set<String> absent) {
		return atom.match(
				(Condition.TraitIs is) -> {
					if (!base.traitsOf(sit.family()).containsKey(is.trait())) {
						return 0;
					}
					Domain domain = base.traitsOf(sit.family()).get(is.trait()).domain();
					return seen(sit, "trait " + is.trait(), value -> is.values().in(domain).contains(value));
				},
				(Condition.SignIs is) -> !isForVehicle(is.sign(), sit) ? OPEN
						: seen(sit, "sign " + is.sign(), value -> (value == 0) == is.present()),
				(Condition.TestIs is) -> {
					Domain domain = base.test(is.test()).orElseThrow().domain();
					return !isForVehicle(is.test(), sit) ? OPEN
							: seen(sit, "test " + is.test(), value -> is.values().in(domain).contains(value));
				},
				(Condition.CodeIs is) -> {
					Integer value = sit.known().get("code " + is.code());
					return value == null ? OPEN : read(is.reading(), CodeReading.values()[value]);
				},
				(Condition.ModuleIs is) -> seen(sit, "module " + is.module(), value -> (value == 0) == is.answers()),
				(Condition.VerdictIs is) -> {
					String verdict = is.verdict() + " " + is.fault();
					return is.stands() ? (present.contains(verdict) ? 1 : 0) : absent.contains(verdict) ? 0 : 1;
				},
				(Condition.Unexplained is) -> {
					Integer sign = isForVehicle(is.sign(), sit) ? sit.known().get("sign " + is.sign()) : null;
					boolean explained = answering(is.sign(), sit.family()).stream()
							.anyMatch(fault -> absent.contains("CONFIRMED " + fault));
					if (explained) {
						return 0;
					}
					return sign == null ? OPEN : 1 - sign;
				});
	}

	private static int seen(Sit sit, String key, java.util.function.IntPredicate test) {
		Integer value = sit.known().get(key);
		return value == null ? OPEN : test.test(value) ? 1 : 0;
	}

	/** The faults that rules asking for the sign can confirm, as the language reference defines it. */
	Set<String> answering(String sign, String family) {
		return answering.computeIfAbsent(sign + " " + family, key -> {
			Set<String> reached = new HashSet<>();
			int before = -1;
			while (before != reached.size()) {
				before = reached.size();
				for (Rule rule : base.rules()) {
					String text = rule.given().toString();
					boolean reaches = base.reach(rule.scope()).contains(family);
					boolean itself = text.contains("Unexplained[sign=" + sign + ",");
					boolean asks = rule.given().stream().anyMatch(given -> wantsPresent(given, sign, true))
							|| reached.stream().anyMatch(verdict -> text.contains("VerdictIs[fault=" + verdict.split(" ")[1]
									+ ", verdict=" + verdict.split(" ")[0]));
					if (reaches && !itself && asks) {
						for (int i = 0; i < rule.outcomes().size(); i++) {
							says(rule, i).stream().filter(said -> !said.startsWith("REFERS")).forEach(reached::add);
						}
					}
				}
			}
			Set<String> faults = new TreeSet<>();
			reached.stream().filter(said -> said.startsWith("CONFIRMED")).forEach(said -> faults.add(said.split(" ")[1]));
			return faults;
		});
	}

	private static boolean wantsPresent(Condition condition, String sign, boolean holds) {
		return condition.match(
				(Condition.And and) -> and.parts().stream().anyMatch(part -> wantsPresent(part, sign, holds)),
				(Condition.Or or) -> or.parts().stream().anyMatch(part -> wantsPresent(part, sign, holds)),
				(Condition.Not not) -> wantsPresent(not.part(), sign, !holds),
				(Condition.Atom atom) -> atom instanceof Condition.SignIs is && is.sign().equals(sign) && is.present() == holds);
	}

	/** Returns whether no verdict depends on its own absence, in any family. */
	boolean isStratified(String family) {
		Map<String, Map<String, Boolean>> edges = new HashMap<>();
		for (Rule rule : base.rules()) {
			if (base.reach(rule.scope()).contains(family)) {
				Map<String, Boolean> looks = new HashMap<>();
				rule.given().forEach(given -> look(given, true, looks, family));
				for (int i = 0; i < rule.outcomes().size(); i++) {
					for (String said : says(rule, i)) {
						Map<String, Boolean> out = edges.computeIfAbsent(said, key -> new HashMap<>());
						looks.forEach((to, absence) -> out.merge(to, absence, (a, b) -> a || b));
					}
				}
			}
		}
		for (String from : edges.keySet()) {
			for (Map.Entry<String, Boolean> edge : edges.get(from).entrySet()) {
				if (edge.getValue() && reaches(edges, edge.getKey(), from, new HashSet<>())) {
					return false;
				}
			}
		}
		return true;
	}

	private boolean reaches(Map<String, Map<String, Boolean>> edges, String from, String to, Set<String> seen) {
		if (from.equals(to)) {
			return true;
		}
		return seen.add(from) && edges.getOrDefault(from, Map.of()).keySet().stream()
				.anyMatch(next -> reaches(edges, next, to, seen));
	}

	private void look(Condition condition, boolean positive, Map<String, Boolean> into, String family) {
		condition.visit(
				(Condition.And and) -> and.parts().forEach(part -> look(part, positive, into, family)),
				(Condition.Or or) -> or.parts().forEach(part -> look(part, positive, into, family)),
				(Condition.Not not) -> look(not.part(), !positive, into, family),
				(Condition.Atom atom) -> atom.visit(
						(Condition.TraitIs is) -> { },
						(Condition.SignIs is) -> { },
						(Condition.TestIs is) -> { },
						(Condition.CodeIs is) -> { },
						(Condition.ModuleIs is) -> { },
						(Condition.VerdictIs is) -> into.merge(is.verdict() + " " + is.fault(), is.stands() != positive, (a, b) -> a || b),
						(Condition.Unexplained is) -> answering(is.sign(), family)
								.forEach(fault -> into.merge("CONFIRMED " + fault, positive, (a, b) -> a || b))));
	}
}
