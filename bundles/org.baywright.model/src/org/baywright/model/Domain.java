package org.baywright.model;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * All the values that something can take; always finite. Values are numbered from 0 in their natural order, so that
 * the kernel can work on whole numbers and still say each value as its author wrote it.
 */
public sealed interface Domain {

	/** Returns how many values there are. */
	int size();

	/** Returns how a technician says the value with this number, with its unit. */
	String say(int index);

	/** Returns the values that have a name, in their order. */
	List<NamedValue> named();

	/** Returns the number of the value with this name, or -1 if there is no such value. */
	int indexOf(String name);

	/** Returns the number of the value that a reading gives; -1 for a reading of another sort. It may lie outside. */
	default int indexOf(Reading reading) {
		if (reading instanceof Reading.Named named) {
			return indexOf(named.value());
		}
		return reading instanceof Reading.Measured measured && this instanceof Quantity quantity
				? quantity.floorIndex(measured.value()) : -1;
	}

	/** Named values, in the author's order. */
	record Names(List<NamedValue> values) implements Domain {

		public Names {
			values = List.copyOf(values);
		}

		@Override
		public List<NamedValue> named() {
			return values;
		}

		@Override
		public int indexOf(String name) {
			for (int i = 0; i < values.size(); i++) {
				if (values.get(i).name().equals(name)) {
					return i;
				}
			}
			return -1;
		}

		@Override
		public int size() {
			return values.size();
		}

		@Override
		public String say(int index) {
			return values.get(index).title();
		}
	}

	/**
	 * A quantity from {@code low} to {@code high} in steps, both ends belonging to it. An instrument may show that what it
	 * measures lies beyond its range; that is one more value, before the least or behind the greatest number.
	 *
	 * @param unit the author's unit, or the empty text for a plain number
	 * @param low least number
	 * @param high greatest number, not less than {@code low}
	 * @param step distance of neighbouring numbers, greater than 0
	 * @param under what is shown below the range, if it is a result
	 * @param over what is shown above the range, if it is a result
	 */
	record Quantity(String unit, BigDecimal low, BigDecimal high, BigDecimal step, Optional<NamedValue> under,
			Optional<NamedValue> over) implements Domain {

		/** More values than this make no sense for something a person reads off; they are refused. */
		public static final int MAX_SIZE = 10_000_000;

		public Quantity {
			Objects.requireNonNull(unit);
			if (step.signum() <= 0) {
				throw new IllegalArgumentException("step must be greater than 0: " + step.toPlainString());
			}
			if (high.compareTo(low) < 0) {
				throw new IllegalArgumentException("range ends before it begins: " + low.toPlainString() + " .. "
						+ high.toPlainString());
			}
			if (high.subtract(low).divide(step, 0, RoundingMode.FLOOR).compareTo(BigDecimal.valueOf(MAX_SIZE)) >= 0) {
				throw new IllegalArgumentException("more than " + MAX_SIZE + " steps in the range");
			}
			if (under.isPresent() && over.isPresent() && under.get().name().equals(over.get().name())) {
				throw new IllegalArgumentException("two values are called " + over.get().name());
			}
		}

		/** A quantity of which every result is a number. */
		public Quantity(String unit, BigDecimal low, BigDecimal high, BigDecimal step) {
			this(unit, low, high, step, Optional.empty(), Optional.empty());
		}

		@Override
		public int size() {
			return last() + 1 + (over.isPresent() ? 1 : 0);
		}

		/** Returns the index of the least number. */
		public int first() {
			return under.isPresent() ? 1 : 0;
		}

		/** Returns the index of the greatest number. */
		public int last() {
			return floorIndex(high);
		}

		/** Returns whether the value with this index is a number, and not beyond the range. */
		public boolean isNumber(int index) {
			return index >= first() && index <= last();
		}

		/** Returns the number with this index, which must be that of a number. */
		public BigDecimal value(int index) {
			return low.add(step.multiply(BigDecimal.valueOf(index - first())));
		}

		/** Returns the index of the greatest number that is not above {@code limit}; less than {@link #first} if there is none. */
		public int floorIndex(BigDecimal limit) {
			return first() + clamp(limit.subtract(low).divide(step, 0, RoundingMode.FLOOR));
		}

		/** Returns the index of the least number that is not below {@code limit}; may lie above the range. */
		public int ceilIndex(BigDecimal limit) {
			return first() + clamp(limit.subtract(low).divide(step, 0, RoundingMode.CEILING));
		}

		private static int clamp(BigDecimal index) {
			BigDecimal far = BigDecimal.valueOf(2L * MAX_SIZE);
			return index.max(far.negate()).min(far).intValueExact();
		}

		@Override
		public List<NamedValue> named() {
			return Stream.concat(under.stream(), over.stream()).toList();
		}

		@Override
		public int indexOf(String name) {
			return under.filter(value -> value.name().equals(name)).isPresent() ? 0
					: over.filter(value -> value.name().equals(name)).isPresent() ? size() - 1 : -1;
		}

		@Override
		public String say(int index) {
			return isNumber(index) ? sayNumber(value(index)) : (index < first() ? under : over).orElseThrow().title();
		}

		/** Returns the number with as many decimals as the step has, and the unit. */
		public String sayNumber(BigDecimal number) {
			int scale = Math.max(0, Math.max(step.stripTrailingZeros().scale(), low.stripTrailingZeros().scale()));
			BigDecimal shown = number.scale() <= scale ? number.setScale(scale) : number.stripTrailingZeros();
			return unit.isEmpty() ? shown.toPlainString() : shown.toPlainString() + " " + unit;
		}

		/** Returns the range and what is shown beyond it: "0.0 Ohm to 200.0 Ohm or open line". */
		public String range() {
			return sayNumber(low) + " to " + sayNumber(value(last()))
					+ named().stream().map(value -> " or " + value.title()).collect(Collectors.joining());
		}
	}
}
