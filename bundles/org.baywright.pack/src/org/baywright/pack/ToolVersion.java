package org.baywright.pack;

/** The version of Baywright, as packs and reports name it. */
public final class ToolVersion {

	/** Three numbers with dots. */
	public static final String CURRENT = "0.1.0";

	private ToolVersion() {
	}
}
