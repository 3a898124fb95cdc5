/** Searches in rules, with their results in the platform's search view. */
package org.baywright.workbench.search;
