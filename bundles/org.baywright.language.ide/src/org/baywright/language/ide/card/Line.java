package org.baywright.language.ide.card;

import java.util.List;
import java.util.Optional;
import org.baywright.model.Severity;

/** One line of a field: what is filled in once. */
public final class Line {

	/**
	 * What is wrong with a line.
	 *
	 * @param severity how bad it is
	 * @param sentence what is wrong and what to do
	 * @param id id of the flaw, or of the kind of problem
	 * @param offset where it is in the text
	 * @param length how long that is
	 */
	public record Trouble(Severity severity, String sentence, String id, int offset, int length) {
	}

	private final String key;
	private final int clause;
	private final Optional<Piece> piece;
	private final Optional<Sheet.Part> part;
	private final List<Bit> bits;
	private final List<Trouble> troubles;
	private final boolean draft;

	Line(String key, int clause, Optional<Piece> piece, Optional<Sheet.Part> part, List<Bit> bits, List<Trouble> troubles, boolean draft) {
		this.key = key;
		this.clause = clause;
		this.piece = piece;
		this.part = part;
		this.bits = List.copyOf(bits);
		this.troubles = List.copyOf(troubles);
		this.draft = draft;
	}

	/** Returns what tells it from all other lines of the card. */
	public String key() {
		return key;
	}

	/** Returns what is to be seen of it, in order. */
	public List<Bit> bits() {
		return bits;
	}

	/** Returns what is wrong with it. */
	public List<Trouble> troubles() {
		return troubles;
	}

	/** Returns whether something was begun that cannot be written yet, as something is still missing. */
	public boolean isDraft() {
		return draft;
	}

	/** Returns whether it stands in the text as a clause of its own, so that it can be taken away. */
	public boolean isClause() {
		return part.isPresent();
	}

	/** Returns whether it stands in the text, as a clause or in the head of its element. */
	public boolean isInText() {
		return part.isPresent() || key.startsWith(Cards.HEAD) && !key.startsWith(Cards.NEW);
	}

	/** Returns the key that a line of an element which is not written yet has once it is. */
	public static String written(String key) {
		return key.startsWith(Cards.NEW) ? Cards.HEAD + key.substring(Cards.NEW.length()) : key;
	}

	int clause() {
		return clause;
	}

	Optional<Piece> piece() {
		return piece;
	}

	Optional<Sheet.Part> part() {
		return part;
	}
}
