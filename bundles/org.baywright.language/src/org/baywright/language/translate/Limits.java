package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Quantity;
import org.baywright.language.text.Advice;
import org.baywright.model.Domain;
import org.baywright.model.ProblemKind;
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
		value.ifPresent(limit -> checkCut(quantity, unit, limit, target));
		return value;
	}

	private void checkCut(Quantity quantity, String unit, BigDecimal limit, Target target) {
		Domain.Quantity domain = target.domain();
		Span span = context.source.span(quantity);
		if (limit.compareTo(domain.low()) < 0 || limit.compareTo(domain.high()) > 0) {
			context.report.tell(ProblemKind.LIMIT_OUT_OF_RANGE, span,
					context.source.written(quantity) + " lies outside of what `" + target.name() + "` can give, "
							+ range(domain) + ".",
					"Correct the limit, or widen the range of `" + target.name() + "`.");
		} else if (!target.name().equals(Preparations.NAME) && domain.floorIndex(limit) != domain.ceilIndex(limit)) { // nobody drives in steps
			int below = domain.floorIndex(limit);
			context.report.tell(ProblemKind.LIMIT_OFF_STEP, span,
					context.source.written(quantity) + " lies between two steps of `" + target.name() + "`, which is read to "
							+ domain.sayNumber(domain.step()) + ".",
					onStep(quantity, unit, domain, List.of(below, below + 1)));
		}
	}

	/** Says to write one of some values of a quantity in the unit that is written. */
	Advice onStep(Quantity quantity, String unit, Domain.Quantity domain, List<Integer> values) {
		String wanted = unit == null || Units.standard().parse(unit).isEmpty() ? domain.unit() : unit;
		List<String> texts = new ArrayList<>();
		for (int index : values) {
			if (domain.isNumber(index)) {
				in(wanted, domain, index).map(number -> quantity.getUnit() == null ? number : number + " " + quantity.getUnit())
						.ifPresent(texts::add);
			}
		}
		return texts.isEmpty() ? Advice.words("Write a value that it gives, or make the step finer.")
				: Advice.write(context.source.span(quantity), texts, ", or make the step finer");
	}

	/** Returns the number of a value in another unit, if it can be said exactly there. */
	private static Optional<String> in(String unit, Domain.Quantity domain, int index) {
		if (unit.equals(domain.unit())) {
			return Optional.of(new Domain.Quantity("", domain.low(), domain.high(), domain.step()).sayNumber(domain.value(index)));
		}
		try {
			BigDecimal number = Units.standard().convert(domain.value(index), domain.unit(), unit);
			boolean exact = Units.standard().convert(number, unit, domain.unit()).compareTo(domain.value(index)) == 0;
			return exact ? Optional.of(say(number.stripTrailingZeros())) : Optional.empty();
		} catch (UnitException e) {
			return Optional.empty();
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
				Span span = context.source.span(quantity);
				boolean fits = isStep(quantity.getNumber(), target.domain());
				context.report.error(ProblemKind.UNIT_MISSING, span, number + " has no unit.",
						fits ? Advice.write(span, List.of(number + " " + wanted), ", or the unit you measured in")
								: Advice.words("Write the unit you measured in behind it."));
				return Optional.empty();
			}
			return Optional.of(quantity.getNumber());
		}
		if (wanted.isEmpty() && unit.equals(target.word())) {
			return Optional.of(quantity.getNumber());
		}
		return convert(quantity, unit, wanted, target.domain());
	}

	/** Whether nothing more is wrong with a number once it has the unit of a range. */
	private static boolean isStep(BigDecimal number, Domain.Quantity domain) {
		return number.compareTo(domain.low()) >= 0 && number.compareTo(domain.high()) <= 0
				&& domain.floorIndex(number) == domain.ceilIndex(number);
	}

	private Optional<BigDecimal> convert(Quantity quantity, String unit, String wanted, Domain.Quantity domain) {
		if (quantity.getUnit() == null) {
			// the unit is written at the other end of the band, and what is wrong with it is told there
			if (!Units.standard().comparable(unit, wanted)) {
				context.report.incomplete();
				return Optional.empty();
			}
		}
		Span unitSpan = context.source.span(quantity, BayPackage.Literals.QUANTITY__UNIT);
		if (!known(unit, unitSpan)) {
			return Optional.empty();
		}
		try {
			return Optional.of(Units.standard().convert(quantity.getNumber(), unit, wanted));
		} catch (UnitException otherKind) {
			String number = say(quantity.getNumber());
			Span span = context.source.span(quantity);
			String message = wanted.isEmpty() ? "A plain number is needed here, and " + number + " " + unit + " has a unit."
					: number + " " + unit + " cannot be compared with a value in " + wanted + ".";
			context.report.error(ProblemKind.UNIT_MISMATCH, span, message,
					otherKind(span, unit, wanted, quantity.getNumber(), domain));
			return Optional.empty();
		}
	}

	private static Advice otherKind(Span span, String unit, String wanted, BigDecimal number, Domain.Quantity domain) {
		if (wanted.isEmpty() && isStep(number, domain)) {
			return Advice.write(span, say(number));
		}
		if ((unit.equals("C") || unit.equals("F")) && Units.standard().comparable(wanted, "K")) {
			return Advice.meant(span, say(number) + " deg" + unit);
		}
		return Advice.words(wanted.isEmpty() ? "Write a plain number." : "Write it in " + wanted + ", or in another unit of the same kind.");
	}

	/** Returns whether a unit is known; reports it if not. */
	boolean known(String unit, Span span) {
		if (Units.standard().parse(unit).isPresent()) {
			return true;
		}
		context.report.error(ProblemKind.UNKNOWN_UNIT, span, "There is no unit `" + unit + "`.",
				Units.standard().suggest(unit).map(meant -> Advice.meant(span, meant))
						.orElse(Advice.words("Use a unit such as V, mA, Ohm, bar, degC, min or %.")));
		return false;
	}

	/** Returns a duration in minutes; 0 if none is written or it is wrong. */
	BigDecimal minutes(Quantity quantity) {
		if (quantity == null || quantity.getNumber() == null) {
			return BigDecimal.ZERO;
		}
		if (quantity.getNumber().signum() < 0) {
			context.report.tell(ProblemKind.NEGATIVE_DURATION, context.source.span(quantity), "A duration cannot be less than 0.",
					"Write how many minutes the work takes.");
			return BigDecimal.ZERO;
		}
		String unit = quantity.getUnit();
		if (unit == null || unit.isEmpty()) {
			Span span = context.source.span(quantity);
			context.report.tell(ProblemKind.UNIT_MISSING, span,
					say(quantity.getNumber()) + " has no unit.", Advice.write(span, say(quantity.getNumber()) + " min"));
			return BigDecimal.ZERO;
		}
		if (Units.standard().parse(unit).isPresent() && !Units.standard().comparable(unit, "min")) {
			context.report.tell(ProblemKind.UNIT_MISMATCH, context.source.span(quantity),
					context.source.written(quantity) + " is no duration.", "Write how many minutes the work takes.");
			return BigDecimal.ZERO;
		}
		return convert(quantity, unit, "min", null).orElse(BigDecimal.ZERO);
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
