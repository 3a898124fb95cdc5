package org.baywright.model;

/** What asking a module for a code can give, and what an author can ask of it. */
public enum CodeReading {
	/** The module answered and holds the code. */
	PRESENT,
	/** The module answered and does not hold the code. */
	ABSENT,
	/** The module is silent: the code is neither present nor absent. */
	UNREAD,
	/** Not seen: absent or unread. Proves less than it seems; only a condition can ask for it. */
	MISSING
}
