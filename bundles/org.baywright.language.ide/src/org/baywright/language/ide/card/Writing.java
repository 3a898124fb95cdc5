package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.List;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;

/** Writes pieces, and finds the smallest changes that turn what stands in a text into what is to stand there. */
public final class Writing {

	/** Stands for a new line in what is written; it is no word of any text. */
	private static final String LINE = "\n";

	private Writing() {
	}

	/** Returns a piece as one line of text. */
	static String line(Piece piece) {
		return join(words(piece, false));
	}

	/** Returns a piece with each thing of a list without commas on a line of its own, as far as they stand between braces. */
	static String lines(Piece piece, String indent) {
		return join(words(piece, true)).replace(LINE, LINE + indent);
	}

	/** Returns what stands before a place within a piece, on one line. */
	static String before(Piece piece, List<Integer> path) {
		List<String> words = new ArrayList<>();
		collect(piece, words, false, path, 0);
		return join(words);
	}

	private static List<String> words(Piece piece, boolean inLines) {
		List<String> words = new ArrayList<>();
		collect(piece, words, inLines, null, 0);
		return words;
	}

	/** Returns whether the place was reached. */
	private static boolean collect(Piece piece, List<String> to, boolean inLines, List<Integer> until, int depth) {
		if (until != null && depth == until.size()) {
			return true;
		}
		int last = until == null ? Integer.MAX_VALUE : until.get(depth);
		if (piece instanceof Piece.Word word) {
			to.add(word.text());
		} else if (piece instanceof Piece.Value value) {
			if (!value.text().isEmpty()) {
				to.add(value.text());
			}
		} else if (piece instanceof Piece.Group group) {
			return group(group, to, inLines, until, depth, last);
		}
		List<Piece> children = piece.children();
		boolean block = inLines && piece instanceof Piece.Many many && many.shape().separator().isEmpty() && !to.isEmpty()
				&& to.get(to.size() - 1).equals("{");
		for (int i = 0; i < children.size(); i++) {
			// the words of what may be left out stand there only once something is filled in
			if (until != null && i < last && children.get(i) instanceof Piece.Maybe maybe && maybe.isBlank()) {
				continue;
			}
			if (i > 0 && piece instanceof Piece.Many many && !many.shape().separator().isEmpty()) {
				to.add(many.shape().separator());
			}
			if (block) {
				to.add(LINE + "  ");
			}
			if (i == last) {
				return collect(children.get(i), to, inLines, until, depth + 1);
			}
			collect(children.get(i), to, inLines, null, 0);
		}
		if (block && !children.isEmpty()) {
			to.add(LINE);
		}
		return until != null;
	}

	private static boolean group(Piece.Group group, List<String> to, boolean inLines, List<Integer> until, int depth, int last) {
		if (group.not()) {
			to.add("not");
		}
		if (group.enclosed()) {
			to.add("(");
		}
		for (int i = 0; i < group.items().size(); i++) {
			if (i > 0) {
				to.add(group.joins().get(i - 1));
			}
			if (i == last) {
				return collect(group.items().get(i), to, inLines, until, depth + 1);
			}
			collect(group.items().get(i), to, inLines, null, 0);
		}
		if (group.enclosed()) {
			to.add(")");
		}
		return until != null;
	}

	/** Puts words behind each other with the usual blanks. */
	static String join(List<String> words) {
		StringBuilder out = new StringBuilder();
		String last = "";
		for (String word : words) {
			boolean close = out.isEmpty() || word.equals(",") || word.equals(")") || last.equals("(") || word.startsWith(LINE)
					|| last.startsWith(LINE);
			out.append(close ? "" : " ").append(word);
			last = word;
		}
		return out.toString();
	}

	/**
	 * Returns changes after which a part of a text has the words of another, with the fewest words touched; comments and
	 * blanks between words that stay are kept.
	 *
	 * @param text all of the text
	 * @param offset where the part begins
	 * @param length how long it is
	 * @param wanted what it is to say
	 */
	public static List<TextEdit> changes(String text, int offset, int length, String wanted) {
		List<Word> old = Words.of(text.substring(offset, offset + length)).stream().filter(word -> word.kind() != Word.Kind.COMMENT).toList();
		List<Word> now = Words.of(wanted);
		int[][] same = new int[old.size() + 1][now.size() + 1];
		for (int i = old.size() - 1; i >= 0; i--) {
			for (int j = now.size() - 1; j >= 0; j--) {
				same[i][j] = old.get(i).text().equals(now.get(j).text()) ? same[i + 1][j + 1] + 1 : Math.max(same[i + 1][j], same[i][j + 1]);
			}
		}
		List<TextEdit> edits = new ArrayList<>();
		int i = 0;
		int j = 0;
		while (i < old.size() || j < now.size()) {
			if (i < old.size() && j < now.size() && old.get(i).text().equals(now.get(j).text())) {
				i++;
				j++;
				continue;
			}
			int fromOld = i;
			int fromNow = j;
			while ((i < old.size() || j < now.size())
					&& !(i < old.size() && j < now.size() && old.get(i).text().equals(now.get(j).text()))) {
				if (j == now.size() || i < old.size() && same[i + 1][j] >= same[i][j + 1]) {
					i++;
				} else {
					j++;
				}
			}
			boolean close = j > 0 && j < now.size() && now.get(j).offset() > now.get(j - 1).end() && i < old.size() && i > 0
					&& old.get(i).offset() == old.get(i - 1).end();
			edit(text, offset, old.subList(0, i), fromOld, wanted, now.subList(0, j), fromNow, close, edits);
		}
		String part = text.substring(offset, offset + length);
		String after = Edits.apply(part, edits.stream().map(edit -> new TextEdit(edit.offset() - offset, edit.length(), edit.text())).toList());
		boolean right = said(after).equals(now.stream().map(Word::text).toList());
		// words that would run into each other where nobody left a blank are written anew with their line
		return right ? edits : List.of(new TextEdit(offset, length, wanted));
	}

	private static List<String> said(String text) {
		return Words.of(text).stream().filter(word -> word.kind() != Word.Kind.COMMENT).map(Word::text).toList();
	}

	/** @param close whether what goes stands close to what follows, which is to keep its distance */
	private static void edit(String text, int offset, List<Word> old, int fromOld, String wanted, List<Word> now, int fromNow, boolean close,
			List<TextEdit> edits) {
		boolean adds = fromNow < now.size();
		int from = adds ? now.get(fromNow).offset() : 0;
		String added = adds ? wanted.substring(from, now.get(now.size() - 1).end()) : "";
		int behind = offset + (fromOld == 0 ? 0 : old.get(fromOld - 1).end());
		if (fromOld == old.size()) {
			int gap = fromNow == 0 ? from : now.get(fromNow - 1).end();
			String blanks = wanted.substring(gap, from);
			boolean first = fromOld == 0;
			int next = now.get(now.size() - 1).end();
			String after = first ? wanted.substring(next, Words.of(wanted.substring(next)).isEmpty() ? wanted.length()
					: next + Words.of(wanted.substring(next)).get(0).offset()) : "";
			edits.add(TextEdit.insert(behind, blanks + added + after));
			return;
		}
		int begin = offset + old.get(fromOld).offset();
		int end = offset + old.get(old.size() - 1).end();
		if (hasComment(text.substring(begin, end))) {
			// what is said about a word stays where it is
			for (int i = fromOld; i < old.size(); i++) {
				edits.add(new TextEdit(offset + old.get(i).offset(), old.get(i).text().length(), i == fromOld ? added : ""));
			}
		} else if (adds) {
			String gap = wanted.substring(fromNow == 0 ? from : now.get(fromNow - 1).end(), from);
			// a comma stands close, a word does not
			boolean closer = gap.isEmpty() && fromNow > 0 && begin > behind && text.substring(behind, begin).chars().allMatch(c -> c == ' ');
			edits.add(closer ? new TextEdit(behind, end - behind, added) : new TextEdit(begin, end - begin, (begin == behind ? gap : "") + added));
		} else if (close || hasComment(text.substring(behind, begin))) {
			edits.add(new TextEdit(begin, end - begin, ""));
		} else {
			edits.add(new TextEdit(behind, end - behind, ""));
		}
	}

	private static boolean hasComment(String part) {
		return Words.of(part).stream().anyMatch(word -> word.kind() == Word.Kind.COMMENT);
	}
}
