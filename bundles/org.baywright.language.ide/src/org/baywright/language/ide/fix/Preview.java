package org.baywright.language.ide.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Words;

/** Shows what edits change: where, and the lines as they were and as they will be. */
public final class Preview {

	private final StringBuilder out = new StringBuilder();

	private Preview() {
	}

	/**
	 * Returns what edits change.
	 *
	 * @param edits the changes of each file, by place
	 * @param sources the texts they are made in
	 */
	public static String of(SortedMap<String, List<TextEdit>> edits, Map<String, String> sources) {
		Preview preview = new Preview();
		edits.forEach((file, list) -> preview.file(file, sources.getOrDefault(file, ""), list));
		return preview.out.toString();
	}

	private void file(String file, String text, List<TextEdit> edits) {
		for (int i = 0; i < edits.size();) {
			int start = Words.startOfLine(text, edits.get(i).offset());
			int end = start;
			List<TextEdit> together = new ArrayList<>();
			// what is changed twice in a line is shown once
			for (; i < edits.size() && (together.isEmpty() || edits.get(i).offset() <= end); i++) {
				TextEdit edit = edits.get(i);
				together.add(new TextEdit(edit.offset() - start, edit.length(), edit.text()));
				end = Math.max(end, Words.endOfLine(text, edit.offset() + edit.length()));
			}
			String old = text.substring(start, end);
			block(file, 1 + (int) text.substring(0, start).lines().count(), old, Edits.apply(old, together));
		}
	}

	private void block(String file, int line, String old, String now) {
		List<String> before = old.lines().toList();
		List<String> after = now.lines().toList();
		int shortest = Math.min(before.size(), after.size());
		int same = 0;
		while (same < shortest && before.get(same).equals(after.get(same))) {
			same++;
		}
		int tail = 0;
		while (tail < shortest - same && before.get(before.size() - 1 - tail).equals(after.get(after.size() - 1 - tail))) {
			tail++;
		}
		out.append(file).append(", line ").append(line + same).append(":\n");
		lines("- ", before.subList(same, before.size() - tail));
		lines("+ ", after.subList(same, after.size() - tail));
	}

	private void lines(String mark, List<String> lines) {
		lines.stream().filter(line -> !line.isBlank()).forEach(line -> out.append(mark).append(line.stripTrailing()).append('\n'));
	}
}
