package org.baywright.language.merge;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;

import org.baywright.language.merge.ProjectMerge.Slot;

/** What came of joining two states of a project: the texts, and what somebody has to choose. It never changes. */
public final class Merged {

	private final SortedMap<String, List<Slot>> files;
	private final Map<String, Boolean> existing;
	private final Map<String, Function<String, String>> writing;
	private final Map<String, Conflict.Choice> choices;

	Merged(SortedMap<String, List<Slot>> files, Map<String, Boolean> existing, Map<String, Function<String, String>> writing,
			Map<String, Conflict.Choice> choices) {
		this.files = files;
		this.existing = existing;
		this.writing = writing;
		this.choices = choices;
	}

	/** Returns all that has to be chosen, also what was chosen already, in the order of files and texts. */
	public List<Conflict> conflicts() {
		return files.values().stream().flatMap(List::stream).flatMap(slot -> slot.conflict().stream()).toList();
	}

	/** Returns what is still to be chosen. */
	public List<Conflict> open() {
		return conflicts().stream().filter(conflict -> !choices.containsKey(conflict.id())).toList();
	}

	/**
	 * Returns the same with a choice made.
	 *
	 * @param id that of a conflict
	 * @throws NoSuchElementException if there is no such conflict
	 */
	public Merged choose(String id, Conflict.Choice choice) {
		if (conflicts().stream().noneMatch(conflict -> conflict.id().equals(id))) {
			throw new NoSuchElementException("There is nothing to choose about " + id + ".");
		}
		Map<String, Conflict.Choice> more = new TreeMap<>(choices);
		more.put(id, choice);
		return new Merged(files, existing, writing, more);
	}

	/** Returns the same with all choices made that fit a conflict; others are passed over. */
	public Merged choose(Map<String, Conflict.Choice> made) {
		Merged chosen = this;
		for (Conflict conflict : conflicts()) {
			if (made.containsKey(conflict.id())) {
				chosen = chosen.choose(conflict.id(), made.get(conflict.id()));
			}
		}
		return chosen;
	}

	/** Returns the texts of all files by path. Where nothing is chosen, what is in conflict is as on our side. */
	public SortedMap<String, String> texts() {
		SortedMap<String, String> texts = new TreeMap<>();
		files.forEach((file, slots) -> {
			List<Text> pieces = new ArrayList<>();
			slots.forEach(slot -> slot.text(choices).ifPresent(body -> pieces.add(new Text(slot.gap(), body))));
			if (!pieces.isEmpty() || existing.getOrDefault(file, false) && slots.isEmpty()) {
				texts.put(file, writing.get(file).apply(joined(pieces)));
			}
		});
		return texts;
	}

	private record Text(Piece.Gap gap, String body) {
	}

	private static String joined(List<Text> pieces) {
		StringBuilder text = new StringBuilder();
		Optional<String> before = Optional.empty();
		for (Text piece : pieces) {
			text.append(gap(before, piece)).append(piece.body());
			before = Optional.of(piece.body());
		}
		return text.toString();
	}

	/** The blanks of a piece fit where it stood; where it stands now, it must not run into the one before. */
	private static String gap(Optional<String> before, Text piece) {
		if (before.isEmpty()) {
			return piece.gap().first() ? piece.gap().text() : "";
		}
		boolean glued = piece.gap().first() || !piece.gap().text().contains("\n") && before.get().substring(before.get().lastIndexOf('\n') + 1).contains("//");
		return !glued ? piece.gap().text() : before.get().contains("\n") || piece.body().contains("\n") ? "\n\n" : "\n";
	}
}
