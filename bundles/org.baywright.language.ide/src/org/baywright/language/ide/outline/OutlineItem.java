package org.baywright.language.ide.outline;

import java.util.List;

/**
 * An element of a file.
 *
 * @param label its title, or its name
 * @param detail its name if the label is a title, and more; or the empty text
 * @param kind what it is
 * @param offset where it begins
 * @param length how long it is
 * @param nameOffset where its name stands
 * @param nameLength how long its name is
 * @param children what it is made of, as far as that has a name
 */
public record OutlineItem(String label, String detail, Kind kind, int offset, int length, int nameOffset, int nameLength,
		List<OutlineItem> children) {

	/** Kinds of elements. */
	public enum Kind {
		FAMILY, TRAIT, STATE, TOOL, WORKSHOP, HAZARD, MODULE, CODE, SIGN, PART, FAULT, EXCLUSIVE, TEST, LAW, RULE, REPAIR, CASE, REVIEW, REMARK, REVIEWER, SIGNOFF,
		ACCEPTANCE, BUILDSON, VALUE
	}

	public OutlineItem {
		children = List.copyOf(children);
	}
}
