/** What a file or a project declares. */
package org.baywright.language.ide.outline;
