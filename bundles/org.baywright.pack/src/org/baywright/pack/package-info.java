/**
 * The rule pack: one file that holds a whole checked rule base, for other tools to load and for people to read.
 *
 * <p>A pack is a zip archive of three entries, stored without compression so that every machine writes the same bytes:
 * {@code manifest.json} (what the pack is, its fingerprint, what was checked and what stands open), {@code rules.json}
 * (the rule base) and {@code rules.html} (the same rules as a sheet to read and print). Both JSON texts are in the
 * canonical form of RFC 8785, and the bundle holds a JSON Schema for each.
 */
package org.baywright.pack;
