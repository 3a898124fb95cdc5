package org.baywright.presenter;

import java.util.HashMap;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;

import org.baywright.model.RuleBase;

/**
 * Keeps what was left at each project while another one is shown.
 *
 * @param <T> what is kept; immutable
 */
public final class Left<T> {

	private final Map<String, T> left = new HashMap<>();
	private final Function<T, RuleBase> rules;
	private final Function<RuleBase, T> begin;
	private final BiFunction<T, RuleBase, T> goOn;

	/**
	 * @param rules the rules that it is of
	 * @param begin begins at a project that was not shown yet
	 * @param goOn goes on with changed rules of the same project
	 */
	public Left(Function<T, RuleBase> rules, Function<RuleBase, T> begin, BiFunction<T, RuleBase, T> goOn) {
		this.rules = rules;
		this.begin = begin;
		this.goOn = goOn;
	}

	/** Returns what to show for rules that are shown now: the same goes on, or what was left at that project. */
	public T turn(T from, RuleBase to) {
		String project = rules.apply(from).name();
		if (project.equals(to.name())) {
			return goOn.apply(from, to);
		}
		left.put(project, from);
		T before = left.remove(to.name());
		return before == null ? begin.apply(to) : goOn.apply(before, to);
	}
}
