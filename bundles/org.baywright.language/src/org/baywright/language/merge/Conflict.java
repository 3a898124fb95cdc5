package org.baywright.language.merge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What two people have changed in ways that do not go together: somebody has to choose.
 *
 * @param id names it, the same for everybody, as {@code rule flat_battery}
 * @param kind the word of the element; {@code comment} for one that belongs to a file, {@code file} for one that cannot be read as rules
 * @param name the name of the element, or what tells it apart
 * @param file where it stands
 * @param base its text before both, if it was there
 * @param ours its text on our side, if it is there
 * @param theirs its text on the other side, if it is there
 */
public record Conflict(String id, String kind, String name, String file, Optional<String> base, Optional<String> ours, Optional<String> theirs) {

	private static final int MOST_LINES = 12;

	/** What is chosen for a conflict. */
	public sealed interface Choice {
		/** Our text stays. */
		Choice OURS = new Side(true);
		/** The text of the other side comes in its place. */
		Choice THEIRS = new Side(false);

		/** Returns the choice of a text of one's own, which takes the place of both. */
		static Choice text(String text) {
			return new Text(text);
		}
	}

	private record Side(boolean our) implements Choice {
	}

	private record Text(String text) implements Choice {
	}

	/** Returns the text that a choice leads to; nothing if the element goes. */
	Optional<String> chosen(Choice choice) {
		if (choice instanceof Text own) {
			return Optional.of(kind.equals(Piece.FILE) ? own.text() : own.text().strip()).filter(text -> !text.isEmpty());
		}
		return ((Side) choice).our() ? ours : theirs;
	}

	/**
	 * Tells what each side has made of it.
	 *
	 * @param our what our side is called, such as {@code you}
	 * @param their what the other side is called
	 * @return sentences and lines, ours first
	 */
	public List<String> told(String our, String their) {
		List<String> told = new ArrayList<>();
		told(told, our, ours);
		told(told, their, theirs);
		return told;
	}

	private void told(List<String> told, String side, Optional<String> text) {
		if (text.isEmpty()) {
			told.add(side + ": taken out");
		} else if (kind.equals(Piece.FILE)) {
			told.add(side + (text.get().isEmpty() ? ": another content" : ": a file of " + text.get().lines().count() + " lines"));
		} else if (base.isEmpty()) {
			told.add(side + ": new");
			lines(told, "says", Joining.lines(text.get()));
		} else {
			told.add(side + ":");
			told.addAll(edits(base.get(), text.get()));
		}
	}

	/** Returns what a text no longer says and what it says now, line by line. */
	static List<String> edits(String before, String after) {
		List<String> was = Joining.lines(before);
		List<String> is = Joining.lines(after);
		List<String> told = new ArrayList<>();
		lines(told, "no longer says", rest(was, is));
		lines(told, "says now", rest(is, was));
		return told;
	}

	private static List<String> rest(List<String> of, List<String> without) {
		int[] kept = ThreeWay.matches(of, without);
		List<String> rest = new ArrayList<>();
		for (int i = 0; i < of.size(); i++) {
			if (kept[i] < 0) {
				rest.add(of.get(i));
			}
		}
		return rest;
	}

	private static void lines(List<String> told, String how, List<String> lines) {
		lines.stream().limit(MOST_LINES).forEach(line -> told.add("  " + how + "  " + line));
		if (lines.size() > MOST_LINES) {
			told.add("  and " + (lines.size() - MOST_LINES) + " lines more");
		}
	}
}
