/** JSON in its canonical form, and reading it with messages that say where something is wrong. */
package org.baywright.pack.json;
