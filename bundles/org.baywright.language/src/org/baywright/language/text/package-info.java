/** The text of a rule file with its places, and what can be said of it without a look at other files: what was probably meant, and what to do. */
package org.baywright.language.text;
