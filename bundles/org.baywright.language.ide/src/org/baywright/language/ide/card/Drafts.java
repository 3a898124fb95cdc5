package org.baywright.language.ide.card;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** What was begun on the lines of one card and cannot be written yet, as something is still missing. */
public final class Drafts {

	/** Nothing is begun. */
	public static final Drafts NONE = new Drafts(Map.of());

	/** What was begun, and what stood in the text then: of something else now it is no draft. */
	private record Begun(String base, Piece piece) {
	}

	private final Map<String, Begun> begun;

	private Drafts(Map<String, Begun> begun) {
		this.begun = Map.copyOf(begun);
	}

	/** Returns whether nothing is begun. */
	public boolean isEmpty() {
		return begun.isEmpty();
	}

	/** Returns whether nothing is filled in of what was begun. */
	public boolean isBlank() {
		return begun.values().stream().allMatch(each -> each.piece().isBlank());
	}

	Optional<Piece> of(String key, String base) {
		return Optional.ofNullable(begun.get(key)).filter(draft -> draft.base().equals(base)).map(Begun::piece);
	}

	Drafts with(String key, String base, Piece piece) {
		Map<String, Begun> more = new HashMap<>(begun);
		more.put(key, new Begun(base, piece));
		return new Drafts(more);
	}

	Drafts without(String key) {
		Map<String, Begun> less = new HashMap<>(begun);
		less.remove(key);
		return new Drafts(less);
	}
}
