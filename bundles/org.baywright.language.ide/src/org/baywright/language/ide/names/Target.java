package org.baywright.language.ide.names;

import java.util.Optional;
import org.baywright.language.index.Kind;

/**
 * A thing that a name means. Traits of one name are one thing, whatever family they belong to, and so are their values.
 *
 * @param kind what it is, or the kind of its owner if it is a value
 * @param name its name, {@code part.fault} for a fault; the owner's name if it is a value
 * @param value the value's name, if it is a value of a test, a state or a trait
 */
public record Target(Kind kind, String name, Optional<String> value) implements Comparable<Target> {

	static Target of(Kind kind, String name) {
		return new Target(kind, name, Optional.empty());
	}

	/** Returns the name by which it is called where it is used, without owner or part. */
	public String simpleName() {
		return value.orElseGet(() -> name.substring(name.lastIndexOf('.') + 1));
	}

	/** Returns what a technician calls this kind of thing. */
	public String word() {
		return value.isPresent() ? "value" : kind.word();
	}

	@Override
	public int compareTo(Target other) {
		int byKind = kind.compareTo(other.kind);
		int byName = byKind != 0 ? byKind : name.compareTo(other.name);
		return byName != 0 ? byName : value.orElse("").compareTo(other.value.orElse(""));
	}
}
