package org.baywright.presenter.bench;

import java.util.HashMap;
import java.util.Map;

import org.baywright.model.RuleBase;

/** Keeps what was entered for each project while another one is shown. */
public final class Benches {

	private final Map<String, Bench> left = new HashMap<>();

	/** Returns the bench for rules that are shown now: the same job goes on, or the one that was left at that project. */
	public Bench turn(Bench from, RuleBase to) {
		if (from.base().name().equals(to.name())) {
			// who types goes through rules that nobody means
			return !from.now().readings().isEmpty() && !from.isKnown(to) ? from.waiting() : from.with(to);
		}
		left.put(from.base().name(), from);
		Bench before = left.remove(to.name());
		return before == null ? Bench.of(to) : before.with(to);
	}
}
