package org.baywright.language.ide.server;

import java.util.List;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.text.SourceText;
import org.baywright.model.Span;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;

/** Between offsets and the protocol's lines and characters, both counted in UTF-16 units. */
final class Positions {

	private Positions() {
	}

	static Range range(Span span) {
		return new Range(new Position(span.line() - 1, span.column() - 1), new Position(span.endLine() - 1, span.endColumn() - 1));
	}

	static Range range(SourceText text, int offset, int length) {
		return range(text.span(offset, length));
	}

	static List<org.eclipse.lsp4j.TextEdit> edits(SourceText text, List<TextEdit> edits) {
		return edits.stream().map(edit -> new org.eclipse.lsp4j.TextEdit(range(text, edit.offset(), edit.length()), edit.text()))
				.toList();
	}

	/** Returns the offset of a position; one behind the end of its line counts as that end. */
	static int offset(String text, Position position) {
		int line = 0;
		int at = 0;
		while (line < position.getLine() && at < text.length()) {
			char c = text.charAt(at++);
			if (c == '\n' || c == '\r' && (at == text.length() || text.charAt(at) != '\n')) {
				line++;
			}
		}
		if (line < position.getLine()) {
			return text.length();
		}
		int end = at;
		while (end < text.length() && end - at < position.getCharacter() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
			end++;
		}
		return end;
	}
}
