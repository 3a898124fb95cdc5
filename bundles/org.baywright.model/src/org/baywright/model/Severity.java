package org.baywright.model;

/** How much a flaw matters. */
public enum Severity {
	/** The rules are wrong; no pack can be made. */
	ERROR,
	/** The rules are probably not what the author means; a pack carries it. */
	WARNING,
	/** Worth knowing. */
	NOTE
}
