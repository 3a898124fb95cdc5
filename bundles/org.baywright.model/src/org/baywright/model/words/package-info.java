/** What rules say in plain words, the same on paper and on a screen. */
package org.baywright.model.words;
