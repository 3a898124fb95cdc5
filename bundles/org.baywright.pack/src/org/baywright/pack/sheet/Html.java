package org.baywright.pack.sheet;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.List;
import java.util.Deque;

import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;

/** Writes HTML that is well-formed XML too. Every text and attribute is escaped. */
public final class Html {

	private final StringBuilder out = new StringBuilder();
	private final Deque<String> open = new ArrayDeque<>();

	/** Opens an element; attributes are names and values by turns. */
	public Html open(String tag, String... attributes) {
		begin(tag, attributes);
		out.append('>');
		open.push(tag);
		return this;
	}

	/** Adds an element that holds nothing. */
	public Html empty(String tag, String... attributes) {
		begin(tag, attributes);
		out.append("/>");
		return this;
	}

	private void begin(String tag, String... attributes) {
		out.append('<').append(tag);
		for (int i = 0; i < attributes.length; i += 2) {
			out.append(' ').append(attributes[i]).append("=\"");
			escape(attributes[i + 1]);
			out.append('"');
		}
	}

	/** Closes the element opened last. */
	public Html close() {
		String tag = open.pop();
		out.append("</").append(tag).append('>');
		if (!tag.equals("a") && !tag.equals("strong") && !tag.equals("code") && !tag.equals("span")) {
			out.append('\n');
		}
		return this;
	}

	/** Adds text. */
	public Html text(String text) {
		escape(text);
		return this;
	}

	/** Adds an element that holds only text. */
	public Html element(String tag, String text, String... attributes) {
		return open(tag, attributes).text(text).close();
	}

	/** Adds a link to a place in the page. */
	public Html link(String id, String text) {
		return element("a", text, "href", "#" + id);
	}

	/** Adds a list of texts; nothing for none. */
	public Html list(Collection<String> items) {
		if (!items.isEmpty()) {
			open("ul");
			items.forEach(item -> element("li", item));
			close();
		}
		return this;
	}

	/** Adds a fixed piece of HTML. */
	public Html raw(String html) {
		out.append(html);
		return this;
	}

	/** Adds a term and its description; nothing if the description is empty. */
	public Html term(String term, String description) {
		return description.isEmpty() ? this : element("dt", term).element("dd", description);
	}

	/** Adds what is known of a piece of work to a list of terms. */
	public Html known(List<Telling.Line> lines) {
		for (Telling.Line line : lines) {
			if (line.steps()) {
				element("dt", line.label()).open("dd").open("ol");
				line.texts().forEach(step -> element("li", step));
				close().close();
			} else {
				term(line.label(), Words.commas(line.texts()));
			}
		}
		return this;
	}

	private void escape(String text) {
		for (int i = 0; i < text.length(); i++) {
			char c = text.charAt(i);
			switch (c) {
			case '&' -> out.append("&amp;");
			case '<' -> out.append("&lt;");
			case '>' -> out.append("&gt;");
			case '"' -> out.append("&quot;");
			case '\'' -> out.append("&#39;");
			default -> out.append(isShown(c) ? c : '\uFFFD');
			}
		}
	}

	/** Control characters and non-characters may stand in no page; marks that turn the direction of writing deceive. */
	private static boolean isShown(char c) {
		boolean turns = c == '\u061C' || c == '\u200E' || c == '\u200F' || c >= '\u202A' && c <= '\u202E'
				|| c >= '\u2066' && c <= '\u2069';
		return !turns && (c >= ' ' && c != '\u007F' && c < '\uFFFE' && !(c >= '\u0080' && c <= '\u009F') || c == '\n' || c == '\t');
	}

	@Override
	public String toString() {
		if (!open.isEmpty()) {
			throw new IllegalStateException("not closed: " + open);
		}
		return out.toString();
	}
}
