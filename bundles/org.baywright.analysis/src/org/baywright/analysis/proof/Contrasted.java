package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.Condition;
import org.baywright.model.Family;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.VerdictKind;

/** One of two rule bases that are compared, with its rules by what they conclude and look at. */
final class Contrasted {

	final RuleBase base;
	private final Set<Variable> altered;
	private final String side;
	private final Map<Rule, Integer> numbers = new IdentityHashMap<>();
	private final Map<Rule, Set<String>> reach = new IdentityHashMap<>();
	private final Map<String, List<Rule>> byFamily = new HashMap<>();
	private final Map<String, List<Law>> lawsByFamily = new HashMap<>();
	private final Map<Law, String> lawTexts = new IdentityHashMap<>();
	private final Map<Verdict, List<Rule>> concluding = new HashMap<>();
	private final Map<Verdict, List<Rule>> looking = new HashMap<>();
	private final Map<Rule, Set<String>> unexplained = new IdentityHashMap<>();
	private final Map<String, Map<String, Set<String>>> answering = new HashMap<>();

	/**
	 * @param altered findings that do not mean the same in both
	 * @param known for each meaning of a rule its number; grows
	 * @param side what tells this one from the other
	 */
	Contrasted(RuleBase base, Set<Variable> altered, Map<String, Integer> known, String side) {
		this.base = base;
		this.altered = altered;
		this.side = side;
		Map<List<Object>, Set<String>> scopes = new HashMap<>();
		boolean unique = base.hasUniqueRuleNames();
		List<String> texts = base.rules().parallelStream().map(this::text).toList();
		for (int i = 0; i < texts.size(); i++) {
			Rule rule = base.rules().get(i);
			numbers.put(rule, known.computeIfAbsent(texts.get(i), key -> known.size()));
			if (unique || base.rule(rule.name()).orElse(null) == rule) { // the language reports a name used twice
				Scope scope = rule.scope();
				Set<String> reached = scopes.computeIfAbsent(List.of(scope.families(), scope.except()), key -> base.reach(scope));
				reach.put(rule, reached);
				reached.forEach(family -> byFamily.computeIfAbsent(family, key -> new ArrayList<>()).add(rule));
				concludes(rule).distinct().forEach(verdict -> concluding.computeIfAbsent(verdict, key -> new ArrayList<>()).add(rule));
				rule.given().forEach(given -> given.eachAtom(atom -> note(rule, atom)));
			}
		}
		for (Law law : base.laws()) {
			lawTexts.put(law, Footprint.of(law).findings().stream().noneMatch(altered::contains) ? Meaning.text(law) : side + Meaning.text(law));
			scopes.computeIfAbsent(List.of(law.families(), "law"), key -> bound(law))
					.forEach(family -> lawsByFamily.computeIfAbsent(family, key -> new ArrayList<>()).add(law));
		}
	}

	private Set<String> bound(Law law) {
		return base.vehicleFamilies().stream().map(Family::name).filter(family -> base.reaches(law.families(), family)).collect(Collectors.toSet());
	}

	private void note(Rule rule, Condition.Atom atom) {
		if (atom instanceof Condition.VerdictIs is) {
			looking.computeIfAbsent(new Verdict(is.fault(), is.verdict()), key -> new ArrayList<>()).add(rule);
		} else if (atom instanceof Condition.Unexplained is) {
			unexplained.computeIfAbsent(rule, key -> new TreeSet<>()).add(is.sign());
		}
	}

	/** Returns what the rule means; what speaks of something that means something else now is never alike. */
	private String text(Rule rule) {
		return altered.isEmpty() || Footprint.of(rule).findings().stream().noneMatch(altered::contains) ? Meaning.text(rule) : side + Meaning.text(rule);
	}

	/** Returns what the law means, as {@link #number} does for rules. */
	String text(Law law) {
		return lawTexts.get(law);
	}

	/** Returns a number that only rules share which mean the same. */
	int number(Rule rule) {
		return numbers.get(rule);
	}

	List<Rule> rulesOf(String family) {
		return byFamily.getOrDefault(family, List.of());
	}

	List<Law> lawsOf(String family) {
		return lawsByFamily.getOrDefault(family, List.of());
	}

	boolean speaksOf(Rule rule, Set<String> traits) {
		return Footprint.traits(base, Footprint.of(rule)).stream().anyMatch(traits::contains);
	}

	Set<String> unexplained(Rule rule) {
		return unexplained.getOrDefault(rule, Set.of());
	}

	/** Returns for each sign that a rule of the family calls unexplained the faults that answer it. */
	Map<String, Set<String>> answering(String family) {
		return answering.computeIfAbsent(family, key -> new TreeMap<>(Answering.faultsBySign(rulesOf(key))));
	}

	static Stream<Verdict> concludes(Rule rule) {
		return rule.outcomes().stream().flatMap(outcome -> outcome.conclusions().stream()).flatMap(conclusion -> Verdict.of(conclusion).stream());
	}

	/** Returns the rules of a family that conclude one of the verdicts, sorted by name. */
	List<Rule> concluding(String family, Set<Verdict> verdicts) {
		Set<Rule> rules = Collections.newSetFromMap(new IdentityHashMap<>());
		verdicts.forEach(verdict -> concluding.getOrDefault(verdict, List.of()).stream().filter(rule -> reach.get(rule).contains(family)).forEach(rules::add));
		return rules.stream().sorted(Comparator.comparing(Rule::name)).toList();
	}

	/** Returns the rules of a family that look at a verdict, itself or as one that would explain a sign. */
	Stream<Rule> looking(String family, Verdict verdict) {
		Stream<Rule> asked = looking.getOrDefault(verdict, List.of()).stream().filter(rule -> reach.get(rule).contains(family));
		Set<String> explained = verdict.kind() == VerdictKind.CONFIRMED ? new TreeSet<>(answering(family).keySet()) : new TreeSet<>();
		explained.removeIf(sign -> !answering(family).get(sign).contains(verdict.fault()));
		return explained.isEmpty() ? asked
				: Stream.concat(asked, rulesOf(family).stream().filter(rule -> unexplained(rule).stream().anyMatch(explained::contains)));
	}

	/** Returns the verdicts that a rule looks at, in the same sense. */
	Stream<Verdict> looksAt(String family, Rule rule) {
		Set<Verdict> verdicts = new TreeSet<>();
		rule.given().forEach(given -> ProgramBuilder.collectVerdicts(given, verdicts));
		unexplained(rule).forEach(sign -> answering(family).getOrDefault(sign, Set.of()).forEach(fault -> verdicts.add(new Verdict(fault, VerdictKind.CONFIRMED))));
		return verdicts.stream();
	}
}
