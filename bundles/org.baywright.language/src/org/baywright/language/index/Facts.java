package org.baywright.language.index;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.baywright.model.Domain;
import org.baywright.model.Family;

/**
 * What other files need to know of a named thing. No facts hold a place in the text, so that moving a line changes
 * none.
 */
public sealed interface Facts {

	/** The name is all there is to know. */
	enum None implements Facts {
		INSTANCE
	}

	/** A family with what it builds on, the systems that it has, and its cycles as they are written, by state. */
	record OfFamily(Optional<String> parent, List<String> systems, Family.Kind family, List<Vin> vins,
			Map<String, String> cycles) implements Facts {

		/** Returns whether no vehicle belongs to it itself. */
		public boolean base() {
			return family != Family.Kind.VEHICLES;
		}
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

	/** A test, the states it is made in and the test it is seen with, as written; without a domain if its declaration is wrong. */
	record OfTest(Optional<Domain> domain, List<Setting> states, Optional<String> seenWith, Reach reach) implements Facts {
	}

	/** The families that a sign or a test is for, none meaning all, and those that are left out. */
	record Reach(List<String> families, List<String> except) {
	}

	/** Returns the families that something found is for; all of them for what is not limited. */
	default Reach reach() {
		return new Reach(List.of(), List.of());
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
	record OfSign(boolean intermittent, Reach reach) implements Facts {
	}
}
