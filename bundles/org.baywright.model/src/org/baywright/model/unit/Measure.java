package org.baywright.model.unit;

import java.util.Map;
import java.util.TreeMap;

/**
 * A unit in terms of base units: {@code base value = factor * value + offset}.
 *
 * @param factor size of the unit
 * @param offset where its zero lies; 0 for all but temperatures
 * @param exponents base units with their exponents, none of them 0
 */
record Measure(Ratio factor, Ratio offset, Map<String, Integer> exponents) {

	static final Measure NUMBER = new Measure(Ratio.ONE, Ratio.ZERO, Map.of());

	Measure {
		exponents = Map.copyOf(exponents);
	}

	static Measure base(String name) {
		return new Measure(Ratio.ONE, Ratio.ZERO, Map.of(name, 1));
	}

	Measure scaled(Ratio by) {
		return new Measure(factor.times(by), offset, exponents);
	}

	/** Within a larger unit a degree is a difference, so the offset is dropped. */
	Measure times(Measure other, int sign) {
		Map<String, Integer> sum = new TreeMap<>(exponents);
		other.exponents.forEach((name, exponent) -> sum.merge(name, sign * exponent, Integer::sum));
		sum.values().removeIf(exponent -> exponent == 0);
		return new Measure(factor.times(other.factor.power(sign)), Ratio.ZERO, sum);
	}

	Measure power(int exponent) {
		if (exponent == 1) {
			return this;
		}
		Map<String, Integer> raised = new TreeMap<>();
		exponents.forEach((name, old) -> raised.put(name, old * exponent));
		raised.values().removeIf(value -> value == 0);
		return new Measure(factor.power(exponent), Ratio.ZERO, raised);
	}
}
