package org.baywright.presenter.bench;

import java.util.Comparator;
import java.util.Optional;

import org.baywright.analysis.Variable;

/**
 * A place in a verification at which something is noted.
 *
 * @param step number of the step in the repair, from 0
 * @param variable what is read there; empty for a step that is only ticked
 */
public record At(int step, Optional<Variable> variable) implements Comparable<At> {

	private static final Comparator<At> ORDER = Comparator.comparingInt(At::step)
			.thenComparing(at -> at.variable().orElse(null), Comparator.nullsFirst(Comparator.naturalOrder()));

	@Override
	public int compareTo(At other) {
		return ORDER.compare(this, other);
	}
}
