package org.baywright.language.ide.colour;

/** What a word is, for an editor to colour. */
public enum Colour {
	KEYWORD, FAMILY, TRAIT, STATE, TOOL, HAZARD, MODULE, CODE, SIGN, PART, FAULT, TEST, RULE, REPAIR, VALUE, NUMBER, UNIT, TEXT,
	COMMENT,
	/** A word that says what is proved, such as {@code confirms} or {@code cleared}. */
	VERDICT
}
