package org.baywright.language.ide.typing;

import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;

/** Closes braces, brackets and quotes, and indents lines, while somebody types. */
public final class AutoEdit {

	private static final String INDENT = "  ";

	private AutoEdit() {
	}

	/**
	 * Returns what to do in place of inserting what was typed; nothing if it shall just be inserted.
	 *
	 * @param text the file before
	 * @param offset where it is typed
	 * @param typed what is typed: one character, or a line end
	 */
	public static Optional<Typed> at(String text, int offset, String typed) {
		char next = offset < text.length() ? text.charAt(offset) : '\n';
		switch (typed) {
		case "\n", "\r\n", "\r":
			return newLine(text, offset, typed);
		case "\"":
			if (isMute(text, offset)) {
				return next == '"' ? over(offset, typed) : Optional.empty();
			}
			return isWordBefore(text, offset) || !isFree(next) ? Optional.empty() : pair(offset, "\"\"");
		case "{":
			return isMute(text, offset) || !isFree(next) || openBraces(text) < 0 ? Optional.empty() : pair(offset, "{}");
		case "(":
			return isMute(text, offset) || !isFree(next) ? Optional.empty() : pair(offset, "()");
		case ")":
			return next == ')' && !isMute(text, offset) ? over(offset, typed) : Optional.empty();
		case "}":
			return isMute(text, offset) ? Optional.empty() : closing(text, offset);
		default:
			return Optional.empty();
		}
	}

	private static boolean isFree(char next) {
		return Character.isWhitespace(next) || next == '}' || next == ')' || next == ',';
	}

	private static boolean isWordBefore(String text, int offset) {
		return offset > 0 && Character.isLetterOrDigit(text.charAt(offset - 1));
	}

	private static boolean isMute(String text, int offset) {
		return around(text, offset).isPresent();
	}

	/** Returns the comment or the text in quotes that an offset lies in. */
	private static Optional<Word> around(String text, int offset) {
		List<Word> words = Words.of(text);
		for (Word word : words) {
			boolean lineComment = word.kind() == Word.Kind.COMMENT && word.text().startsWith("//");
			boolean openText = word.kind() == Word.Kind.STRING && (word.text().length() == 1 || !word.text().endsWith("\""));
			boolean reaches = offset < word.end() || offset == word.end() && (lineComment || openText);
			if (word.isMute() && word.offset() < offset && reaches) {
				return Optional.of(word);
			}
		}
		return Optional.empty();
	}

	private static Optional<Typed> pair(int offset, String both) {
		return Optional.of(new Typed(TextEdit.insert(offset, both), offset + 1));
	}

	private static Optional<Typed> over(int offset, String typed) {
		return Optional.of(new Typed(new TextEdit(offset, 1, typed), offset + 1));
	}

	/**
	 * Where the brace that was written by itself follows and none is missing, it is the one that is meant; the cursor goes
	 * behind it, and the empty lines before it go.
	 */
	private static Optional<Typed> closing(String text, int offset) {
		int brace = offset;
		while (brace < text.length() && Character.isWhitespace(text.charAt(brace))) {
			brace++;
		}
		if (brace == text.length() || text.charAt(brace) != '}' || openBraces(text) > 0) {
			return outdent(text, offset);
		}
		int line = Words.startOfLine(text, brace);
		if (line <= offset) {
			return over(brace, "}");
		}
		int opened = innermostOpen(text, offset);
		if (opened >= 0 && !Words.indent(text, opened).equals(Words.indent(text, brace))) {
			// the one below closes what is around this
			return outdent(text, offset);
		}
		int from = Words.isFirstInLine(text, offset) ? Words.startOfLine(text, offset) : Words.startOfLine(text, Words.endOfLine(text, offset) + 1);
		from = Math.min(from, line);
		String kept = text.substring(line, brace + 1);
		return Optional.of(new Typed(new TextEdit(from, brace + 1 - from, kept), from + kept.length()));
	}

	/** Returns how many braces are open at the end of a text; less than nothing if more are closed than opened. */
	private static int openBraces(String text) {
		return Words.of(text).stream().mapToInt(word -> word.is("{") ? 1 : word.is("}") ? -1 : 0).sum();
	}

	/** Returns where the brace stands that is open at an offset; -1 if none is. */
	private static int innermostOpen(String text, int offset) {
		ArrayDeque<Integer> open = new ArrayDeque<>();
		for (Word word : Words.of(text)) {
			if (word.offset() >= offset) {
				break;
			}
			if (word.is("{")) {
				open.push(word.offset());
			} else if (word.is("}") && !open.isEmpty()) {
				open.pop();
			}
		}
		return open.isEmpty() ? -1 : open.peek();
	}

	/** A brace on a line of its own stands below the line that opened it. */
	private static Optional<Typed> outdent(String text, int offset) {
		int start = Words.startOfLine(text, offset);
		String indent = text.substring(start, offset);
		if (!indent.isBlank() || indent.length() < INDENT.length()) {
			return Optional.empty();
		}
		String less = indent.substring(0, indent.length() - INDENT.length());
		return Optional.of(new Typed(new TextEdit(start, offset - start, less + "}"), start + less.length() + 1));
	}

	private static Optional<Typed> newLine(String text, int offset, String lineEnd) {
		Optional<Word> around = around(text, offset);
		int start = Words.startOfLine(text, offset);
		String indent = Words.indent(text, Math.min(offset, text.length()));
		indent = indent.length() > offset - start ? indent.substring(0, offset - start) : indent;
		if (around.isPresent()) {
			return around.get().kind() == Word.Kind.COMMENT ? inComment(text, offset, lineEnd, around.get(), indent)
					: insert(offset, lineEnd + indent, "");
		}
		String before = text.substring(start, offset).stripTrailing();
		if (before.endsWith("{")) {
			boolean closes = offset < text.length() && text.charAt(offset) == '}';
			return insert(offset, lineEnd + indent + INDENT, closes ? lineEnd + indent : "");
		}
		if (before.endsWith(",") && before.strip().indexOf(' ') > 0) {
			// what continues a list stands below its first item
			int first = before.length() - before.stripLeading().length() + before.strip().indexOf(' ') + 1;
			return insert(offset, lineEnd + " ".repeat(first), "");
		}
		if (indent.isEmpty()) {
			return Optional.empty();
		}
		return insert(offset, lineEnd + continued(text, start, indent), "");
	}

	/** After the last line of a continued list the indent is that of the line that began it. */
	private static String continued(String text, int start, String indent) {
		int line = start;
		String found = indent;
		while (line > 0) {
			int previous = Words.startOfLine(text, Math.max(0, line - 1));
			String above = text.substring(previous, Words.endOfLine(text, previous)).stripTrailing();
			if (!above.endsWith(",")) {
				return found;
			}
			found = Words.indent(text, previous);
			line = previous;
		}
		return found;
	}

	private static Optional<Typed> inComment(String text, int offset, String lineEnd, Word comment, String indent) {
		if (comment.text().startsWith("//")) {
			boolean middle = !text.substring(offset, comment.end()).isBlank();
			return insert(offset, lineEnd + indent + (middle ? "// " : ""), "");
		}
		boolean first = Words.startOfLine(text, offset) <= comment.offset();
		return insert(offset, lineEnd + indent + (first ? "   " : ""), "");
	}

	private static Optional<Typed> insert(int offset, String before, String after) {
		return Optional.of(new Typed(TextEdit.insert(offset, before + after), offset + before.length()));
	}
}
