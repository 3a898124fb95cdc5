package org.baywright.pack;

import org.baywright.model.RuleBase;
import org.baywright.pack.manifest.PackManifest;

/**
 * A rule pack that was read.
 *
 * @param manifest what it is
 * @param rules its rule base; of places only file and line are kept
 * @param sheet the sheet for people, an HTML page
 */
public record Pack(PackManifest manifest, RuleBase rules, String sheet) {
}
