package org.baywright.language.index;

import java.util.List;
import java.util.Optional;
import org.baywright.model.Domain;

/**
 * What other files need to know of a named thing. No facts hold a place in the text, so that moving a line changes
 * none.
 */
public sealed interface Facts {

	/** The name is all there is to know. */
	enum None implements Facts {
		INSTANCE
	}

	/** A family with what it builds on and its own traits. */
	record OfFamily(Optional<String> parent, boolean base, List<Vin> vins) implements Facts {
	}

	/** A VIN pattern, without its place. */
	record Vin(String pattern, boolean checkDigit) {
	}

	/** A trait of a family; without a domain if its declaration is wrong. */
	record OfTrait(String family, String word, Optional<Domain> domain) implements Facts {
	}

	/** A state and its values. */
	record OfState(List<String> values) implements Facts {
	}

	/** A test and the states it is made in, as written; without a domain if its declaration is wrong. */
	record OfTest(Optional<Domain> domain, List<Setting> states) implements Facts {
	}

	/** A state and the value it is set to, without their place. */
	record Setting(String state, String value) {
	}

	/** A code and the module that can hold it. */
	record OfCode(String module) implements Facts {
	}

	/** A module and the families that have it; empty for all. */
	record OfModule(List<String> families) implements Facts {
	}

	/** A sign. */
	record OfSign(boolean intermittent) implements Facts {
	}
}
