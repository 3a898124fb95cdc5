/** The rules as a sheet for people: one HTML page that needs no network and no script, and prints well. */
package org.baywright.pack.sheet;
