package org.baywright.presenter.plan;

import java.util.HashMap;
import java.util.Map;

import org.baywright.model.RuleBase;

/** Keeps what was chosen for each project while another one is shown. */
public final class Plannings {

	private final Map<String, Planning> left = new HashMap<>();

	/** Returns the planning for rules that are shown now: the same goes on, or the one that was left at that project. */
	public Planning turn(Planning from, RuleBase to) {
		if (from.base().name().equals(to.name())) {
			return from.turn(to);
		}
		left.put(from.base().name(), from);
		Planning before = left.remove(to.name());
		return before == null ? Planning.of(to) : before.turn(to);
	}
}
