package org.baywright.language.workspace;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.baywright.model.Meaning;
import org.baywright.model.Mend;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.RuleBase;
import org.baywright.model.Written;
import org.baywright.model.write.RuleWriter;

/**
 * Compares what was taken over from another project with what it says now. The first text after {@code meaning} is the
 * fingerprint of all; those behind it name each rule, test and repair with the beginning of its own, so that it can be told
 * which of them has changed. Places, comments, provenance, jobs and reviews do not matter.
 */
final class Taken {

	private static final int MARK = 4;
	private static final int WIDTH = 86;
	private static final int MOST_NAMES = 6;
	private static final Pattern NAMED = Pattern.compile("([^\\s,]+) ([0-9a-f]{" + MARK + "})");
	private static final Pattern LINE = Pattern.compile("(rule|test|repair)s? (.*)", Pattern.DOTALL);

	private final String whole;
	/** The beginning of the fingerprint of each rule, test and repair, by kind and name. */
	private final Map<String, SortedMap<String, String>> parts;

	private Taken(String whole, Map<String, SortedMap<String, String>> parts) {
		this.whole = whole;
		this.parts = parts;
	}

	private static Map<String, SortedMap<String, String>> nothing() {
		Map<String, SortedMap<String, String>> parts = new LinkedHashMap<>();
		List.of("rule", "test", "repair").forEach(kind -> parts.put(kind, new TreeMap<>()));
		return parts;
	}

	/** Returns what rules say now. */
	static Taken now(RuleBase rules) {
		RuleWriter writer = RuleWriter.plain(rules);
		Map<String, SortedMap<String, String>> all = nothing();
		rules.chains().forEach(chain -> all.get("rule").put(chain.name(), Meaning.fingerprint(chain)));
		rules.rules().stream().filter(rule -> !rules.isOfChain(rule.name()))
				.forEach(rule -> all.get("rule").put(rule.name(), Meaning.fingerprint(rule)));
		rules.tests().forEach(test -> all.get("test").put(test.name(), Meaning.fingerprint(writer.text(test))));
		rules.repairs().forEach(repair -> all.get("repair").put(repair.name(), Meaning.fingerprint(writer.text(repair))));
		List<String> others = new ArrayList<>(new TreeSet<>(writer.declared()));
		others.addAll(new TreeSet<>(writer.laws()));
		String whole = Meaning.fingerprint(all + "\n" + String.join("\n", others));
		all.values().forEach(marks -> marks.replaceAll((name, fingerprint) -> fingerprint.substring(0, MARK)));
		return new Taken(whole, all);
	}

	private static Taken written(List<String> texts) {
		Map<String, SortedMap<String, String>> parts = nothing();
		for (String text : texts.subList(1, texts.size())) {
			Matcher line = LINE.matcher(text);
			if (line.matches()) {
				Matcher named = NAMED.matcher(line.group(2));
				while (named.find()) {
					parts.get(line.group(1)).put(named.group(1), named.group(2));
				}
			}
		}
		return new Taken(texts.get(0), parts);
	}

	private List<String> texts() {
		List<String> texts = new ArrayList<>(List.of(whole));
		parts.forEach((kind, marks) -> {
			StringBuilder line = new StringBuilder();
			for (Map.Entry<String, String> mark : marks.entrySet()) {
				String next = mark.getKey() + " " + mark.getValue();
				if (line.length() > 0 && line.length() + next.length() > WIDTH) {
					texts.add(line.toString());
					line.setLength(0);
				}
				line.append(line.length() == 0 ? kind + "s " : ", ").append(next);
			}
			if (line.length() > 0) {
				texts.add(line.toString());
			}
		});
		return texts;
	}

	/** Returns the fingerprint of all. */
	String fingerprint() {
		return whole;
	}

	/** Returns what is wrong about what was taken over, if anything is. */
	static Optional<Problem> judge(Ground ground, Taken now) {
		String written = "\n  meaning " + now.texts().stream().map(Written::text).collect(Collectors.joining("\n          "));
		Mend take = new Mend.Write("Take it over as it is now", List.of(new Mend.Piece(ground.rest(), written)));
		if (ground.taken().isEmpty()) {
			return Optional.of(new Problem(ProblemKind.BUILDS_ON_NOT_TAKEN, ground.span(),
					"Nobody has said yet that `" + ground.written() + "` was looked at as it is now, so no change there will be told.",
					"Look at what it says, and take it over: write meaning \"" + now.whole + "\".", List.of(take)));
		}
		Taken before = written(ground.taken());
		if (before.whole.equals(now.whole)) {
			return Optional.empty();
		}
		return Optional.of(new Problem(ProblemKind.BUILDS_ON_CHANGED, ground.span(),
				"`" + ground.written() + "` has changed since it was taken over" + difference(before, now) + ".",
				"Look at what has changed, and take it over: write meaning \"" + now.whole + "\".", List.of(take)));
	}

	private static String difference(Taken before, Taken now) {
		boolean isListed = before.parts.values().stream().anyMatch(marks -> !marks.isEmpty());
		if (!isListed) {
			return "; what it said then was not written down";
		}
		List<String> told = new ArrayList<>();
		for (String kind : List.of("rule", "test", "repair")) {
			SortedMap<String, String> old = before.parts.get(kind);
			SortedMap<String, String> all = now.parts.get(kind);
			tell(told, "new", kind, all.keySet().stream().filter(name -> !old.containsKey(name)).toList());
			tell(told, "gone", kind, old.keySet().stream().filter(name -> !all.containsKey(name)).toList());
			tell(told, "changed", kind, all.keySet().stream().filter(name -> old.containsKey(name) && !old.get(name).equals(all.get(name))).toList());
		}
		return told.isEmpty() ? ": no rule, no test and no repair, but what they speak of" : ": " + String.join("; ", told);
	}

	private static void tell(List<String> told, String what, String kind, List<String> names) {
		if (!names.isEmpty()) {
			String more = names.size() > MOST_NAMES ? " and " + (names.size() - MOST_NAMES) + " more" : "";
			told.add(what + " " + kind + (names.size() == 1 ? " " : "s ")
					+ names.stream().limit(MOST_NAMES).map(name -> "`" + name + "`").collect(Collectors.joining(", ")) + more);
		}
	}
}
