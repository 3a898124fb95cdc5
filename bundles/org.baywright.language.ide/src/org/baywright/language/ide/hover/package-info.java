/** What stands at a place, in words. */
package org.baywright.language.ide.hover;
