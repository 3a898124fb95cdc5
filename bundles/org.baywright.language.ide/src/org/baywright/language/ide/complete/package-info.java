/** What can be written at a place, also behind a syntax error. */
package org.baywright.language.ide.complete;
