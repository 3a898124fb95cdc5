package org.baywright.analysis;

import java.util.Comparator;

/**
 * Something that a situation fixes.
 *
 * @param kind what it is
 * @param name its name in the rule base
 */
public record Variable(Kind kind, String name) implements Comparable<Variable> {

	private static final Comparator<Variable> ORDER = Comparator.comparing(Variable::kind)
			.thenComparing(Variable::name);

	/** Kinds, in the order in which a technician tells them. */
	public enum Kind {
		TRAIT, SIGN, MODULE, CODE, TEST
	}

	/** Number of the value "present" of signs and codes. */
	public static final int PRESENT = 0;
	/** Number of the value "absent" of signs and codes. */
	public static final int ABSENT = 1;
	/** Number of the value "unread" of codes. */
	public static final int UNREAD = 2;
	/** Number of the value "answers" of modules. */
	public static final int ANSWERS = 0;
	/** Number of the value "silent" of modules. */
	public static final int SILENT = 1;

	@Override
	public int compareTo(Variable other) {
		return ORDER.compare(this, other);
	}
}
