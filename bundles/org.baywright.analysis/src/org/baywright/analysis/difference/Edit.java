package org.baywright.analysis.difference;

import java.util.List;
import java.util.Optional;

import org.baywright.model.Span;

/**
 * What was done to one element.
 *
 * @param kind what it is: {@code rule}, {@code sign} and so on
 * @param before its name before; empty if it is new
 * @param after its name now; empty if it was removed
 * @param was where it stood; nowhere if it is new
 * @param is where it stands; nowhere if it was removed
 * @param parts the parts that say something else, in their order
 * @param weight what that can change
 */
public record Edit(String kind, Optional<String> before, Optional<String> after, Span was, Span is, List<String> parts, Weight weight) {

	/** What an edit can change, from little to much. */
	public enum Weight {
		/** Nothing: only names, places or the order differ. */
		NONE,
		/** What is read, not what is done: titles, reasons, who wrote it; and jobs, reviews and what was accepted. */
		WORDS,
		/** What is done at the vehicle: steps, cautions, tools, times. */
		WORK,
		/** What is concluded. */
		MEANING
	}

	public Edit {
		parts = List.copyOf(parts);
	}

	/** Returns whether it is called otherwise than before. */
	public boolean isRenamed() {
		return before.isPresent() && after.isPresent() && !before.get().equals(after.get());
	}

	/** Returns whether it stands in another file than before. */
	public boolean isMoved() {
		return before.isPresent() && after.isPresent() && !was.file().equals(is.file());
	}

	/** Returns its name, as it is now or else as it was. */
	public String name() {
		return after.or(() -> before).orElseThrow();
	}
}
