package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

import org.baywright.model.Reading;

/**
 * What was done on a vehicle after its cause was found, and what is kept of the job beside its findings.
 *
 * @param chosen name of the repair that is chosen; the empty text before one is
 * @param repairs how far each repair is that was begun, by its name, in the order in which they were begun
 * @param inVain repairs that were done and did not put the vehicle right, in their order
 * @param again what was found and then found out again, in the order of finding it out again
 * @param cause name of the fault that somebody says was the cause, whatever else the rules say; the empty text if nobody does
 * @param referredTo to whom the job was handed on; the empty text if it was not
 * @param minutes what the job took, where it is not what the rules say
 * @param cost what it cost, in the project's own money, where it is not what the rules say
 * @param vin the vehicle's identification number; the empty text if nobody recorded it
 */
public record Done(String chosen, Map<String, Progress> repairs, List<InVain> inVain, List<Again> again, String cause, String referredTo,
		Optional<BigDecimal> minutes, Optional<BigDecimal> cost, String vin) {

	/**
	 * A repair that did not put the vehicle right.
	 *
	 * @param repair its name
	 * @param title what a technician calls it
	 * @param faults names of the faults that it was done for
	 * @param wrong what was not as expected, in words, one for each reading
	 * @param before what was found before it on what was worked on, and does not count any more
	 * @param read what was read in its verification
	 */
	public record InVain(String repair, String title, List<String> faults, List<String> wrong, List<Outdated> before, List<Reading> read) {

		/**
		 * Something that was found before the repair.
		 *
		 * @param reading the finding
		 * @param words the same in words
		 */
		public record Outdated(Reading reading, String words) {
		}

		public InVain {
			faults = List.copyOf(faults);
			wrong = List.copyOf(wrong);
			before = List.copyOf(before);
			read = List.copyOf(read);
		}

		/** Returns it in one sentence. */
		public String text() {
			return "“" + title + "” did not put it right: " + String.join("; ", wrong) + ".";
		}

		/** Returns what does not count any more, in one sentence; the empty text for nothing. */
		public String outdated() {
			return before.isEmpty() ? "" : "Found before that repair and no longer counted: " + before.stream().map(Outdated::words).collect(Collectors.joining("; ")) + ".";
		}
	}

	/**
	 * Something that was found out again, as it was disturbed or in doubt.
	 *
	 * @param reading what was found before
	 * @param words the same in words
	 * @param afterwards whether it was found in the verification of a repair
	 */
	public record Again(Reading reading, String words, boolean afterwards) {
	}

	/** Nothing is done yet. */
	public static final Done NOTHING = new Done("", Map.of(), List.of(), List.of(), "", "", Optional.empty(), Optional.empty(), "");

	public Done {
		repairs = Collections.unmodifiableMap(new LinkedHashMap<>(repairs));
		inVain = List.copyOf(inVain);
		again = List.copyOf(again);
	}

	/** Returns how far a repair is. */
	public Progress progress(String repair) {
		return repairs.getOrDefault(repair, Progress.NONE);
	}

	/** Returns the faults whose repair did not put the vehicle right. */
	public Set<String> mended() {
		return inVain.stream().flatMap(done -> done.faults().stream()).collect(Collectors.toSet());
	}

	/** Returns whether a repair was done and did not put the vehicle right. */
	public boolean isInVain(String repair) {
		return inVain.stream().anyMatch(done -> done.repair().equals(repair));
	}

	Done choose(String repair) {
		return new Done(repair, repairs, inVain, again, cause, referredTo, minutes, cost, vin);
	}

	/** Chooses a repair and goes on with it. */
	Done with(String repair, UnaryOperator<Progress> change) {
		Map<String, Progress> changed = new LinkedHashMap<>(repairs);
		changed.put(repair, change.apply(progress(repair)));
		return new Done(repair, changed, inVain, again, cause, referredTo, minutes, cost, vin);
	}

	/** Notes that a repair did not put the vehicle right; no repair is chosen then, and what was said of the cause was wrong. */
	Done inVain(InVain done) {
		List<InVain> more = new ArrayList<>(inVain);
		more.add(done);
		Map<String, Progress> left = new LinkedHashMap<>(repairs);
		// who does it once more begins with its first step
		left.remove(done.repair());
		return new Done("", left, more, again, done.faults().contains(cause) ? "" : cause, referredTo, minutes, cost, vin);
	}

	/** Notes what was found before it was found out again. */
	Done again(Again before) {
		List<Again> more = new ArrayList<>(again);
		more.add(before);
		return new Done(chosen, repairs, inVain, more, cause, referredTo, minutes, cost, vin);
	}

	/** Returns what is left when something is not known any more. */
	Done only(Map<String, Progress> known, boolean isChosenKnown, boolean isCauseKnown) {
		return new Done(isChosenKnown ? chosen : "", known, inVain, again, isCauseKnown ? cause : "", referredTo, minutes, cost, vin);
	}

	Done cause(String fault) {
		return new Done(chosen, repairs, inVain, again, fault, referredTo, minutes, cost, vin);
	}

	Done refer(String toWhom) {
		return new Done(chosen, repairs, inVain, again, cause, toWhom, minutes, cost, vin);
	}

	Done took(Optional<BigDecimal> time) {
		return new Done(chosen, repairs, inVain, again, cause, referredTo, time, cost, vin);
	}

	Done spent(Optional<BigDecimal> money) {
		return new Done(chosen, repairs, inVain, again, cause, referredTo, minutes, money, vin);
	}

	Done vin(String number) {
		return new Done(chosen, repairs, inVain, again, cause, referredTo, minutes, cost, number);
	}
}
