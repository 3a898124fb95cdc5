/** What is known of a line, told beside it. */
package org.baywright.language.ide.mining;
