package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.baywright.model.Condition;

/** A part of the rule base with all that is proved of it. Families that share the part share the proof. */
public final class Component {

	final Key key;
	private final List<String> rules;
	private final Map<Class<?>, Object> facts = new HashMap<>();
	private List<String> families = List.of();
	List<Condition> unquiet = List.of();
	List<String> undecided = List.of();

	/** Whether all of it is proved; a check that was stopped leaves parts that are not. */
	volatile boolean proved;

	Component(Key key, List<String> rules) {
		this.key = key;
		this.rules = List.copyOf(rules);
	}

	/** Returns the names of its rules, sorted. */
	public List<String> rules() {
		return rules;
	}

	/** Returns the families it is a part of, in the order of their declaration. */
	public List<String> families() {
		return families;
	}

	void forgetFamilies() {
		families = new ArrayList<>();
	}

	void addFamily(String family) {
		families.add(family);
	}

	void put(ProofCheck<?> check, Object fact) {
		facts.put(check.getClass(), fact);
	}

	@SuppressWarnings("unchecked") // put under the class of the check that made it
	<F> F fact(ProofCheck<F> check) {
		return (F) facts.get(check.getClass());
	}

	/** Returns the questions that a limit left open. */
	public List<String> undecided() {
		return undecided;
	}
}
