/** Layout by small changes. */
package org.baywright.language.ide.layout;
