package org.baywright.model.write;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Preparation;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.StateSetting;
import org.baywright.model.ValueSet;
import org.baywright.model.Written;
import org.baywright.model.unit.UnitException;
import org.baywright.model.unit.Units;

/** Values, limits, times and conditions as text. */
final class Values {

	private static final BigDecimal SECONDS = BigDecimal.valueOf(60);

	private final RuleBase base;

	/** @param base knows in which unit a test is read */
	Values(RuleBase base) {
		this.base = base;
	}

	// ---- numbers -------------------------------------------------------------------------------------------------

	static String number(BigDecimal number) {
		return number.toPlainString();
	}

	private static String number(BigDecimal number, String unit) {
		return unit.isEmpty() ? number(number) : number(number) + " " + unit;
	}

	/** Returns a time in minutes, or in seconds where only these are said exactly. */
	static String time(BigDecimal minutes) {
		BigDecimal seconds = minutes.multiply(SECONDS).setScale(0, RoundingMode.HALF_UP);
		boolean isWhole = minutes.stripTrailingZeros().scale() <= 2;
		return isWhole || !isSame(seconds, minutes) ? number(minutes) + " min" : number(seconds) + " s";
	}

	private static boolean isSame(BigDecimal seconds, BigDecimal minutes) {
		try {
			return Units.standard().convert(seconds, "s", "min").equals(minutes);
		} catch (UnitException e) {
			throw new IllegalStateException("both are units of time", e);
		}
	}

	/** Returns the unit in which a test is read; the empty text if it gives no number, or if it is no test. */
	String unit(String test) {
		return base.test(test).map(found -> found.domain() instanceof Domain.Quantity quantity ? quantity.unit() : "").orElse("");
	}

	// ---- sets of values ------------------------------------------------------------------------------------------

	/** Returns the values as they stand after {@code expect}. */
	static String expected(ValueSet values, String unit) {
		return bands(values, unit).stream().collect(Collectors.joining(", "));
	}

	private static List<String> bands(ValueSet values, String unit) {
		if (values instanceof ValueSet.Choices choices) {
			return choices.names().stream().map(Written::value).toList();
		}
		if (values instanceof ValueSet.Union union) {
			List<String> all = new ArrayList<>();
			union.parts().forEach(part -> all.addAll(bands(part, unit)));
			return all;
		}
		if (values instanceof ValueSet.Band band) {
			return List.of(band(band, unit));
		}
		throw new IllegalArgumentException("no text says " + values);
	}

	private static String band(ValueSet.Band band, String unit) {
		return compared(band, unit).orElseGet(() -> {
			BigDecimal low = band.low().orElseThrow();
			BigDecimal high = band.high().orElseThrow();
			return low.equals(high) ? number(low, unit) : number(low, unit) + " .. " + number(high, unit);
		});
	}

	/** Returns a band that is open on one side, as a comparison. */
	private static Optional<String> compared(ValueSet.Band band, String unit) {
		if (band.low().isEmpty()) {
			return band.high().map(high -> (band.highOpen() ? "below " : "at_most ") + number(high, unit));
		}
		return band.high().isPresent() ? Optional.empty()
				: band.low().map(low -> (band.lowOpen() ? "above " : "at_least ") + number(low, unit));
	}

	// ---- states and what is done before --------------------------------------------------------------------------

	/** Returns which vehicles are meant; the empty text for all. */
	String vehicles(Scope scope) {
		String except = scope.except().isEmpty() ? "" : " except " + names(scope.except());
		return scope.isEvery() ? "" : (scope.families().isEmpty() ? "every family" : names(scope.families())) + except
				+ scope.where().map(condition -> " where " + condition(condition)).orElse("");
	}

	static String settings(List<StateSetting> settings) {
		return settings.stream().map(Values::setting).collect(Collectors.joining(", "));
	}

	static String setting(StateSetting setting) {
		return Written.name(setting.state()) + " " + Written.value(setting.value());
	}

	static String names(List<String> names) {
		return names.stream().map(Written::name).collect(Collectors.joining(", "));
	}

	static String preparation(Preparation preparation) {
		if (preparation instanceof Preparation.Wait wait) {
			return "wait " + time(wait.minutes());
		}
		if (preparation instanceof Preparation.Drive drive) {
			return "drive" + drive.speed().map(speed -> " " + expected(speed, Preparation.SPEED.unit())).orElse("")
					+ (drive.how().isEmpty() ? "" : " " + Written.text(drive.how()))
					+ (drive.minutes().signum() == 0 ? "" : " for " + time(drive.minutes()));
		}
		return "do " + Written.text(((Preparation.Do) preparation).text());
	}

	// ---- conditions ----------------------------------------------------------------------------------------------

	/** Returns a condition as it stands after {@code given}, {@code where} or {@code when}. */
	String condition(Condition condition) {
		return condition.match(
				(Condition.And and) -> and.parts().stream().map(this::part).collect(Collectors.joining(", ")),
				(Condition.Or or) -> or.parts().stream().map(this::part).collect(Collectors.joining(" or ")),
				(Condition.Not not) -> "not " + part(not.part()),
				this::atom);
	}

	private String part(Condition condition) {
		String text = condition(condition);
		return condition.match(
				(Condition.And and) -> "(" + text + ")",
				(Condition.Or or) -> "(" + text + ")",
				(Condition.Not not) -> text,
				(Condition.Atom atom) -> text);
	}

	private String atom(Condition.Atom atom) {
		return Written.name(atom.about()) + atom.match(
				(Condition.TraitIs is) -> " " + is(is.values(), ""),
				(Condition.SignIs is) -> is.present() ? "" : " absent",
				(Condition.TestIs is) -> " " + is(is.values(), unit(is.test())),
				(Condition.CodeIs is) -> " " + is.reading().name().toLowerCase(java.util.Locale.ROOT),
				(Condition.ModuleIs is) -> is.answers() ? " answers" : " silent",
				(Condition.VerdictIs is) -> (is.stands() ? " " : " not ") + is.verdict().word(),
				(Condition.Unexplained is) -> " unexplained");
	}

	private static String is(ValueSet values, String unit) {
		if (values instanceof ValueSet.Band band && compared(band, unit).isPresent()) {
			return compared(band, unit).get();
		}
		List<String> bands = bands(values, unit);
		return bands.size() == 1 ? "is " + bands.get(0) : "is any of (" + String.join(", ", bands) + ")";
	}
}
