/** What each word means, for an editor to colour. */
package org.baywright.language.ide.colour;
