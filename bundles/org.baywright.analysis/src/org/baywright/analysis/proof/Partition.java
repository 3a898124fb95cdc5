package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

import org.baywright.analysis.Variable;
import org.baywright.model.Exclusive;
import org.baywright.model.Law;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;

/**
 * Cuts the rules of a family into parts that share no finding and no fault. They still share the traits of the vehicle:
 * where laws of one part shut out a combination of traits, every other part is told by a law of its own.
 */
final class Partition {

	private final RuleBase base;
	private final String family;
	private final Function<Rule, Footprint> footprints;
	private final Function<Law, Footprint> lawPrints;
	private final Map<Object, Integer> nodes = new HashMap<>();
	private final List<Integer> parents = new ArrayList<>();

	Partition(RuleBase base, String family, Function<Rule, Footprint> footprints, Function<Law, Footprint> lawPrints) {
		this.base = base;
		this.family = family;
		this.footprints = footprints;
		this.lawPrints = lawPrints;
	}

	List<Draft> cut(List<Rule> rules, List<Law> laws, List<Exclusive> exclusives) {
		int[] nodeOfRule = new int[rules.size()];
		for (int i = 0; i < nodeOfRule.length; i++) {
			nodeOfRule[i] = newNode();
			join(nodeOfRule[i], footprints.apply(rules.get(i)));
			if (footprints.apply(rules.get(i)).unasked()) {
				unite(nodeOfRule[i], nodeOf(Footprint.class)); // one node for all of them
			}
		}
		int[] nodeOfLaw = new int[laws.size()];
		List<Law> aboutTraits = new ArrayList<>();
		for (int i = 0; i < nodeOfLaw.length; i++) {
			nodeOfLaw[i] = newNode();
			Footprint print = lawPrints.apply(laws.get(i));
			join(nodeOfLaw[i], print);
			if (print.findings().isEmpty()) {
				aboutTraits.add(laws.get(i));
			}
		}
		int[] nodeOfExclusive = new int[exclusives.size()];
		for (int i = 0; i < nodeOfExclusive.length; i++) {
			nodeOfExclusive[i] = newNode();
			for (String fault : exclusives.get(i).faults()) {
				unite(nodeOfExclusive[i], nodeOf(fault));
			}
		}
		Map<Integer, Draft> parts = new TreeMap<>();
		for (int i = 0; i < nodeOfRule.length; i++) {
			part(parts, nodeOfRule[i]).rules().add(rules.get(i));
		}
		for (int i = 0; i < nodeOfLaw.length; i++) {
			if (!aboutTraits.contains(laws.get(i))) {
				part(parts, nodeOfLaw[i]).laws().add(laws.get(i));
			}
		}
		for (int i = 0; i < nodeOfExclusive.length; i++) {
			part(parts, nodeOfExclusive[i]).exclusives().add(exclusives.get(i).faults());
		}
		List<Draft> drafts = new ArrayList<>(parts.values());
		drafts.forEach(draft -> draft.rules().sort(Comparator.comparing(Rule::name)));
		if (drafts.isEmpty() && !aboutTraits.isEmpty()) {
			drafts.add(new Draft(family, new ArrayList<>(), new ArrayList<>(), new ArrayList<>()));
		}
		drafts.forEach(draft -> draft.laws().addAll(aboutTraits));
		if (!tellEachOther(drafts)) {
			drafts = new ArrayList<>(List.of(new Draft(family, new ArrayList<>(rules), laws,
					exclusives.stream().map(Exclusive::faults).toList())));
			drafts.get(0).rules().sort(Comparator.comparing(Rule::name));
		}
		drafts.removeIf(draft -> draft.rules().isEmpty() && draft.laws().isEmpty()); // laws alone may leave no vehicle
		return drafts;
	}

	/**
	 * Laws that tie findings to traits can shut out vehicles altogether; the other parts must know. Returns false if
	 * there are too many kinds of vehicle to tell; then the parts must stay together.
	 */
	private boolean tellEachOther(List<Draft> drafts) {
		List<List<Limit>> told = new ArrayList<>();
		for (Draft draft : drafts) {
			Optional<List<Limit>> limits = TraitLimits.of(base, draft, lawPrints);
			if (limits.isEmpty()) {
				return false;
			}
			told.add(limits.get());
		}
		for (int from = 0; from < drafts.size(); from++) {
			for (int to = 0; to < drafts.size(); to++) {
				if (from != to) {
					drafts.get(to).limits().addAll(told.get(from));
				}
			}
		}
		return true;
	}

	private Draft part(Map<Integer, Draft> parts, int node) {
		return parts.computeIfAbsent(find(node),
				key -> new Draft(family, new ArrayList<>(), new ArrayList<>(), new ArrayList<>()));
	}

	private void join(int node, Footprint print) {
		for (Variable finding : print.findings()) {
			unite(node, nodeOf(finding));
			if (finding.kind() == Variable.Kind.CODE) {
				base.code(finding.name())
						.ifPresent(code -> unite(node, nodeOf(new Variable(Variable.Kind.MODULE, code.module()))));
			}
		}
		for (String fault : print.faults()) {
			unite(node, nodeOf(fault));
		}
	}

	private int nodeOf(Object key) {
		return nodes.computeIfAbsent(key, unused -> newNode());
	}

	private int newNode() {
		parents.add(parents.size());
		return parents.size() - 1;
	}

	private int find(int node) {
		int root = node;
		while (parents.get(root) != root) {
			root = parents.get(root);
		}
		while (parents.get(node) != root) {
			node = parents.set(node, root);
		}
		return root;
	}

	private void unite(int a, int b) {
		int first = find(a);
		int second = find(b);
		parents.set(Math.max(first, second), Math.min(first, second));
	}
}
