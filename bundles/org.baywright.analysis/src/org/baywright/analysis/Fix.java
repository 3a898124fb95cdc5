package org.baywright.analysis;

import org.baywright.model.Span;

/** A change to the text that would answer a flaw. */
public sealed interface Fix {

	/** Returns what it does, as a menu entry. */
	String title();

	/** Remove a whole rule. */
	record RemoveRule(String title, String rule) implements Fix {
	}

	/** Add a line inside of an element, before its closing brace. */
	record AddLine(String title, String kind, String name, String line) implements Fix {
	}

	/** Add a new element at the end of the file that holds the flaw. */
	record AddElement(String title, String text) implements Fix {
		/** Stands in an element of which it is open who signs it, and when. */
		public static final String UNSIGNED = "by \"\" on 0000-00-00";

		public AddElement {
			text = text.stripTrailing();
		}
	}

	/** Take one conclusion back: the result proves less. A result that proves nothing else says so. */
	record Withdraw(String title, String rule, String fault, Span at) implements Fix {
	}

	/**
	 * Write something else within an element.
	 *
	 * @param within where the element stands
	 * @param old what is written there once
	 * @param now what to write instead
	 */
	record ReplaceText(String title, Span within, String old, String now) implements Fix {
	}

	/** Take out what stands at a place, with the rest of its lines if nothing else stands there. */
	record RemoveText(String title, Span span) implements Fix {
	}

	/** Write something else in place of what stands at a place. */
	record RewriteText(String title, Span span, String now) implements Fix {
	}
}
