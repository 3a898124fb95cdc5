/** The card of an element, beside its text in the same editor. */
package org.baywright.workbench.editor.card;
