package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.baywright.model.unit.UnitException;
import org.baywright.model.unit.Units;

/**
 * A time or a sum of money that somebody typed, read.
 *
 * @param number what it means; nothing for a blank text, or if it means nothing
 * @param message what is wrong with it; the empty text if nothing is
 */
record Amount(Optional<BigDecimal> number, String message) {

	private static final Pattern NUMBER = Pattern.compile("([+-]?[0-9]+(?:[.,][0-9]{1,4})?)" + Entry.UNIT);
	private static final BigDecimal MOST = new BigDecimal("999999999.9999");
	private static final String TIME = "Write a time, such as 90 or 1.5 h.";
	private static final String SUM = "Write a sum as a number, such as 140.";

	private static Amount of(Optional<BigDecimal> number) {
		return new Amount(number, "");
	}

	private static Amount wrong(String message) {
		return new Amount(Optional.empty(), message);
	}

	/** Reads a time in minutes, or in another unit that is named. */
	static Amount minutes(String text) {
		Matcher matcher = NUMBER.matcher(text.strip());
		if (text.isBlank()) {
			return of(Optional.empty());
		} else if (!matcher.matches()) {
			return wrong(TIME);
		}
		BigDecimal number = number(matcher);
		try {
			BigDecimal minutes = matcher.group(2).isEmpty() ? number : Units.standard().convert(number, matcher.group(2), "min").stripTrailingZeros();
			return within(minutes, "A time is not less than nothing. " + TIME, "No job takes that long. " + TIME);
		} catch (UnitException e) {
			return wrong(e.getMessage() + ". " + TIME);
		}
	}

	/** Reads a sum in the project's own money. */
	static Amount money(String text) {
		Matcher matcher = NUMBER.matcher(text.strip());
		return text.isBlank() ? of(Optional.empty())
				: matcher.matches() && matcher.group(2).isEmpty() ? within(number(matcher), "A sum is not less than nothing. " + SUM, "No job costs that much. " + SUM) : wrong(SUM);
	}

	private static Amount within(BigDecimal number, String less, String more) {
		return number.signum() < 0 ? wrong(less) : number.compareTo(MOST) > 0 ? wrong(more) : of(Optional.of(number));
	}

	private static BigDecimal number(Matcher matcher) {
		return new BigDecimal(matcher.group(1).replace(',', '.'));
	}
}
