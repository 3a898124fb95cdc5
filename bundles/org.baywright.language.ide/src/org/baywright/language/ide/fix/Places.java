package org.baywright.language.ide.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.language.vocabulary.Vocabulary;

/** Finds in a text where elements can be changed, whatever is wrong elsewhere in it. */
public final class Places {

	private static final String INDENT = "  ";

	private final String text;
	private final List<Word> words;

	/** @param text all of a file */
	public Places(String text) {
		this.text = text;
		words = Words.of(text);
	}

	/** Returns the number of the word that begins the element of a kind with a name. */
	private Optional<Integer> element(String kind, String name) {
		for (int i = 0; i + 1 < words.size(); i++) {
			boolean begins = words.get(i).is(kind) && Words.beginsElement(text, words, i, 0);
			if (begins && words.get(i + 1).text().replace("^", "").equals(name)) {
				return Optional.of(i);
			}
		}
		return Optional.empty();
	}

	/** Returns whether the text declares the element. */
	boolean declares(String kind, String name) {
		return element(kind, name).isPresent();
	}

	/**
	 * Returns what adds a line to an element: below the last one that begins with the same word, else before its closing brace.
	 *
	 * @param kind the word that begins the element, or {@code verify} for the block of a repair
	 * @param name its name
	 * @param line the line without indentation
	 */
	Optional<TextEdit> addLine(String kind, String name, String line) {
		boolean verify = kind.equals("verify");
		return element(verify ? "repair" : kind, name).flatMap(start -> {
			int end = Words.endOfElement(text, words, start);
			int from = start;
			while (verify && from < end && !words.get(from).is("verify")) {
				from++;
			}
			int opener = from;
			return closing(from, end).map(brace -> belowAlike(opener, brace, line).orElseGet(() -> before(words.get(brace), line)));
		});
	}

	/** Returns what adds a line below the last one of a block that begins with the same word and stands on lines of its own. */
	private Optional<TextEdit> belowAlike(int from, int brace, String line) {
		String first = line.split("\\s", 2)[0];
		int depth = 0;
		Word alike = null;
		int next = -1;
		for (int i = from; i <= brace; i++) {
			Word word = words.get(i);
			depth -= word.is("}") ? 1 : 0;
			if (Words.isFirstInLine(text, word.offset()) && depth <= 1) {
				if (next < 0 && alike != null && Words.indent(text, word.offset()).length() <= Words.indent(text, alike.offset()).length()) {
					next = Words.startOfLine(text, word.offset());
				}
				if (depth == 1 && word.is(first)) {
					alike = word;
					next = -1;
				}
			}
			depth += word.is("{") ? 1 : 0;
		}
		if (alike == null || next < 0) {
			return Optional.empty();
		}
		String indent = Words.indent(text, alike.offset());
		return Optional.of(TextEdit.insert(next, indent + line.replace("\n", "\n" + indent) + "\n"));
	}

	/** Returns the number of the brace that closes what opens first behind a word. */
	private Optional<Integer> closing(int from, int end) {
		int depth = 0;
		for (int i = from; i < end; i++) {
			if (words.get(i).is("{")) {
				depth++;
			} else if (words.get(i).is("}") && --depth == 0) {
				return Optional.of(i);
			}
		}
		return Optional.empty();
	}

	private TextEdit before(Word brace, String line) {
		String indent = Words.indent(text, brace.offset());
		if (Words.isFirstInLine(text, brace.offset())) {
			String indented = indent + INDENT + line.replace("\n", "\n" + indent + INDENT) + "\n";
			return TextEdit.insert(Words.startOfLine(text, brace.offset()), indented);
		}
		boolean blank = text.charAt(brace.offset() - 1) == ' ';
		return TextEdit.insert(brace.offset(), (blank ? "" : " ") + line + " ");
	}

	/** Returns what adds an element at the end of the text. */
	public TextEdit addElement(String element) {
		String body = text.stripTrailing();
		String gap = body.isEmpty() ? "" : text.endsWith("\n\n") || text.isEmpty() ? "" : text.endsWith("\n") ? "\n" : "\n\n";
		return TextEdit.insert(text.length(), gap + element.strip() + "\n");
	}

	/** Returns what takes an element out, with the blank line behind it. */
	Optional<TextEdit> remove(String kind, String name) {
		return element(kind, name).map(this::remove);
	}

	/** Returns what takes out every element that begins with some words and then a name. */
	List<TextEdit> removeAll(List<String> begin, String name) {
		List<TextEdit> edits = new ArrayList<>();
		for (int i = 0; i + begin.size() < words.size(); i++) {
			boolean begins = words.subList(i, i + begin.size()).stream().map(Word::text).toList().equals(begin);
			if (begins && words.get(i + begin.size()).text().equals(name) && Words.beginsElement(text, words, i, 0)) {
				edits.add(remove(i));
			}
		}
		return edits;
	}

	/**
	 * Returns what takes a conclusion back.
	 *
	 * @param offset where the name of its fault begins
	 */
	Optional<TextEdit> withdraw(int offset) {
		List<Word> read = words.stream().filter(word -> word.kind() != Word.Kind.COMMENT).toList();
		int first = 0;
		while (first < read.size() && read.get(first).offset() < offset) {
			first++;
		}
		int last = first;
		while (last + 2 < read.size() && read.get(last + 1).is(".")) {
			last += 2;
		}
		if (first < 2 || last + 1 >= read.size() || read.get(first).offset() != offset) {
			return Optional.empty();
		}
		Word before = read.get(first - 1);
		Word after = read.get(last + 1);
		int end = read.get(last).end();
		if (before.is(",")) {
			return Optional.of(new TextEdit(before.offset(), end - before.offset(), ""));
		}
		if (after.is(",")) {
			return Optional.of(new TextEdit(offset, read.get(last + 2).offset() - offset, ""));
		}
		Word opener = read.get(first - 2);
		if (!opener.is(":") && !opener.is("then")) {
			return Optional.of(new TextEdit(opener.end(), end - opener.end(), ""));
		}
		if (after.kind() == Word.Kind.KEYWORD && Vocabulary.concludes(after.text())) {
			return Optional.of(new TextEdit(before.offset(), after.offset() - before.offset(), ""));
		}
		return Optional.of(new TextEdit(before.offset(), end - before.offset(), "proves nothing"));
	}

	private TextEdit remove(int start) {
		return remove(words.get(start).offset(), words.get(lastOf(start)).end());
	}

	/** Returns what takes a part of the text out, with the blank line behind it. */
	TextEdit remove(int begin, int end) {
		int from = Words.isFirstInLine(text, begin) ? Words.startOfLine(text, begin) : begin;
		int to = end;
		int lineEnd = Words.endOfLine(text, to);
		if (text.substring(to, lineEnd).isBlank()) {
			to = behindLineEnd(lineEnd);
			int next = Words.endOfLine(text, to);
			boolean blankBefore = from == 0 || text.substring(Words.startOfLine(text, from - 1), from).isBlank();
			if (blankBefore && text.substring(to, next).isBlank()) {
				to = behindLineEnd(next);
			}
		}
		return new TextEdit(from, to - from, "");
	}

	private int lastOf(int start) {
		int last = Words.endOfElement(text, words, start) - 1;
		while (last > start && words.get(last).kind() == Word.Kind.COMMENT) {
			last--;
		}
		return last;
	}

	private int behindLineEnd(int offset) {
		return text.startsWith("\r\n", offset) ? offset + 2 : Math.min(text.length(), offset + 1);
	}
}
