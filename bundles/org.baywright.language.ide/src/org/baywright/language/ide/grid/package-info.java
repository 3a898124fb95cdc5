/**
 * Writes what is chosen in the grid of tests and faults: the results that a rule tells apart, what each of them proves of a
 * fault, and the changes of texts that make it so. Nothing here knows a screen.
 */
package org.baywright.language.ide.grid;
