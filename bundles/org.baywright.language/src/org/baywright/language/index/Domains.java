package org.baywright.language.index;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.baywright.language.bay.NamedValue;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Trait;
import org.baywright.model.Domain;
import org.baywright.model.Span;
import org.baywright.model.unit.Units;
import org.eclipse.emf.common.util.EList;

/**
 * The values that a test or a trait can take, where its declaration is whole. What is wrong with a declaration that is
 * not is said by the translation.
 */
public final class Domains {

	private Domains() {
	}

	/** Returns a test's domain without places, or nothing if the declaration is not whole. */
	public static Optional<Domain> of(Test test) {
		return of(test, value -> Span.NONE);
	}

	/** Returns a test's domain, or nothing if the declaration is not whole. */
	public static Optional<Domain> of(Test test, Function<NamedValue, Span> spans) {
		boolean measures = test.getLow() != null || test.getHigh() != null || test.getStep() != null;
		if (measures == !test.getResults().isEmpty()) {
			return Optional.empty();
		}
		if (!measures) {
			return names(test.getResults(), spans);
		}
		String unit = test.getUnit() == null ? "" : test.getUnit();
		if (Units.standard().parse(unit).isEmpty()) {
			return Optional.empty();
		}
		Optional<org.baywright.model.NamedValue> under = named(test.getUnder(), spans);
		return quantity(unit, test.getLow(), test.getHigh(), test.getStep(), under,
				named(test.getOver(), spans).filter(over -> under.filter(other -> other.name().equals(over.name())).isEmpty()));
	}

	/** Returns what the instrument of a test shows beyond its range, where it is a result. */
	public static Stream<NamedValue> beyond(Test test) {
		return Stream.of(test.getUnder(), test.getOver()).filter(Objects::nonNull);
	}

	/** Returns a trait's domain without places, or nothing if the declaration is not whole. */
	public static Optional<Domain> of(Trait trait) {
		return of(trait, value -> Span.NONE);
	}

	/** Returns a trait's domain, or nothing if the declaration is not whole. */
	public static Optional<Domain> of(Trait trait, Function<NamedValue, Span> spans) {
		if (!trait.getValues().isEmpty()) {
			return names(trait.getValues(), spans);
		}
		if (!isWhole(trait.getLow()) || !isWhole(trait.getHigh())) {
			return Optional.empty();
		}
		return quantity("", trait.getLow(), trait.getHigh(), BigDecimal.ONE, Optional.empty(), Optional.empty());
	}

	/** Returns whether a number is given and has no decimals. */
	public static boolean isWhole(BigDecimal number) {
		return number != null && number.stripTrailingZeros().scale() <= 0;
	}

	private static Optional<Domain> names(EList<NamedValue> values, Function<NamedValue, Span> spans) {
		List<org.baywright.model.NamedValue> out = new ArrayList<>();
		Set<String> seen = new LinkedHashSet<>();
		for (NamedValue value : values) {
			named(value, spans).filter(named -> seen.add(named.name())).ifPresent(out::add);
		}
		return out.isEmpty() ? Optional.empty() : Optional.of(new Domain.Names(out));
	}

	private static Optional<org.baywright.model.NamedValue> named(NamedValue value, Function<NamedValue, Span> spans) {
		return value == null || value.getName() == null ? Optional.empty() : Optional.of(new org.baywright.model.NamedValue(value.getName(),
				value.getTitle() == null ? value.getName() : value.getTitle(), spans.apply(value)));
	}

	private static Optional<Domain> quantity(String unit, BigDecimal low, BigDecimal high, BigDecimal step,
			Optional<org.baywright.model.NamedValue> under, Optional<org.baywright.model.NamedValue> over) {
		if (low == null || high == null || step == null || step.signum() <= 0 || high.compareTo(low) < 0) {
			return Optional.empty();
		}
		if (high.subtract(low).compareTo(step.multiply(BigDecimal.valueOf(Domain.Quantity.MAX_SIZE - 1L))) >= 0) {
			return Optional.empty();
		}
		return Optional.of(new Domain.Quantity(unit, low, high, step, under, over));
	}
}
