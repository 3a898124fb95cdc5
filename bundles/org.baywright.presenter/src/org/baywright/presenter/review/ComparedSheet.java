package org.baywright.presenter.review;

import org.baywright.pack.sheet.Html;
import org.baywright.presenter.PrintPage;

/** The review sheet: a page to print, and to hang on a change that is offered. */
final class ComparedSheet {

	private ComparedSheet() {
	}

	static String of(Compared compared, String title) {
		Html html = PrintPage.begin(title);
		html.element("h1", title).open("p").element("strong", compared.headline()).close().element("p", compared.note());
		for (Compared.Section section : compared.sections()) {
			html.element("h2", section.title()).open("ul");
			for (Compared.Entry entry : section.entries()) {
				html.open("li").text(entry.text());
				if (!entry.details().isEmpty()) {
					html.list(entry.details());
				}
				html.close();
			}
			html.close();
		}
		html.open("p", "class", "signature");
		for (String blank : new String[] { "Date", "Reviewer", "Agrees / asks for a change" }) {
			html.text(blank + " ").element("span", "", "class", "blank").text(" ");
		}
		return html.close().close().close().toString();
	}
}
