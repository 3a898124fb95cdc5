package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.RuleCheck;

/** The kinds of flaws that the checks report. */
public final class Kinds {

	private Kinds() {
	}

	/** Returns the descriptions of all checks, sorted by their ids. */
	public static List<RuleCheck> all() {
		List<RuleCheck> kinds = new ArrayList<>();
		for (Object check : Checks.all()) {
			kinds.add(check.getClass().getAnnotation(RuleCheck.class));
		}
		kinds.sort(Comparator.comparing(RuleCheck::id));
		return kinds;
	}

	/** Returns the description of a check. */
	public static Optional<RuleCheck> get(String id) {
		return all().stream().filter(kind -> kind.id().equals(id)).findFirst();
	}
}
