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
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Everything a rule project says, as one immutable value. Lists keep the order of the files and of the text in them.
 * Where the author used a name twice the first holds for look-ups; the language reports the second. It is closed: every
 * name that an element uses is declared in it.
 */
public final class RuleBase {

	private final String name;
	private final List<Family> families;
	private final List<State> states;
	private final List<Tool> tools;
	private final List<Workshop> workshops;
	private final Optional<Workshop> workshop;
	private final List<Hazard> hazards;
	private final List<Module> modules;
	private final List<Code> codes;
	private final List<Sign> signs;
	private final List<Part> parts;
	private final List<Exclusive> exclusives;
	private final List<Test> tests;
	private final List<Law> laws;
	private final List<Chain> chains;
	private final List<Rule> rules;
	private final List<Repair> repairs;
	private final List<Case> cases;
	private final List<SignOff> signOffs;
	private final List<Reviewer> reviewers;
	private final List<Review> reviews;
	private final List<Remark> remarks;
	private final List<Acceptance> acceptances;
	private final List<LeftOut> leftOut;
	private final List<BuiltOn> builtOn;
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
	private final Map<String, Chain> chainByName;
	private final Set<String> ofChains = new HashSet<>();
	private final Set<String> withStates = new HashSet<>();
	private final Map<String, List<Repair>> repairsByFault = new HashMap<>();
	private final Map<String, List<Review>> reviewsByRule = new HashMap<>();
	private final Map<String, Map<String, Trait>> traitsByFamily = new HashMap<>();
	private final Map<String, List<String>> lineage = new HashMap<>();
	private final Map<String, List<String>> descendants = new HashMap<>();

	private RuleBase(Builder from) {
		name = from.name;
		families = List.copyOf(from.families);
		states = List.copyOf(from.states);
		tools = List.copyOf(from.tools);
		workshops = List.copyOf(from.workshops);
		hazards = List.copyOf(from.hazards);
		modules = List.copyOf(from.modules);
		codes = List.copyOf(from.codes);
		signs = List.copyOf(from.signs);
		parts = List.copyOf(from.parts);
		exclusives = List.copyOf(from.exclusives);
		tests = List.copyOf(from.tests);
		laws = List.copyOf(from.laws);
		chains = List.copyOf(from.chains);
		rules = List.copyOf(from.rules);
		repairs = List.copyOf(from.repairs);
		cases = List.copyOf(from.cases);
		signOffs = List.copyOf(from.signOffs);
		reviewers = List.copyOf(from.reviewers);
		reviews = List.copyOf(from.reviews);
		remarks = List.copyOf(from.remarks);
		acceptances = List.copyOf(from.acceptances);
		leftOut = List.copyOf(from.leftOut);
		builtOn = List.copyOf(from.builtOn);
		workshop = workshops.stream().filter(one -> !one.span().isElsewhere()).findFirst()
				.or(() -> builtOn.stream().flatMap(on -> on.rules().workshop().stream()).findFirst()
						.flatMap(there -> workshops.stream().filter(there::says).findFirst()))
				.or(() -> workshops.stream().findFirst());
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
		chainByName = index(chains, Chain::name);
		chains.forEach(chain -> chain.rules().forEach(rule -> ofChains.add(rule.name())));
		for (Family family : families) {
			linkFamily(family);
		}
		repairs.forEach(repair -> repair.fixes().stream().distinct()
				.forEach(fault -> repairsByFault.computeIfAbsent(fault, key -> new ArrayList<>()).add(repair)));
		reviews.forEach(review -> reviewsByRule.computeIfAbsent(review.rule(), key -> new ArrayList<>()).add(review));
		for (Rule rule : rules) {
			rule.given().forEach(this::noteStates);
		}
		for (Law law : laws) {
			noteStates(law.when());
			noteStates(law.then());
		}
	}

	private void noteStates(Condition condition) {
		condition.eachAtom(atom -> {
			if (atom instanceof Condition.CodeIs is && is.reading().isState()) {
				withStates.add(is.code());
			}
		});
	}

	private static <T> Map<String, T> index(List<T> elements, Function<T, String> key) {
		Map<String, T> map = new HashMap<>(elements.size() * 2);
		for (T element : elements) {
			map.putIfAbsent(key.apply(element), element);
		}
		return map;
	}

	private void linkFamily(Family family) {
		Map<String, Family> above = new LinkedHashMap<>();
		climb(family, above);
		List<String> line = List.copyOf(above.keySet());
		List<Family> upwards = new ArrayList<>(above.values());
		lineage.putIfAbsent(family.name(), line);
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

	/** Its own systems are nearer to a family than what it builds on. */
	private void climb(Family family, Map<String, Family> above) {
		if (above.putIfAbsent(family.name(), family) == null) {
			for (String system : family.systems()) {
				family(system).ifPresent(found -> climb(found, above));
			}
			family.parent().flatMap(this::family).ifPresent(found -> climb(found, above));
		}
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

	/** Returns the workshops of the project and of what it builds on; only {@link #workshop} holds. */
	public List<Workshop> workshops() {
		return workshops;
	}

	/** Returns the workshop: the project's own, else that of the first that it builds on and that has one. */
	public Optional<Workshop> workshop() {
		return workshop;
	}

	/** Returns what reading a module takes: as the module says, or else as the workshop says of each. */
	public Workshop.Scan scan(Module module) {
		return module.asking().or(() -> workshop.flatMap(Workshop::each)).orElse(Workshop.Scan.NOTHING);
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

	/** Returns the chains; the rules and laws that follow from them are among {@link #rules()} and {@link #laws()}. */
	public List<Chain> chains() {
		return chains;
	}

	public Optional<Chain> chain(String name) {
		return Optional.ofNullable(chainByName.get(name));
	}

	/** Returns whether a rule follows from a chain, so that it stands nowhere in the text itself. */
	public boolean isOfChain(String rule) {
		return ofChains.contains(rule);
	}

	/** Returns whether some rule or law asks in what state a code is, and not only whether it is present. */
	public boolean asksForState(String code) {
		return withStates.contains(code);
	}

	/** Returns what a review can be of: a rule or a chain. */
	public Optional<Named> reviewable(String name) {
		return rule(name).<Named>map(rule -> rule).or(() -> chain(name));
	}

	/** Returns what a rule or a chain means, as reviews carry it; empty for an unknown name. */
	public Optional<String> meaning(String name) {
		return rule(name).map(Meaning::fingerprint).or(() -> chain(name).map(Meaning::fingerprint));
	}

	public List<Rule> rules() {
		return rules;
	}

	public List<Repair> repairs() {
		return repairs;
	}

	/** Returns the repairs that put a fault right, on whatever vehicles. */
	public List<Repair> repairsOf(String fault) {
		return repairsByFault.getOrDefault(fault, List.of());
	}

	public List<Case> cases() {
		return cases;
	}

	/** Returns what the project and each that it builds on asks for; only {@link #signOff} holds. */
	public List<SignOff> signOffs() {
		return signOffs;
	}

	/** Returns what the project asks for before its own rules count as agreed; what it builds on has rules and a sign-off of its own. */
	public Optional<SignOff> signOff() {
		return signOffs.stream().filter(one -> !one.span().isElsewhere()).findFirst();
	}

	public List<Reviewer> reviewers() {
		return reviewers;
	}

	public List<Review> reviews() {
		return reviews;
	}

	/** Returns the reviews of a rule or a chain, also of earlier meanings. */
	public List<Review> reviewsOf(String rule) {
		return reviewsByRule.getOrDefault(rule, List.of());
	}

	public List<Remark> remarks() {
		return remarks;
	}

	public List<Acceptance> acceptances() {
		return acceptances;
	}

	/** Returns what is known of what the author wrote and what is not here, as its text is wrong. */
	public List<LeftOut> leftOut() {
		return leftOut;
	}

	/** Returns what it builds on, in the order of the text; all elements of these are here too. */
	public List<BuiltOn> builtOn() {
		return builtOn;
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

	/** Returns the test that is done to find out what a test says: the one that it is seen with, or itself. */
	public Test doneBy(Test test) {
		return test.seenWith().flatMap(this::test).orElse(test);
	}

	/** Returns the vehicles on which a test can be done; one that is seen with another and says nothing of them, on those of that one. */
	public Scope scopeOf(Test test) {
		return test.scope().isEvery() ? doneBy(test).scope() : test.scope();
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

	/** Returns the family, its systems and those it builds on, itself first; empty for an unknown family. */
	public List<String> lineage(String family) {
		return lineage.getOrDefault(family, List.of());
	}

	/** Returns what cycling a state means in a family: as the family says, else its systems or what it builds on. */
	public Optional<Cycle> cycle(String family, String state) {
		return lineage(family).stream().flatMap(name -> family(name).stream()).flatMap(found -> found.cycles().stream())
				.filter(cycle -> cycle.state().equals(state)).findFirst();
	}

	/** Returns the family and all that build on it or have it, in the order of declaration. */
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

	/** Returns whether a scope reaches some vehicle of a family. */
	public boolean reaches(Scope scope, String family) {
		return reaches(scope.families(), family) && (scope.except().isEmpty() || !reaches(scope.except(), family));
	}

	/** Returns the vehicles on which a sign or a test makes sense; every vehicle for another name. */
	public Scope scopeOf(String finding) {
		return sign(finding).map(Sign::scope).or(() -> test(finding).map(this::scopeOf)).orElse(Scope.EVERY);
	}

	/** Returns whether a list of families, as written on a module or a law, reaches the family; an empty list does. */
	public boolean reaches(List<String> named, String family) {
		return named.isEmpty() || lineage(family).stream().anyMatch(named::contains);
	}

	/** Collects elements and makes a rule base of them. */
	public static final class Builder {

		public final String name;
		public final List<Family> families = new ArrayList<>();
		public final List<State> states = new ArrayList<>();
		public final List<Tool> tools = new ArrayList<>();
		public final List<Workshop> workshops = new ArrayList<>();
		public final List<Hazard> hazards = new ArrayList<>();
		public final List<Module> modules = new ArrayList<>();
		public final List<Code> codes = new ArrayList<>();
		public final List<Sign> signs = new ArrayList<>();
		public final List<Part> parts = new ArrayList<>();
		public final List<Exclusive> exclusives = new ArrayList<>();
		public final List<Test> tests = new ArrayList<>();
		public final List<Law> laws = new ArrayList<>();
		public final List<Chain> chains = new ArrayList<>();
		public final List<Rule> rules = new ArrayList<>();
		public final List<Repair> repairs = new ArrayList<>();
		public final List<Case> cases = new ArrayList<>();
		public final List<SignOff> signOffs = new ArrayList<>();
		public final List<Reviewer> reviewers = new ArrayList<>();
		public final List<Review> reviews = new ArrayList<>();
		public final List<Remark> remarks = new ArrayList<>();
		public final List<Acceptance> acceptances = new ArrayList<>();
		public final List<LeftOut> leftOut = new ArrayList<>();
		public final List<BuiltOn> builtOn = new ArrayList<>();

		/** @param name the project's name */
		public Builder(String name) {
			this.name = name;
		}

		/** Appends all that another one has collected, so that files can be translated one by one. */
		public Builder add(Builder other) {
			return add(other.unchecked());
		}

		/** Appends all elements of another rule base. */
		public Builder add(RuleBase other) {
			families.addAll(other.families);
			states.addAll(other.states);
			tools.addAll(other.tools);
			workshops.addAll(other.workshops);
			hazards.addAll(other.hazards);
			modules.addAll(other.modules);
			codes.addAll(other.codes);
			signs.addAll(other.signs);
			parts.addAll(other.parts);
			exclusives.addAll(other.exclusives);
			tests.addAll(other.tests);
			laws.addAll(other.laws);
			chains.addAll(other.chains);
			rules.addAll(other.rules);
			repairs.addAll(other.repairs);
			cases.addAll(other.cases);
			signOffs.addAll(other.signOffs);
			reviewers.addAll(other.reviewers);
			reviews.addAll(other.reviews);
			remarks.addAll(other.remarks);
			acceptances.addAll(other.acceptances);
			leftOut.addAll(other.leftOut);
			builtOn.addAll(other.builtOn);
			return this;
		}

		/**
		 * Makes a rule base of all elements.
		 *
		 * @throws References.Missing if an element speaks of something that was not added; it says which one and of what
		 */
		public RuleBase build() {
			RuleBase base = unchecked();
			References.check(base);
			return base;
		}

		/**
		 * Makes a rule base of the elements that are whole: without those that speak of something that was not added, as
		 * because of an error, and without those that speak of them.
		 *
		 * @param dropped hears of each element that goes, as {@code kind name}
		 */
		public RuleBase whole(Consumer<String> dropped) {
			return References.whole(unchecked(), dropped);
		}

		RuleBase unchecked() {
			return new RuleBase(this);
		}
	}
}
