/**
 * The rule base as immutable records: families, findings, tests, rules, verdicts, repairs and cases.
 *
 * <p>Names are the authors' own; a fault is named {@code part.fault}. Records refer to each other by name and are
 * resolved through {@link org.baywright.model.RuleBase}. Nothing here knows a parser, a solver or a screen.
 */
package org.baywright.model;
