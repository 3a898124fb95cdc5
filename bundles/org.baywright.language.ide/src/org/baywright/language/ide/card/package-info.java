/**
 * The card of an element: what a form beside the text shows and what each change of it does to the text, without a
 * screen. What can be filled in follows from the grammar, so a new clause has a row on the card by itself.
 */
package org.baywright.language.ide.card;
