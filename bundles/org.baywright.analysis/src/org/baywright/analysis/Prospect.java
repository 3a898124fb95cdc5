package org.baywright.analysis;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

import org.baywright.model.Reading;

/**
 * What can become of one vehicle of a family: what the rules derive from the findings made so far, which findings would
 * still matter, and which of their values the laws allow. Values that no rule tells apart are one. For planners, which ask
 * about many sets of findings. Keep one instance while the rules stay the same. Not safe for use by several threads at once.
 */
public interface Prospect {

	/**
	 * Begins with what is known.
	 *
	 * @return nothing if no vehicle has all of it, or if the rules go round in a circle
	 */
	Optional<Known> begin(List<Reading> readings);

	/** Returns the values of a finding that rules tell apart, by number: one reading for each. */
	List<Reading> values(Variable finding);

	/** Returns the number of the value of a finding that a reading tells; nothing if it tells none, or no rule looks at it. */
	OptionalInt value(Variable finding, Reading reading);

	/** A set of findings. Immutable. */
	interface Known {

		/** Returns whether a finding is made. */
		boolean isMade(Variable finding);

		/** Returns what the rules derive, sorted. */
		List<Verdict> verdicts();

		/** Returns whether the rules derive a verdict. */
		boolean has(Verdict verdict);

		/** Returns what is open, and what was found, of all that conditions ask for by which rules may still come to say something of one of these faults, or refer. */
		Object mattering(List<String> faults);

		/** Returns whether a verdict stands, and whatever is found yet, it will: it does not rest on another that may still come. */
		boolean isLasting(Verdict verdict);

		/** Returns the findings that are not made yet and by which rules may still come to say something of one of these faults, or refer; sorted. */
		List<Variable> open(List<String> faults);

		/** Returns the numbers of the values of a finding that some vehicle with these findings has; also those of which that could not be decided. */
		List<Integer> possible(Variable finding);

		/** Returns whether some vehicle with these findings lets the rules confirm a fault; yes if it could not be decided. */
		boolean canConfirm(String fault);

		/** Returns whether a rule that may confirm a fault yet asks for something that is known to be there, or for no sign at all. */
		boolean isAsked(String fault);

		/** Returns the findings with one more. */
		Known with(Variable finding, int value);
	}
}
