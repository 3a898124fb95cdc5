/** What a pack says of itself, the version of its format, and the exception of whoever cannot read or write it. */
package org.baywright.pack.manifest;
