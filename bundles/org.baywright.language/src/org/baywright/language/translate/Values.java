package org.baywright.language.translate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.bay.Band;
import org.baywright.language.bay.BayPackage;
import org.baywright.language.bay.Choice;
import org.baywright.language.bay.CompareOp;
import org.baywright.language.bay.OutcomeBand;
import org.baywright.language.bay.OutcomeCompare;
import org.baywright.language.bay.OutcomeValue;
import org.baywright.language.bay.Quantity;
import org.baywright.language.bay.ValueSet;
import org.baywright.language.index.Refs;
import org.baywright.language.index.Refs.Ref;
import org.baywright.language.text.Spelling;
import org.baywright.model.Domain;
import org.baywright.model.ProblemKind;
import org.eclipse.emf.ecore.EObject;

/** Values, bands and limits of a test or a trait. */
final class Values {

	private final Context context;
	private final Limits limits;

	Values(Context context, Limits limits) {
		this.context = context;
		this.limits = limits;
	}

	/**
	 * What values are taken from.
	 *
	 * @param name the test or trait
	 * @param word what a trait counts; empty for a test
	 * @param domains the values it can take; more than one if families differ in the trait, never empty
	 */
	record Owner(String name, String word, List<Domain> domains) {

		static Owner of(String test, Domain domain) {
			return new Owner(test, "", List.of(domain));
		}

		boolean isQuantity() {
			return domains.get(0) instanceof Domain.Quantity;
		}

		/** Returns the range within which a limit makes sense: the widest that the domains span. */
		Limits.Target target() {
			Domain.Quantity widest = (Domain.Quantity) domains.get(0);
			for (Domain domain : domains) {
				if (domain instanceof Domain.Quantity next) {
					widest = new Domain.Quantity(widest.unit(), widest.low().min(next.low()),
							widest.high().max(next.high()), widest.step());
				}
			}
			return new Limits.Target(name, word, widest);
		}

		List<String> names() {
			return domains.stream().flatMap(domain -> domain.named().stream()).map(value -> value.name()).distinct().toList();
		}
	}

	/** Translates a list of values, of which any may be given. */
	Optional<org.baywright.model.ValueSet> any(List<ValueSet> written, Owner owner) {
		List<org.baywright.model.ValueSet> parts = new ArrayList<>();
		for (ValueSet value : written) {
			one(value, owner).ifPresent(parts::add);
		}
		return join(parts, written.size());
	}

	/** Translates a list of values and limits, of which any may be given. */
	Optional<org.baywright.model.ValueSet> anyBand(List<OutcomeBand> written, Owner owner) {
		List<org.baywright.model.ValueSet> parts = new ArrayList<>();
		for (OutcomeBand band : written) {
			band(band, owner).ifPresent(parts::add);
		}
		return join(parts, written.size());
	}

	private Optional<org.baywright.model.ValueSet> join(List<org.baywright.model.ValueSet> parts, int written) {
		if (parts.isEmpty() || parts.size() < written) {
			context.report.incomplete();
			return Optional.empty();
		}
		if (parts.stream().allMatch(org.baywright.model.ValueSet.Choices.class::isInstance)) {
			return Optional.of(new org.baywright.model.ValueSet.Choices(parts.stream()
					.flatMap(part -> ((org.baywright.model.ValueSet.Choices) part).names().stream()).toList()));
		}
		return Optional.of(parts.size() == 1 ? parts.get(0) : new org.baywright.model.ValueSet.Union(parts));
	}

	Optional<org.baywright.model.ValueSet> band(OutcomeBand band, Owner owner) {
		if (band instanceof OutcomeCompare compare) {
			return compare(compare.getOp(), compare.getLimit(), owner, compare);
		}
		return band instanceof OutcomeValue value ? one(value.getValue(), owner) : Optional.empty();
	}

	/** Translates one value or band. */
	Optional<org.baywright.model.ValueSet> one(ValueSet value, Owner owner) {
		if (value instanceof Choice choice) {
			return choice(choice, owner);
		}
		return value instanceof Band band ? band(band, owner) : Optional.empty();
	}

	private Optional<org.baywright.model.ValueSet> choice(Choice choice, Owner owner) {
		Optional<Ref> ref = Refs.one(choice, BayPackage.Literals.CHOICE__VALUE);
		if (ref.isEmpty() || !isNamed(ref.get(), owner)) {
			return Optional.empty();
		}
		return Optional.of(new org.baywright.model.ValueSet.Choices(List.of(ref.get().name())));
	}

	/** Returns whether a written name is a value of its owner; reports it if not. */
	boolean isNamed(Ref ref, Owner owner) {
		List<String> names = owner.names();
		if (owner.isQuantity() && !names.contains(ref.name())) {
			Domain.Quantity domain = owner.target().domain();
			context.report.error(ProblemKind.NUMBER_NEEDED, context.source.span(ref.node()),
					"`" + owner.name() + "` gives a number, not `" + ref.name() + "`.",
					"Write a value such as " + domain.sayNumber(domain.low())
							+ (names.isEmpty() ? "" : ", or what it shows beyond that: " + Spelling.either(names)) + ".");
			return false;
		}
		if (!names.contains(ref.name())) {
			context.report.error(ProblemKind.UNKNOWN_VALUE, context.source.span(ref.node()),
					"`" + owner.name() + "` has no value `" + ref.name() + "`.",
					Spelling.valueAdvice(context.source.span(ref.node()), ref.name(), names, owner.name()));
			return false;
		}
		return true;
	}

	private Optional<org.baywright.model.ValueSet> band(Band band, Owner owner) {
		if (!isNumeric(band, owner)) {
			return Optional.empty();
		}
		Limits.Target target = owner.target();
		Quantity low = band.getLow();
		Quantity high = band.getHigh() == null ? low : band.getHigh();
		String lowUnit = low == null ? null : low.getUnit() == null && high != null ? high.getUnit() : low.getUnit();
		Optional<BigDecimal> from = limits.limit(low, lowUnit, target);
		if (high == low) {
			return from.map(value -> org.baywright.model.ValueSet.Band.closed(value, value));
		}
		Optional<BigDecimal> to = limits.limit(high, target);
		if (from.isEmpty() || to.isEmpty()) {
			return Optional.empty();
		}
		if (from.get().compareTo(to.get()) > 0) {
			context.report.error(ProblemKind.RANGE_REVERSED, context.source.span(band),
					"The range " + context.source.written(band) + " ends before it begins.",
					"Write the smaller value first.");
			return Optional.empty();
		}
		return Optional.of(org.baywright.model.ValueSet.Band.closed(from.get(), to.get()));
	}

	/** Translates a limit. */
	Optional<org.baywright.model.ValueSet> compare(CompareOp op, Quantity quantity, Owner owner, EObject place) {
		if (!isNumeric(place, owner)) {
			return Optional.empty();
		}
		return limits.limit(quantity, owner.target()).map(limit -> switch (op) {
		case BELOW -> org.baywright.model.ValueSet.Band.below(limit);
		case AT_MOST -> org.baywright.model.ValueSet.Band.atMost(limit);
		case ABOVE -> org.baywright.model.ValueSet.Band.above(limit);
		case AT_LEAST -> org.baywright.model.ValueSet.Band.atLeast(limit);
		});
	}

	private boolean isNumeric(EObject place, Owner owner) {
		if (owner.isQuantity()) {
			return true;
		}
		List<String> names = owner.names();
		context.report.error(ProblemKind.NAME_NEEDED, context.source.span(place),
				"`" + owner.name() + "` gives no number.", "Write one of its values: " + Spelling.either(names) + ".");
		return false;
	}
}
