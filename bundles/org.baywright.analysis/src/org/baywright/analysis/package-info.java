/**
 * What the proofs tell: flaws with their evidence, vehicles that show them, what became of jobs and of rules. The proofs
 * are run by {@code org.baywright.analysis.run}; checks live in {@code org.baywright.analysis.check}.
 */
package org.baywright.analysis;
