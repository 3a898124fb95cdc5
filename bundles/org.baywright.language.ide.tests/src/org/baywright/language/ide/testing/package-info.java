/** What the tests share. */
package org.baywright.language.ide.testing;
