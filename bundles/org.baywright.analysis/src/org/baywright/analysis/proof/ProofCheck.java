package org.baywright.analysis.proof;

/**
 * A check that proves something about each part of the rule base on its own. What it proves is kept until the part
 * changes, so it must name rules and faults and never hold a place in a file.
 *
 * @param <F> what it proves of one part
 */
public interface ProofCheck<F> extends Check {

	/** Proves what there is to prove about one part. Called from several threads, once for each part. */
	F examine(Prover prover);

	/** Returns what to keep for a part that cannot be proved: its verdicts go in a circle, or no vehicle obeys its laws. */
	F nothing();

	/** Returns whether the check can also examine a part that cannot be proved. */
	default boolean needsNoProgram() {
		return false;
	}
}
