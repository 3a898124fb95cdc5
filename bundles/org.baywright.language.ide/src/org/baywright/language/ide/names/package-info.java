/** Where names are declared and used, and giving a thing another name. */
package org.baywright.language.ide.names;
