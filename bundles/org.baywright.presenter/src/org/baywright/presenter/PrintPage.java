package org.baywright.presenter;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

import org.baywright.pack.sheet.Html;

/** A page to print: one HTML file in UTF-8 that needs nothing else, for A4 and Letter. */
public final class PrintPage {

	private PrintPage() {
	}

	/** Begins a page; its body is left open. */
	public static Html begin(String title) {
		return new Html().raw("<!DOCTYPE html>\n").open("html", "lang", "en").open("head").raw("<meta charset=\"utf-8\"/>\n")
				.raw("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n")
				.element("title", title).open("style").raw(style()).close().close().open("body");
	}

	/** Adds whose word comes before that of the page. */
	public static void notice(Html html, String page, String project) {
		html.open("p", "class", "notice").text("This " + page + " follows the rules of the project " + project + ". Local codes, the law where you work, the maker’s instructions"
				+ " and licensed practice come first; where they differ from this " + page + ", they hold.").close();
	}

	private static String style() {
		try (InputStream in = PrintPage.class.getResourceAsStream("print.css")) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		} catch (IOException e) {
			throw new UncheckedIOException("a part of the program cannot be read", e);
		}
	}
}
