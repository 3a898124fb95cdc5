package org.baywright.language.index;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.baywright.language.index.ProjectIndex.Key;

/** Families as they build on each other, and the traits that hold in them. */
public final class FamilyTree {

	private final Function<Key, List<Symbol>> index;

	/** @param index looks names up, and may keep a record of what was looked up */
	public FamilyTree(Function<Key, List<Symbol>> index) {
		this.index = index;
	}

	/**
	 * A trait as a set of families knows it.
	 *
	 * @param declarations its declarations there that are whole, without doubles
	 * @param missing vehicle families that lack it
	 * @param wrong whether a declaration is wrong, which is reported where it stands
	 */
	public record TraitView(List<Symbol> declarations, List<String> missing, boolean wrong) {

		/** Returns what the declarations say, without doubles. */
		public List<Facts.OfTrait> facts() {
			return declarations.stream().map(symbol -> (Facts.OfTrait) symbol.facts()).distinct().toList();
		}
	}

	/** Returns what is known of a family. */
	public Optional<Facts.OfFamily> facts(String family) {
		List<Symbol> found = index.apply(Key.of(Kind.FAMILY, family));
		return found.isEmpty() ? Optional.empty() : Optional.of((Facts.OfFamily) found.get(0).facts());
	}

	/** Returns the family, its systems and those it builds on, itself first; ends where a circle closes. */
	public List<String> lineage(String family) {
		Set<String> line = new LinkedHashSet<>();
		climb(family, line);
		return List.copyOf(line);
	}

	private void climb(String family, Set<String> line) {
		if (line.add(family)) {
			above(family).forEach(each -> climb(each, line));
		}
	}

	/** Returns the way up from a family to another one, both included; empty if there is none. */
	public List<String> path(String from, String to) {
		return Ways.between(from, to, this::above);
	}

	/** Returns the systems that a family has, then the family that it is like. */
	private List<String> above(String family) {
		List<String> above = new ArrayList<>();
		facts(family).ifPresent(facts -> {
			above.addAll(facts.systems());
			facts.parent().ifPresent(above::add);
		});
		return above;
	}

	/** Returns the traits that two families both have, with unlike values. */
	public List<String> unlike(String one, String other) {
		List<String> unlike = new ArrayList<>();
		for (Symbol mine : traits(one)) {
			Optional<Symbol> theirs = trait(other, mine.name());
			Facts.OfTrait a = (Facts.OfTrait) mine.facts();
			if (theirs.isPresent() && theirs.get().facts() instanceof Facts.OfTrait b
					&& !(a.word().equals(b.word()) && a.domain().equals(b.domain()))) {
				unlike.add(mine.name());
			}
		}
		return unlike;
	}

	/** Returns the states that two families both cycle, in unlike ways. */
	public List<String> unlikeCycles(String one, String other) {
		Map<String, String> mine = cycles(one);
		Map<String, String> theirs = cycles(other);
		return mine.keySet().stream().filter(state -> theirs.containsKey(state) && !theirs.get(state).equals(mine.get(state))).sorted()
				.toList();
	}

	/** Returns the cycles that hold in a family, its own or the nearest inherited ones, as they are written. */
	private Map<String, String> cycles(String family) {
		Map<String, String> cycles = new TreeMap<>();
		for (String ancestor : lineage(family)) {
			facts(ancestor).ifPresent(facts -> facts.cycles().forEach(cycles::putIfAbsent));
		}
		return cycles;
	}

	/** Returns the families, in their order, and then all that build on them. */
	public Set<String> withDescendants(List<String> families) {
		Set<String> all = new LinkedHashSet<>();
		Deque<String> open = new ArrayDeque<>(families);
		while (!open.isEmpty()) {
			String family = open.remove();
			if (all.add(family)) {
				index.apply(Key.children(family)).forEach(child -> open.add(child.name()));
			}
		}
		return all;
	}

	/** Returns the trait as it holds in a family, its own or the nearest inherited one. */
	public Optional<Symbol> trait(String family, String trait) {
		for (String ancestor : lineage(family)) {
			for (Symbol symbol : index.apply(Key.traits(ancestor))) {
				if (symbol.name().equals(trait)) {
					return Optional.of(symbol);
				}
			}
		}
		return Optional.empty();
	}

	/** Returns all traits that hold in a family, nearest first. */
	public List<Symbol> traits(String family) {
		List<Symbol> traits = new ArrayList<>();
		Set<String> names = new LinkedHashSet<>();
		for (String ancestor : lineage(family)) {
			for (Symbol symbol : index.apply(Key.traits(ancestor))) {
				if (names.add(symbol.name())) {
					traits.add(symbol);
				}
			}
		}
		return traits;
	}

	/** Returns the trait as the families know it; no families means any family. */
	public TraitView view(List<String> families, String trait) {
		Set<Symbol> found = new LinkedHashSet<>();
		List<String> missing = new ArrayList<>();
		if (families.isEmpty()) {
			found.addAll(index.apply(Key.of(Kind.TRAIT, trait)));
		} else {
			for (String family : withDescendants(families)) {
				Optional<Symbol> own = trait(family, trait);
				own.ifPresent(found::add);
				if (own.isEmpty() && !facts(family).map(Facts.OfFamily::base).orElse(true)) {
					missing.add(family);
				}
			}
		}
		boolean wrong = found.removeIf(symbol -> ((Facts.OfTrait) symbol.facts()).domain().isEmpty());
		return new TraitView(List.copyOf(found), missing, wrong);
	}

	/** Returns whether a list of families, as written on a module, reaches the family; an empty list does. */
	public boolean reaches(List<String> named, String family) {
		return named.isEmpty() || lineage(family).stream().anyMatch(named::contains);
	}

	/** Returns whether something found makes sense on vehicles of the family. */
	public boolean reaches(Facts.Reach reach, String family) {
		return reaches(reach.families(), family) && (reach.except().isEmpty() || !reaches(reach.except(), family));
	}

	/** Returns whether something found makes sense on some vehicle of the families; no families means any family. */
	public boolean reachesAny(Facts.Reach reach, List<String> families) {
		boolean every = reach.families().isEmpty() && reach.except().isEmpty();
		return every || families.isEmpty() || withDescendants(families).stream().anyMatch(family -> reaches(reach, family));
	}

	/** Returns whether a module is fitted in any vehicle of the families; no families means any family. */
	public boolean anyHas(List<String> families, List<String> fittedIn) {
		return families.isEmpty() || fittedIn.isEmpty()
				|| withDescendants(families).stream().anyMatch(family -> reaches(fittedIn, family));
	}
}
