package org.baywright.model.words;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

import org.baywright.model.Bands;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Meaning;
import org.baywright.model.NamedValue;
import org.baywright.model.ValueSet;

/** Says sets of values: "below 9 V", "12.4 V to 13.0 V", "lit or dim". */
public final class Limits {

	private Limits() {
	}

	/** Returns the values of the set that a test can give; limits are said as their author wrote them. */
	public static String say(ValueSet values, Domain domain) {
		if (domain instanceof Domain.Quantity quantity) {
			List<String> said = new ArrayList<>();
			IndexSet in = values.in(quantity);
			Optional<NamedValue> under = quantity.under().filter(value -> in.contains(0));
			Optional<NamedValue> over = quantity.over().filter(value -> in.contains(quantity.size() - 1));
			boolean low = false;
			boolean high = false;
			for (Bands.Band band : Bands.of(values, quantity).bands()) {
				boolean fromLeast = band.low().compareTo(quantity.low()) == 0 && !band.lowOpen() && under.isPresent() == quantity.under().isPresent();
				boolean toGreatest = band.high().compareTo(quantity.high()) == 0 && !band.highOpen()
						&& over.isPresent() == quantity.over().isPresent();
				said.add(band(quantity::sayNumber, fromLeast ? null : band.low(), band.lowOpen(),
						toGreatest ? null : band.high(), band.highOpen()));
				low |= fromLeast;
				high |= toGreatest;
			}
			if (under.isPresent() && !low) {
				said.add(0, under.get().title());
			}
			if (over.isPresent() && !high) {
				said.add(over.get().title());
			}
			return joined(said);
		}
		return say(values.in(domain), domain);
	}

	/** Returns values by their numbers; the first and the last of a band are said, as no author wrote limits for it. */
	public static String say(IndexSet values, Domain domain) {
		List<String> said = new ArrayList<>();
		int last = domain.size() - 1;
		for (int run = 0; run < values.runCount(); run++) {
			int low = values.low(run);
			int high = values.high(run);
			boolean all = low == 0 && high == last;
			if (domain instanceof Domain.Quantity && (low < high || all)) {
				Integer from = low == 0 ? null : Integer.valueOf(low);
				Integer to = high == last ? null : Integer.valueOf(high);
				said.add(band(domain::say, from, false, to, false));
			} else {
				for (int i = low; i <= high; i++) {
					said.add(domain.say(i));
				}
			}
		}
		return joined(said);
	}

	private static String joined(List<String> said) {
		return said.isEmpty() ? "no result" : String.join(" or ", said);
	}

	/** Returns a band without a unit. */
	public static String say(ValueSet.Band band) {
		return band(Meaning::number, band.low().orElse(null), band.lowOpen(), band.high().orElse(null), band.highOpen());
	}

	private static <T extends Comparable<T>> String band(Function<T, String> number, T low, boolean lowOpen, T high, boolean highOpen) {
		if (low == null && high == null) {
			return "any value";
		} else if (low == null) {
			return highOpen ? "below " + number.apply(high) : number.apply(high) + " or less";
		} else if (high == null) {
			return lowOpen ? "above " + number.apply(low) : number.apply(low) + " or more";
		} else if (low.compareTo(high) == 0) {
			return number.apply(low);
		}
		return (lowOpen ? "above " : "") + number.apply(low) + (lowOpen ? " up to " : " to ")
				+ (highOpen ? "below " : "") + number.apply(high);
	}
}
