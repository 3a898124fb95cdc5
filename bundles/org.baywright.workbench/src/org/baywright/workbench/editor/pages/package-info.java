/** The editor itself: its two pages, the text and the card, and what becomes of what is typed when its file changes or goes. */
package org.baywright.workbench.editor.pages;
