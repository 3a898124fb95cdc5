package org.baywright.language.ide.complete;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text with places to fill in.
 *
 * @param label the word to choose it by
 * @param detail what it makes
 * @param text the text
 * @param slots the places
 */
public record Skeleton(String label, String detail, String text, List<Slot> slots) {

	private static final Pattern SLOT = Pattern.compile("<([^<>\n]*)>");

	public Skeleton {
		slots = List.copyOf(slots);
	}

	/** Makes a skeleton of a text in which each place to fill in stands as {@code <suggestion>}. */
	static Skeleton of(String label, String detail, String marked) {
		StringBuilder text = new StringBuilder();
		List<Slot> slots = new ArrayList<>();
		Map<String, Integer> groups = new LinkedHashMap<>();
		Matcher slot = SLOT.matcher(marked);
		int at = 0;
		while (slot.find()) {
			text.append(marked, at, slot.start());
			String suggestion = slot.group(1);
			// what is suggested twice is meant to be the same, but an empty place is not
			String key = suggestion.isEmpty() ? " " + slot.start() : suggestion;
			int group = groups.computeIfAbsent(key, none -> groups.size() + 1);
			slots.add(new Slot(text.length(), suggestion.length(), group));
			text.append(suggestion);
			at = slot.end();
		}
		return new Skeleton(label, detail, text.append(marked.substring(at)).toString(), slots);
	}

	/** Returns it with each of its lines but the first indented. */
	Skeleton indented(String indent) {
		if (indent.isEmpty()) {
			return this;
		}
		List<Slot> moved = new ArrayList<>();
		for (Slot slot : slots) {
			int lines = (int) text.substring(0, slot.offset()).chars().filter(c -> c == '\n').count();
			moved.add(new Slot(slot.offset() + lines * indent.length(), slot.length(), slot.group()));
		}
		return new Skeleton(label, detail, text.replace("\n", "\n" + indent), moved);
	}
}
