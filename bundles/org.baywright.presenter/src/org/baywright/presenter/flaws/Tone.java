package org.baywright.presenter.flaws;

/** How the rules stand. */
public enum Tone {
	/** Everything was checked and nothing is open. */
	GOOD,
	/** Something was not checked, or not decided: nobody knows. */
	UNKNOWN,
	/** Warnings or notes are open. */
	WARNED,
	/** An error stands. */
	WRONG
}
