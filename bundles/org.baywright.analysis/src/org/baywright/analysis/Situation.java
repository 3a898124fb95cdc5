package org.baywright.analysis;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.baywright.model.IndexSet;

/**
 * A vehicle with what is known of it. A trait that is not listed does not matter; a finding that is not listed is open.
 *
 * @param family name of the family
 * @param facts the known values, sorted by variable
 */
public record Situation(String family, List<Fact> facts) {

	/**
	 * What is known of one variable.
	 *
	 * @param variable what
	 * @param values numbers of the values of its domain with which the situation shows the same thing; never empty
	 * @param example one of them
	 */
	public record Fact(Variable variable, IndexSet values, int example) {
	}

	public Situation {
		facts = facts.stream().sorted((a, b) -> a.variable().compareTo(b.variable())).toList();
	}

	/** Returns one concrete value number for each known variable. */
	public Map<Variable, Integer> example() {
		Map<Variable, Integer> values = new TreeMap<>();
		facts.forEach(fact -> values.put(fact.variable(), fact.example()));
		return values;
	}

	/**
	 * Returns how many findings somebody made. Traits of the vehicle do not count, nor does a code that is unread: the
	 * silence of its module says so already.
	 */
	public long findings() {
		return facts.stream().filter(fact -> fact.variable().kind() != Variable.Kind.TRAIT)
				.filter(fact -> fact.variable().kind() != Variable.Kind.CODE || fact.example() != Variable.UNREAD).count();
	}
}
