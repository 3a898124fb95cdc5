package org.baywright.language.ide.grid;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.baywright.language.ide.fix.Places;
import org.baywright.language.ide.fix.Preview;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Rule;
import org.baywright.model.Span;

/** Any number of cells changed, to be written in one go. */
public final class GridChange {

	private final Snapshot snapshot;
	private final Map<String, RuleTable> tables = new LinkedHashMap<>();
	private final List<NewRule> added = new ArrayList<>();

	/** @param snapshot the project; the changes are in terms of its texts */
	public GridChange(Snapshot snapshot) {
		this.snapshot = snapshot;
	}

	/**
	 * Returns the table of a rule, with what was changed so far.
	 *
	 * @throws IllegalArgumentException if the rule stands in no text of the project
	 */
	public RuleTable table(Rule rule) {
		String text = snapshot.sources().get(rule.span().file());
		if (text == null || Span.isElsewhere(rule.span().file())) {
			throw new IllegalArgumentException("not in a text of the project: " + rule.name());
		}
		return tables.computeIfAbsent(rule.name(), name -> RuleTable.of(snapshot.rules(), rule, text));
	}

	/** Changes a rule that stands in a text. */
	public GridChange set(RuleTable table) {
		tables.put(table.rule().orElseThrow().name(), table);
		return this;
	}

	/** Adds a rule. */
	public GridChange add(NewRule rule) {
		added.add(rule);
		return this;
	}

	/** Returns all that is to be written. */
	public GridEdit done() {
		SortedMap<String, List<TextEdit>> edits = new TreeMap<>();
		Map<String, String> sources = snapshot.sources();
		for (RuleTable table : tables.values()) {
			Rule rule = table.rule().orElseThrow();
			String file = rule.span().file();
			List<TextEdit> own = new RuleText(rule, sources.get(file)).edits(table.lines());
			if (!own.isEmpty()) {
				edits.computeIfAbsent(file, none -> new ArrayList<>()).addAll(own);
			}
		}
		TreeSet<String> names = new TreeSet<>();
		snapshot.rules().rules().forEach(rule -> names.add(rule.name()));
		snapshot.dropped().forEach(dropped -> names.add(dropped.substring(dropped.indexOf(' ') + 1)));
		SortedMap<String, StringBuilder> texts = new TreeMap<>();
		for (NewRule rule : added) {
			String text = rule.text(snapshot.rules(), names);
			names.add(text.split("\\s+", 3)[1].replace("^", ""));
			StringBuilder there = texts.computeIfAbsent(rule.file(), none -> new StringBuilder());
			there.append(there.isEmpty() ? "" : "\n").append(text);
		}
		texts.forEach((file, text) -> {
			List<TextEdit> here = edits.computeIfAbsent(file, none -> new ArrayList<>());
			here.add(new Places(sources.getOrDefault(file, "")).addElement(text.toString()));
		});
		edits.values().forEach(list -> list.sort(null));
		return new GridEdit(edits, Preview.of(edits, sources));
	}

	/** Returns the texts of the project as they will be. */
	public static SortedMap<String, String> apply(GridEdit edit, SortedMap<String, String> sources) {
		SortedMap<String, String> now = new TreeMap<>(sources);
		edit.edits().forEach((file, edits) -> now.put(file, Edits.apply(sources.getOrDefault(file, ""), edits)));
		return now;
	}
}
