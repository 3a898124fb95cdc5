/** A thin layer over the SAT solver: literals are non-zero ints, answers are typed, limits are counted in conflicts. */
package org.baywright.analysis.sat;
