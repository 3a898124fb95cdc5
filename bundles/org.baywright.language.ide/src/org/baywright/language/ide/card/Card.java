package org.baywright.language.ide.card;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A form for one element.
 *
 * @param file path relative to the project
 * @param text the text that it was made of; changes are in terms of it
 * @param kind the word of the language for what it is
 * @param title what it is called; empty as long as nobody has said
 * @param offset where the element begins; -1 for one that is not written yet
 * @param length how long it is
 * @param fields what is filled in, in the usual order
 * @param unread why it cannot be filled in, if it cannot
 * @param troubles what is wrong with it as a whole
 * @param taken names that something of the project has already
 */
public record Card(String file, String text, String kind, String title, int offset, int length, List<Field> fields,
		Optional<Unread> unread, List<Line.Trouble> troubles, Set<String> taken) {

	/**
	 * What is filled in of an element.
	 *
	 * @param label what it is called
	 * @param help what it is for, in Markdown; may be empty
	 * @param one what one of its lines is called
	 * @param usual whether most have it, so that it is shown though nothing is filled in
	 * @param more whether another line can be added
	 * @param lines what is filled in; the last may be blank
	 */
	public record Field(String label, String help, String one, boolean usual, boolean more, List<Line> lines) {

		/** Returns whether nothing of it is written or begun. */
		public boolean isBlank() {
			return lines.stream().noneMatch(line -> line.isClause() || line.isDraft() || !line.troubles().isEmpty()
					|| line.bits().stream().anyMatch(bit -> !bit.written().isEmpty()));
		}
	}

	/**
	 * Why an element cannot be shown as a form.
	 *
	 * @param sentence what is wrong, with its line
	 * @param offset where it is
	 */
	public record Unread(String sentence, int offset) {
	}

	/**
	 * An element of a file, for a list to choose from.
	 *
	 * @param kind the word of the language for what it is
	 * @param title its title, or its name, or what else tells it from others
	 * @param offset where it begins
	 * @param length how long it is
	 */
	public record Item(String kind, String title, int offset, int length) {
	}

	/** Returns whether it is not written yet. */
	public boolean isNew() {
		return offset < 0;
	}

	/** Returns the first line that stands in the text and did not in an earlier card of the same element. */
	public Optional<Line> added(Card before) {
		Set<String> old = before.fields().stream().flatMap(field -> field.lines().stream()).filter(Line::isClause).map(Line::key).collect(Collectors.toSet());
		return !before.kind().equals(kind) ? Optional.empty()
				: fields.stream().flatMap(field -> field.lines().stream()).filter(line -> line.isClause() && !old.contains(line.key())).findFirst();
	}

	/** Returns a line by its key. */
	public Optional<Line> line(String key) {
		return fields.stream().flatMap(field -> field.lines().stream()).filter(line -> line.key().equals(key)).findFirst();
	}
}
