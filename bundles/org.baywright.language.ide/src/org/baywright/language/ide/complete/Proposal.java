package org.baywright.language.ide.complete;

import java.util.List;

/**
 * Something that can be written at a place.
 *
 * @param label what is shown in a list
 * @param detail a few words beside the label, or the empty text
 * @param documentation more about it, in Markdown, or the empty text
 * @param kind what it is
 * @param replaceOffset where the text that it replaces begins
 * @param replaceLength characters that it replaces
 * @param text what is inserted
 * @param slots places in {@code text} to fill in, in the order of the text; the cursor goes behind the text at the end
 */
public record Proposal(String label, String detail, String documentation, Kind kind, int replaceOffset,
		int replaceLength, String text, List<Slot> slots) {

	/** Kinds of proposals. */
	public enum Kind {
		WORD, SKELETON, FAMILY, TRAIT, STATE, TOOL, HAZARD, MODULE, CODE, SIGN, PART, FAULT, TEST, RULE, REPAIR, VALUE, UNIT,
		TEXT, NUMBER
	}

	public Proposal {
		slots = List.copyOf(slots);
	}
}
