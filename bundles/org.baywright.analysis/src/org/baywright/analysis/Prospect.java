package org.baywright.analysis;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

import org.baywright.model.IndexSet;
import org.baywright.model.Reading;
import org.baywright.model.VerdictKind;

/**
 * What can become of vehicles of a family: what the rules derive from the findings made so far, which findings would still
 * matter, and which of their values the laws allow. For planners, which ask about very many sets of findings. Keep one
 * instance while the rules stay the same. Not safe for use by several threads at once.
 */
public interface Prospect {

	/**
	 * Begins with what is known of a vehicle.
	 *
	 * @return nothing if no vehicle has all of it, or if the rules go round in a circle
	 */
	Optional<Ahead> begin(List<Reading> readings);

	/**
	 * What lies ahead of a vehicle. The faults that rules may still confirm and that are asked for by its complaint are its
	 * causes; everything that may come to be asked for is a finding. Both are numbered.
	 */
	interface Ahead {

		/** Returns the faults that it may be, in the order of the rule base. */
		List<String> causes();

		/** Returns what may be asked for, by number: sorted. */
		List<Variable> findings();

		/** Returns the number of a finding, or -1 if nothing asks for it. */
		int number(Variable finding);

		/** Returns the values of a finding that rules and laws tell apart, by number: one reading for each. */
		List<Reading> values(int finding);

		/** Returns all values of the finding's own domain that a value stands for. */
		IndexSet means(int finding, int value);

		/** Returns the number of the value of a finding that a reading tells; nothing if it tells none. */
		OptionalInt value(int finding, Reading reading);

		/** Returns whether laws and scopes tie a finding to others, so that what is found of these may leave it only one value. */
		boolean isTied(int finding);

		/** Returns what is known at the beginning. */
		Known known();
	}

	/** A set of findings. Immutable. */
	interface Known {

		/** Returns what the rules derive, sorted. */
		List<Verdict> verdicts();

		/** Returns what is equal for sets of findings from which the rules derive the same. */
		Object said();

		/** Returns whether the rules have come to an end that lasts whatever is found yet: a fault is confirmed, or somebody else goes on. */
		boolean isSettled();

		/** Returns whether a finding is made, or lost for good. */
		boolean isMade(int finding);

		/** Returns the findings that are open and by which rules may still come to say something of one of these causes, or refer; ascending. */
		int[] open(BitSet causes);

		/** Returns the findings that are open and may come to be asked for, whatever signs are found; ascending. */
		int[] ahead(BitSet causes);

		/** Returns what is equal for sets of findings from which the rules say the same and go on alike, whatever is found of what may come to be asked for. */
		Object mattering(BitSet causes);

		/** Returns the numbers of the values of a finding that some vehicle with these findings has; also those of which that could not be decided. */
		int[] possible(int finding);

		/** Returns whether the rules let a cause be one: they neither clear it nor confirm other causes alone. The number behind the last is something else. */
		boolean fits(int cause);

		/** Returns whether the rules suspect or confirm a cause. */
		boolean has(int cause, VerdictKind kind);

		/** Returns the findings with one more. */
		Known with(int finding, int value);

		/** Returns the findings without one that nobody can make any more. */
		Known without(int finding);

		/**
		 * Returns what the cheapest ways to an end cost at least, for all that is known without the laws.
		 *
		 * @param costs what each finding costs at least; what is made costs nothing
		 * @param together for each finding: what is found out by one doing, and paid once, has the same number
		 * @param causes the causes that it may still be
		 * @return for each cause what it costs to confirm it; behind them what another end costs, by referral or because nothing is left to be asked for
		 */
		double[] least(double[] costs, int[] together, BitSet causes);

		/**
		 * Returns what the cheapest way to confirm each cause costs at least, for all that is known without the laws; infinity where there is none.
		 *
		 * @param costs what each finding costs at least; what is made costs nothing
		 * @param together for each finding: what is found out by one doing, and paid once, has the same number
		 */
		double[] confirming(double[] costs, int[] together);
	}
}
