/** What is wrong with the syntax of a file, in the words of a technician. */
package org.baywright.language.syntax;
