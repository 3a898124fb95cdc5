package org.baywright.language.ide.server;

import java.util.Optional;
import org.baywright.language.text.SourceText;
import org.baywright.model.Span;

/** Where a place of an older text stands in a newer one. */
final class Moved {

	private final String old;
	private final SourceText now;
	private final int head;
	private final int tail;

	Moved(String old, SourceText now) {
		this.old = old;
		this.now = now;
		String text = now.text();
		int shortest = Math.min(old.length(), text.length());
		int same = 0;
		while (same < shortest && old.charAt(same) == text.charAt(same)) {
			same++;
		}
		head = same;
		same = 0;
		while (same < shortest - head && old.charAt(old.length() - 1 - same) == text.charAt(text.length() - 1 - same)) {
			same++;
		}
		tail = same;
	}

	/** Returns the place, or nothing if what stood there has changed. */
	Optional<Span> place(Span span) {
		if (span.offset() + span.length() <= head) {
			return Optional.of(now.span(span.offset(), span.length()));
		}
		if (span.offset() >= old.length() - tail) {
			return Optional.of(now.span(span.offset() + now.text().length() - old.length(), span.length()));
		}
		return Optional.empty();
	}
}
