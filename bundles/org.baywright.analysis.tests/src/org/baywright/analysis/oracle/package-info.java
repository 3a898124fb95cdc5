/**
 * The proofs against judges that share no code with them: enumeration of every situation for small rule bases, a
 * general-purpose SMT solver for larger ones.
 */
package org.baywright.analysis.oracle;
