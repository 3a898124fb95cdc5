package org.baywright.language.translate;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.baywright.language.index.Facts;
import org.baywright.language.index.Kind;
import org.baywright.language.index.ProjectIndex.Key;
import org.baywright.language.index.Symbol;

/** Families as they build on each other, and the traits that hold in them. */
final class Families {

	private final Context context;

	Families(Context context) {
		this.context = context;
	}

	/**
	 * A trait as a set of families knows it.
	 *
	 * @param domains its declarations there, without doubles
	 * @param missing vehicle families that lack it
	 * @param wrong whether a declaration is wrong, which is reported where it stands
	 */
	record TraitView(List<Facts.OfTrait> domains, List<String> missing, boolean wrong) {
	}

	Optional<Facts.OfFamily> facts(String family) {
		return context.find(Kind.FAMILY, family).map(symbol -> (Facts.OfFamily) symbol.facts());
	}

	/** Returns the family and those it builds on, itself first; ends where a circle closes. */
	List<String> lineage(String family) {
		Set<String> line = new LinkedHashSet<>();
		Optional<String> next = Optional.of(family);
		while (next.isPresent() && line.add(next.get())) {
			next = facts(next.get()).flatMap(Facts.OfFamily::parent);
		}
		return List.copyOf(line);
	}

	/** Returns the families and all that build on them. */
	Set<String> withDescendants(List<String> families) {
		Set<String> all = new LinkedHashSet<>();
		List<String> open = new ArrayList<>(families);
		while (!open.isEmpty()) {
			String family = open.remove(open.size() - 1);
			if (all.add(family)) {
				context.find(Key.children(family)).forEach(child -> open.add(child.name()));
			}
		}
		return all;
	}

	/** Returns the trait as it holds in a family, its own or the nearest inherited one. */
	Optional<Facts.OfTrait> trait(String family, String trait) {
		for (String ancestor : lineage(family)) {
			for (Symbol symbol : context.find(Key.traits(ancestor))) {
				if (symbol.name().equals(trait)) {
					return Optional.of((Facts.OfTrait) symbol.facts());
				}
			}
		}
		return Optional.empty();
	}

	/** Returns the names of all traits that hold in a family, nearest first. */
	List<String> traitNames(String family) {
		Set<String> names = new LinkedHashSet<>();
		for (String ancestor : lineage(family)) {
			context.find(Key.traits(ancestor)).forEach(symbol -> names.add(symbol.name()));
		}
		return List.copyOf(names);
	}

	/** Returns the trait as the families know it; no families means any family. */
	TraitView view(List<String> families, String trait) {
		Set<Facts.OfTrait> found = new LinkedHashSet<>();
		List<String> missing = new ArrayList<>();
		if (families.isEmpty()) {
			context.find(Key.of(Kind.TRAIT, trait)).forEach(symbol -> found.add((Facts.OfTrait) symbol.facts()));
		} else {
			for (String family : withDescendants(families)) {
				Optional<Facts.OfTrait> own = trait(family, trait);
				own.ifPresent(found::add);
				if (own.isEmpty() && !facts(family).map(Facts.OfFamily::base).orElse(true)) {
					missing.add(family);
				}
			}
		}
		boolean wrong = found.removeIf(facts -> facts.domain().isEmpty());
		return new TraitView(List.copyOf(found), missing, wrong);
	}

	/** Returns whether a list of families, as written on a module, reaches the family; an empty list does. */
	boolean reaches(List<String> named, String family) {
		return named.isEmpty() || lineage(family).stream().anyMatch(named::contains);
	}

	/** Returns whether a module is fitted in any vehicle of the families; no families means any family. */
	boolean anyHas(List<String> families, List<String> fittedIn) {
		return families.isEmpty() || fittedIn.isEmpty()
				|| withDescendants(families).stream().anyMatch(family -> reaches(fittedIn, family));
	}
}
