package org.baywright.model.unit;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;

/** An exact fraction in lowest terms, the denominator greater than 0. */
record Ratio(BigInteger above, BigInteger below) {

	static final Ratio ONE = of(1, 1);
	static final Ratio ZERO = of(0, 1);

	/** Enough for every measured value; a fraction without an end can lie on no test's step. */
	private static final MathContext ENDLESS = new MathContext(15, RoundingMode.HALF_EVEN);

	Ratio {
		BigInteger common = above.gcd(below);
		if (below.signum() < 0) {
			common = common.negate();
		}
		above = above.divide(common);
		below = below.divide(common);
	}

	static Ratio of(long above, long below) {
		return new Ratio(BigInteger.valueOf(above), BigInteger.valueOf(below));
	}

	static Ratio of(BigDecimal value) {
		BigInteger digits = value.unscaledValue();
		return value.scale() >= 0 ? new Ratio(digits, BigInteger.TEN.pow(value.scale()))
				: new Ratio(digits.multiply(BigInteger.TEN.pow(-value.scale())), BigInteger.ONE);
	}

	Ratio plus(Ratio other) {
		return new Ratio(above.multiply(other.below).add(other.above.multiply(below)), below.multiply(other.below));
	}

	Ratio minus(Ratio other) {
		return plus(new Ratio(other.above.negate(), other.below));
	}

	Ratio times(Ratio other) {
		return new Ratio(above.multiply(other.above), below.multiply(other.below));
	}

	Ratio over(Ratio other) {
		return new Ratio(above.multiply(other.below), below.multiply(other.above));
	}

	Ratio power(int exponent) {
		return exponent >= 0 ? new Ratio(above.pow(exponent), below.pow(exponent))
				: new Ratio(below.pow(-exponent), above.pow(-exponent));
	}

	/** Returns the value as a decimal: exact where it ends, else to 15 significant digits; never in powers of ten. */
	BigDecimal decimal() {
		BigDecimal result;
		try {
			result = new BigDecimal(above).divide(new BigDecimal(below));
		} catch (ArithmeticException endless) {
			result = new BigDecimal(above).divide(new BigDecimal(below), ENDLESS);
		}
		result = result.stripTrailingZeros();
		return result.scale() < 0 ? result.setScale(0) : result;
	}
}
