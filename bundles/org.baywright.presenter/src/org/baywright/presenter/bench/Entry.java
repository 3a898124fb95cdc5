package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.baywright.analysis.Variable;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.NamedValue;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.Trait;
import org.baywright.model.unit.UnitException;
import org.baywright.model.unit.Units;
import org.baywright.presenter.Say;

/**
 * What somebody typed or chose, read.
 *
 * @param reading what it means; nothing if it means nothing
 * @param message what is wrong with it, or how it was understood; the empty text if there is nothing to say
 */
record Entry(Optional<Reading> reading, String message) {

	/** What divides the digits of a number begins no unit. */
	static final String UNIT = "\\s*((?![\\s0-9_'’.,]).*)";
	private static final Pattern POWER = Pattern.compile("[eE][+-]?[0-9].*");
	private static final Pattern NUMBER = Pattern.compile("([+-]?[0-9]+(?:[.,][0-9]+)?)" + UNIT);

	private static Entry of(Reading reading) {
		return new Entry(Optional.of(reading), "");
	}

	private static Entry wrong(String message) {
		return new Entry(Optional.empty(), message);
	}

	/** Reads a text as a value of something that vehicles of the family have. */
	static Entry read(RuleBase base, String family, Variable variable, String text) {
		String name = variable.name();
		String value = text.strip();
		return switch (variable.kind()) {
		case SIGN -> twoWays(value, "present", "absent", first -> new Reading.SignSeen(name, first, Span.NONE));
		case MODULE -> twoWays(value, "answers", "silent", first -> new Reading.ModuleAsked(name, first, Span.NONE));
		case CODE -> code(name, value);
		case TEST -> base.test(name).map(Test::domain).map(domain -> valued(name, domain, value))
				.orElse(wrong("There is no test " + name + " in these rules."));
		case TRAIT -> Optional.ofNullable(base.traitsOf(family).get(name)).map(Trait::domain)
				.map(domain -> valued(name, domain, value))
				.orElse(wrong("Vehicles of this family do not have " + name + "."));
		};
	}

	private static Entry twoWays(String value, String first, String second,
			Function<Boolean, Reading> make) {
		return value.equals(first) || value.equals(second) ? of(make.apply(value.equals(first)))
				: wrong("Say " + first + " or " + second + ".");
	}

	private static Entry code(String name, String value) {
		for (CodeReading reading : CodeReading.values()) {
			if (reading != CodeReading.MISSING && value.equals(Say.lower(reading))) {
				return of(new Reading.CodeRead(name, reading, Span.NONE));
			}
		}
		return wrong("Say present, absent, unread, active, stored, pending or untested.");
	}

	private static Entry valued(String name, Domain domain, String value) {
		if (domain instanceof Domain.Names names) {
			return names.indexOf(value) >= 0 ? of(new Reading.Named(name, value, Span.NONE))
					: wrong("Choose one of: " + String.join(", ", names.values().stream().map(each -> each.title()).toList()) + ".");
		}
		return measured(name, (Domain.Quantity) domain, value);
	}

	/** Returns what can be written, in words. */
	private static String example(Domain.Quantity quantity) {
		return "a number" + (quantity.unit().isEmpty() ? "" : " in " + quantity.unit()) + ", such as " + quantity.say(quantity.first() + (quantity.last() - quantity.first()) / 2)
				+ quantity.named().stream().map(value -> ", or “" + value.title() + "”").collect(Collectors.joining());
	}

	private static Entry measured(String name, Domain.Quantity quantity, String text) {
		for (NamedValue value : quantity.named()) {
			// many meters show OL beyond their range
			boolean overload = text.equalsIgnoreCase("OL") && quantity.over().filter(value::equals).isPresent();
			if (overload || text.equalsIgnoreCase(value.name()) || text.equalsIgnoreCase(value.title())) {
				return of(new Reading.Named(name, value.name(), Span.NONE));
			}
		}
		Matcher matcher = NUMBER.matcher(text);
		if (!matcher.matches()) {
			return wrong("Write " + example(quantity) + ".");
		}
		if (POWER.matcher(matcher.group(2)).matches()) {
			return wrong("A number is written out, not as a power of ten. Write " + example(quantity) + ".");
		}
		BigDecimal number = new BigDecimal(matcher.group(1).replace(',', '.'));
		try {
			if (!matcher.group(2).isEmpty()) {
				number = Units.standard().convert(number, matcher.group(2), quantity.unit());
			}
		} catch (UnitException e) {
			return wrong(e.getMessage() + ". Write " + example(quantity) + ".");
		}
		int index = quantity.floorIndex(number);
		if (!quantity.isNumber(index)) {
			return wrong(quantity.sayNumber(number) + " is out of range: " + quantity.range() + ".");
		}
		BigDecimal shown = quantity.value(index);
		boolean bare = matcher.group(2).isEmpty() && !quantity.unit().isEmpty();
		if (bare && number.signum() != 0 && number.abs().compareTo(quantity.step()) < 0) {
			return wrong(quantity.sayNumber(number) + " is less than the instrument shows, which goes in steps of " + quantity.sayNumber(quantity.step()) + ". Write the unit with it.");
		}
		String note = shown.compareTo(number) == 0 ? ""
				: "The instrument shows steps of " + quantity.sayNumber(quantity.step()) + ", so " + quantity.sayNumber(number)
						+ " counts as " + quantity.sayNumber(shown) + ".";
		return new Entry(Optional.of(new Reading.Measured(name, shown, Span.NONE)), note);
	}
}
