/** Texts as editors see them: words of the language, and changes. */
package org.baywright.language.ide.text;
