/**
 * The checks: one class, one help page ({@code help/<id>.md} beside this bundle's sources) and one test class each.
 * To add one, write the class and list it in {@link org.baywright.analysis.check.Checks}.
 */
package org.baywright.analysis.check;
