package org.baywright.model;

import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/**
 * What must hold. A condition on a finding holds only when the finding is known and true; {@link Not} of it holds only
 * when it is known and false. A condition on a verdict looks at what the rules have derived: the verdict stands or it
 * does not.
 */
public sealed interface Condition {

	/** Returns where the condition is written. */
	Span span();

	/** Calls {@code use} for each condition that is not made of others, in the order of the text. */
	default void eachAtom(Consumer<Condition> use) {
		eachAtom(true, (atom, asItStands) -> use.accept(atom));
	}

	/**
	 * As {@link #eachAtom(Consumer)}, with whether the atom counts as it stands or, behind {@code not}, reversed.
	 *
	 * @param asItStands whether this condition itself counts as it stands
	 */
	default void eachAtom(boolean asItStands, BiConsumer<Condition, Boolean> use) {
		if (this instanceof And and) {
			and.parts().forEach(part -> part.eachAtom(asItStands, use));
		} else if (this instanceof Or or) {
			or.parts().forEach(part -> part.eachAtom(asItStands, use));
		} else if (this instanceof Not not) {
			not.part().eachAtom(!asItStands, use);
		} else {
			use.accept(this, asItStands);
		}
	}

	/** Returns the name of what is asked about; empty for a condition that is made of others. */
	default String about() {
		if (this instanceof TraitIs is) {
			return is.trait();
		} else if (this instanceof SignIs is) {
			return is.sign();
		} else if (this instanceof TestIs is) {
			return is.test();
		} else if (this instanceof CodeIs is) {
			return is.code();
		} else if (this instanceof ModuleIs is) {
			return is.module();
		} else if (this instanceof VerdictIs is) {
			return is.fault();
		}
		return this instanceof Unexplained is ? is.sign() : "";
	}

	/** All parts hold; an empty list always holds. */
	record And(List<Condition> parts, Span span) implements Condition {
		public And {
			parts = List.copyOf(parts);
		}
	}

	/** At least one part holds; an empty list never holds. */
	record Or(List<Condition> parts, Span span) implements Condition {
		public Or {
			parts = List.copyOf(parts);
		}
	}

	record Not(Condition part, Span span) implements Condition {
	}

	/** The trait of the vehicle is one of the values; false in a family without the trait. */
	record TraitIs(String trait, ValueSet values, Span span) implements Condition {
	}

	/** The sign was looked for and is present or absent. */
	record SignIs(String sign, boolean present, Span span) implements Condition {
	}

	/** The test was done and gave one of the values. */
	record TestIs(String test, ValueSet values, Span span) implements Condition {
	}

	/** The code was asked for and has this reading. */
	record CodeIs(String code, CodeReading reading, Span span) implements Condition {
	}

	/** The module was asked and answered, or stayed silent. */
	record ModuleIs(String module, boolean answers, Span span) implements Condition {
	}

	/** The verdict on the fault stands, or does not stand. */
	record VerdictIs(String fault, VerdictKind verdict, boolean stands, Span span) implements Condition {
	}

	/**
	 * The sign is present and none of the faults is confirmed that rules for this sign can confirm. A rule is for a sign if
	 * it asks for the sign to be present or about a verdict that such a rule states, and not for it to be unexplained.
	 */
	record Unexplained(String sign, Span span) implements Condition {
	}
}
