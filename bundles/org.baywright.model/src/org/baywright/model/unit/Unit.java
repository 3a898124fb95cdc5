package org.baywright.model.unit;

/**
 * A unit that is known.
 *
 * @param text the author's spelling, such as {@code degC}; empty for a plain number
 * @param code the UCUM code it stands for, such as {@code Cel}; empty for a plain number
 */
public record Unit(String text, String code) {

	/** A plain number. */
	public static final Unit NONE = new Unit("", "");

	/** Returns whether this is a plain number, without a unit. */
	public boolean isNone() {
		return code.isEmpty();
	}
}
