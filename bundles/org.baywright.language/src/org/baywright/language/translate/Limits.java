package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.Optional;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Quantity;
import org.baywright.model.Domain;
import org.baywright.model.Span;
import org.baywright.model.unit.UnitException;
import org.baywright.model.unit.Units;

/** Numbers with units, expressed in the unit of what they are compared with. */
final class Limits {

	private final Context context;

	Limits(Context context) {
		this.context = context;
	}

	/**
	 * What a number is compared with.
	 *
	 * @param name the test or trait
	 * @param word what a trait counts, which may be written as its unit; empty for a test
	 * @param domain its values
	 */
	record Target(String name, String word, Domain.Quantity domain) {
	}

	/** Expresses a limit in the target's unit and checks that the target can be cut there. */
	Optional<BigDecimal> limit(Quantity quantity, Target target) {
		return limit(quantity, quantity == null ? null : quantity.getUnit(), target);
	}

	/** As {@link #limit(Quantity, Target)}, with a unit that is written elsewhere in the same band. */
	Optional<BigDecimal> limit(Quantity quantity, String unit, Target target) {
		Optional<BigDecimal> value = convert(quantity, unit, target);
		value.ifPresent(limit -> checkCut(quantity, limit, target));
		return value;
	}

	private void checkCut(Quantity quantity, BigDecimal limit, Target target) {
		Domain.Quantity domain = target.domain();
		Span span = context.source.span(quantity);
		if (limit.compareTo(domain.low()) < 0 || limit.compareTo(domain.high()) > 0) {
			context.report.warning("limit-out-of-range", span,
					context.source.written(quantity) + " lies outside of what `" + target.name() + "` can give, "
							+ range(domain) + ".",
					"Correct the limit, or widen the range of `" + target.name() + "`.");
		} else if (domain.floorIndex(limit) != domain.ceilIndex(limit)) {
			int below = domain.floorIndex(limit);
			context.report.warning("limit-off-step", span,
					context.source.written(quantity) + " lies between two steps of `" + target.name() + "`, which is read to "
							+ domain.sayNumber(domain.step()) + ".",
					"Write " + domain.say(below) + " or " + domain.say(below + 1) + ", or make the step finer.");
		}
	}

	/** Expresses a number in the target's unit; reports what does not fit. */
	Optional<BigDecimal> convert(Quantity quantity, String unit, Target target) {
		if (quantity == null || quantity.getNumber() == null) {
			context.report.incomplete();
			return Optional.empty();
		}
		String wanted = target.domain().unit();
		if (unit == null || unit.isEmpty()) {
			if (!wanted.isEmpty()) {
				String number = say(quantity.getNumber());
				context.report.error("unit-missing", context.source.span(quantity), number + " has no unit.",
						"Write `" + number + " " + wanted + "`, or the unit you measured in.");
				return Optional.empty();
			}
			return Optional.of(quantity.getNumber());
		}
		if (wanted.isEmpty() && unit.equals(target.word())) {
			return Optional.of(quantity.getNumber());
		}
		return convert(quantity, unit, wanted);
	}

	private Optional<BigDecimal> convert(Quantity quantity, String unit, String wanted) {
		Span unitSpan = context.source.span(quantity, BayPackage.Literals.QUANTITY__UNIT);
		if (!known(unit, unitSpan)) {
			return Optional.empty();
		}
		try {
			return Optional.of(Units.standard().convert(quantity.getNumber(), unit, wanted));
		} catch (UnitException otherKind) {
			String number = say(quantity.getNumber());
			String message = wanted.isEmpty() ? "A plain number is needed here, and " + number + " " + unit + " has a unit."
					: number + " " + unit + " cannot be compared with a value in " + wanted + ".";
			context.report.error("unit-mismatch", context.source.span(quantity), message, otherKind(unit, wanted, number));
			return Optional.empty();
		}
	}

	private static String otherKind(String unit, String wanted, String number) {
		if (wanted.isEmpty()) {
			return "Write `" + number + "`.";
		}
		if ((unit.equals("C") || unit.equals("F")) && Units.standard().comparable(wanted, "K")) {
			return "Did you mean `" + number + " deg" + unit + "`?";
		}
		return "Write it in " + wanted + ", or in another unit of the same kind.";
	}

	/** Returns whether a unit is known; reports it if not. */
	boolean known(String unit, Span span) {
		if (Units.standard().parse(unit).isPresent()) {
			return true;
		}
		context.report.error("unknown-unit", span, "There is no unit `" + unit + "`.",
				Units.standard().suggest(unit).map(meant -> "Did you mean `" + meant + "`?")
						.orElse("Use a unit such as V, mA, Ohm, bar, degC, min or %."));
		return false;
	}

	/** Returns a duration in minutes; 0 if none is written or it is wrong. */
	BigDecimal minutes(Quantity quantity) {
		if (quantity == null || quantity.getNumber() == null) {
			return BigDecimal.ZERO;
		}
		if (quantity.getNumber().signum() < 0) {
			context.report.flaw("negative-duration", context.source.span(quantity), "A duration cannot be less than 0.",
					"Write how many minutes the work takes.");
			return BigDecimal.ZERO;
		}
		String unit = quantity.getUnit();
		if (unit == null || unit.isEmpty()) {
			context.report.flaw("unit-missing", context.source.span(quantity),
					say(quantity.getNumber()) + " has no unit.", "Write `" + say(quantity.getNumber()) + " min`.");
			return BigDecimal.ZERO;
		}
		if (Units.standard().parse(unit).isPresent() && !Units.standard().comparable(unit, "min")) {
			context.report.flaw("unit-mismatch", context.source.span(quantity),
					context.source.written(quantity) + " is no duration.", "Write how many minutes the work takes.");
			return BigDecimal.ZERO;
		}
		return convert(quantity, unit, "min").orElse(BigDecimal.ZERO);
	}

	/** Says the range of a quantity. */
	static String range(Domain.Quantity domain) {
		return domain.sayNumber(domain.low()) + " .. " + domain.sayNumber(domain.high());
	}

	/** Says a number plainly. */
	static String say(BigDecimal number) {
		return number.toPlainString();
	}
}
