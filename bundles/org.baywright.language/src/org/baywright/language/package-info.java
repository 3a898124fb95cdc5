/** The grammar of rule files and the set-up of its services. */
package org.baywright.language;
