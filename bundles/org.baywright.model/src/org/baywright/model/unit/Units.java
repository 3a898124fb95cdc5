package org.baywright.model.unit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Reads, compares and converts units. Codes are those of UCUM; the usual spellings of the trade ({@code degC},
 * {@code psi}, {@code rpm}, {@code Ω}) are read as the codes they stand for. An instance is safe for use by several
 * threads.
 */
public final class Units {

	private static final Units STANDARD = new Units();

	private Units() {
	}

	/** UCUM's definitions, loaded when they are first needed. */
	private static final class Table {
		static final UcumTable UCUM = new UcumTable();
	}

	/** Returns the units that every project uses. */
	public static Units standard() {
		return STANDARD;
	}

	/**
	 * Reads a unit.
	 *
	 * @param text the author's spelling; the empty text is a plain number
	 * @return the unit, or nothing if it is unknown
	 */
	public Optional<Unit> parse(String text) {
		if (text.isEmpty()) {
			return Optional.of(Unit.NONE);
		}
		String code = Spellings.ALL.get(text);
		if (code != null) {
			return Optional.of(new Unit(text, code));
		}
		return Table.UCUM.measure(text).map(known -> new Unit(text, text));
	}

	/** Returns the usual spellings of units, preferred ones first; {@link #parse} reads more than these. */
	public List<String> spellings() {
		return List.copyOf(Spellings.ALL.keySet());
	}

	/**
	 * Returns the spelling that was probably meant by an unknown one.
	 *
	 * @param unknown a text that {@link #parse} does not know
	 */
	public Optional<String> suggest(String unknown) {
		String lower = unknown.toLowerCase(Locale.ROOT);
		String word = Spellings.WORDS.get(lower);
		if (word != null) {
			return Optional.of(word);
		}
		for (String spelling : Spellings.ALL.keySet()) {
			if (spelling.toLowerCase(Locale.ROOT).equals(lower)) {
				return Optional.of(spelling);
			}
		}
		if (unknown.length() >= 3) {
			for (String spelling : Spellings.ALL.keySet()) {
				if (spelling.length() >= 3 && oneEditApart(spelling, unknown)) {
					return Optional.of(spelling);
				}
			}
		}
		return Optional.empty();
	}

	/**
	 * Returns whether values in one unit can be expressed in the other.
	 *
	 * @return false also if one of the units is unknown
	 */
	public boolean comparable(String one, String other) {
		Optional<Unit> first = parse(one);
		Optional<Unit> second = parse(other);
		if (first.isEmpty() || second.isEmpty()) {
			return false;
		}
		if (first.get().code().equals(second.get().code())) {
			return true;
		}
		Optional<Measure> left = Table.UCUM.measure(first.get().code());
		Optional<Measure> right = Table.UCUM.measure(second.get().code());
		return left.isPresent() && right.isPresent() && left.get().exponents().equals(right.get().exponents());
	}

	/**
	 * Expresses a value in another unit. The result is exact where it has an end as a decimal; otherwise it has 15
	 * significant digits.
	 *
	 * @param value value in the unit {@code from}
	 * @param from the value's unit
	 * @param to the unit wanted
	 * @throws UnitException if a unit is unknown or the two do not measure the same kind of thing
	 */
	public BigDecimal convert(BigDecimal value, String from, String to) throws UnitException {
		Unit source = known(from);
		Unit target = known(to);
		if (source.code().equals(target.code())) {
			return value;
		}
		Measure left = Table.UCUM.measure(source.code()).orElseThrow(() -> unknown(from));
		Measure right = Table.UCUM.measure(target.code()).orElseThrow(() -> unknown(to));
		if (!left.exponents().equals(right.exponents())) {
			throw new UnitException((from.isEmpty() ? "A plain number" : from) + " and " + (to.isEmpty() ? "a plain number" : to) + " do not measure the same kind of thing");
		}
		return Ratio.of(value).times(left.factor()).plus(left.offset()).minus(right.offset()).over(right.factor())
				.decimal();
	}

	private Unit known(String text) throws UnitException {
		return parse(text).orElseThrow(() -> unknown(text));
	}

	private static UnitException unknown(String text) {
		return new UnitException("There is no unit " + text);
	}

	private static boolean oneEditApart(String one, String other) {
		String shorter = one.length() <= other.length() ? one : other;
		String longer = one.length() <= other.length() ? other : one;
		if (longer.length() - shorter.length() > 1) {
			return false;
		}
		int i = 0;
		while (i < shorter.length() && shorter.charAt(i) == longer.charAt(i)) {
			i++;
		}
		int skipShort = shorter.length() == longer.length() ? i + 1 : i;
		return i == shorter.length() || shorter.substring(skipShort).equals(longer.substring(i + 1));
	}
}
