package org.baywright.model;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * A set of values as a rule names it. The same text can mean different values in different families (a trait may be
 * narrowed in a family built on another), so it is resolved against a {@link Domain} when it is used.
 */
public sealed interface ValueSet {

	/** Returns the numbers of the domain's values that belong to this set; values outside of the domain are left out. */
	IndexSet in(Domain domain);

	/** Named values; a name that the domain lacks adds nothing. */
	record Choices(List<String> names) implements ValueSet {

		public Choices {
			names = List.copyOf(names);
		}

		@Override
		public IndexSet in(Domain domain) {
			IndexSet set = IndexSet.EMPTY;
			for (String name : names) {
				int index = domain.indexOf(name);
				if (index >= 0) {
					set = set.union(IndexSet.range(index, index));
				}
			}
			return set;
		}
	}

	/**
	 * A band of a quantity, in the unit of the domain it is used on. What is shown beyond the range lies in a band that is open to
	 * that side, unless its limit lies beyond the range as well.
	 *
	 * @param low lower limit, if there is one
	 * @param lowOpen whether the lower limit itself is left out
	 * @param high upper limit, if there is one
	 * @param highOpen whether the upper limit itself is left out
	 */
	record Band(Optional<BigDecimal> low, boolean lowOpen, Optional<BigDecimal> high, boolean highOpen)
			implements ValueSet {

		public static Band closed(BigDecimal low, BigDecimal high) {
			return new Band(Optional.of(low), false, Optional.of(high), false);
		}

		public static Band below(BigDecimal limit) {
			return new Band(Optional.empty(), false, Optional.of(limit), true);
		}

		public static Band atMost(BigDecimal limit) {
			return new Band(Optional.empty(), false, Optional.of(limit), false);
		}

		public static Band above(BigDecimal limit) {
			return new Band(Optional.of(limit), true, Optional.empty(), false);
		}

		public static Band atLeast(BigDecimal limit) {
			return new Band(Optional.of(limit), false, Optional.empty(), false);
		}

		@Override
		public IndexSet in(Domain domain) {
			if (!(domain instanceof Domain.Quantity quantity)) {
				return IndexSet.EMPTY;
			}
			int from = high.filter(limit -> limit.compareTo(quantity.low()) < 0).isPresent() ? quantity.first() : 0;
			if (low.isPresent()) {
				from = Math.max(quantity.first(), lowOpen ? quantity.floorIndex(low.get()) + 1 : quantity.ceilIndex(low.get()));
			}
			int to = low.filter(limit -> limit.compareTo(quantity.high()) > 0).isPresent() ? quantity.last() : quantity.size() - 1;
			if (high.isPresent()) {
				to = Math.min(quantity.last(), highOpen ? quantity.ceilIndex(high.get()) - 1 : quantity.floorIndex(high.get()));
			}
			return IndexSet.range(from, to);
		}
	}

	/** Every value of any of the parts. */
	record Union(List<ValueSet> parts) implements ValueSet {

		public Union {
			parts = List.copyOf(parts);
		}

		@Override
		public IndexSet in(Domain domain) {
			IndexSet set = IndexSet.EMPTY;
			for (ValueSet part : parts) {
				set = set.union(part.in(domain));
			}
			return set;
		}
	}

	/** Every value of the domain that is not in the part. */
	record Except(ValueSet part) implements ValueSet {

		@Override
		public IndexSet in(Domain domain) {
			return part.in(domain).complement(domain.size());
		}
	}
}
