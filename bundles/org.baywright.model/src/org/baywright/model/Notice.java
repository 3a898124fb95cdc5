package org.baywright.model;

/**
 * What somebody is told about a repair.
 *
 * @param whom who is told
 * @param text what they must know or accept
 * @param why why they must be told; may be empty
 */
public record Notice(Whom whom, String text, String why) {

	/** Who can be told. */
	public enum Whom {
		CUSTOMER, INSURER, MAKER, AUTHORITY
	}
}
