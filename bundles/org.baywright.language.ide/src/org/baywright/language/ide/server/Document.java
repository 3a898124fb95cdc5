package org.baywright.language.ide.server;

import java.util.List;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;

/**
 * A text that a client has open.
 *
 * @param uri as the client writes it
 * @param version the client's number of it
 * @param text all of it
 */
record Document(String uri, int version, String text) {

	/** Returns the text after a client's changes, which are made one after another. */
	Document changed(int newVersion, List<TextDocumentContentChangeEvent> changes) {
		String now = text;
		for (TextDocumentContentChangeEvent change : changes) {
			Range range = change.getRange();
			if (range == null) {
				now = change.getText();
			} else {
				int from = Positions.offset(now, range.getStart());
				int to = Math.max(from, Positions.offset(now, range.getEnd()));
				now = now.substring(0, from) + change.getText() + now.substring(to);
			}
		}
		return new Document(uri, newVersion, now);
	}
}
