package org.baywright.planner;

import java.util.List;

/**
 * Where somebody stands who looks for a cause: what may be the matter and what can be done to find out. Positions are
 * immutable; no way leads back to a position that was left.
 */
public interface Position {

	/** Returns what tells it from other positions of the same search; from positions with equal keys the way goes on alike. */
	Object key();

	/** Returns the steps that can still change the end, in an order of their own; none at the end. */
	List<Step> steps();

	/** Returns a lower bound of the expected cost to the end, 0 or more. */
	double bound();

	/** Returns what is to be expected to an end, roughly: an estimate for places at which nobody looks closely. */
	default double guess() {
		return most();
	}

	/** Returns what no way from here to an end costs more than: doing everything that can be done. */
	double most();

	/** Returns how likely each cause is; they add up to 1. */
	double[] likelihoods();

	/** Returns how much is not known of the cause, in bits (Shannon 1948). */
	double uncertainty();

	/** Returns the entropy of what is as likely as these shares, which add up to 1, in bits. */
	static double entropy(double[] shares) {
		double bits = 0;
		for (double share : shares) {
			bits += bits(share);
		}
		return bits;
	}

	/** Returns what one share has of the entropy, in bits. */
	static double bits(double share) {
		return share == 0 ? 0 : -share * Math.log(share) / Math.log(2);
	}

	/** Something that can be done, with what it may show. */
	interface Step {

		/** Returns what it is called. */
		String name();

		/** Returns what is alike for steps that are taken by doing the same. */
		default String doing() {
			return name();
		}

		/** Returns whether something else that is asked for has to be prepared anew after it. */
		default boolean isDisturbing() {
			return false;
		}

		/** Returns what it costs, 0 or more. */
		double cost();

		/** Returns how much of the cost somebody works, in minutes. */
		default double minutes() {
			return 0;
		}

		/** Returns how long nobody works while it goes on, in minutes. */
		default double waiting() {
			return 0;
		}

		/** Returns how many things it may show, 1 or more. */
		int outcomes();

		/** Returns how likely an outcome is, from 0 to 1. */
		double probability(int outcome);

		/** Returns the position after an outcome that is possible. */
		Position after(int outcome);

		/** Returns by how many bits it lessens at most what is not known of the cause, found quicker than by how many it does. */
		default double tellsAtMost(double before) {
			return before;
		}

		/** Returns how much is to be expected not to be known of the cause after it, in bits. */
		default double uncertaintyAfter() {
			double left = 0;
			for (int outcome = 0; outcome < outcomes(); outcome++) {
				double probability = probability(outcome);
				left += probability > 0 ? probability * after(outcome).uncertainty() : 0;
			}
			return left;
		}
	}
}
