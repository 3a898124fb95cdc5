package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.List;
import org.baywright.language.ide.card.Sheet.Part;
import org.baywright.language.ide.text.LineEnds;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.ide.text.Word;
import org.baywright.language.ide.text.Words;

/** Changes of the text of one element. */
final class Rewriting {

	private final Sheet sheet;
	private final String text;

	Rewriting(Sheet sheet) {
		this.sheet = sheet;
		text = sheet.text();
	}

	/** Gives the head another content. */
	List<TextEdit> head(Piece piece) {
		return Writing.changes(text, sheet.offset(), sheet.headEnd() - sheet.offset(), Writing.line(piece));
	}

	/** Gives a clause another content. */
	List<TextEdit> clause(Part part, Piece piece) {
		String indent = Words.indent(text, part.offset());
		boolean inLines = text.substring(part.offset(), part.end()).indexOf('\n') >= 0;
		return Writing.changes(text, part.offset(), part.length(), inLines ? Writing.lines(piece, indent) : Writing.line(piece));
	}

	// ---- add -------------------------------------------------------------------------------------------------------

	/** Adds a clause where it usually stands. */
	List<TextEdit> add(int clause, Piece piece) {
		if (sheet.open() < 0) {
			String indent = Words.indent(text, sheet.offset());
			return List.of(TextEdit.insert(sheet.headEnd(), " {" + newLine() + indent + "  " + Writing.lines(piece, indent + "  ") + newLine() + indent + "}"));
		}
		Part before = null;
		for (Part part : sheet.clauses()) {
			if (part.clause() <= clause && (part.clause() != Sheet.UNREAD || before != null)) {
				before = part;
			}
		}
		Word open = sheet.words().get(sheet.open());
		Word close = sheet.words().get(sheet.close());
		if (sheet.clauses().isEmpty() && text.substring(open.end(), close.offset()).isBlank()) {
			String indent = Words.indent(text, sheet.offset());
			return List.of(new TextEdit(open.end(), close.offset() - open.end(),
					newLine() + indent + "  " + Writing.lines(piece, indent + "  ") + newLine() + indent));
		}
		int behind = before == null ? open.end() : before.end();
		int next = next(behind);
		int endOfLine = Words.endOfLine(text, behind);
		if (next < endOfLine) {
			// other words follow in the same line, so it goes on there
			return List.of(before == null ? TextEdit.insert(next, Writing.line(piece) + "  ") : TextEdit.insert(behind, "  " + Writing.line(piece)));
		}
		String indent = indent();
		return List.of(TextEdit.insert(endOfLine, newLine() + indent + Writing.lines(piece, indent)));
	}

	/** Returns the offset of the next word of the element behind an offset. */
	private int next(int offset) {
		return sheet.words().stream().mapToInt(Word::offset).filter(at -> at >= offset).findFirst().orElse(text.length());
	}

	private String indent() {
		return sheet.clauses().stream().filter(part -> Words.isFirstInLine(text, part.offset())).map(part -> Words.indent(text, part.offset()))
				.findFirst().orElse(Words.indent(text, sheet.offset()) + "  ");
	}

	private String newLine() {
		return LineEnds.of(text);
	}

	// ---- delete and move -------------------------------------------------------------------------------------------

	/** Takes a clause away, with its line and what is said behind it. */
	List<TextEdit> delete(Part part) {
		boolean first = Words.isFirstInLine(text, part.offset());
		int next = next(part.end());
		int endOfLine = Words.endOfLine(text, part.end());
		if (first && next >= endOfLine) {
			int start = Words.startOfLine(text, part.offset());
			return List.of(new TextEdit(start, behindLine(endOfLine) - start, ""));
		}
		if (first || text.substring(sheet.words().get(sheet.open()).end(), part.offset()).isBlank()) {
			return List.of(new TextEdit(part.offset(), next - part.offset(), ""));
		}
		int from = part.offset();
		while (from > 0 && (text.charAt(from - 1) == ' ' || text.charAt(from - 1) == '\t')) {
			from--;
		}
		return List.of(new TextEdit(from, part.end() - from, ""));
	}

	private int behindLine(int endOfLine) {
		int at = endOfLine;
		if (at < text.length() && text.charAt(at) == '\r') {
			at++;
		}
		return at < text.length() && text.charAt(at) == '\n' ? at + 1 : at;
	}

	/** Lets two clauses change places. */
	List<TextEdit> swap(Part one, Part other) {
		return List.of(new TextEdit(one.offset(), one.length(), text.substring(other.offset(), other.end())),
				new TextEdit(other.offset(), other.length(), text.substring(one.offset(), one.end())));
	}

	/** Takes the element away, with the comment that stands directly on it. */
	List<TextEdit> deleteAll() {
		List<Word> all = Words.of(text);
		int start = Words.startOfLine(text, sheet.offset());
		if (!text.substring(start, sheet.offset()).isBlank()) {
			return List.of(new TextEdit(sheet.offset(), sheet.end() - sheet.offset(), ""));
		}
		List<Word> comments = new ArrayList<>(all.stream().filter(word -> word.kind() == Word.Kind.COMMENT && word.end() <= sheet.offset()).toList());
		while (!comments.isEmpty()) {
			Word last = comments.remove(comments.size() - 1);
			String gap = text.substring(last.end(), start);
			boolean onIt = gap.isBlank() && gap.chars().filter(c -> c == '\n').count() <= 1 && Words.isFirstInLine(text, last.offset());
			if (!onIt) {
				break;
			}
			start = Words.startOfLine(text, last.offset());
		}
		int endOfLine = Words.endOfLine(text, sheet.end());
		int end = sheet.end();
		int from = sheet.end();
		if (all.stream().noneMatch(word -> word.kind() != Word.Kind.COMMENT && word.offset() >= from && word.offset() < endOfLine)) {
			end = behindLine(endOfLine);
			boolean blankBefore = start == 0 || text.substring(0, start).endsWith("\n\n") || text.substring(0, start).endsWith("\r\n\r\n");
			int next = behindLine(Words.endOfLine(text, end));
			if (blankBefore && next > end && text.substring(end, next).isBlank()) {
				end = next;
			} else if (end == text.length() && blankBefore && start > 0) {
				start -= newLine().length();
			}
		}
		return List.of(new TextEdit(start, end - start, ""));
	}
}
