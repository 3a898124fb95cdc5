package org.baywright.pack.sheet;

import java.math.BigDecimal;

import org.baywright.model.Meaning;
import org.baywright.model.Skill;

/** Says what a piece of work takes. */
final class Effort {

	private Effort() {
	}

	static String time(BigDecimal minutes) {
		return minutes.signum() == 0 ? "" : Meaning.number(minutes) + " min";
	}

	static String cost(BigDecimal cost) {
		return cost.signum() == 0 ? "" : Meaning.number(cost);
	}

	static String skill(Skill skill) {
		return switch (skill) {
		case BASIC -> "anybody who knows the trade";
		case TRAINED -> "somebody trained for it";
		case LICENSED -> "somebody with the licence for it; local law may ask for more";
		};
	}
}
