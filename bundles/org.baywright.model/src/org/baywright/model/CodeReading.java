package org.baywright.model;

import java.util.EnumSet;
import java.util.Set;

/**
 * What asking a module for a code can give, and what an author can ask of it. Modules that keep a status for each code
 * tell more than present and absent: ISO 14229-1 and SAE J1939-73 name the same states, see {@link CodeStatus}.
 */
public enum CodeReading {
	/** The module answered and holds the code, whatever its state. */
	PRESENT,
	/** The module answered, has tested since its codes were cleared, and does not hold the code. */
	ABSENT,
	/** The module is silent: the code is neither present nor absent. */
	UNREAD,
	/** Present, and the module finds the fault right now. */
	ACTIVE,
	/** Present and confirmed, but the module does not find the fault right now. */
	STORED,
	/** Present, but not confirmed yet: the module found the fault, and waits whether it finds it again. */
	PENDING,
	/** The module answered, and has not tested for the code since its codes were cleared: neither present nor absent. */
	UNTESTED,
	/** Not seen: absent, untested or unread. Proves less than it seems; only a condition can ask for it. */
	MISSING;

	/** The readings of a code that is present. */
	public static final Set<CodeReading> OF_PRESENT = Set.copyOf(EnumSet.of(ACTIVE, STORED, PENDING));

	/** Returns whether only a module that keeps a status for each code can tell it. */
	public boolean isState() {
		return OF_PRESENT.contains(this) || this == UNTESTED;
	}
}
