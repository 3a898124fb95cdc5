package org.baywright.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * Everything a rule project says, as one immutable value. Lists keep the order of the files and of the text in them.
 * Where the author used a name twice the first holds for look-ups; the language reports the second.
 */
public final class RuleBase {

	private final String name;
	private final List<Family> families;
	private final List<State> states;
	private final List<Tool> tools;
	private final List<Hazard> hazards;
	private final List<Module> modules;
	private final List<Code> codes;
	private final List<Sign> signs;
	private final List<Part> parts;
	private final List<Exclusive> exclusives;
	private final List<Test> tests;
	private final List<Law> laws;
	private final List<Rule> rules;
	private final List<Repair> repairs;
	private final List<Case> cases;
	private final List<Review> reviews;
	private final List<Acceptance> acceptances;
	private final List<LeftOut> leftOut;
	private final List<Fault> faults;

	private final Map<String, Family> familyByName;
	private final Map<String, State> stateByName;
	private final Map<String, Tool> toolByName;
	private final Map<String, Hazard> hazardByName;
	private final Map<String, Module> moduleByName;
	private final Map<String, Code> codeByName;
	private final Map<String, Sign> signByName;
	private final Map<String, Part> partByName;
	private final Map<String, Test> testByName;
	private final Map<String, Fault> faultByName;
	private final Map<String, Repair> repairByName;
	private final Map<String, Rule> ruleByName;
	private final Map<String, Map<String, Trait>> traitsByFamily = new HashMap<>();
	private final Map<String, List<String>> lineage = new HashMap<>();
	private final Map<String, List<String>> descendants = new HashMap<>();

	private RuleBase(Builder from) {
		name = from.name;
		families = List.copyOf(from.families);
		states = List.copyOf(from.states);
		tools = List.copyOf(from.tools);
		hazards = List.copyOf(from.hazards);
		modules = List.copyOf(from.modules);
		codes = List.copyOf(from.codes);
		signs = List.copyOf(from.signs);
		parts = List.copyOf(from.parts);
		exclusives = List.copyOf(from.exclusives);
		tests = List.copyOf(from.tests);
		laws = List.copyOf(from.laws);
		rules = List.copyOf(from.rules);
		repairs = List.copyOf(from.repairs);
		cases = List.copyOf(from.cases);
		reviews = List.copyOf(from.reviews);
		acceptances = List.copyOf(from.acceptances);
		leftOut = List.copyOf(from.leftOut);
		faults = parts.stream().flatMap(part -> part.faults().stream()).toList();
		familyByName = index(families, Family::name);
		stateByName = index(states, State::name);
		toolByName = index(tools, Tool::name);
		hazardByName = index(hazards, Hazard::name);
		moduleByName = index(modules, Module::name);
		codeByName = index(codes, Code::name);
		signByName = index(signs, Sign::name);
		partByName = index(parts, Part::name);
		testByName = index(tests, Test::name);
		faultByName = index(faults, Fault::name);
		repairByName = index(repairs, Repair::name);
		ruleByName = index(rules, Rule::name);
		for (Family family : families) {
			linkFamily(family);
		}
	}

	private static <T> Map<String, T> index(List<T> elements, Function<T, String> key) {
		Map<String, T> map = new HashMap<>(elements.size() * 2);
		for (T element : elements) {
			map.putIfAbsent(key.apply(element), element);
		}
		return map;
	}

	private void linkFamily(Family family) {
		Set<String> line = new LinkedHashSet<>();
		List<Family> upwards = new ArrayList<>();
		for (Family next = family; next != null && line.add(next.name());) {
			upwards.add(next);
			next = next.parent().map(familyByName::get).orElse(null);
		}
		lineage.putIfAbsent(family.name(), List.copyOf(line));
		for (String ancestor : line) {
			descendants.computeIfAbsent(ancestor, key -> new ArrayList<>()).add(family.name());
		}
		Map<String, Trait> traits = new LinkedHashMap<>();
		Collections.reverse(upwards);
		for (Family next : upwards) {
			for (Trait trait : next.traits()) {
				traits.put(trait.name(), trait);
			}
		}
		traitsByFamily.putIfAbsent(family.name(), Collections.unmodifiableMap(traits));
	}

	public String name() {
		return name;
	}

	public List<Family> families() {
		return families;
	}

	public List<State> states() {
		return states;
	}

	public List<Tool> tools() {
		return tools;
	}

	public List<Hazard> hazards() {
		return hazards;
	}

	public List<Module> modules() {
		return modules;
	}

	public List<Code> codes() {
		return codes;
	}

	public List<Sign> signs() {
		return signs;
	}

	public List<Part> parts() {
		return parts;
	}

	public List<Exclusive> exclusives() {
		return exclusives;
	}

	public List<Test> tests() {
		return tests;
	}

	public List<Law> laws() {
		return laws;
	}

	public List<Rule> rules() {
		return rules;
	}

	public List<Repair> repairs() {
		return repairs;
	}

	public List<Case> cases() {
		return cases;
	}

	public List<Review> reviews() {
		return reviews;
	}

	public List<Acceptance> acceptances() {
		return acceptances;
	}

	/** Returns what is known of what the author wrote and what is not here, as its text is wrong. */
	public List<LeftOut> leftOut() {
		return leftOut;
	}

	/** Returns the faults of all parts, in the order of the parts. */
	public List<Fault> faults() {
		return faults;
	}

	public Optional<Family> family(String key) {
		return Optional.ofNullable(familyByName.get(key));
	}

	public Optional<State> state(String key) {
		return Optional.ofNullable(stateByName.get(key));
	}

	public Optional<Tool> tool(String key) {
		return Optional.ofNullable(toolByName.get(key));
	}

	public Optional<Hazard> hazard(String key) {
		return Optional.ofNullable(hazardByName.get(key));
	}

	public Optional<Module> module(String key) {
		return Optional.ofNullable(moduleByName.get(key));
	}

	public Optional<Code> code(String key) {
		return Optional.ofNullable(codeByName.get(key));
	}

	public Optional<Sign> sign(String key) {
		return Optional.ofNullable(signByName.get(key));
	}

	public Optional<Part> part(String key) {
		return Optional.ofNullable(partByName.get(key));
	}

	public Optional<Test> test(String key) {
		return Optional.ofNullable(testByName.get(key));
	}

	public Optional<Fault> fault(String key) {
		return Optional.ofNullable(faultByName.get(key));
	}

	public Optional<Repair> repair(String key) {
		return Optional.ofNullable(repairByName.get(key));
	}

	public Optional<Rule> rule(String key) {
		return Optional.ofNullable(ruleByName.get(key));
	}

	/** Returns whether no two rules have the same name. */
	public boolean hasUniqueRuleNames() {
		return ruleByName.size() == rules.size();
	}

	/** Returns the families that vehicles belong to: all that are not a base for others only. */
	public List<Family> vehicleFamilies() {
		return families.stream().filter(family -> !family.base()).toList();
	}

	/** Returns the traits of a family by name, inherited ones first; empty for an unknown family. */
	public Map<String, Trait> traitsOf(String family) {
		return traitsByFamily.getOrDefault(family, Map.of());
	}

	/** Returns the family and those it builds on, itself first; empty for an unknown family. */
	public List<String> lineage(String family) {
		return lineage.getOrDefault(family, List.of());
	}

	/** Returns the family and all that build on it, in the order of declaration. */
	public List<String> descendants(String family) {
		return descendants.getOrDefault(family, List.of());
	}

	/** Returns the vehicle families a rule's scope reaches, in the order of declaration. */
	public Set<String> reach(Scope scope) {
		Set<String> reached = new LinkedHashSet<>();
		if (scope.families().isEmpty()) {
			families.forEach(family -> reached.add(family.name()));
		} else {
			scope.families().forEach(family -> reached.addAll(descendants(family)));
		}
		scope.except().forEach(family -> reached.removeAll(new HashSet<>(descendants(family))));
		reached.removeIf(family -> family(family).map(Family::base).orElse(true));
		return reached;
	}

	/** Returns whether a list of families, as written on a module or a law, reaches the family; an empty list does. */
	public boolean reaches(List<String> named, String family) {
		return named.isEmpty() || lineage(family).stream().anyMatch(named::contains);
	}

	/** Collects elements and makes a rule base of them. */
	public static final class Builder {

		private final String name;
		public final List<Family> families = new ArrayList<>();
		public final List<State> states = new ArrayList<>();
		public final List<Tool> tools = new ArrayList<>();
		public final List<Hazard> hazards = new ArrayList<>();
		public final List<Module> modules = new ArrayList<>();
		public final List<Code> codes = new ArrayList<>();
		public final List<Sign> signs = new ArrayList<>();
		public final List<Part> parts = new ArrayList<>();
		public final List<Exclusive> exclusives = new ArrayList<>();
		public final List<Test> tests = new ArrayList<>();
		public final List<Law> laws = new ArrayList<>();
		public final List<Rule> rules = new ArrayList<>();
		public final List<Repair> repairs = new ArrayList<>();
		public final List<Case> cases = new ArrayList<>();
		public final List<Review> reviews = new ArrayList<>();
		public final List<Acceptance> acceptances = new ArrayList<>();
		public final List<LeftOut> leftOut = new ArrayList<>();

		/** @param name the project's name */
		public Builder(String name) {
			this.name = name;
		}

		/** Appends all elements of another rule base, so that files can be translated one by one. */
		public Builder add(RuleBase other) {
			families.addAll(other.families);
			states.addAll(other.states);
			tools.addAll(other.tools);
			hazards.addAll(other.hazards);
			modules.addAll(other.modules);
			codes.addAll(other.codes);
			signs.addAll(other.signs);
			parts.addAll(other.parts);
			exclusives.addAll(other.exclusives);
			tests.addAll(other.tests);
			laws.addAll(other.laws);
			rules.addAll(other.rules);
			repairs.addAll(other.repairs);
			cases.addAll(other.cases);
			reviews.addAll(other.reviews);
			acceptances.addAll(other.acceptances);
			leftOut.addAll(other.leftOut);
			return this;
		}

		public RuleBase build() {
			return new RuleBase(this);
		}
	}
}
