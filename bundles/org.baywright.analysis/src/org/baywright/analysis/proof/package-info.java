/**
 * How proofs are made: programs of rules, their clauses, witnesses and reasons. Not exported; checks use it through
 * {@link org.baywright.analysis.proof.Prover}.
 */
package org.baywright.analysis.proof;
