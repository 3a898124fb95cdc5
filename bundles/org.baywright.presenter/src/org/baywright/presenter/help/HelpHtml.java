package org.baywright.presenter.help;

import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/** Pages of help for a browser. */
public final class HelpHtml {

	private HelpHtml() {
	}

	/** Returns a page as HTML 5. */
	public static String of(HelpPage page) {
		HtmlRenderer renderer = HtmlRenderer.builder().escapeHtml(true).build();
		String title = page.title().replace("&", "&amp;").replace("<", "&lt;");
		return "<!DOCTYPE html>\n<html lang=\"en\">\n<head><meta charset=\"UTF-8\"><title>" + title + "</title></head>\n<body>\n"
				+ renderer.render(Parser.builder().build().parse(page.markdown())) + "</body>\n</html>\n";
	}
}
