package org.baywright.presenter.bench;

import java.util.List;

import org.baywright.analysis.Variable;

/**
 * Something that can be entered on the bench.
 *
 * @param variable what it is
 * @param title what a technician calls it
 * @param choices values to choose from; empty for a number
 * @param range for a number: what can be entered, such as "0.0 V to 18.0 V"; without a name what is typed, such as "a sum such as 140"; the empty text for choices
 */
public record Subject(Variable variable, String title, List<Choice> choices, String range) {

	/**
	 * A value to choose.
	 *
	 * @param text what {@link Bench#enter} takes
	 * @param title what a technician says
	 */
	public record Choice(String text, String title) {
	}

	public Subject {
		choices = List.copyOf(choices);
	}

	/** Returns what to do to enter it. */
	public String prompt() {
		boolean isNamed = !variable.name().isEmpty();
		return !choices.isEmpty() ? "Choose the value and press Enter." : isNamed ? "Type the value, from " + range + ", and press Enter." : "Type " + range + ", and press Enter.";
	}

	/** Returns what to call its kind: "Test". */
	public String kind() {
		return switch (variable.kind()) {
		case TRAIT -> "Vehicle";
		case SIGN -> "Sign";
		case MODULE -> "Module";
		case CODE -> "Code";
		case TEST -> "Test";
		};
	}
}
