package org.baywright.analysis;

import java.util.Comparator;
import java.util.Optional;

import org.baywright.model.Condition;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/**
 * Something that a situation fixes.
 *
 * @param kind what it is
 * @param name its name in the rule base
 */
public record Variable(Kind kind, String name) implements Comparable<Variable> {

	private static final Comparator<Variable> ORDER = Comparator.comparing(Variable::kind)
			.thenComparing(Variable::name);

	/** Kinds, in the order in which a technician tells them. */
	public enum Kind {
		TRAIT, SIGN, MODULE, CODE, TEST
	}

	/** Number of the value "present" of signs and codes. */
	public static final int PRESENT = 0;
	/** Number of the value "absent" of signs and codes. */
	public static final int ABSENT = 1;
	/** Number of the value "unread" of codes. */
	public static final int UNREAD = 2;
	/**
	 * Number of the first value of codes whose state some rule asks for; these follow in the order of {@link
	 * org.baywright.model.CodeReading}. "Present" then is only a reading whose state nobody told: no vehicle has it.
	 */
	public static final int FIRST_STATE = 3;
	/** Number of the value "untested" of such codes. */
	public static final int UNTESTED = 6;
	/** Number of the value "answers" of modules. */
	public static final int ANSWERS = 0;
	/** Number of the value "silent" of modules. */
	public static final int SILENT = 1;

	/** Returns what a condition asks about; nothing if it asks about a verdict, which no situation fixes. */
	public static Optional<Variable> of(Condition.Atom atom) {
		return atom.match(
				(Condition.TraitIs is) -> Optional.of(new Variable(Kind.TRAIT, is.trait())),
				(Condition.SignIs is) -> Optional.of(new Variable(Kind.SIGN, is.sign())),
				(Condition.TestIs is) -> Optional.of(new Variable(Kind.TEST, is.test())),
				(Condition.CodeIs is) -> Optional.of(new Variable(Kind.CODE, is.code())),
				(Condition.ModuleIs is) -> Optional.of(new Variable(Kind.MODULE, is.module())),
				(Condition.VerdictIs is) -> Optional.empty(),
				(Condition.Unexplained is) -> Optional.of(new Variable(Kind.SIGN, is.sign())));
	}

	/** Returns what a reading is about. */
	public static Variable of(RuleBase base, Reading reading) {
		Kind kind = reading instanceof Reading.SignSeen ? Kind.SIGN : reading instanceof Reading.ModuleAsked ? Kind.MODULE
				: reading instanceof Reading.CodeRead ? Kind.CODE : base.test(reading.subject()).isPresent() ? Kind.TEST : Kind.TRAIT;
		return new Variable(kind, reading.subject());
	}

	@Override
	public int compareTo(Variable other) {
		return ORDER.compare(this, other);
	}
}
