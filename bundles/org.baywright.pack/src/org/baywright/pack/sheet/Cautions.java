package org.baywright.pack.sheet;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;

import org.baywright.model.Hazard;
import org.baywright.model.Part;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;

/** The hazards of a piece of work, and what to do about them, where they matter. */
final class Cautions {

	private final RuleBase base;
	private final Html html;

	Cautions(RuleBase base, Html html) {
		this.base = base;
		this.html = html;
	}

	/** Returns the hazards that a test warns of and those of the part it works on. */
	Set<String> of(Test test) {
		Set<String> hazards = new LinkedHashSet<>(test.cautions(base));
		test.part(base).flatMap(base::part).map(Part::hazards).ifPresent(hazards::addAll);
		return hazards;
	}

	/** Adds a box for each hazard. */
	void write(Collection<String> hazards) {
		for (String name : hazards) {
			Optional<Hazard> hazard = base.hazard(name);
			html.open("div", "class", "caution", "role", "note").open("p").element("strong", "Caution: ")
					.link("hazard-" + name, hazard.map(Hazard::title).orElse(name)).close();
			hazard.ifPresent(found -> {
				html.list(found.cautions());
				found.licensed().forEach(whose -> html.element("p", "Licensed work: " + whose));
			});
			html.close();
		}
	}
}
