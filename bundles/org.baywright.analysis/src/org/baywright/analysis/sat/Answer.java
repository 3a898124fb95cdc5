package org.baywright.analysis.sat;

/** What a solver can say. */
public enum Answer {
	YES, NO,
	/** The limit on the search was reached. */
	UNDECIDED
}
