package org.baywright.analysis.oracle;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

import org.baywright.analysis.oracle.Enumeration.Result;
import org.baywright.analysis.oracle.Enumeration.Sit;
import org.baywright.model.Condition;
import org.baywright.model.Exclusive;
import org.baywright.model.Fault;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;

/** What the checks must find, read off the list of all situations. */
final class Expected {

	private final RuleBase base;
	private final Enumeration enumeration;
	private final List<String> families;
	private final Map<String, Set<Sit>> situations = new HashMap<>();
	private final Map<Sit, Result> results = new LinkedHashMap<>();
	private final Map<String, String> relatedTexts = new HashMap<>();

	Expected(RuleBase base, Enumeration enumeration, List<String> families) {
		this.base = base;
		this.enumeration = enumeration;
		this.families = families;
		for (String family : families) {
			Set<Sit> all = enumeration.all(family);
			situations.put(family, all);
			all.forEach(sit -> results.put(sit, enumeration.derive(sit, null)));
		}
	}

	Set<Sit> situations(String family) {
		return situations.get(family);
	}

	Map<String, Set<String>> flaws() {
		Map<String, Set<String>> all = new TreeMap<>();
		all.put("contradiction", pairs("CONFIRMED", "CLEARED", false));
		all.put("suspected-and-cleared", pairs("SUSPECTED", "CLEARED", true));
		all.put("exclusive-faults", exclusive());
		all.put("two-ends", twoEnds());
		Set<String> fired = new HashSet<>();
		Set<String> derived = new HashSet<>();
		results.values().forEach(result -> {
			fired.addAll(result.fired());
			derived.addAll(result.verdicts());
		});
		Set<String> dead = new TreeSet<>();
		all.put("dead-rule", dead(fired, dead));
		all.put("unreachable-conclusion", unreachable(derived));
		Set<String> unfound = new TreeSet<>();
		base.faults().stream().map(Fault::name).filter(fault -> !derived.contains("CONFIRMED " + fault))
				.filter(fault -> !isStated("CONFIRMED " + fault))
				.forEach(unfound::add);
		all.put("unfound-fault", unfound);
		Set<String> twins = twins();
		all.put("duplicate-rule", twins);
		all.put("redundant-rule", redundant(twins));
		all.put("unsplit-faults", unsplit(derived));
		all.put("blind-evidence", blind());
		return all;
	}

	// ---- clashes -----------------------------------------------------------------------------------------------

	private Set<String> pairs(String one, String other, boolean equallyStrong) {
		Set<String> found = new TreeSet<>();
		results.forEach((sit, result) -> {
			for (String a : result.fired()) {
				for (String said : saidBy(a)) {
					if (said.startsWith(one + " ")) {
						String fault = said.substring(one.length() + 1);
						for (String b : result.fired()) {
							if (saidBy(b).contains(other + " " + fault)
									&& (!equallyStrong || strength(a, sit.family(), Set.of()) == strength(b, sit.family(), Set.of()))) {
								found.add(pair(fault, ruleOf(a).name(), ruleOf(b).name()));
							}
						}
					}
				}
			}
		});
		return found;
	}

	private Set<String> twoEnds() {
		Set<String> found = new TreeSet<>();
		results.forEach((sit, result) -> {
			for (String a : result.fired()) {
				for (String said : saidBy(a)) {
					for (String b : said.startsWith("REFERS") ? result.fired() : Set.<String>of()) {
						if (isOtherEnd(b, said) && isSameComplaint(a, b, sit)) {
							found.add(pair(said.substring("REFERS ".length()), ruleOf(a).name(), ruleOf(b).name()));
						}
					}
				}
			}
		});
		return found;
	}

	/** Both rest on a sign that is there. */
	private boolean isSameComplaint(String a, String b, Sit sit) {
		return base.signs().stream().map(Sign::name)
				.anyMatch(sign -> rests(a, sign, sit, Set.of()) && rests(b, sign, sit, Set.of()));
	}

	private boolean rests(String branch, String sign, Sit sit, Set<String> behind) {
		return ruleOf(branch).given().stream().anyMatch(given -> rests(given, true, sign, sit, behind));
	}

	private boolean rests(Condition condition, boolean holds, String sign, Sit sit, Set<String> behind) {
		Condition so = holds ? condition : new Condition.Not(condition, condition.span());
		if (!enumeration.holds(so, sit, results.get(sit).verdicts())) {
			return false;
		}
		return condition.match(
				(Condition.And and) -> and.parts().stream().anyMatch(part -> rests(part, holds, sign, sit, behind)),
				(Condition.Or or) -> or.parts().stream().anyMatch(part -> rests(part, holds, sign, sit, behind)),
				(Condition.Not not) -> rests(not.part(), !holds, sign, sit, behind),
				(Condition.Atom atom) -> atom.match(
						(Condition.TraitIs is) -> false,
						(Condition.SignIs is) -> is.sign().equals(sign) && is.present() == holds,
						(Condition.TestIs is) -> false,
						(Condition.CodeIs is) -> false,
						(Condition.ModuleIs is) -> false,
						(Condition.VerdictIs is) -> is.stands() == holds
								&& restsOnVerdict(is.verdict() + " " + is.fault(), sign, sit, behind),
						(Condition.Unexplained is) -> holds ? is.sign().equals(sign)
								: enumeration.answering(is.sign(), sit.family()).stream()
										.anyMatch(fault -> restsOnVerdict("CONFIRMED " + fault, sign, sit, behind))));
	}

	private boolean restsOnVerdict(String verdict, String sign, Sit sit, Set<String> behind) {
		Set<String> further = new HashSet<>(behind);
		return further.add(verdict) && results.get(sit).fired().stream().filter(b -> saidBy(b).contains(verdict))
				.anyMatch(b -> rests(b, sign, sit, further));
	}

	/** A pair is told once, whichever rule says which. */
	static String pair(String subject, String a, String b) {
		return subject + "/" + (a.compareTo(b) <= 0 ? a + "/" + b : b + "/" + a);
	}

	private Set<String> exclusive() {
		Set<String> found = new TreeSet<>();
		for (Exclusive group : base.exclusives()) {
			results.values().forEach(result -> {
				for (String a : result.fired()) {
					for (String b : result.fired()) {
						for (String f : group.faults()) {
							for (String g : group.faults()) {
								if (f.compareTo(g) < 0 && saidBy(a).contains("CONFIRMED " + f)
										&& saidBy(b).contains("CONFIRMED " + g)) {
									found.add(pair(f + "+" + g, ruleOf(a).name(), ruleOf(b).name()));
								}
							}
						}
					}
				}
			});
		}
		return found;
	}

	/** Returns the fewest findings with which the two rules of a clash fire, in any family and whichever says which. */
	long least(String check, String[] subject) {
		String[] turned = { subject[0], subject[2], subject[1] };
		return families.stream().flatMapToLong(family -> LongStream.of(least(check, subject, family), least(check, turned, family)))
				.min().orElseThrow();
	}

	private long least(String check, String[] subject, String family) {
		String[] saying = switch (check) {
		case "contradiction" -> new String[] { "CONFIRMED " + subject[0], "CLEARED " + subject[0] };
		case "suspected-and-cleared" -> new String[] { "SUSPECTED " + subject[0], "CLEARED " + subject[0] };
		case "exclusive-faults" -> new String[] { "CONFIRMED " + subject[0].split("\\+")[0],
				"CONFIRMED " + subject[0].split("\\+")[1] };
		default -> new String[] { "REFERS " + subject[0], "" };
		};
		return situations.get(family).stream().filter(sit -> {
			Set<String> fired = results.get(sit).fired();
			return fired.stream().filter(a -> ruleOf(a).name().equals(subject[1]) && saidBy(a).contains(saying[0]))
					.anyMatch(a -> fired.stream().anyMatch(b -> ruleOf(b).name().equals(subject[2])
							&& (saying[1].isEmpty() ? isOtherEnd(b, saying[0]) && isSameComplaint(a, b, sit)
									: saidBy(b).contains(saying[1]))));
		}).mapToLong(Sit::findings).min().orElse(Long.MAX_VALUE);
	}

	private boolean isOtherEnd(String branch, String referral) {
		return saidBy(branch).stream().anyMatch(said -> !said.equals(referral)
				&& (said.startsWith("CONFIRMED") || said.startsWith("REFERS") && said.compareTo(referral) > 0));
	}

	private Rule ruleOf(String branch) {
		return base.rule(branch.substring(0, branch.indexOf('/'))).orElseThrow();
	}

	private Set<String> saidBy(String branch) {
		return Enumeration.says(ruleOf(branch), Integer.parseInt(branch.substring(branch.indexOf('/') + 1)));
	}

	/** Tests on the way that has most of them, no branch twice. */
	private int strength(String branch, String family, Set<String> behind) {
		Rule rule = ruleOf(branch);
		int most = 0;
		List<String> waits = new ArrayList<>();
		rule.given().forEach(given -> waitsFor(given, true, family, waits));
		Set<String> onTheWay = new HashSet<>(behind);
		onTheWay.add(branch);
		for (Rule other : Enumeration.rulesOf(base, family)) {
			for (int i = 0; i < other.outcomes().size(); i++) {
				String next = other.name() + "/" + i;
				if (!onTheWay.contains(next) && Enumeration.says(other, i).stream().anyMatch(waits::contains)) {
					most = Math.max(most, strength(next, family, onTheWay));
				}
			}
		}
		return most + (rule.test().isPresent() ? 1 : 0);
	}

	private void waitsFor(Condition condition, boolean holds, String family, List<String> into) {
		condition.visit(
				(Condition.And and) -> and.parts().forEach(part -> waitsFor(part, holds, family, into)),
				(Condition.Or or) -> or.parts().forEach(part -> waitsFor(part, holds, family, into)),
				(Condition.Not not) -> waitsFor(not.part(), !holds, family, into),
				(Condition.Atom atom) -> atom.visit(
						(Condition.TraitIs is) -> { },
						(Condition.SignIs is) -> { },
						(Condition.TestIs is) -> { },
						(Condition.CodeIs is) -> { },
						(Condition.ModuleIs is) -> { },
						(Condition.VerdictIs is) -> {
							if (is.stands() == holds) {
								into.add(is.verdict() + " " + is.fault());
							}
						},
						(Condition.Unexplained is) -> {
							if (!holds) {
								enumeration.answering(is.sign(), family).forEach(fault -> into.add("CONFIRMED " + fault));
							}
						}));
	}

	// ---- what never happens ------------------------------------------------------------------------------------

	private Set<String> dead(Set<String> fired, Set<String> whole) {
		Set<String> found = new TreeSet<>();
		for (Rule rule : base.rules()) {
			List<String> never = new ArrayList<>();
			for (int i = 0; i < rule.outcomes().size(); i++) {
				if (!fired.contains(rule.name() + "/" + i)) {
					never.add(rule.name() + "/" + i);
				}
			}
			if (never.size() == rule.outcomes().size()) {
				whole.add(rule.name());
				found.add(rule.name());
			} else {
				found.addAll(never);
			}
		}
		return found;
	}

	private Set<String> unreachable(Set<String> derived) {
		Set<String> mentioned = new TreeSet<>();
		for (Rule rule : base.rules()) {
			if (base.reach(rule.scope()).isEmpty()) {
				continue; // it asks in no vehicle
			}
			rule.given().forEach(given -> mentions(given, mentioned));
		}
		Set<String> found = new TreeSet<>();
		for (String verdict : mentioned) {
			if (!derived.contains(verdict) && !isStated(verdict)) {
				int space = verdict.indexOf(' ');
				found.add(verdict.substring(space + 1) + "/" + verdict.substring(0, space).toLowerCase(java.util.Locale.ROOT));
			}
		}
		return found;
	}

	/** What a rule states and never comes true is told with that rule, which is dead. */
	private boolean isStated(String verdict) {
		return base.rules().stream()
				.anyMatch(rule -> IntStream.range(0, rule.outcomes().size())
						.anyMatch(i -> Enumeration.says(rule, i).contains(verdict)));
	}

	private static void mentions(Condition condition, Set<String> into) {
		condition.visit(
				(Condition.And and) -> and.parts().forEach(part -> mentions(part, into)),
				(Condition.Or or) -> or.parts().forEach(part -> mentions(part, into)),
				(Condition.Not not) -> mentions(not.part(), into),
				(Condition.Atom atom) -> {
					if (atom instanceof Condition.VerdictIs is) {
						into.add(is.verdict() + " " + is.fault());
					}
				});
	}

	// ---- what is said twice ------------------------------------------------------------------------------------

	private Set<String> twins() {
		Set<String> found = new TreeSet<>();
		for (Rule a : base.rules()) {
			for (Rule b : base.rules()) {
				if (a.name().compareTo(b.name()) < 0
						&& results.values().stream().allMatch(result -> sayings(result, a).equals(sayings(result, b)))
						&& speaks(a) && canGo(a) && canGo(b)) {
					found.add(a.name() + "/" + b.name());
				}
			}
		}
		return found;
	}

	/** A rule that never says anything has nothing to repeat. */
	private boolean speaks(Rule rule) {
		return results.values().stream().anyMatch(result -> !sayings(result, rule).isEmpty());
	}

	private boolean canGo(Rule rule) {
		return results.entrySet().stream().allMatch(entry -> saysTheSame(entry.getKey(), entry.getValue(), rule));
	}

	private Set<Set<String>> sayings(Result result, Rule rule) {
		Set<Set<String>> sayings = new HashSet<>();
		result.fired().stream().filter(branch -> ruleOf(branch) == rule).map(this::saidBy).filter(said -> !said.isEmpty())
				.forEach(sayings::add);
		return sayings;
	}

	/** No rule with one of the same conclusions looks at anything that this rule's test, or else its signs and codes, are. */
	private boolean hasOwnPointer(Rule rule) {
		List<String> own = looksAt(rule).stream().filter(thing -> thing.startsWith("test ")).toList();
		List<String> pointers = own.isEmpty() ? looksAt(rule) : own;
		Set<String> said = conclusions(rule);
		Set<String> asked = new TreeSet<>();
		rule.given().forEach(given -> given.eachAtom(atom -> {
			if (atom instanceof Condition.VerdictIs is) {
				asked.add(is.fault());
			}
		}));
		boolean circular = said.stream().anyMatch(text -> asked.contains(text.substring(0, text.indexOf(' '))));
		return !circular && !pointers.isEmpty() && !said.isEmpty() && base.rules().stream().filter(other -> other != rule)
				.filter(other -> conclusions(other).stream().anyMatch(said::contains))
				.noneMatch(other -> looksAt(other).stream().anyMatch(pointers::contains));
	}

	private static List<String> looksAt(Rule rule) {
		Set<String> things = new TreeSet<>();
		rule.test().ifPresent(test -> things.add("test " + test));
		rule.given().forEach(given -> given.eachAtom(atom -> atom.visit(
				(Condition.TraitIs is) -> { },
				(Condition.SignIs is) -> things.add("sign " + is.sign()),
				(Condition.TestIs is) -> things.add("test " + is.test()),
				(Condition.CodeIs is) -> things.add("code " + is.code()),
				(Condition.ModuleIs is) -> { },
				(Condition.VerdictIs is) -> { },
				(Condition.Unexplained is) -> { })));
		return List.copyOf(things);
	}

	private static Set<String> conclusions(Rule rule) {
		Set<String> all = new TreeSet<>();
		rule.outcomes().forEach(outcome -> outcome.conclusions().forEach(said -> {
			if (said instanceof org.baywright.model.Conclusion.OnFault on) {
				all.add(on.fault() + " " + on.verdict());
			}
		}));
		return all;
	}

	private Set<String> redundant(Set<String> twins) {
		Set<String> found = new TreeSet<>();
		for (Rule rule : base.rules()) {
			boolean twinned = twins.stream().anyMatch(pair -> List.of(pair.split("/")).contains(rule.name()));
			if (speaks(rule) && !twinned && canGo(rule) && !hasOwnPointer(rule)) {
				found.add(rule.name());
			}
		}
		return found;
	}

	/** Referrals of complaints that have nothing to do with each other are not the same, though to the same person. */
	private boolean saysTheSame(Sit sit, Result with, Rule rule) {
		Result without = enumeration.derive(sit, rule.name());
		return verdicts(sit.family(), with).equals(verdicts(sit.family(), without));
	}

	private String related(String family, Rule rule) {
		return relatedTexts.computeIfAbsent(family + "/" + rule.name(),
				key -> new TreeSet<>(enumeration.connected(family, rule)).toString());
	}

	private Set<String> verdicts(String family, Result result) {
		Set<String> verdicts = new TreeSet<>();
		for (String branch : result.fired()) {
			for (String said : saidBy(branch)) {
				verdicts.add(said.startsWith("REFERS") ? said + related(family, ruleOf(branch)) : said);
			}
		}
		return verdicts;
	}

	private Set<String> unsplit(Set<String> derived) {
		Set<String> told = new HashSet<>();
		Set<String> found = new TreeSet<>();
		for (Fault fault : base.faults()) {
			if (derived.contains("CONFIRMED " + fault.name()) && !told.contains(fault.name())) {
				Set<String> group = new TreeSet<>();
				for (Fault other : base.faults()) {
					if (derived.contains("CONFIRMED " + other.name()) && results.values().stream()
							.allMatch(result -> alike(result, fault.name(), other.name()))) {
						group.add(other.name());
					}
				}
				told.addAll(group);
				if (group.size() > 1) {
					found.add(String.join("+", group));
				}
			}
		}
		return found;
	}

	private static boolean alike(Result result, String a, String b) {
		return result.verdicts().contains("CONFIRMED " + a) == result.verdicts().contains("CONFIRMED " + b)
				&& result.verdicts().contains("CLEARED " + a) == result.verdicts().contains("CLEARED " + b);
	}

	// ---- blind evidence ----------------------------------------------------------------------------------------

	private Set<String> blind() {
		Set<String> found = new TreeSet<>();
		results.forEach((sit, result) -> {
			for (String branch : result.fired()) {
				boolean proves = saidBy(branch).stream()
						.anyMatch(said -> said.startsWith("CONFIRMED") || said.startsWith("CLEARED"));
				for (String asking : proves ? asking(branch, sit.family()) : Set.<String>of()) {
					if (result.fired().contains(asking)) {
						blind(ruleOf(branch).name(), asks(ruleOf(asking)), sit, found);
					}
				}
			}
		});
		return found;
	}

	private void blind(String rule, String asks, Sit sit, Set<String> found) {
		if (asks.contains("+CodeIs[code=low, reading=MISSING") && sit.known().getOrDefault("code low", -1) == 2) {
			found.add(rule + "/silent_code/low");
		}
		boolean asksUnseen = asks.contains("+CodeIs[code=low, reading=MISSING")
				|| List.of("PRESENT", "ACTIVE", "STORED", "PENDING").stream().anyMatch(state -> asks.contains("-CodeIs[code=low, reading=" + state));
		if (asksUnseen && sit.known().getOrDefault("code low", -1) == 6) {
			found.add(rule + "/untested_code/low");
		}
		for (Sign sign : base.signs()) {
			boolean asksAbsence = asks.contains("+SignIs[sign=" + sign.name() + ", present=false")
					|| asks.contains("-SignIs[sign=" + sign.name() + ", present=true")
					|| asks.contains("-Unexplained[sign=" + sign.name() + ",");
			if (sign.intermittent() && asksAbsence && sit.known().getOrDefault("sign " + sign.name(), -1) == 1) {
				found.add(rule + "/intermittent_sign/" + sign.name());
			}
		}
	}

	/** Returns the branch and, as long as they rest on no test, those whose suspicions are asked for. */
	private Set<String> asking(String branch, String family) {
		Set<String> all = new TreeSet<>(Set.of(branch));
		List<String> open = new ArrayList<>(all);
		while (!open.isEmpty()) {
			Rule rule = ruleOf(open.remove(0));
			if (rule.test().isEmpty() && rule.given().stream().noneMatch(given -> takesTest(given, true))) {
				List<String> waits = new ArrayList<>();
				rule.given().forEach(given -> waitsFor(given, true, family, waits));
				waits.removeIf(verdict -> !verdict.startsWith("SUSPECTED"));
				for (Rule other : Enumeration.rulesOf(base, family)) {
					for (int i = 0; i < other.outcomes().size(); i++) {
						if (Enumeration.says(other, i).stream().anyMatch(waits::contains) && all.add(other.name() + "/" + i)) {
							open.add(other.name() + "/" + i);
						}
					}
				}
			}
		}
		return all;
	}

	/** Returns whether every way in which the condition holds, or fails, takes a test. */
	private static boolean takesTest(Condition condition, boolean holds) {
		return condition.match(
				(Condition.And and) -> holds ? and.parts().stream().anyMatch(part -> takesTest(part, true))
						: and.parts().stream().allMatch(part -> takesTest(part, false)),
				(Condition.Or or) -> holds ? or.parts().stream().allMatch(part -> takesTest(part, true))
						: or.parts().stream().anyMatch(part -> takesTest(part, false)),
				(Condition.Not not) -> takesTest(not.part(), !holds),
				(Condition.Atom atom) -> atom instanceof Condition.TestIs);
	}

	private static String asks(Rule rule) {
		StringBuilder text = new StringBuilder();
		rule.given().forEach(given -> asks(given, '+', text));
		return text.toString();
	}

	private static void asks(Condition condition, char sign, StringBuilder into) {
		condition.visit(
				(Condition.And and) -> and.parts().forEach(part -> asks(part, sign, into)),
				(Condition.Or or) -> or.parts().forEach(part -> asks(part, sign, into)),
				(Condition.Not not) -> asks(not.part(), sign == '+' ? '-' : '+', into),
				(Condition.Atom atom) -> into.append(sign).append(atom));
	}
}
