/**
 * Runs the proofs: the checks of a rule base, its finished jobs, and what the rules make of one vehicle. A rule base is cut
 * into {@linkplain org.baywright.analysis.proof.Program programs} that share nothing but the vehicle's traits; each is proved
 * on its own, most questions by an index, the rest by a SAT solver.
 */
package org.baywright.analysis.run;
