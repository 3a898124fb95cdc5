/**
 * The names of a project, by hash. A file's names are gathered from its own text alone, together with the facts that
 * other files need of them; so an edit touches only the files that looked up a name whose facts changed.
 */
package org.baywright.language.index;
