package org.baywright.presenter.picture;

/** How much room text takes; a screen gives its real font, everything in the same unit as the layout. */
public interface TextMetrics {

	/** Sizes of text in the picture. */
	enum Style {
		TITLE, DETAIL, LABEL
	}

	/** Returns the width of one line. */
	double width(String text, Style style);

	/** Returns the height of one line, its distance to the next included. */
	double height(Style style);

	/** Widths that no screen has, for files and tests: every character is as wide as a wide one. */
	TextMetrics FIXED = new TextMetrics() {

		@Override
		public double width(String text, Style style) {
			return text.codePointCount(0, text.length()) * size(style) * 0.6;
		}

		@Override
		public double height(Style style) {
			return size(style) * 1.35;
		}
	};

	/** Returns the size of the letters of a style in pixels. */
	static double size(Style style) {
		return switch (style) {
		case TITLE -> 13;
		case DETAIL -> 11;
		case LABEL -> 10.5;
		};
	}
}
