package org.baywright.language.merge;

import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/** How the lines of a file end and whether a mark of its encoding stands in front; what is merged has neither. */
final class Lines {

	private static final String MARK = "\uFEFF";

	private Lines() {
	}

	/** Returns a text without a mark, its lines ending in a line feed. */
	static String plain(String text) {
		return (text.startsWith(MARK) ? text.substring(1) : text).replace("\r\n", "\n");
	}

	/**
	 * Returns a merged text as it is to be written: as one of the sides has it, where that is the same text.
	 *
	 * @param merged the text, with plain lines
	 */
	static String written(String merged, Optional<String> base, Optional<String> ours, Optional<String> theirs) {
		boolean mark = once(base.map(Lines::isMarked), ours.map(Lines::isMarked), theirs.map(Lines::isMarked));
		boolean windows = once(base.map(Lines::isWindows), ours.map(Lines::isWindows), theirs.map(Lines::isWindows));
		// where lines end in more than one way, those of a side stay as they are
		return (ours.equals(base) ? Stream.of(theirs, ours) : Stream.of(ours, theirs)).flatMap(Optional::stream)
				.filter(side -> plain(side).equals(merged) && isMarked(side) == mark && isWindows(side) == windows).findFirst()
				.orElseGet(() -> (mark ? MARK : "") + (windows ? merged.replace("\n", "\r\n") : merged));
	}

	private static boolean isMarked(String text) {
		return text.startsWith(MARK);
	}

	private static boolean once(Optional<Boolean> base, Optional<Boolean> ours, Optional<Boolean> theirs) {
		return ours.isEmpty() || Objects.equals(base, ours) ? theirs.or(() -> ours).orElse(false) : ours.get();
	}

	/** Returns whether more lines end with a carriage return than without one. */
	private static boolean isWindows(String text) {
		long all = text.chars().filter(c -> c == '\n').count();
		return 2L * (text.length() - text.replace("\r\n", "\n").length()) > all;
	}
}
