package org.baywright.presenter.bench;

import java.util.List;
import java.util.Optional;

import org.baywright.model.RuleBase;
import org.baywright.model.VinPattern;
import org.baywright.model.code.Vin;

/**
 * A vehicle identification number that somebody typed, held against its family.
 *
 * @param isRight whether it can be recorded
 * @param message what is wrong with it, or what to look at; the empty text for nothing
 */
record VinEntry(boolean isRight, String message) {

	static VinEntry of(RuleBase base, String family, String vin) {
		Optional<String> wrong = Vin.wrong(vin);
		if (wrong.isPresent()) {
			return new VinEntry(false, wrong.get());
		}
		List<VinPattern> patterns = base.lineage(family).stream().flatMap(name -> base.family(name).stream()).flatMap(found -> found.vins().stream()).toList();
		List<VinPattern> matching = patterns.stream().filter(pattern -> Vin.matches(vin, pattern.pattern())).toList();
		if (matching.stream().anyMatch(VinPattern::checkDigit) && !Vin.hasCheckDigit(vin)) {
			return new VinEntry(false, "The check digit in position 9 is " + vin.charAt(8) + "; the other characters ask for " + Vin.checkDigit(vin)
					+ ". Copy the number from the vehicle again.");
		}
		return new VinEntry(true, patterns.isEmpty() || !matching.isEmpty() ? ""
				: "The number does not begin like those of this family: look whether family and number are right.");
	}
}
