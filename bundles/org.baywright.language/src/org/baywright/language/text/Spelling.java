package org.baywright.language.text;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.baywright.model.Span;

/** Finds the name that was probably meant. */
public final class Spelling {

	private static final int LEAST_LETTERS = 5;
	private static final int MOST_MEANT = 3;

	private Spelling() {
	}

	/**
	 * Returns the candidate with the fewest slips of the pen against the written name: a letter too many, too few,
	 * wrong, or two exchanged. More than a third of the letters is no slip. Among equals the first in alphabetical order
	 * is taken, so that the answer does not depend on the order of files.
	 */
	public static Optional<String> nearest(String written, Collection<String> candidates) {
		return all(written, candidates).stream().findFirst();
	}

	/** Returns all candidates with the fewest slips, in alphabetical order. */
	private static SortedSet<String> all(String written, Collection<String> candidates) {
		String word = written.toLowerCase(Locale.ROOT);
		SortedSet<String> best = new TreeSet<>();
		int bestSlips = Math.max(1, written.length() / 3);
		int limit = bestSlips;
		for (String candidate : candidates) {
			if (Math.abs(candidate.length() - written.length()) > Math.min(limit, bestSlips)) {
				continue;
			}
			int slips = slips(word, candidate.toLowerCase(Locale.ROOT), bestSlips);
			if (slips < bestSlips) {
				best.clear();
				bestSlips = slips;
			}
			if (slips == bestSlips) {
				best.add(candidate);
			}
		}
		return best;
	}

	/**
	 * Returns whether a name can hardly be anything but another one misspelt: two letters exchanged, or one too many or too
	 * few, within one long piece of it, or a line between pieces left out. {@code cyl_2} and {@code cyl_1}, {@code open_slow}
	 * and {@code open_low}, {@code overcharged} and {@code undercharged} are near each other, and yet two things.
	 */
	public static boolean isMisspelt(String written, String meant) {
		String[] pieces = written.split("[_.]");
		String[] others = meant.split("[_.]");
		if (pieces.length != others.length) {
			return written.replaceAll("[_.]", "").equals(meant.replaceAll("[_.]", ""));
		}
		int slips = 0;
		for (int i = 0; i < pieces.length; i++) {
			if (!pieces[i].equals(others[i])) {
				slips++;
				if (!isOneSlip(pieces[i], others[i])) {
					return false;
				}
			}
		}
		return slips == 1;
	}

	/** Whether letters within a word are the only difference; what stands at its ends or in its figures may be meant. */
	private static boolean isOneSlip(String written, String meant) {
		String longer = written.length() > meant.length() ? written : meant;
		String shorter = longer == written ? meant : written;
		if (longer.length() < LEAST_LETTERS || longer.length() - shorter.length() > 1) {
			return false;
		}
		int at = 0;
		while (at < shorter.length() && longer.charAt(at) == shorter.charAt(at)) {
			at++;
		}
		if (at == 0 || at >= longer.length() - 1 || !Character.isLetter(longer.charAt(at))) {
			return false;
		}
		return longer.length() > shorter.length() ? longer.substring(at + 1).equals(shorter.substring(at))
				: longer.charAt(at) == shorter.charAt(at + 1) && longer.charAt(at + 1) == shorter.charAt(at)
						&& longer.substring(at + 2).equals(shorter.substring(at + 2));
	}

	/** Asks whether one of those was meant that are equally near; gives another advice if nothing is near or too much. */
	public static Advice advice(Span span, String written, Collection<String> candidates, String otherwise) {
		List<String> near = near(written, candidates);
		return near.isEmpty() ? Advice.words(otherwise) : Advice.meant(span, written, near, false);
	}

	/** Returns all candidates that are equally near; none if nothing is near or too much. */
	public static List<String> near(String written, Collection<String> candidates) {
		SortedSet<String> near = all(written, candidates);
		return near.size() > MOST_MEANT ? List.of() : List.copyOf(near);
	}

	/** Says the values that there are in place of one that there is not. */
	public static Advice valueAdvice(Span span, String written, List<String> values, String owner) {
		List<String> near = near(written, values);
		return near.isEmpty() ? Advice.words((values.size() == 1 ? "Its only value is " : "Its values are ") + either(values)
				+ ". Add it where `" + owner + "` is defined, or correct the name.") : Advice.meant(span, written, near, true);
	}

	/** Says a list as "`a`, `b` or `c`". */
	public static String either(List<String> names) {
		StringBuilder out = new StringBuilder();
		for (int i = 0; i < names.size(); i++) {
			out.append(i == 0 ? "" : i == names.size() - 1 ? " or " : ", ").append('`').append(names.get(i)).append('`');
		}
		return out.toString();
	}

	/** The Damerau–Levenshtein distance with adjacent exchanges, or something above {@code limit} if it is above. */
	private static int slips(String one, String other, int limit) {
		int[] beforeLast = new int[other.length() + 1];
		int[] last = new int[other.length() + 1];
		int[] current = new int[other.length() + 1];
		for (int j = 0; j <= other.length(); j++) {
			last[j] = j;
		}
		for (int i = 1; i <= one.length(); i++) {
			current[0] = i;
			int least = i;
			for (int j = 1; j <= other.length(); j++) {
				int change = last[j - 1] + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
				current[j] = Math.min(change, Math.min(last[j], current[j - 1]) + 1);
				if (i > 1 && j > 1 && one.charAt(i - 1) == other.charAt(j - 2) && one.charAt(i - 2) == other.charAt(j - 1)) {
					current[j] = Math.min(current[j], beforeLast[j - 2] + 1);
				}
				least = Math.min(least, current[j]);
			}
			if (least > limit) {
				return least;
			}
			int[] spare = beforeLast;
			beforeLast = last;
			last = current;
			current = spare;
		}
		return last[other.length()];
	}
}
