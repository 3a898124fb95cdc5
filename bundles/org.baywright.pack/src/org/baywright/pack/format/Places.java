package org.baywright.pack.format;

import org.baywright.model.Span;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;

/**
 * Where something stands in the rule files: an element as {@code file:line}, what lies in it as a line of the same
 * file. What a program made stands nowhere.
 */
public final class Places {

	private Places() {
	}

	/** Adds the place of an element. */
	public static Json at(Json json, Span span) {
		return span.file().isEmpty() ? json : json.text("at", span.file() + ":" + span.line());
	}

	/** Returns the place of an element. */
	public static Span at(JsonIn in) throws PackException {
		if (!in.has("at")) {
			return Span.NONE;
		}
		String text = in.text("at");
		int colon = text.lastIndexOf(':');
		String line = text.substring(colon + 1);
		if (colon <= 0 || !line.matches("[1-9][0-9]{0,8}")) {
			throw in.unknown("at", text);
		}
		return span(text.substring(0, colon), Integer.parseInt(line));
	}

	static Json line(Json json, Span span, String file) {
		return line(json, "line", span, file);
	}

	static Json line(Json json, String name, Span span, String file) {
		return span.file().isEmpty() || !span.file().equals(file) ? json : json.whole(name, span.line());
	}

	static Span line(JsonIn in, String file) throws PackException {
		return line(in, "line", file);
	}

	static Span line(JsonIn in, String name, String file) throws PackException {
		if (!in.has(name)) {
			return Span.NONE;
		}
		int line = in.whole(name);
		if (line < 1) {
			throw in.wrong("has line " + line + "; lines are counted from 1.");
		}
		if (file.isEmpty()) {
			throw in.wrong("has a line, but its element has no file.");
		}
		return span(file, line);
	}

	private static Span span(String file, int line) {
		return new Span(file, line, 1, line, 1, 0, 0);
	}
}
