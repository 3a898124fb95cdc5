package org.baywright.analysis.proof;

import org.baywright.analysis.Variable;
import org.baywright.model.CodeReading;
import org.baywright.model.IndexSet;

/** The numbers of the values of codes. Where some rule asks for the state of a code it has more of them, see {@link Variable}. */
public final class CodeValues {

	/** The values of a present code of which some rule asks for the state. */
	static final IndexSet PRESENT_STATES = IndexSet.range(Variable.FIRST_STATE, Variable.UNTESTED - 1);

	private CodeValues() {
	}

	static int count(boolean withStates) {
		return withStates ? Variable.UNTESTED + 1 : Variable.FIRST_STATE;
	}

	/** Returns the values with which a code has this reading. */
	public static IndexSet of(CodeReading reading, boolean withStates) {
		return switch (reading) {
		case PRESENT -> withStates ? PRESENT_STATES.union(single(Variable.PRESENT)) : single(Variable.PRESENT);
		case MISSING -> IndexSet.range(Variable.ABSENT, Variable.UNREAD).union(withStates ? single(Variable.UNTESTED) : IndexSet.EMPTY);
		default -> single(reading.ordinal());
		};
	}

	/**
	 * The opposite of a reading is again a reading: an unread code is neither present nor absent, and of a present code
	 * whose state nobody told it is not known to be in another one.
	 */
	static IndexSet otherwise(CodeReading reading, boolean withStates) {
		IndexSet others = of(reading, withStates).complement(count(withStates));
		IndexSet open = CodeReading.OF_PRESENT.contains(reading) ? single(Variable.PRESENT) : IndexSet.EMPTY;
		return others.intersect((reading == CodeReading.UNREAD ? open : open.union(single(Variable.UNREAD))).complement(count(withStates)));
	}

	private static IndexSet single(int value) {
		return IndexSet.range(value, value);
	}
}
