package org.baywright.pack.sheet;

import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;

import org.baywright.model.RuleBase;

/** An index by title. Its order is that of the characters, which is the same everywhere. */
final class IndexSection {

	private final SortedMap<String, Target> entries = new TreeMap<>();
	private final Html html;

	private record Target(String title, String id, String kind) {
	}

	IndexSection(RuleBase base, Html html) {
		this.html = html;
		base.rules().forEach(rule -> add("rule", rule.name(), rule.title()));
		base.tests().forEach(test -> add("test", test.name(), test.title()));
		base.signs().forEach(sign -> add("sign", sign.name(), sign.title()));
		base.faults().forEach(fault -> add("fault", fault.name(),
				base.part(fault.part()).map(part -> part.title() + ": ").orElse("") + fault.title()));
		base.repairs().forEach(repair -> add("repair", repair.name(), repair.title()));
		base.hazards().forEach(hazard -> add("hazard", hazard.name(), hazard.title()));
		base.families().forEach(family -> add("family", family.name(), family.title()));
	}

	private void add(String kind, String name, String title) {
		String key = title.toLowerCase(Locale.ROOT) + '\0' + kind + '\0' + name;
		entries.put(key, new Target(title, kind + "-" + name, kind));
	}

	void write() {
		html.open("section", "id", "index").element("h2", "Index").open("ul");
		for (Target target : entries.values()) {
			html.open("li").link(target.id(), target.title()).text(" (" + target.kind() + ")").close();
		}
		html.close().close();
	}
}
