/**
 * The proofs. A rule base is cut into {@linkplain org.baywright.analysis.Program programs} that share nothing but the
 * vehicle's traits; each is proved on its own, most questions by an index, the rest by a SAT solver. Checks live in
 * {@code org.baywright.analysis.check}.
 */
package org.baywright.analysis;
