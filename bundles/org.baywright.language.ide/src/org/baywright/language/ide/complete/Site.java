package org.baywright.language.ide.complete;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.language.index.ProjectIndex;

/**
 * Where somebody wants to write.
 *
 * @param index names of the project
 * @param text all of the file
 * @param words its words
 * @param start where the word being typed begins
 * @param offset the cursor
 * @param element number of the word that begins the element around it, or -1
 */
record Site(ProjectIndex index, String text, List<Word> words, int start, int offset, int element) {

	static Site at(ProjectIndex index, String text, int offset) {
		List<Word> words = Words.of(text);
		int start = start(text, offset);
		return new Site(index, text, words, start, offset, Words.elementAt(text, words, start));
	}

	/** A name goes over points, a number does not belong to the unit behind it. */
	private static int start(String text, int offset) {
		int start = offset;
		while (start > 0 && (isLetter(text.charAt(start - 1))
				|| text.charAt(start - 1) == '.' && start > 1 && isLetter(text.charAt(start - 2)))) {
			start--;
		}
		while (start < offset && (Character.isDigit(text.charAt(start)) || text.charAt(start) == '.')) {
			start++;
		}
		return start;
	}

	private static boolean isLetter(char c) {
		return Character.isLetterOrDigit(c) || c == '_' || c == '^';
	}

	/** Returns whether nothing of the language is read here: in a text, a comment or a number. */
	boolean isMute() {
		boolean number = start == offset && offset > 0 && Character.isDigit(text.charAt(offset - 1));
		return number || words.stream().anyMatch(word -> word.isMute() && word.offset() < offset
				&& (offset < word.end() || offset == word.end() && isOpen(word)));
	}

	private static boolean isOpen(Word word) {
		if (word.kind() == Word.Kind.COMMENT) {
			return !word.text().endsWith("*/") || word.text().startsWith("//");
		}
		return word.text().length() == 1 || !word.text().endsWith("\"");
	}

	/** Returns what is typed so far. */
	String prefix() {
		return text.substring(start, offset);
	}

	/** Returns the letters that are typed so far, without the mark of a name and all small. */
	String typed() {
		return prefix().toLowerCase(Locale.ROOT).replace("^", "");
	}

	/** Returns whether what is typed so far can grow into a name, or is a part of what a technician calls it. */
	boolean matches(String name, String title) {
		String typed = typed();
		return typed.isEmpty() || begins(name.toLowerCase(Locale.ROOT), typed)
				|| begins(title.toLowerCase(Locale.ROOT), typed);
	}

	private static boolean begins(String name, String typed) {
		for (int at = name.indexOf(typed); at >= 0; at = name.indexOf(typed, at + 1)) {
			if (at == 0 || !Character.isLetterOrDigit(name.charAt(at - 1))) {
				return true;
			}
		}
		return false;
	}

	/** Returns whether only blanks stand before the word in its line. */
	boolean isFirstInLine() {
		return Words.isFirstInLine(text, start);
	}

	/** Returns the words of the element before the cursor. */
	List<Word> before() {
		return element < 0 ? List.of()
				: words.subList(element, words.size()).stream().takeWhile(word -> word.end() <= start).toList();
	}

	/** Returns the words of the element behind the cursor. */
	List<Word> after() {
		if (element < 0) {
			return List.of();
		}
		return words.subList(element, Words.endOfElement(text, words, element)).stream()
				.filter(word -> word.offset() >= offset).toList();
	}

	/** Returns the texts in quotes that follow a word anywhere in the file, most frequent first. */
	List<String> textsAfter(String keyword) {
		List<String> found = new ArrayList<>();
		for (int i = 0; i + 1 < words.size(); i++) {
			if (words.get(i).is(keyword) && words.get(i + 1).kind() == Word.Kind.STRING && !isOpen(words.get(i + 1))) {
				found.add(words.get(i + 1).text());
			}
		}
		Function<String, Long> count = text -> found.stream().filter(text::equals).count();
		return found.stream().distinct().filter(text -> text.length() > 2)
				.sorted(Comparator.comparing(count).reversed().thenComparing(text -> text)).toList();
	}
}
