package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/**
 * Something that was found out when it could not be trusted any more, so that it does not count.
 *
 * @param reading what was found
 * @param test the test that was done before and disturbs it
 */
record Spoilt(Reading reading, String test) {

	/** Returns what does not count of findings in their order. */
	static List<Spoilt> of(RuleBase base, List<Reading> readings) {
		Map<String, String> by = new HashMap<>();
		List<Spoilt> spoilt = new ArrayList<>();
		for (Reading reading : readings) {
			String test = by.get(reading.subject());
			if (test != null) {
				spoilt.add(new Spoilt(reading, test));
			}
			base.test(reading.subject()).map(base::doneBy).ifPresent(done -> done.spoils(base).forEach(name -> by.putIfAbsent(name, done.name())));
		}
		return spoilt;
	}
}
