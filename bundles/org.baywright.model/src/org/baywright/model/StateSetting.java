package org.baywright.model;

/** A state set to one of its values, such as {@code ignition on}. */
public record StateSetting(String state, String value) {

	@Override
	public String toString() {
		return state + " " + value;
	}
}
