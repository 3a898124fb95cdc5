package org.baywright.workbench.view;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

import org.baywright.model.Span;
import org.baywright.presenter.Link;
import org.baywright.workbench.Accessible;
import org.eclipse.jface.preference.JFacePreferences;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.jface.util.IPropertyChangeListener;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.events.KeyListener;
import org.eclipse.swt.events.MouseListener;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;

/**
 * Tells something in paragraphs, some of which lead to a place: by a click, or by Enter with the cursor in them. The text
 * can be selected and copied.
 */
public final class Details {

	private static final int INDENT = 14;

	/** A stretch of the text that leads somewhere. */
	private record Way(int start, int end, Runnable follow) {
	}

	private final StyledText text;
	private final Consumer<Span> open;
	private final StringBuilder content = new StringBuilder();
	private final List<StyleRange> styles = new ArrayList<>();
	private final List<Integer> indented = new ArrayList<>();
	private final List<Way> ways = new ArrayList<>();

	/**
	 * @param name what those hear who do not see it
	 * @param open gets the places that the reader follows
	 */
	public Details(Composite parent, String name, Consumer<Span> open) {
		this.open = open;
		text = new StyledText(parent, SWT.READ_ONLY | SWT.WRAP | SWT.V_SCROLL | SWT.MULTI);
		text.setMargins(8, 6, 8, 8);
		Accessible.name(text, name);
		text.addMouseListener(MouseListener.mouseUpAdapter(event -> {
			if (event.button == 1 && text.getSelectionCount() == 0) {
				follow(text.getOffsetAtPoint(new Point(event.x, event.y)));
			}
		}));
		text.addMouseMoveListener(event -> text.setCursor(
				wayAt(text.getOffsetAtPoint(new Point(event.x, event.y))) == null ? null
						: text.getDisplay().getSystemCursor(SWT.CURSOR_HAND)));
		IPropertyChangeListener recolour = event -> colourLinks();
		JFaceResources.getColorRegistry().addListener(recolour);
		text.addDisposeListener(event -> JFaceResources.getColorRegistry().removeListener(recolour));
		text.addKeyListener(KeyListener.keyPressedAdapter(event -> {
			if (event.keyCode == SWT.CR || event.keyCode == SWT.KEYPAD_CR) {
				follow(text.getCaretOffset());
			}
		}));
	}

	public Control control() {
		return text;
	}

	private void follow(int offset) {
		Way way = wayAt(offset);
		if (way != null) {
			way.follow().run();
		}
	}

	private Way wayAt(int offset) {
		return ways.stream().filter(way -> offset >= way.start() && offset <= way.end()).findFirst().orElse(null);
	}

	/** Begins anew; nothing is seen of it before {@link #end()}. */
	public Details begin() {
		content.setLength(0);
		styles.clear();
		indented.clear();
		ways.clear();
		return this;
	}

	/** Adds a heading. */
	public Details heading(String words) {
		if (content.length() > 0) {
			content.append('\n');
		}
		StyleRange style = new StyleRange();
		style.fontStyle = SWT.BOLD;
		add(words, style);
		return this;
	}

	/** Adds a paragraph. */
	public Details line(String words) {
		if (!words.isEmpty()) {
			add(words, null);
		}
		return this;
	}

	/** Adds an indented paragraph, which leads to its place if it has one. */
	public Details link(Link link) {
		return link.leads() ? link(link.text(), () -> open.accept(link.span())) : indented(link.text(), null);
	}

	/** Adds an indented paragraph that does something. */
	public Details link(String words, Runnable follow) {
		StyleRange style = new StyleRange();
		style.underline = true;
		style.underlineStyle = SWT.UNDERLINE_LINK;
		style.foreground = linkColour();
		int start = content.length();
		indented(words, style);
		ways.add(new Way(start, start + words.length(), follow));
		return this;
	}

	private Details indented(String words, StyleRange style) {
		indented.add(content.length());
		add(words, style);
		return this;
	}

	private void add(String words, StyleRange style) {
		String line = words.replace("\n", " ");
		if (style != null) {
			style.start = content.length();
			style.length = line.length();
			styles.add(style);
		}
		content.append(line).append('\n');
	}

	/** Shows what was added. */
	public void end() {
		text.setText(content.toString().stripTrailing());
		styles.forEach(style -> {
			if (style.start + style.length <= text.getCharCount()) {
				text.setStyleRange(style);
			}
		});
		for (int start : indented) {
			if (start <= text.getCharCount()) {
				int line = text.getLineAtOffset(start);
				text.setLineIndent(line, 1, INDENT);
				text.setLineWrapIndent(line, 1, INDENT);
			}
		}
	}

	private static Color linkColour() {
		return JFaceResources.getColorRegistry().get(JFacePreferences.HYPERLINK_COLOR);
	}

	/** The platform's theme may change while the text stands. */
	private void colourLinks() {
		styles.stream().filter(style -> style.foreground != null).forEach(style -> {
			style.foreground = linkColour();
			if (style.start + style.length <= text.getCharCount()) {
				text.setStyleRange(style);
			}
		});
	}

	/** Returns everything that is told. */
	public String content() {
		return text.getText();
	}
}
