/** What an editor can fold away. */
package org.baywright.language.ide.fold;
