package org.baywright.presenter.bench;

import java.util.Optional;
import java.util.function.Consumer;

import org.baywright.analysis.Variable;
import org.baywright.model.Span;
import org.baywright.presenter.Link;

/**
 * One paragraph of what the bench tells.
 *
 * @param kind how it stands
 * @param text what it says; never empty
 * @param way what a reader who follows it comes to, where the bench is shown on a screen
 */
public record Paragraph(Kind kind, String text, Optional<Consumer<Ways>> way) {

	/** How a paragraph stands. */
	public enum Kind {
		/** Above what belongs to it. */
		HEADING,
		/** By itself. */
		LINE,
		/** One of several under a heading. */
		ITEM,
		/** What belongs to an item. */
		DETAIL
	}

	/** Where paragraphs lead. */
	public interface Ways {

		/** Opens a place in a rule file, or a picture. */
		void open(Span span);

		/** Asks for something else to be entered. */
		void enter(Variable variable);

		/** Asks for what is read in a verification. */
		void ask(Ask ask);

		/** Goes on with another bench. */
		void set(Bench bench);
	}

	static Paragraph heading(String text) {
		return new Paragraph(Kind.HEADING, text, Optional.empty());
	}

	static Paragraph line(String text) {
		return new Paragraph(Kind.LINE, text, Optional.empty());
	}

	static Paragraph item(String text) {
		return new Paragraph(Kind.ITEM, text, Optional.empty());
	}

	static Paragraph item(String text, Consumer<Ways> way) {
		return new Paragraph(Kind.ITEM, text, Optional.of(way));
	}

	static Paragraph item(Link link) {
		return of(Kind.ITEM, link);
	}

	static Paragraph detail(Link link) {
		return of(Kind.DETAIL, link);
	}

	private static Paragraph of(Kind kind, Link link) {
		return new Paragraph(kind, link.text(), Optional.of(link).filter(Link::leads).map(leading -> ways -> ways.open(leading.span())));
	}
}
