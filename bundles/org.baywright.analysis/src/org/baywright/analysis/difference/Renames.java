package org.baywright.analysis.difference;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;

import org.baywright.model.Fault;
import org.baywright.model.Named;
import org.baywright.model.RuleBase;

/**
 * Which elements are called otherwise than before. An element was renamed if its name is gone, another came, and what
 * the two say is the same, the names of others that were renamed apart; of several that say the same none is taken.
 */
public final class Renames {

	private final Map<String, Map<String, String>> byKind = new TreeMap<>();

	private Renames() {
	}

	/** Finds out what was renamed. */
	public static Renames between(RuleBase old, RuleBase now) {
		Renames renames = new Renames();
		boolean found = true;
		while (found) {
			found = false;
			for (Map.Entry<String, Function<RuleBase, List<? extends Record>>> kind : kinds().entrySet()) {
				found |= renames.find(kind.getKey(), kind.getValue().apply(old), kind.getValue().apply(now));
			}
		}
		return renames;
	}

	/** Returns the kinds of elements that others name, with where they are. Rules are matched by what they mean, see {@link Elements}. */
	private static Map<String, Function<RuleBase, List<? extends Record>>> kinds() {
		Map<String, Function<RuleBase, List<? extends Record>>> kinds = new LinkedHashMap<>();
		kinds.put("state", RuleBase::states);
		kinds.put("tool", RuleBase::tools);
		kinds.put("hazard", RuleBase::hazards);
		kinds.put("family", RuleBase::families);
		kinds.put("module", RuleBase::modules);
		kinds.put("code", RuleBase::codes);
		kinds.put("sign", RuleBase::signs);
		kinds.put("part", RuleBase::parts);
		kinds.put("fault", RuleBase::faults);
		kinds.put("test", RuleBase::tests);
		return kinds;
	}

	private boolean find(String kind, List<? extends Record> old, List<? extends Record> now) {
		Map<String, String> known = byKind.getOrDefault(kind, Map.of());
		Set<String> before = names(old);
		Set<String> after = names(now);
		if (before.size() == after.size() && before.equals(after)) {
			return false;
		}
		Map<String, List<String>> gone = new HashMap<>();
		Map<String, List<String>> come = new HashMap<>();
		for (Record element : old) {
			String name = ((Named) element).name();
			if (!after.contains(name) && !known.containsKey(name)) {
				gone.computeIfAbsent(says(Parts.renamed(element, this::now)), key -> new ArrayList<>()).add(name);
			}
		}
		for (Record element : now) {
			String name = ((Named) element).name();
			if (!before.contains(name) && !known.containsValue(name)) {
				come.computeIfAbsent(says(element), key -> new ArrayList<>()).add(name);
			}
		}
		boolean found = false;
		for (Map.Entry<String, List<String>> entry : gone.entrySet()) {
			List<String> same = come.getOrDefault(entry.getKey(), List.of());
			if (entry.getValue().size() == 1 && same.size() == 1) {
				byKind.computeIfAbsent(kind, key -> new TreeMap<>()).put(entry.getValue().get(0), same.get(0));
				found = true;
			}
		}
		return found;
	}

	private static Set<String> names(List<? extends Record> elements) {
		Set<String> names = new HashSet<>();
		elements.forEach(element -> names.add(((Named) element).name()));
		return names;
	}

	/** The name of a fault begins with that of its part, which must not count for the part itself. */
	private static String says(Record element) {
		if (element instanceof org.baywright.model.Part part) {
			List<String> faults = part.faults().stream().map(fault -> local(fault) + Contents.of(fault, true).get("title") + fault.seen()).toList();
			Map<String, String> says = new LinkedHashMap<>(Contents.of(part, true));
			says.put("faults", faults.toString());
			return says.toString();
		}
		return Contents.of(element, true).toString();
	}

	private static String local(Fault fault) {
		return fault.name().substring(fault.name().indexOf('.') + 1);
	}

	/** Returns what an element of a kind is called now. */
	public String now(String kind, String name) {
		if (kind.equals("finding")) {
			return List.of("sign", "test", "code").stream().map(one -> now(one, name)).filter(now -> !now.equals(name)).findFirst().orElse(name);
		} else if (kind.equals("fault") && !byKind.getOrDefault(kind, Map.of()).containsKey(name)) {
			int dot = name.indexOf('.');
			return dot < 0 ? name : now("part", name.substring(0, dot)) + name.substring(dot);
		}
		return byKind.getOrDefault(kind, Map.of()).getOrDefault(name, name);
	}

	/** Returns whether nothing was renamed. */
	public boolean isEmpty() {
		return byKind.isEmpty();
	}

	/** Returns for each kind what was renamed, old names with new ones. */
	public Map<String, Map<String, String>> all() {
		return byKind;
	}

	/** Returns the rule base in which everything has the name that it has now. */
	public RuleBase apply(RuleBase old) {
		if (isEmpty()) {
			return old;
		}
		RuleBase.Builder now = new RuleBase.Builder(old.name()).add(old);
		for (List<? extends Record> list : List.of(now.families, now.states, now.tools, now.workshops, now.hazards, now.modules, now.codes, now.signs, now.parts,
				now.exclusives, now.tests, now.laws, now.chains, now.rules, now.repairs, now.cases, now.reviews, now.signOffs, now.remarks)) {
			rename(list);
		}
		return now.build();
	}

	private <R extends Record> void rename(List<R> list) {
		list.replaceAll(element -> Parts.renamed(element, this::now));
	}
}
