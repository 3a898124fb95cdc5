package drive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.stream.Stream;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CCombo;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Slider;
import org.eclipse.swt.widgets.Spinner;
import org.eclipse.swt.widgets.TabItem;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeColumn;
import org.eclipse.swt.widgets.Widget;

/**
 * Notes each control that is seen, and each that takes a stroke or a click of the real keys and mouse. What was seen and
 * never used is a control without a drive.
 */
final class Controls {

	private static final List<String> VIEWS = List.of("Flaws", "Picture", "Plan", "Test grid", "Finished jobs", "Bench", "Help", "Outline", "Ten-minute walk",
			"Project Explorer", "Progress", "Search", "Shared Area", "Rules");
	/** What is seen and need not be used, each with the reason. */
	private static final Map<String, String> EXCEPT = Map.ofEntries(
			Map.entry("Progress > tool Cancel Operation", "there for a moment, while the platform works"),
			Map.entry("Progress > link", "there for a moment, while the platform works"),
			Map.entry("Window > tool Cancel Current Operation", "there for a moment, while the platform works"),
			Map.entry("Window > tool Operation 'Refreshing workspace' finished with errors; press button for details",
					"there when the platform looked into a project that the drive was just taking away"),
			Map.entry("Window > tool Shows background operations in Progress view", "there for a moment, while the platform works"),
			Map.entry("Select a wizard > button Finish", "the wizards that are chosen there end with it and are driven by themselves"),
			Map.entry("Select a wizard > button < Back", "the first page"),
			Map.entry("Rule > button Next >", "the only page, when it was chosen among all wizards"),
			Map.entry("Rule project > button Next >", "the only page, when it was chosen among all wizards"),
			Map.entry("Rule pack > tool Cancel Operation", "there for a moment, while the pack is written"),
			Map.entry("Example rules > tool Cancel Operation", "there for a moment, while the example is written"),
			Map.entry("Editor > tool Show List", "the platform's, there only while more editors are open than there is room for"),
			Map.entry("Window > tab Card", "the cases of cards go there; what comes next here needs the text in front"),
			Map.entry("Save As > tool Back", "live only in folders within folders"));

	private final Set<String> seen = new ConcurrentSkipListSet<>();
	private final Set<String> used = new ConcurrentSkipListSet<>();
	private final Path file;

	/** @param folder holds what was seen and used in this start of the product and in those before it */
	Controls(Display display, Path folder, String part) {
		file = folder.resolve("controls." + part);
		display.syncExec(() -> {
			for (int type : new int[] { SWT.Selection, SWT.MouseDown, SWT.KeyDown }) {
				display.addFilter(type, this::use);
			}
		});
	}

	private void use(Event event) {
		if (event.type == SWT.MouseDown && event.widget instanceof CTabFolder folder) {
			// a tab that is in front already tells nothing of a click
			add(used, folder.getItem(new Point(event.x, event.y)));
		}
		if (event.type == SWT.MouseDown && event.widget instanceof ToolBar bar && bar.getItem(new Point(event.x, event.y)) != null
				&& bar.getItem(new Point(event.x, event.y)).isEnabled()) {
			// some buttons open their menu while they are still pressed
			add(used, bar.getItem(new Point(event.x, event.y)));
		}
		if (event.type == SWT.MouseDown && event.widget instanceof StyledText text && event.button == 1) {
			String link = linkAt(text, new Point(event.x, event.y));
			if (link != null) {
				used.add(link);
			}
		}
		boolean takesClicks = event.type == SWT.Selection || event.type == SWT.KeyDown && !(event.widget instanceof Button)
				|| event.type == SWT.MouseDown && !(event.widget instanceof Button || event.widget instanceof Combo);
		if (takesClicks) {
			add(used, event.widget);
			if (event.widget instanceof Control control && control.getParent() instanceof CCombo combo) {
				add(used, combo);
			}
		}
	}

	private static void add(Set<String> set, Widget widget) {
		String name = name(widget);
		if (name != null) {
			set.add(name);
		}
	}

	/** Notes what is seen; to be called on the screen's thread. */
	void look(Collection<Widget> widgets) {
		for (Widget widget : widgets) {
			add(seen, widget);
			if (widget instanceof StyledText text) {
				seen.addAll(links(text));
			}
		}
	}

	/** Notes what was used without a word of the toolkit: a list of one entry opens and nothing else. */
	void use(Control list) {
		list.getDisplay().syncExec(() -> add(used, list));
	}

	boolean isUsed(String name) {
		return used.contains(name);
	}

	void save() {
		try {
			Files.write(file, Stream.concat(seen.stream().map("seen "::concat), used.stream().map("used "::concat)).toList());
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns what was seen in some start of the product and used in none. */
	List<String> unused() throws IOException {
		save();
		TreeSet<String> open = new TreeSet<>();
		TreeSet<String> done = new TreeSet<>();
		try (Stream<Path> parts = Files.list(file.getParent())) {
			for (Path part : parts.filter(path -> path.getFileName().toString().startsWith("controls.")).toList()) {
				for (String line : Files.readAllLines(part)) {
					(line.startsWith("seen ") ? open : done).add(line.substring(5));
				}
			}
		}
		open.removeAll(done);
		open.removeAll(EXCEPT.keySet());
		// there for a moment, while rules are read or checked
		open.removeIf(name -> name.endsWith(" > button Stop"));
		// words lead nowhere by themselves; those that do are told as links
		open.removeIf(name -> name.contains(" > words "));
		return new ArrayList<>(open);
	}

	/** Fails on any control that is named. */
	static void none(List<String> names) {
		if (!names.isEmpty()) {
			throw new AssertionError(names.size() + ": " + String.join("; ", names));
		}
	}

	// ---- names -----------------------------------------------------------------------------------------------------

	/** Returns where a control is, what it is and what it says, or null if nothing can be done with it; on the screen's thread. */
	static String name(Widget widget) {
		if (widget == null || widget.isDisposed()) {
			return null;
		}
		String what = kind(widget);
		Control control = control(widget);
		if (what == null || control == null || control.isDisposed()) {
			return null;
		}
		String says = widget instanceof Text || widget instanceof Combo || widget instanceof CCombo || widget instanceof Spinner
				|| widget instanceof StyledText || widget instanceof Tree || widget instanceof Table || widget instanceof Canvas
				|| widget instanceof org.eclipse.swt.widgets.List ? before(control) : Hands.label(widget);
		if (widget instanceof Link && says.isEmpty()) {
			return null; // nobody sees it
		}
		if (widget instanceof ToolItem && VIEWS.contains(constant(says)) && control.getShell().getMenuBar() != null) {
			return "Window > tool of a view that was put away";
		}
		// tabs and the buttons beside them are the window's, whatever is in front
		boolean frame = widget instanceof CTabItem || widget instanceof ToolItem && says.matches("Minimize|Maximize|Restore");
		String place = frame && control.getShell().getMenuBar() != null ? "Window" : place(control);
		return place + " > " + what + " " + constant(says);
	}

	/** What changes from project to project and from moment to moment is not part of a name. */
	private static String constant(String says) {
		return Hands.plain(says).lines().findFirst().orElse("").replaceAll("\\d+([.,]\\d+)*", "#").replaceAll("[\"\u201c][^\"\u201d]*[\"\u201d]", "\u2026")
				.replaceAll("[\\w-]+\\.bay(pack)?\\*?", "a file")
				.replaceAll("^(Back|Forward) to .*", "$1").replaceAll(" +\\([^)]*\\)$", "").strip();
	}

	private static String kind(Widget widget) {
		int style = widget.getStyle();
		if (widget instanceof Button) {
			return (style & SWT.CHECK) != 0 ? "check" : (style & SWT.RADIO) != 0 ? "choice" : "button";
		}
		if (widget instanceof ToolItem) {
			return (style & SWT.SEPARATOR) != 0 ? null : "tool";
		}
		if (widget instanceof Link || widget.getClass().getSimpleName().endsWith("Hyperlink")) {
			return "link";
		}
		if (widget instanceof Combo || widget instanceof CCombo) {
			return "list";
		}
		if (widget instanceof Text || widget instanceof StyledText) {
			return (style & SWT.READ_ONLY) != 0 || widget instanceof StyledText text && !text.getEditable() ? "words" : "field";
		}
		if (widget instanceof Spinner || widget instanceof Scale || widget instanceof Slider) {
			return "number";
		}
		if (widget instanceof CTabItem || widget instanceof TabItem) {
			return "tab";
		}
		if (widget instanceof Tree || widget instanceof Table || widget instanceof org.eclipse.swt.widgets.List) {
			return "entries";
		}
		if (widget instanceof TreeColumn || widget instanceof TableColumn) {
			return widget.isListening(SWT.Selection) ? "head" : null;
		}
		return widget instanceof Canvas && widget.getClass().getName().startsWith("org.baywright") ? "drawing" : null;
	}

	static Control control(Widget widget) {
		return widget instanceof Control control ? control : widget instanceof ToolItem tool ? tool.getParent()
				: widget instanceof CTabItem tab ? tab.getParent() : widget instanceof TabItem tab ? tab.getParent()
				: widget instanceof TreeColumn column ? column.getParent() : widget instanceof TableColumn column ? column.getParent() : null;
	}

	/** Returns the view, the editor or the window that a control belongs to; on the screen's thread. */
	static String place(Control control) {
		Shell shell = control.getShell();
		if (shell.getMenuBar() == null) {
			// the window around a list or a hint that has no title of its own
			String title = shell.getText().isEmpty() && shell.getParent() instanceof Shell owner && !owner.getText().isEmpty() && owner.getMenuBar() == null
					? owner.getText() : shell.getText();
			return title.isEmpty() ? "Beside the window" : title.replaceAll(" (for|of) .*", "");
		}
		for (Control at = control; at != null; at = at.getParent()) {
			if (at instanceof CTabFolder folder && folder.getSelection() != null) {
				String title = folder.getSelection().getText();
				return title.contains(".bay") ? "Editor" : title;
			}
		}
		return "Window";
	}

	/** The words in front of a field, or the hint in it. */
	private static String before(Control field) {
		if (field instanceof Text text && (text.getStyle() & SWT.SEARCH) != 0 && !text.getMessage().isEmpty()) {
			return text.getMessage();
		}
		String words = "";
		for (Control each : field.getParent().getChildren()) {
			if (each == field) {
				boolean inner = words.isEmpty() && field.getParent().getLayout() instanceof StackLayout;
				return !words.isEmpty() ? words : inner ? before(field.getParent()) : field instanceof Text text ? text.getMessage() : "";
			}
			words = each instanceof Label label && !label.getText().isEmpty() ? label.getText() : words;
		}
		return words;
	}

	// ---- words that lead somewhere ---------------------------------------------------------------------------------

	/** Returns the places of the words in a text that lead somewhere, each with its name; on the screen's thread. */
	static List<StyleRange> linkRanges(StyledText text) {
		return text.getEditable() ? List.of() : Arrays.stream(text.getStyleRanges())
				.filter(range -> range.underline && range.underlineStyle == SWT.UNDERLINE_LINK && range.length > 0).toList();
	}

	private static List<String> links(StyledText text) {
		return linkRanges(text).stream().map(range -> linkName(text, range)).toList();
	}

	/** Such words are told by the heading they stand under, as they change with what is told. */
	static String linkName(StyledText text, StyleRange link) {
		// the first heading is what is told itself
		String heading = Arrays.stream(text.getStyleRanges()).filter(range -> (range.fontStyle & SWT.BOLD) != 0 && range.start < link.start)
				.reduce((one, other) -> other).map(range -> range.start == 0 ? "the title" : text.getText(range.start, range.start + range.length - 1)).orElse("");
		return place(text) + " > link under " + constant(heading);
	}

	private static String linkAt(StyledText text, Point at) {
		int offset = text.getOffsetAtPoint(at);
		return linkRanges(text).stream().filter(range -> offset >= range.start && offset <= range.start + range.length).findFirst()
				.map(range -> linkName(text, range)).orElse(null);
	}
}
