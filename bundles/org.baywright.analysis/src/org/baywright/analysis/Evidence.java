package org.baywright.analysis;

import java.util.List;

/** What shows that a flaw is true. */
public sealed interface Evidence {

	/** The text alone shows it. */
	record Text() implements Evidence {
	}

	/** A situation that shows it: the smallest there is. */
	record Witness(Situation situation) implements Evidence {
	}

	/** Every situation of this shape shows it; what is not mentioned does not matter. */
	record Region(Situation situation) implements Evidence {
	}

	/** Lines that together make it impossible; without any one of them it would be possible. */
	record Core(List<Place> lines) implements Evidence {
		public Core {
			lines = List.copyOf(lines);
		}
	}

	/** The search was stopped by a limit: nobody knows. */
	record Undecided(String question) implements Evidence {
	}
}
