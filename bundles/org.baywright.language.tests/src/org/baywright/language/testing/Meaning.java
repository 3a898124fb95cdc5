package org.baywright.language.testing;

import java.util.List;
import java.util.stream.Collectors;
import org.baywright.model.RuleBase;

/** What a rule base says, as a text without any place, so that two can be compared whose texts differ in layout. */
public final class Meaning {

	private static final String PLACE = "[\\w./-]*:\\d+:\\d+";

	private Meaning() {
	}

	/** Returns every element of a rule base, one a line, without places. */
	public static String of(RuleBase rules) {
		List<List<?>> all = List.of(rules.families(), rules.states(), rules.tools(), rules.workshop().stream().toList(), rules.hazards(), rules.modules(),
				rules.codes(), rules.signs(), rules.parts(), rules.exclusives(), rules.tests(), rules.laws(), rules.rules(),
				rules.repairs(), rules.cases(), rules.reviews(), rules.acceptances());
		return all.stream().flatMap(List::stream).map(Object::toString).map(text -> text.replaceAll(PLACE, "@"))
				.collect(Collectors.joining("\n"));
	}
}
