/** Finds the rules that have to do with a word. */
package org.baywright.presenter.search;
