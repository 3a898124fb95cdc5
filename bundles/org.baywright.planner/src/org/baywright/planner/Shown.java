package org.baywright.planner;

/**
 * What a check shows under each cause. Most causes of a vehicle surely show the same outcome of a check, so only those that
 * differ are looked at one by one: what all of them show together is known beforehand.
 */
final class Shown {

	private static final int COMMON = -1;

	private final int outcomes;
	private final double most;
	/** The outcome that most causes surely show. */
	private final int common;
	/** The causes that do not surely show it, ascending. */
	private final int[] differing;
	/** For each cause where its outcomes begin and end below, or {@link #COMMON}. */
	private final int[] from;
	private final int[] to;
	private final int[] outcome;
	private final double[] likely;
	/** How likely each is, times the logarithm of that. */
	private final double[] bits;

	/** @param likelihood for each outcome and each cause how likely that outcome is under that cause */
	Shown(double[][] likelihood, int causes) {
		outcomes = likelihood.length;
		most = Math.log(outcomes) / Math.log(2);
		int[] sure = new int[outcomes];
		int entries = 0;
		int surest = 0;
		for (int each = 0; each < outcomes; each++) {
			for (double share : likelihood[each]) {
				sure[each] += share == 1 ? 1 : 0;
				entries += share > 0 ? 1 : 0;
			}
			surest = sure[each] > sure[surest] ? each : surest;
		}
		common = surest;
		differing = new int[causes - sure[surest]];
		from = new int[causes];
		to = new int[causes];
		outcome = new int[entries];
		likely = new double[entries];
		bits = new double[entries];
		int count = 0;
		int at = 0;
		for (int cause = 0; cause < causes; cause++) {
			from[cause] = COMMON;
			if (likelihood[common][cause] != 1) {
				differing[count++] = cause;
				from[cause] = at;
				for (int each = 0; each < outcomes; each++) {
					if (likelihood[each][cause] > 0) {
						outcome[at] = each;
						likely[at] = likelihood[each][cause];
						bits[at] = Position.bits(likely[at]);
						at++;
					}
				}
				to[cause] = at;
			}
		}
	}

	/** How likely causes are, each with its share of their entropy; both are 0 where a cause is none. */
	record Weights(int[] left, double[] shares, double[] bits, double allBits) {

		/** @param shares they add up to 1 */
		static Weights of(int[] left, double[] shares) {
			double[] bits = new double[shares.length];
			double all = 0;
			for (int cause : left) {
				bits[cause] = Position.bits(shares[cause]);
				all += bits[cause];
			}
			return new Weights(left, shares, bits, all);
		}
	}

	/** Returns how many bits it tells at most. */
	double most() {
		return most;
	}

	/**
	 * Returns what is to be expected not to be known of the cause after the check, in bits.
	 *
	 * @param ends for each outcome whether nothing more is looked for after it
	 */
	double uncertaintyAfter(Weights weights, boolean[] ends) {
		double[] shares = new double[outcomes];
		double[] sums = new double[outcomes];
		shares[common] = 1;
		sums[common] = weights.allBits();
		for (int cause : weights.left().length < differing.length ? weights.left() : differing) {
			double share = weights.shares()[cause];
			if (share > 0 && from[cause] != COMMON) {
				shares[common] -= share;
				sums[common] -= weights.bits()[cause];
				for (int i = from[cause]; i < to[cause]; i++) {
					shares[outcome[i]] += share * likely[i];
					sums[outcome[i]] += weights.bits()[cause] * likely[i] + share * bits[i];
				}
			}
		}
		double left = 0;
		for (int each = 0; each < outcomes; each++) {
			left += ends[each] || shares[each] <= 0 ? 0 : Math.max(0, sums[each] - Position.bits(shares[each]));
		}
		return left;
	}
}
