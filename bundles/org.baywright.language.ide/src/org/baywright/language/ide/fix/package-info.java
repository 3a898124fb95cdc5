/** Changes that answer a problem or a flaw. */
package org.baywright.language.ide.fix;
