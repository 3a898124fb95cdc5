/** What an editor asks of the language: completion, hover, fixes, rename, symbols, colours; and the language server. */
package org.baywright.language.ide;
