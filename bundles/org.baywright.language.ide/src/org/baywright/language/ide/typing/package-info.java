/** What an editor adds while somebody types. */
package org.baywright.language.ide.typing;
