/**
 * From a parsed file to the records of the model, with everything that is wrong in the file said in plain words.
 *
 * <p>A file is translated from its own syntax tree and the project's {@link org.baywright.language.index.ProjectIndex};
 * no reference is ever resolved to another file's tree, so a translation stays right when another file is parsed again.
 */
package org.baywright.language.translate;
