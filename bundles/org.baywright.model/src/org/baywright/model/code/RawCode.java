package org.baywright.model.code;

/** A maker's own code. It is kept as written and never interpreted. */
public record RawCode(String text) implements CodeText {

	@Override
	public String display() {
		return text;
	}
}
