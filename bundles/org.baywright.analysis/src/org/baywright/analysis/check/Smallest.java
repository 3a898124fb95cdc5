package org.baywright.analysis.check;

import java.util.Map;
import java.util.TreeMap;

import org.baywright.analysis.Situation;
import org.baywright.analysis.proof.Component;

/**
 * What is told once though several parts show it: with the part whose situation has the fewest findings, of equals with
 * the first.
 *
 * @param <F> a fact about one part
 */
final class Smallest<F> {

	/** Takes a fact with the part that shows it. */
	interface Use<F> {
		void accept(String key, Component part, F fact);
	}

	private record Shown<F>(Component part, F fact, long findings) {
	}

	private final Map<String, Shown<F>> facts = new TreeMap<>();

	void add(String key, Component part, F fact, Situation situation) {
		facts.merge(key, new Shown<>(part, fact, situation.findings()), (old, now) -> now.findings() < old.findings() ? now : old);
	}

	/** Calls {@code use} for each, sorted by key. */
	void each(Use<F> use) {
		facts.forEach((key, shown) -> use.accept(key, shown.part(), shown.fact()));
	}
}
