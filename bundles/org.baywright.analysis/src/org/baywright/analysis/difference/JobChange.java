package org.baywright.analysis.difference;

import org.baywright.analysis.CaseResult;

/**
 * A finished job that the rules bring to another end than before.
 *
 * @param before what the rules made of it
 * @param after what they make of it now
 */
public record JobChange(CaseResult before, CaseResult after) {
}
