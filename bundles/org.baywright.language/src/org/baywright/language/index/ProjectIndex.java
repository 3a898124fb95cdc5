package org.baywright.language.index;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.baywright.model.Span;

/**
 * All names of a project. Look-ups are by hash. Not safe for use by several threads; the workspace guards it.
 */
public final class ProjectIndex {

	/** The order of files: those of what a project builds on come first, so that of two equal names its own is the second. */
	public static final Comparator<String> FILES = Comparator.comparing((String file) -> !Span.isElsewhere(file))
			.thenComparing(Comparator.naturalOrder());

	private final Map<String, List<Symbol>> byFile = new TreeMap<>(FILES);
	private final Map<Key, List<Symbol>> byKey = new HashMap<>();

	/**
	 * What can be looked up.
	 *
	 * @param what kind of look-up, see the factory methods
	 * @param name the name looked up
	 */
	public record Key(String what, String name) {

		/** Any change of a name anywhere; needed by whoever suggests names. */
		public static final Key EVERYTHING = new Key("*", "");

		/** All families. */
		public static final Key FAMILIES = new Key("families", "");

		/** The declarations of one kind with one name. */
		public static Key of(Kind kind, String name) {
			return new Key(kind.word(), name);
		}

		/** Whatever a condition can mean by a name. */
		public static Key subject(String name) {
			return new Key("subject", name);
		}

		/** The families that directly build on one. */
		public static Key children(String family) {
			return new Key("children", family);
		}

		/** The own traits of a family. */
		public static Key traits(String family) {
			return new Key("traits", family);
		}
	}

	/** Returns what was declared under a key, in the order of files and their text. */
	public List<Symbol> get(Key key) {
		return byKey.getOrDefault(key, List.of());
	}

	/** Returns all names of one kind, in the order of files and their text. Walks the project: only for suggestions. */
	public List<Symbol> all(Kind kind) {
		List<Symbol> found = new ArrayList<>();
		for (List<Symbol> symbols : byFile.values()) {
			for (Symbol symbol : symbols) {
				if (symbol.kind() == kind) {
					found.add(symbol);
				}
			}
		}
		return found;
	}

	/**
	 * Replaces the names of one file.
	 *
	 * @param file the file
	 * @param symbols what it declares now; empty if it is gone
	 * @return the keys under which something else is found than before
	 */
	public Set<Key> replace(String file, List<Symbol> symbols) {
		List<Symbol> old = symbols.isEmpty() ? byFile.remove(file) : byFile.put(file, symbols);
		if (old == null) {
			old = List.of();
		}
		Set<Key> touched = new HashSet<>();
		old.forEach(symbol -> touched.addAll(keys(symbol)));
		symbols.forEach(symbol -> touched.addAll(keys(symbol)));
		Map<Key, List<Symbol>> before = new HashMap<>();
		for (Key key : touched) {
			before.put(key, get(key));
			List<Symbol> others = new ArrayList<>(get(key));
			others.removeIf(symbol -> symbol.file().equals(file));
			byKey.put(key, others);
		}
		for (Symbol symbol : symbols) {
			keys(symbol).forEach(key -> byKey.get(key).add(symbol));
		}
		Set<Key> changed = new HashSet<>();
		for (Key key : touched) {
			List<Symbol> now = byKey.get(key);
			// sorting is stable, so the order of the text survives within a file
			now.sort(Comparator.comparing(Symbol::file, FILES));
			if (now.isEmpty()) {
				byKey.remove(key);
			}
			if (!sameMeaning(before.get(key), now)) {
				changed.add(key);
			}
		}
		if (!changed.isEmpty()) {
			changed.add(Key.EVERYTHING);
		}
		return changed;
	}

	private static boolean sameMeaning(List<Symbol> one, List<Symbol> other) {
		if (one.size() != other.size()) {
			return false;
		}
		for (int i = 0; i < one.size(); i++) {
			Symbol left = one.get(i);
			Symbol right = other.get(i);
			if (left.kind() != right.kind() || !left.name().equals(right.name()) || !left.file().equals(right.file())
					|| !Objects.equals(left.facts(), right.facts())) {
				return false;
			}
		}
		return true;
	}

	private static Collection<Key> keys(Symbol symbol) {
		List<Key> keys = new ArrayList<>(3);
		keys.add(Key.of(symbol.kind(), symbol.name()));
		if (symbol.kind().isSubject()) {
			keys.add(Key.subject(symbol.name()));
		}
		if (symbol.kind() == Kind.FAMILY) {
			keys.add(Key.FAMILIES);
			Facts.OfFamily family = (Facts.OfFamily) symbol.facts();
			family.parent().ifPresent(parent -> keys.add(Key.children(parent)));
			family.systems().forEach(system -> keys.add(Key.children(system)));
		}
		if (symbol.facts() instanceof Facts.OfTrait trait) {
			keys.add(Key.traits(trait.family()));
		}
		return keys;
	}
}
