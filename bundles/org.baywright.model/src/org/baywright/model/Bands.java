package org.baywright.model;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;


/**
 * A set of values of a quantity as separate bands in rising order, each within the quantity's range. Limits are kept as
 * the author wrote them, whether or not they lie on a step.
 *
 * @param bands the bands; two of them never overlap, nor touch in a limit that belongs to either
 */
public record Bands(List<Band> bands) {

	/** One band; a limit that is open does not belong to it. */
	public record Band(BigDecimal low, boolean lowOpen, BigDecimal high, boolean highOpen) {

		private boolean isEmpty() {
			int order = low.compareTo(high);
			return order > 0 || order == 0 && (lowOpen || highOpen);
		}
	}

	private static final Comparator<Band> BY_LOW = Comparator.comparing(Band::low).thenComparing(Band::lowOpen);

	public Bands {
		bands = List.copyOf(bands);
	}

	/** Returns the values of the set that lie in the range of the quantity. */
	public static Bands of(ValueSet values, Domain.Quantity quantity) {
		if (values instanceof ValueSet.Band band) {
			return joined(List.of(clipped(band, quantity)));
		} else if (values instanceof ValueSet.Union union) {
			List<Band> all = new ArrayList<>();
			union.parts().forEach(part -> all.addAll(of(part, quantity).bands()));
			return joined(all);
		} else if (values instanceof ValueSet.Except except) {
			return of(except.part(), quantity).complement(quantity);
		}
		return new Bands(List.of());
	}

	private static Band clipped(ValueSet.Band band, Domain.Quantity quantity) {
		boolean lowInside = band.low().isPresent() && band.low().get().compareTo(quantity.low()) >= 0;
		boolean highInside = band.high().isPresent() && band.high().get().compareTo(quantity.high()) <= 0;
		return new Band(lowInside ? band.low().get() : quantity.low(), lowInside && band.lowOpen(),
				highInside ? band.high().get() : quantity.high(), highInside && band.highOpen());
	}

	private static Bands joined(List<Band> bands) {
		List<Band> joined = new ArrayList<>();
		for (Band band : bands.stream().filter(band -> !band.isEmpty()).sorted(BY_LOW).toList()) {
			Band last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
			if (last == null || leavesHole(last, band)) {
				joined.add(band);
			} else if (reachesHigher(band, last)) {
				joined.set(joined.size() - 1, new Band(last.low(), last.lowOpen(), band.high(), band.highOpen()));
			}
		}
		return new Bands(joined);
	}

	private static boolean leavesHole(Band lower, Band upper) {
		int order = lower.high().compareTo(upper.low());
		return order < 0 || order == 0 && lower.highOpen() && upper.lowOpen();
	}

	private static boolean reachesHigher(Band band, Band than) {
		int order = band.high().compareTo(than.high());
		return order > 0 || order == 0 && !band.highOpen();
	}

	private Bands complement(Domain.Quantity quantity) {
		List<Band> holes = new ArrayList<>();
		BigDecimal low = quantity.low();
		boolean lowOpen = false;
		for (Band band : bands) {
			holes.add(new Band(low, lowOpen, band.low(), !band.lowOpen()));
			low = band.high();
			lowOpen = !band.highOpen();
		}
		holes.add(new Band(low, lowOpen, quantity.high(), false));
		return joined(holes);
	}
}
