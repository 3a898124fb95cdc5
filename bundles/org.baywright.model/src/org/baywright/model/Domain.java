package org.baywright.model;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;

/**
 * All the values that something can take; always finite. Values are numbered from 0 in their natural order, so that
 * the kernel can work on whole numbers and still say each value as its author wrote it.
 */
public sealed interface Domain {

	/** Returns how many values there are. */
	int size();

	/** Returns how a technician says the value with this number, with its unit. */
	String say(int index);

	/** Returns the number of the value that a reading gives; -1 for a reading of another sort. It may lie outside. */
	default int indexOf(Reading reading) {
		if (reading instanceof Reading.Named named && this instanceof Names names) {
			return names.indexOf(named.value());
		}
		return reading instanceof Reading.Measured measured && this instanceof Quantity quantity
				? quantity.floorIndex(measured.value()) : -1;
	}

	/** Named values, in the author's order. */
	record Names(List<NamedValue> values) implements Domain {

		public Names {
			values = List.copyOf(values);
		}

		/** Returns the number of the value, or -1 if there is no such value. */
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
	 * A quantity from {@code low} to {@code high} in steps, both ends belonging to it.
	 *
	 * @param unit the author's unit, or the empty text for a plain number
	 * @param low least value
	 * @param high greatest value, not less than {@code low}
	 * @param step distance of neighbouring values, greater than 0
	 */
	record Quantity(String unit, BigDecimal low, BigDecimal high, BigDecimal step) implements Domain {

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
		}

		@Override
		public int size() {
			return floorIndex(high) + 1;
		}

		/** Returns the value with this number. */
		public BigDecimal value(int index) {
			return low.add(step.multiply(BigDecimal.valueOf(index)));
		}

		/** Returns the number of the greatest value that is not above {@code limit}; less than 0 if there is none. */
		public int floorIndex(BigDecimal limit) {
			return clamp(limit.subtract(low).divide(step, 0, RoundingMode.FLOOR));
		}

		/** Returns the number of the least value that is not below {@code limit}; may lie above the range. */
		public int ceilIndex(BigDecimal limit) {
			return clamp(limit.subtract(low).divide(step, 0, RoundingMode.CEILING));
		}

		private static int clamp(BigDecimal index) {
			BigDecimal far = BigDecimal.valueOf(2L * MAX_SIZE);
			return index.max(far.negate()).min(far).intValueExact();
		}

		@Override
		public String say(int index) {
			return sayNumber(value(index));
		}

		/** Returns the number with as many decimals as the step has, and the unit. */
		public String sayNumber(BigDecimal number) {
			int scale = Math.max(0, Math.max(step.stripTrailingZeros().scale(), low.stripTrailingZeros().scale()));
			BigDecimal shown = number.scale() <= scale ? number.setScale(scale) : number.stripTrailingZeros();
			return unit.isEmpty() ? shown.toPlainString() : shown.toPlainString() + " " + unit;
		}
	}
}
