package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;

/**
 * An element of a text, cut into its head and its clauses.
 *
 * @param form how it is filled in
 * @param text all of the text
 * @param words the element's words, without the comments
 * @param head the head; nothing if it cannot be read
 * @param clauses the clauses in the order of the text
 * @param open number of the word that is the opening brace; -1 if there is none
 * @param close number of the closing brace; -1 if there is none
 */
record Sheet(Form form, String text, List<Word> words, Optional<Piece> head, List<Part> clauses, int open, int close) {

	/** What cannot be read as any clause. */
	static final int UNREAD = -1;

	/**
	 * A clause as it stands in the text.
	 *
	 * @param clause its number in the vocabulary; {@link #UNREAD} if it is none
	 * @param piece what it says; nothing if it cannot be read
	 * @param offset where it begins
	 * @param length how long it is
	 */
	record Part(int clause, Optional<Piece> piece, int offset, int length) {

		int end() {
			return offset + length;
		}
	}

	/** Returns an element that is not written yet. */
	static Sheet blank(Form form, String text) {
		return new Sheet(form, text, List.of(), Optional.of(Piece.blank(form.head())), List.of(), -1, -1);
	}

	/** Returns the place of each element of a text: where it begins, and where the next word stands behind it. */
	static List<int[]> places(String text, List<Word> all) {
		List<int[]> places = new ArrayList<>();
		for (int i = 0; i < all.size();) {
			if (Words.beginsElement(text, all, i, 0)) {
				int end = Words.endOfElement(text, all, i);
				places.add(new int[] { i, end });
				i = Math.max(end, i + 1);
			} else {
				i++;
			}
		}
		return places;
	}

	/** Reads the element of which a place is part; nothing if there is none. */
	static Optional<Sheet> at(Map<String, Form> forms, String text, int offset) {
		List<Word> all = Words.of(text).stream().filter(word -> word.kind() != Word.Kind.COMMENT).toList();
		int[] found = null;
		for (int[] place : places(text, all)) {
			if (found == null || all.get(place[0]).offset() <= offset) {
				found = place;
			}
		}
		return found == null ? Optional.empty() : read(forms, text, all.subList(found[0], found[1]));
	}

	/** Reads the element with these words. */
	static Optional<Sheet> read(Map<String, Form> forms, String text, List<Word> words) {
		Matching matching = new Matching(text, words);
		return Form.beginning(forms, words.get(0), matching, 0).map(form -> {
			int open = form.clauses().isEmpty() ? -1 : brace(words);
			Optional<Piece> head = matching.exactly(form.head(), 0, open < 0 ? words.size() : open).map(Matching.Read::piece);
			int close = open >= 0 && words.get(words.size() - 1).is("}") ? words.size() - 1 : -1;
			return new Sheet(form, text, words, head, open < 0 ? List.of() : clauses(form, text, words, matching, open + 1,
					close < 0 ? words.size() : close), open, close);
		});
	}

	private static int brace(List<Word> words) {
		for (int i = 0; i < words.size(); i++) {
			if (words.get(i).is("{")) {
				return i;
			}
		}
		return -1;
	}

	private static List<Part> clauses(Form form, String text, List<Word> words, Matching matching, int from, int to) {
		List<Part> parts = new ArrayList<>();
		int unread = -1;
		for (int at = from; at < to;) {
			int clause = UNREAD;
			Optional<Matching.Read> best = Optional.empty();
			for (int i = 0; i < form.clauses().size(); i++) {
				Optional<Matching.Read> read = matching.longest(form.clauses().get(i), at);
				if (read.isPresent() && read.get().end() <= to && (best.isEmpty() || read.get().end() > best.get().end())) {
					best = read;
					clause = i;
				}
			}
			// behind what cannot be read only a word at the head of its line begins anew
			boolean begins = best.isPresent() && (unread < 0 || Words.isFirstInLine(text, words.get(at).offset()));
			if (!begins) {
				unread = unread < 0 ? at : unread;
				at++;
				continue;
			}
			if (unread >= 0) {
				parts.add(part(UNREAD, Optional.empty(), words, unread, at));
				unread = -1;
			}
			parts.add(part(clause, Optional.of(best.get().piece()), words, at, best.get().end()));
			at = best.get().end();
		}
		if (unread >= 0) {
			parts.add(part(UNREAD, Optional.empty(), words, unread, to));
		}
		return parts;
	}

	private static Part part(int clause, Optional<Piece> piece, List<Word> words, int from, int to) {
		int offset = words.get(from).offset();
		return new Part(clause, piece, offset, words.get(to - 1).end() - offset);
	}

	int offset() {
		return words.get(0).offset();
	}

	int end() {
		return words.get(words.size() - 1).end();
	}

	/** Returns where the head ends. */
	int headEnd() {
		return open < 0 ? end() : words.get(open - 1).end();
	}

	/** Returns whether it can be written into: its head can be read and its braces are there. */
	boolean isReadable() {
		return head.isPresent() && (open < 0 ? form.clauses().isEmpty() || form.bare() : close > 0);
	}
}
