package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.Effect;
import org.baywright.analysis.Reach;
import org.baywright.model.Code;
import org.baywright.model.Family;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Module;
import org.baywright.model.Named;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Sign;
import org.baywright.model.Trait;

/**
 * Compares what two rule bases derive, in every situation. Only what a change can reach is looked at: the verdicts of
 * rules that are not the same in both, and what rests on these.
 */
public final class Contrast {

	private final Contrasted old;
	private final Contrasted now;
	private final int conflictLimit;
	private final Map<List<Object>, Set<String>> effects = new LinkedHashMap<>();
	private final Map<List<Object>, Set<String>> reaches = new LinkedHashMap<>();
	private final Set<String> undecided = new TreeSet<>();
	private final Map<Object, Outcome> memory = new HashMap<>();
	private boolean more;

	/** What one slice of one family shows. */
	private record Outcome(List<List<Object>> effects, List<List<Object>> reaches, List<String> undecided, boolean more) {
	}

	/** What is compared of one family. */
	private record Slice(List<Rule> oldRules, List<Rule> nowRules, List<Law> oldLaws, List<Law> nowLaws, Set<Verdict> targets, Set<Rule> edited, Set<Rule> affected, boolean lawsDiffer) {
	}

	/**
	 * @param old the rule base as it was, in which every name is that of now
	 * @param now the rule base as it is
	 * @param conflictLimit conflicts after which a question stays undecided, 1 or more
	 */
	public Contrast(RuleBase old, RuleBase now, int conflictLimit) {
		this.conflictLimit = conflictLimit;
		Set<Variable> altered = altered(old, now);
		Map<String, Integer> numbers = new HashMap<>();
		this.old = new Contrasted(old, altered, numbers, "before ");
		this.now = new Contrasted(now, altered, numbers, "now ");
	}

	/**
	 * Compares all families that are in both.
	 *
	 * @throws CancellationException if the listener asked to stop
	 */
	public void run(Listener listener) {
		List<Family> families = now.base.vehicleFamilies().stream().filter(family -> old.base.family(family.name()).filter(was -> !was.base()).isPresent()).toList();
		for (int i = 0; i < families.size(); i++) {
			if (listener.isCancelled()) {
				throw new CancellationException();
			}
			String family = families.get(i).name();
			Slice slice = slice(family);
			if (!slice.targets().isEmpty() || slice.lawsDiffer()) {
				Outcome outcome = memory.computeIfAbsent(signature(family, slice), key -> compare(family, slice));
				outcome.effects().forEach(effect -> effects.computeIfAbsent(effect, key -> new LinkedHashSet<>()).add(family));
				outcome.reaches().forEach(reach -> reaches.computeIfAbsent(reach, key -> new LinkedHashSet<>()).add(family));
				undecided.addAll(outcome.undecided());
				more |= outcome.more();
			}
			listener.progress(i + 1, families.size());
		}
	}

	/** Returns what changes, each in all families in which it does. */
	public List<Effect> effects() {
		List<Effect> all = new ArrayList<>();
		effects.forEach((key, families) -> {
			Parting.Region region = (Parting.Region) key.get(1);
			all.add(new Effect((Effect.Kind) key.get(0), region.direct(), List.copyOf(families), region.facts(), region.open(), region.domains(), region.with(), region.without(), region.anyway(), region.lost(), region.gained()));
		});
		return all;
	}

	/** Returns the verdicts that can come out in some family and could not before, or the other way round. */
	public List<Reach> reaches() {
		List<Reach> all = new ArrayList<>();
		reaches.forEach((key, families) -> all.add(new Reach((Verdict) key.get(0), List.copyOf(families), (Boolean) key.get(1))));
		return all;
	}

	/** Returns the questions that a limit left open, sorted. */
	public List<String> undecided() {
		return List.copyOf(undecided);
	}

	/** Returns whether there are more effects than were listed. */
	public boolean hasMore() {
		return more;
	}

	// ---- what a change reaches -----------------------------------------------------------------------------------

	/** Returns the findings of which rules can mean something else now. */
	private static Set<Variable> altered(RuleBase old, RuleBase now) {
		Set<Variable> altered = new HashSet<>();
		Map<Variable.Kind, List<Collection<? extends Named>>> all = Map.of(Variable.Kind.SIGN, List.of(old.signs(), now.signs()), Variable.Kind.TEST,
				List.of(old.tests(), now.tests()), Variable.Kind.MODULE, List.of(old.modules(), now.modules()), Variable.Kind.CODE, List.of(old.codes(), now.codes()));
		all.forEach((kind, both) -> both.stream().flatMap(Collection::stream).map(named -> new Variable(kind, named.name()))
				.filter(variable -> !World.describe(old, variable).equals(World.describe(now, variable))).forEach(altered::add));
		return altered;
	}

	private Slice slice(String family) {
		Set<Integer> changed = new TreeSet<>(differing(old.rulesOf(family).stream().map(rule -> old.number(rule)).toList(),
				now.rulesOf(family).stream().map(rule -> now.number(rule)).toList()));
		Set<Rule> starts = Collections.newSetFromMap(new IdentityHashMap<>());
		Set<String> traits = alteredTraits(family);
		boolean lawsDiffer = lawsDiffer(family, traits);
		for (Contrasted side : List.of(old, now)) {
			side.rulesOf(family).stream().filter(rule -> changed.contains(side.number(rule)) || !traits.isEmpty() && side.speaksOf(rule, traits)).forEach(starts::add);
		}
		if (starts.isEmpty() && !lawsDiffer) {
			return new Slice(List.of(), List.of(), List.of(), List.of(), Set.of(), Set.of(), Set.of(), false);
		}
		Map<String, Set<String>> wasAnswering = old.answering(family);
		Map<String, Set<String>> isAnswering = now.answering(family);
		Set<String> signs = new TreeSet<>(wasAnswering.keySet());
		signs.addAll(isAnswering.keySet());
		signs.removeIf(sign -> Objects.equals(wasAnswering.get(sign), isAnswering.get(sign)));
		for (Contrasted side : List.of(old, now)) {
			side.rulesOf(family).stream().filter(rule -> side.unexplained(rule).stream().anyMatch(signs::contains)).forEach(starts::add);
		}
		Set<Rule> edited = Collections.newSetFromMap(new IdentityHashMap<>());
		edited.addAll(starts);
		Set<Verdict> targets = forward(family, starts);
		Set<Verdict> needed = backward(family, targets);
		List<Rule> oldRules = old.concluding(family, needed);
		List<Rule> nowRules = now.concluding(family, needed);
		return withLaws(family, new Slice(oldRules, nowRules, List.of(), List.of(), targets, edited, starts, lawsDiffer));
	}

	/** Returns the numbers that are not as often in one list as in the other. */
	private static Set<Integer> differing(List<Integer> some, List<Integer> others) {
		Map<Integer, Integer> counts = new HashMap<>();
		some.forEach(number -> counts.merge(number, 1, Integer::sum));
		others.forEach(number -> counts.merge(number, -1, Integer::sum));
		counts.values().removeIf(count -> count == 0);
		return counts.keySet();
	}

	private Set<String> alteredTraits(String family) {
		Map<String, Trait> was = old.base.traitsOf(family);
		Map<String, Trait> is = now.base.traitsOf(family);
		if (was.equals(is)) {
			return Set.of();
		}
		Set<String> names = new TreeSet<>(was.keySet());
		names.addAll(is.keySet());
		names.removeIf(name -> was.containsKey(name) && is.containsKey(name)
				&& Meaning.text(was.get(name).domain()).equals(Meaning.text(is.get(name).domain())));
		return names;
	}

	private boolean lawsDiffer(String family, Set<String> traits) {
		List<Law> was = old.lawsOf(family);
		List<Law> is = now.lawsOf(family);
		return !was.stream().map(old::text).sorted().toList().equals(is.stream().map(now::text).sorted().toList())
				|| !traits.isEmpty() && Stream.concat(was.stream(), is.stream()).anyMatch(law -> Footprint.of(law).traits().stream().anyMatch(traits::contains));
	}

	/** Returns the verdicts of the rules and of all that looks at them, in turn; these rules join the others. */
	private Set<Verdict> forward(String family, Set<Rule> starts) {
		Set<Verdict> reached = new TreeSet<>();
		List<Verdict> open = new ArrayList<>();
		List.copyOf(starts).forEach(rule -> Contrasted.concludes(rule).filter(reached::add).forEach(open::add));
		while (!open.isEmpty()) {
			Verdict verdict = open.remove(open.size() - 1);
			for (Contrasted side : List.of(old, now)) {
				side.looking(family, verdict).filter(starts::add).forEach(rule -> Contrasted.concludes(rule).filter(reached::add).forEach(open::add));
			}
		}
		return reached;
	}

	/** Returns the verdicts and all on which they rest, in turn. */
	private Set<Verdict> backward(String family, Set<Verdict> targets) {
		Set<Verdict> needed = new TreeSet<>(targets);
		List<Verdict> open = new ArrayList<>(targets);
		while (!open.isEmpty()) {
			Set<Verdict> one = Set.of(open.remove(open.size() - 1));
			for (Contrasted side : List.of(old, now)) {
				side.concluding(family, one).forEach(rule -> side.looksAt(family, rule).filter(needed::add).forEach(open::add));
			}
		}
		return needed;
	}

	/** Laws that share a finding or a trait with what is compared, or with such a law, can rule some of it out. */
	private Slice withLaws(String family, Slice slice) {
		Set<Object> spoken = new HashSet<>();
		slice.oldRules().forEach(rule -> spoken.addAll(subjects(old.base, Footprint.of(rule))));
		slice.nowRules().forEach(rule -> spoken.addAll(subjects(now.base, Footprint.of(rule))));
		Map<Boolean, List<Law>> all = Map.of(false, old.lawsOf(family), true, now.lawsOf(family));
		Map<Boolean, Set<Law>> taken = Map.of(false, Collections.newSetFromMap(new IdentityHashMap<>()), true,
				Collections.newSetFromMap(new IdentityHashMap<>()));
		if (slice.lawsDiffer()) {
			all.forEach((isNow, laws) -> taken.get(isNow).addAll(laws));
		}
		boolean grown = true;
		while (grown) {
			grown = false;
			for (boolean isNow : new boolean[] { false, true }) {
				for (Law law : all.get(isNow)) {
					Set<Object> subjects = subjects(isNow ? now.base : old.base, Footprint.of(law));
					if (!taken.get(isNow).contains(law) && subjects.stream().anyMatch(spoken::contains)) {
						taken.get(isNow).add(law);
						spoken.addAll(subjects);
						grown = true;
					}
				}
			}
		}
		return new Slice(slice.oldRules(), slice.nowRules(), all.get(false).stream().filter(taken.get(false)::contains).toList(),
				all.get(true).stream().filter(taken.get(true)::contains).toList(), slice.targets(), slice.edited(), slice.affected(), slice.lawsDiffer());
	}

	private static Set<Object> subjects(RuleBase base, Footprint print) {
		Set<Object> subjects = new HashSet<>(print.findings());
		subjects.addAll(Footprint.traits(base, print));
		print.findings().stream().filter(finding -> finding.kind() == Variable.Kind.CODE).flatMap(finding -> base.code(finding.name()).stream())
				.map(Code::module).map(module -> new Variable(Variable.Kind.MODULE, module)).forEach(subjects::add);
		return subjects;
	}

	// ---- comparing -----------------------------------------------------------------------------------------------

	/** Returns what the answer for a family depends on. */
	private Object signature(String family, Slice slice) {
		List<Object> parts = new ArrayList<>();
		Set<String> names = new TreeSet<>();
		Set<Variable> findings = new TreeSet<>();
		for (Contrasted side : List.of(old, now)) {
			List<Rule> rules = side == old ? slice.oldRules() : slice.nowRules();
			List<Law> laws = side == old ? slice.oldLaws() : slice.nowLaws();
			parts.add(rules.stream().map(Rule::name).toList());
			parts.add(laws.stream().map(side::text).sorted().toList());
			parts.add(side.answering(family));
			Stream.concat(rules.stream().map(Footprint::of), laws.stream().map(Footprint::of)).forEach(print -> {
				names.addAll(Footprint.traits(side.base, print));
				findings.addAll(print.findings());
			});
		}
		for (RuleBase base : List.of(old.base, now.base)) {
			parts.add(names.stream().map(name -> base.traitsOf(family).get(name)).map(trait -> trait == null ? "-" : Meaning.text(trait.domain())).toList());
			parts.add(findings.stream().map(finding -> isFitted(base, family, finding)).toList());
		}
		parts.add(slice.targets());
		return parts;
	}

	private static boolean isFitted(RuleBase base, String family, Variable finding) {
		return switch (finding.kind()) {
		case SIGN -> base.sign(finding.name()).map(Sign::scope).filter(scope -> base.reaches(scope, family)).isPresent();
		case TEST -> base.test(finding.name()).map(base::scopeOf).filter(scope -> base.reaches(scope, family)).isPresent();
		case CODE -> base.code(finding.name()).map(Code::module).flatMap(base::module).map(Module::families).filter(all -> base.reaches(all, family)).isPresent();
		default -> base.module(finding.name()).map(Module::families).filter(all -> base.reaches(all, family)).isPresent();
		};
	}

	private Outcome compare(String family, Slice slice) {
		Ground ground = new Ground(old.base, now.base, family);
		List<Program> programs = ProgramBuilder.beside(
				new ProgramBuilder(old.base, ground, family, slice.oldRules(), slice.oldLaws(), List.of(), old.answering(family)),
				new ProgramBuilder(now.base, ground, family, slice.nowRules(), slice.nowLaws(), List.of(), now.answering(family)));
		if (!programs.get(0).isStratified() || !programs.get(1).isStratified()) {
			return new Outcome(List.of(), List.of(), List.of("what changes in " + family + ", as rules go round in a circle"), false);
		}
		Parting parting = new Parting(programs.get(0), programs.get(1), slice.targets(), slice.edited()::contains, slice.affected()::contains, conflictLimit);
		List<List<Object>> found = new ArrayList<>();
		parting.regions().forEach(region -> found.add(List.of(Effect.Kind.VERDICTS, region)));
		if (slice.lawsDiffer()) {
			parting.allowed().forEach(region -> found.add(List.of(Effect.Kind.POSSIBLE, region)));
			parting.forbidden().forEach(region -> found.add(List.of(Effect.Kind.IMPOSSIBLE, region)));
		}
		Set<Verdict> was = parting.reached(false);
		Set<Verdict> is = parting.reached(true);
		List<List<Object>> reached = new ArrayList<>();
		slice.targets().stream().filter(verdict -> was.contains(verdict) != is.contains(verdict)).forEach(verdict -> reached.add(List.of(verdict, is.contains(verdict))));
		return new Outcome(found, reached, parting.undecided(), parting.hasMore());
	}
}
