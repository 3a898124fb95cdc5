package org.baywright.cli.bench;

import java.util.List;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.presenter.bench.Paragraph;

/**
 * Prints what the bench tells.
 *
 * @param out where to
 * @param style how it is marked
 */
public record Printer(Output out, Style style) {

	void heading(String text) {
		out.println(style.strong(Style.safe(text)));
	}

	void line(String text) {
		if (!text.isEmpty()) {
			out.println(Style.safe(text));
		}
	}

	void item(String text) {
		out.println("  " + Style.safe(text));
	}

	/** Numbers what can be chosen, from 1. */
	void choices(List<String> texts) {
		for (int i = 0; i < texts.size(); i++) {
			item((i + 1) + " " + texts.get(i));
		}
	}

	/** Letters what can be taken instead, from a. */
	void letters(List<String> texts) {
		for (int i = 0; i < texts.size(); i++) {
			item(letter(i) + " " + texts.get(i));
		}
	}

	/** Returns the letter before the text at a place. */
	static String letter(int place) {
		return String.valueOf((char) ('a' + place));
	}

	void blank() {
		out.println();
	}

	void tell(List<Paragraph> paragraphs) {
		for (Paragraph paragraph : paragraphs) {
			switch (paragraph.kind()) {
			case HEADING -> heading(paragraph.text());
			case LINE -> line(paragraph.text());
			case ITEM -> item(paragraph.text());
			case DETAIL -> item("  " + paragraph.text());
			}
		}
	}

	/** Tells something that has its own place before what comes next. */
	void block(List<Paragraph> paragraphs) {
		if (!paragraphs.isEmpty()) {
			blank();
			tell(paragraphs);
		}
	}
}
