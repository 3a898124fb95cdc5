/**
 * Joins what two people have made of the same rule files, element by element: no text ever carries marks of a conflict.
 *
 * <p>{@link org.baywright.language.merge.Pieces} cuts a file into pieces, {@link org.baywright.language.merge.ProjectMerge} decides
 * what becomes of each piece, and {@link org.baywright.language.merge.Merged} has the texts and what somebody has to choose.
 */
package org.baywright.language.merge;
