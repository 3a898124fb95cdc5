package org.baywright.language.merge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What became of one element, between two states of a project.
 *
 * @param kind the word of the element; {@code comment} for one that belongs to a file, {@code file} for a file that is no text of rules
 * @param name its name, or what tells it apart
 * @param file where it stands, or stood
 * @param how what became of it
 * @param before its text before
 * @param after its text now
 */
public record Change(String kind, String name, String file, How how, Optional<String> before, Optional<String> after) {

	/** What became of an element. */
	public enum How {
		NEW, CHANGED, MOVED, GONE
	}

	/** Returns the change of a file of which only the content as a whole is known. */
	public static Change ofFile(String file, boolean wasThere, boolean isThere) {
		return new Change(Piece.FILE, file, file, !wasThere ? How.NEW : isThere ? How.CHANGED : How.GONE, Optional.empty(), Optional.empty());
	}

	/**
	 * Returns what differs between two states of the rule files of a project, by path; blanks between elements do not count.
	 *
	 * @return in the order of files and texts, what is gone last
	 */
	public static List<Change> between(Map<String, String> before, Map<String, String> after) {
		Map<String, Pieces> was = new TreeMap<>();
		Map<String, Pieces> is = new TreeMap<>();
		List<Change> changes = new ArrayList<>();
		cut(before, was);
		cut(after, is);
		Map<Piece.Key, Side.Place> places = new HashMap<>();
		was.forEach((file, pieces) -> pieces.pieces().forEach(piece -> places.put(piece.key(), new Side.Place(file, piece))));
		is.forEach((file, pieces) -> pieces.pieces().forEach(piece -> {
			Optional<Side.Place> old = Optional.ofNullable(places.remove(piece.key()));
			boolean same = old.isPresent() && old.get().piece().body().equals(piece.body());
			if (!same || !old.get().file().equals(file)) {
				How how = old.isEmpty() ? How.NEW : same ? How.MOVED : How.CHANGED;
				changes.add(new Change(piece.key().kind(), piece.key().name(), file, how, old.map(at -> at.piece().body()), Optional.of(piece.body())));
			}
		}));
		was.forEach((file, pieces) -> pieces.pieces().stream().filter(piece -> places.containsKey(piece.key())).forEach(piece -> changes
				.add(new Change(piece.key().kind(), piece.key().name(), file, How.GONE, Optional.of(piece.body()), Optional.empty()))));
		return List.copyOf(changes);
	}

	private static void cut(Map<String, String> texts, Map<String, Pieces> cut) {
		Pieces.Numbers numbers = new Pieces.Numbers();
		new TreeMap<>(texts).forEach((file, text) -> {
			String plain = Lines.plain(text);
			cut.put(file, Pieces.of(file, plain, numbers).orElseGet(() -> Pieces.whole(file, plain)));
		});
	}

	/** Returns what the element no longer says and what it says now, line by line; nothing unless it was changed. */
	public List<String> told() {
		return before.isPresent() && after.isPresent() ? Conflict.edits(before.get(), after.get()) : List.of();
	}

	/** Returns what changed in words, such as {@code rule flat_battery}. */
	public String title() {
		return name.isEmpty() ? kind : kind + " " + name;
	}
}
