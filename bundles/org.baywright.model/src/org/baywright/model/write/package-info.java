/** Rules as text: what is written here says, when it is read, exactly what was written. */
package org.baywright.model.write;
