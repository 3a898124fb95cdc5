package org.baywright.language.ide.fold;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;
import org.baywright.language.vocabulary.Vocabulary;

/**
 * Finds what can be folded: elements with braces over several lines, comments over several lines, and runs of elements
 * of one kind that have a line each.
 */
public final class Folding {

	private static final int SHORTEST_RUN = 3;

	private final String text;
	private final List<Fold> folds = new ArrayList<>();

	private Folding(String text) {
		this.text = text;
	}

	/** Returns what can be folded in a text, sorted. */
	public static List<Fold> of(String text) {
		Folding folding = new Folding(text);
		List<Word> words = Words.of(text);
		folding.braces(words);
		folding.comments(words);
		folding.runs(words);
		folding.folds.sort(Comparator.comparingInt(Fold::offset).thenComparingInt(Fold::length));
		return folding.folds;
	}

	private void braces(List<Word> words) {
		List<Integer> open = new ArrayList<>();
		for (int i = 0; i < words.size(); i++) {
			Word word = words.get(i);
			if (Words.beginsElement(text, words, i, open.size())) {
				open.clear();
			}
			if (word.is("{")) {
				open.add(word.offset());
			} else if (word.is("}") && !open.isEmpty()) {
				add(Words.startOfLine(text, open.remove(open.size() - 1)), word.end(), false);
			}
		}
	}

	private void comments(List<Word> words) {
		int start = -1;
		int end = -1;
		for (Word word : words) {
			boolean line = word.kind() == Word.Kind.COMMENT && word.text().startsWith("//")
					&& Words.isFirstInLine(text, word.offset());
			boolean goesOn = line && start >= 0 && text.substring(end, word.offset()).chars().filter(c -> c == '\n').count() == 1;
			if (!goesOn && start >= 0) {
				add(start, end, true);
				start = -1;
			}
			if (line) {
				start = start < 0 ? word.offset() : start;
				end = word.end();
			} else if (word.kind() == Word.Kind.COMMENT) {
				add(word.offset(), word.end(), true);
			}
		}
		if (start >= 0) {
			add(start, end, true);
		}
	}

	private void runs(List<Word> words) {
		String kind = "";
		int start = 0;
		int end = 0;
		int count = 0;
		for (int i = 0; i < words.size(); i++) {
			if (words.get(i).kind() == Word.Kind.COMMENT || !Words.beginsElement(text, words, i, 0)) {
				continue;
			}
			Word first = words.get(i);
			int lineEnd = words.get(Words.endOfElement(text, words, i) - 1).end();
			boolean oneLine = Vocabulary.beginsLine(first.text()) && text.substring(first.offset(), lineEnd).indexOf('\n') < 0;
			boolean near = count > 0 && text.substring(end, first.offset()).chars().filter(c -> c == '\n').count() == 1;
			if (!oneLine || !near || !first.text().equals(kind)) {
				addRun(count, start, end);
				count = 0;
				start = first.offset();
			}
			if (oneLine) {
				count++;
				kind = first.text();
				end = lineEnd;
			}
		}
		addRun(count, start, end);
	}

	private void addRun(int count, int start, int end) {
		if (count >= SHORTEST_RUN) {
			add(start, end, false);
		}
	}

	private void add(int from, int to, boolean comment) {
		if (text.substring(from, to).indexOf('\n') >= 0) {
			folds.add(new Fold(from, to - from, comment));
		}
	}
}
