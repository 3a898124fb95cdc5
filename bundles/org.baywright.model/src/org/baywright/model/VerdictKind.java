package org.baywright.model;

/** What a rule can say of a fault. */
public enum VerdictKind {
	CONFIRMED, SUSPECTED, CLEARED;

	/** Returns the verb of the language: {@code confirms}, {@code suspects}, {@code clears}. */
	public String verb() {
		return switch (this) {
		case CONFIRMED -> "confirms";
		case SUSPECTED -> "suspects";
		case CLEARED -> "clears";
		};
	}

	/** Returns the word of the language for the verdict once it stands: {@code confirmed} and so on. */
	public String word() {
		return name().toLowerCase(java.util.Locale.ROOT);
	}
}
