package org.baywright.language.ide.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.baywright.language.ide.text.LineEnds;
import org.baywright.language.ide.text.TextEdit;

/** A fix being made. */
final class Draft {

	private static final String EMPTY = "\"\"";

	private final SortedMap<String, List<TextEdit>> edits = new TreeMap<>();

	Draft add(String file, TextEdit edit) {
		edits.computeIfAbsent(file, none -> new ArrayList<>()).add(edit);
		return this;
	}

	/** Returns the fix; nothing if it changes nothing. */
	Optional<QuickFix> done(String title, String about, Map<String, String> sources) {
		if (edits.isEmpty()) {
			return Optional.empty();
		}
		edits.forEach((file, list) -> {
			list.replaceAll(edit -> new TextEdit(edit.offset(), edit.length(), LineEnds.asIn(sources.getOrDefault(file, ""), edit.text())));
			list.sort(null);
		});
		return Optional.of(new QuickFix(title, about, edits, Preview.of(edits, sources), next(), Optional.empty()));
	}

	/** The first empty text in quotes that is written. */
	private Optional<QuickFix.Next> next() {
		for (Map.Entry<String, List<TextEdit>> entry : edits.entrySet()) {
			int moved = 0;
			for (TextEdit edit : entry.getValue()) {
				int at = edit.text().indexOf(EMPTY);
				if (at >= 0) {
					return Optional.of(new QuickFix.Next(entry.getKey(), edit.offset() + moved + at + 1, 0));
				}
				moved += edit.text().length() - edit.length();
			}
		}
		return Optional.empty();
	}
}
