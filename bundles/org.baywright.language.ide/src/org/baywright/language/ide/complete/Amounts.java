package org.baywright.language.ide.complete;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Trait;
import org.baywright.language.ide.complete.Completion.Ranked;
import org.baywright.language.index.Symbol;
import org.baywright.model.unit.Units;

/** Proposes units, and numbers with the unit that fits. */
final class Amounts {

	private static final int RANK = 50;
	private static final List<String> TIMED = List.of("Test", "Repair", "Module", "Scan", "StateValue");
	private static final List<String> DURATIONS = List.of("min", "h", "s");

	private final Site site;
	private final Frame frame;
	private final Trail trail;

	Amounts(Site site, Frame frame, Trail trail) {
		this.site = site;
		this.frame = frame;
		this.trail = trail;
	}

	void units(Wanted wanted, List<Ranked> found) {
		boolean first = site.start() > 0 && Character.isWhitespace(site.text().charAt(site.start() - 1))
				|| site.start() > 0 && Character.isDigit(site.text().charAt(site.start() - 1));
		if (!first) {
			return;
		}
		int rank = 0;
		for (String unit : fitting(wanted)) {
			if (unit.startsWith(site.prefix())) {
				found.add(new Ranked(RANK + rank, new Proposal(unit, "unit", "", Proposal.Kind.UNIT, site.start(),
						site.offset() - site.start(), unit, List.of())));
			}
			rank++;
		}
	}

	void numbers(Wanted wanted, List<Ranked> found) {
		if (!site.prefix().isEmpty() || !wanted.spot().rule().equals("Quantity")) {
			return;
		}
		List<String> fitting = fitting(wanted);
		if (!fitting.isEmpty()) {
			String number = isDuration() ? "5" : lowest();
			String text = number + " " + fitting.get(0);
			found.add(new Ranked(RANK, new Proposal(text, "a value in " + fitting.get(0), "", Proposal.Kind.NUMBER,
					site.start(), 0, text, List.of(new Slot(0, number.length(), 1)))));
		}
	}

	private boolean isDuration() {
		return TIMED.stream().anyMatch(rule -> frame.isIn(rule, "takes"));
	}

	private String lowest() {
		for (Symbol owner : Owners.at(site.index(), frame, trail)) {
			if (owner.element() instanceof Test test && test.getLow() != null) {
				return test.getLow().toPlainString();
			}
			if (owner.element() instanceof Trait trait && trait.getLow() != null) {
				return trait.getLow().toPlainString();
			}
		}
		return "0";
	}

	/** The unit of what the number is compared with, and then all others of its kind. */
	private List<String> fitting(Wanted wanted) {
		if (isDuration()) {
			return DURATIONS;
		}
		if (wanted.spot().rule().equals("Test")) {
			return Units.standard().spellings();
		}
		Set<String> units = new LinkedHashSet<>();
		List<String> own = new ArrayList<>();
		for (Symbol owner : Owners.at(site.index(), frame, trail)) {
			if (owner.element() instanceof Test test && test.getUnit() != null && test.getResults().isEmpty()) {
				own.add(test.getUnit());
			} else if (owner.element() instanceof Trait trait && trait.getWord() != null) {
				units.add(trait.getWord());
			}
		}
		units.addAll(own);
		for (String unit : own) {
			Units.standard().spellings().stream().filter(other -> Units.standard().comparable(other, unit))
					.forEach(units::add);
		}
		return List.copyOf(units);
	}
}
