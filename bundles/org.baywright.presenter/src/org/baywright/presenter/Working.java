package org.baywright.presenter;

/**
 * How far some long work is.
 *
 * @param what what is done, as a technician would say it
 * @param done how much is done
 * @param total how much there is to do; 0 while that is not known
 * @param unit what is counted, one of it
 */
public record Working(String what, int done, int total, String unit) {

	/** Returns work of which nothing is counted yet. */
	public static Working begun(String what) {
		return new Working(what, 0, 0, "");
	}

	/** Returns how far it is, from 0 to 1000. */
	public int thousandths() {
		return total == 0 ? 0 : (int) (1000L * Math.min(done, total) / total);
	}

	/** Returns how far it is in words: "Check the rules: 12 of 40 parts". */
	public String text() {
		return total == 0 ? what + "\u2026" : what + ": " + done + " of " + Say.count(total, unit);
	}
}
