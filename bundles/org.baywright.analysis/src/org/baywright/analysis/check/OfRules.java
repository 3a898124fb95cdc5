package org.baywright.analysis.check;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiConsumer;

import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;

/**
 * Facts about rules that count only when they hold in every part the rule is in: a rule that is idle in one family may
 * be needed in another.
 *
 * @param <F> a fact about a rule in one part
 */
final class OfRules<F> {

	private final Map<String, Map<Component, F>> facts = new TreeMap<>();

	void add(String rule, Component part, F fact) {
		facts.computeIfAbsent(rule, key -> new LinkedHashMap<>()).put(part, fact);
	}

	/** Calls {@code use} for each rule that has a fact in each of its parts. */
	void each(Checked checked, BiConsumer<String, List<F>> use) {
		eachPart(checked, (rule, byPart) -> use.accept(rule, List.copyOf(byPart.values())));
	}

	/** As {@link #each}, with the part that each fact is of. */
	void eachPart(Checked checked, BiConsumer<String, Map<Component, F>> use) {
		facts.forEach((rule, byPart) -> {
			Map<Component, F> all = new LinkedHashMap<>();
			for (Component part : checked.partsOf(rule)) {
				F fact = byPart.get(part);
				if (fact == null) {
					return;
				}
				all.put(part, fact);
			}
			use.accept(rule, all);
		});
	}
}
