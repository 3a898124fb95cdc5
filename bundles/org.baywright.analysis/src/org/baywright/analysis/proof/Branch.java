package org.baywright.analysis.proof;

import java.util.List;

/**
 * One outcome of one rule, ready for proofs.
 *
 * @param rule number of the rule in the program
 * @param outcome number of the outcome in the rule
 * @param body all that must hold for it to fire: scope, preconditions, test result
 * @param verdicts numbers of the verdicts it derives, ascending
 * @param line source line of the outcome
 */
public record Branch(int rule, int outcome, Formula body, List<Integer> verdicts, int line) {
}
