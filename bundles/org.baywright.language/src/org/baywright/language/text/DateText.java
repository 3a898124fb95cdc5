package org.baywright.language.text;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.baywright.model.Span;

/** Dates with the year at their end, as many countries write them. */
public final class DateText {

	public static final Pattern PATTERN = Pattern.compile("(?<![0-9./-])([0-9]{1,2})([./-])([0-9]{1,2})\\2([0-9]{4})(?![0-9])");

	private static final int MONTHS = 12;

	private DateText() {
	}

	/** Says how to write such a date. Which number is the day is clear only where the other is the only one that can be a month. */
	public static Advice advice(Span span, String written) {
		Matcher parts = PATTERN.matcher(written);
		if (parts.matches()) {
			int first = Integer.parseInt(parts.group(1));
			int second = Integer.parseInt(parts.group(3));
			if (first > MONTHS || second > MONTHS || first == second) {
				try {
					boolean dayFirst = first > MONTHS;
					return Advice.write(span, LocalDate
							.of(Integer.parseInt(parts.group(4)), dayFirst ? second : first, dayFirst ? first : second).toString());
				} catch (DateTimeException e) {
					// no calendar has it either way
				}
			}
		}
		return Advice.words("Write the date as year-month-day, such as 2026-03-02.");
	}
}
