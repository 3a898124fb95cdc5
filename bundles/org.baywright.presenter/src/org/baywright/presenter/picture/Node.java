package org.baywright.presenter.picture;

import org.baywright.model.Span;

/**
 * Something in the picture.
 *
 * @param id stands for it, such as {@code rule:click}
 * @param kind what it is
 * @param title what a technician calls it
 * @param detail a second, smaller text: the test that a rule runs; or the empty text
 * @param span where it is declared
 */
public record Node(String id, Kind kind, String title, String detail, Span span) {

	/** Kinds of things, which have a form and a colour each. */
	public enum Kind {
		SIGN("Sign"), CODE("Code"), MODULE("Module"), TEST("Test result"), RULE("Rule"), RULE_WITH_TEST("Rule with a test"),
		CONFIRMED("Fault confirmed"), SUSPECTED("Fault suspected"), CLEARED("Fault cleared"), REFERRAL("Referral"),
		STEP("Step"), NOTHING("End"), MORE("Not followed");

		private final String label;

		Kind(String label) {
			this.label = label;
		}

		/** Returns what a legend calls it. */
		public String label() {
			return label;
		}
	}

	/** Returns everything it says, for a tooltip or a reader of the screen. */
	public String description() {
		return kind.label() + ": " + title + (detail.isEmpty() ? "" : ", " + detail);
	}
}
