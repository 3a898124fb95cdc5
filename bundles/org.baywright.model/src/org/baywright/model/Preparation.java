package org.baywright.model;

import java.math.BigDecimal;
import java.util.Optional;

/** Something that is done with the vehicle before a test, or for a code to be tested by its own module. */
public sealed interface Preparation {

	/** What a sentence says. */
	record Do(String text) implements Preparation {
	}

	/**
	 * Leave the vehicle alone.
	 *
	 * @param minutes how long, more than 0
	 */
	record Wait(BigDecimal minutes) implements Preparation {
	}

	/**
	 * Drive.
	 *
	 * @param speed how fast, as values of {@link #SPEED}; at any speed without it
	 * @param minutes how long at that speed; 0 if nothing is said
	 * @param how what else matters; may be empty
	 */
	record Drive(Optional<ValueSet> speed, BigDecimal minutes, String how) implements Preparation {
	}

	/** Speeds, in km/h. */
	Domain.Quantity SPEED = new Domain.Quantity("km/h", BigDecimal.ZERO, BigDecimal.valueOf(300), BigDecimal.ONE);

	/** Returns whether who has done this has also done what is asked for: as long at least, and at such a speed. */
	default boolean covers(Preparation asked) {
		if (this instanceof Wait mine && asked instanceof Wait wanted) {
			return mine.minutes().compareTo(wanted.minutes()) >= 0;
		}
		if (this instanceof Drive mine && asked instanceof Drive wanted) {
			boolean fast = wanted.speed().isEmpty()
					|| mine.speed().isPresent() && isWithin(mine.speed().get().in(SPEED), wanted.speed().get().in(SPEED));
			return fast && mine.minutes().compareTo(wanted.minutes()) >= 0;
		}
		return equals(asked);
	}

	private static boolean isWithin(IndexSet inner, IndexSet outer) {
		return !inner.isEmpty() && inner.intersect(outer).equals(inner);
	}
}
