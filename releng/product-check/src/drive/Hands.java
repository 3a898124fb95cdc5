package drive;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.function.Supplier;

import javax.imageio.ImageIO;

import org.eclipse.swt.SWT;
import org.eclipse.swt.SWTException;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Canvas;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Item;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Menu;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.TabFolder;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolBar;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.swt.widgets.Widget;

/** A user's eyes and hands: looks at the widgets that are seen, and moves the real mouse and keys (by xdotool). */
final class Hands {

	private final Display display;
	private final Path pictures;
	private final AtomicReference<String> armed = new AtomicReference<>("");

	private final Controls controls;
	private volatile Menu menu;
	private Point clicked;
	private long clickedAt;

	Hands(Display display, Path pictures, Controls controls) {
		this.display = display;
		this.controls = controls;
		this.pictures = pictures;
		display.syncExec(() -> {
			display.addFilter(SWT.Show, event -> {
				if (event.widget instanceof Menu shown) {
					menu = shown;
					armed.set("");
				}
			});
			display.addFilter(SWT.Hide, event -> menu = event.widget == menu ? null : menu);
		});
		display.syncExec(() -> display.addFilter(SWT.Arm, event -> {
			if (event.widget instanceof MenuItem item) {
				armed.set(plain(item.getText()));
			}
		}));
	}

	// ---- eyes ------------------------------------------------------------------------------------------------------

	<T> T see(Supplier<T> look) {
		if (display.getThread() == Thread.currentThread()) {
			return look.get();
		}
		AtomicReference<T> seen = new AtomicReference<>();
		AtomicReference<Throwable> failed = new AtomicReference<>();
		CountDownLatch done = new CountDownLatch(1);
		display.asyncExec(() -> {
			try {
				seen.set(look.get());
			} catch (Throwable e) {
				failed.set(e);
			} finally {
				done.countDown();
			}
		});
		if (!finished(done, 20)) {
			// a window of the desktop's own may keep the screen's thread to itself
			tool("key", "Escape");
			if (!finished(done, 60)) {
				throw new AssertionError("the screen's thread does not answer");
			}
		}
		if (failed.get() instanceof Error error) {
			throw error;
		} else if (failed.get() instanceof RuntimeException wrong) {
			throw wrong;
		}
		return seen.get();
	}

	/** Waits some seconds; fails at once if the product ends meanwhile. */
	private boolean finished(CountDownLatch done, int seconds) {
		long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
		try {
			while (!done.await(50, TimeUnit.MILLISECONDS)) {
				if (display.isDisposed()) {
					throw new SWTException(SWT.ERROR_DEVICE_DISPOSED);
				}
				if (System.nanoTime() > end) {
					return false;
				}
			}
			return true;
		} catch (InterruptedException e) {
			throw new IllegalStateException(e);
		}
	}

	/** Closes a menu that is open. */
	void closeMenu() {
		for (int i = 0; i < 3 && menu != null; i++) {
			key("Escape");
		}
		menu = null;
	}

	/** Returns whether the product's screen is closed. */
	boolean gone() {
		return display.isDisposed();
	}

	/** Waits until something is so; an error names what was waited for. */
	void until(String what, BooleanSupplier so) {
		until(what, 20, so);
	}

	void until(String what, int seconds, BooleanSupplier so) {
		long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
		while (!see(so::getAsBoolean)) {
			if (System.nanoTime() > end) {
				throw new AssertionError("not seen within " + seconds + " s: " + what);
			}
			rest(100);
		}
	}

	static void rest(long millis) {
		try {
			Thread.sleep(millis);
		} catch (InterruptedException e) {
			throw new IllegalStateException(e);
		}
	}

	static String plain(String label) {
		return label.replaceAll("\t.*", "").replace("&&", "\u0001").replace("&", "").replace("\u0001", "&").strip();
	}

	/** Returns what a control says. */
	static String label(Widget widget) {
		String text = widget instanceof Button button ? button.getText() : widget instanceof Label label ? label.getText()
				: widget instanceof Shell shell ? shell.getText() : widget instanceof Text field ? field.getText()
				: widget instanceof StyledText styled ? styled.getText() : widget instanceof ToolItem tool ?
						(tool.getText().isEmpty() ? String.valueOf(tool.getToolTipText()) : tool.getText())
				: widget instanceof Item item ? item.getText() : widget instanceof Combo combo ? combo.getText()
				: widget.getClass().getSimpleName().endsWith("Hyperlink") ? hyperlink(widget) : "";
		return plain(text);
	}

	private static String hyperlink(Widget widget) {
		try {
			return (String) widget.getClass().getMethod("getText").invoke(widget);
		} catch (ReflectiveOperationException e) {
			return "";
		}
	}

	/** Returns all widgets that are seen now, those of the shell in front first. */
	List<Widget> seen() {
		return see(() -> {
			List<Widget> all = new ArrayList<>();
			Shell[] shells = display.getShells();
			for (int i = shells.length - 1; i >= 0; i--) {
				if (shells[i].isVisible()) {
					gather(shells[i], all);
				}
			}
			controls.look(all);
			return all;
		});
	}

	private static void gather(Control control, List<Widget> all) {
		if (!control.isVisible()) {
			return;
		}
		all.add(control);
		if (control instanceof ToolBar bar) {
			all.addAll(Arrays.asList(bar.getItems()));
		}
		if (control instanceof CTabFolder folder) {
			all.addAll(Arrays.asList(folder.getItems()));
		}
		if (control instanceof TabFolder folder) {
			all.addAll(Arrays.asList(folder.getItems()));
		}
		if (control instanceof Tree tree && tree.getHeaderVisible()) {
			all.addAll(Arrays.asList(tree.getColumns()));
		}
		if (control instanceof Table table && table.getHeaderVisible()) {
			all.addAll(Arrays.asList(table.getColumns()));
		}
		if (control instanceof Composite composite) {
			for (Control child : composite.getChildren()) {
				gather(child, all);
			}
		}
	}

	<W extends Widget> Optional<W> look(Class<W> kind, Predicate<W> which) {
		List<Widget> all = seen();
		return see(() -> all.stream().filter(kind::isInstance).map(kind::cast).filter(widget -> !widget.isDisposed())
				.filter(which).findFirst());
	}

	<W extends Widget> W find(Class<W> kind, String label) {
		return find(kind, label, widget -> label(widget).equals(label));
	}

	<W extends Widget> W find(Class<W> kind, String what, Predicate<W> which) {
		AtomicReference<W> found = new AtomicReference<>();
		long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
		while (System.nanoTime() < end) {
			Optional<W> now = look(kind, which);
			if (now.isPresent()) {
				found.set(now.get());
				return found.get();
			}
			rest(100);
		}
		throw new AssertionError("no " + kind.getSimpleName() + " \"" + what + "\" is seen; seen: " + labels());
	}

	Widget findAny(String label) {
		return find(Widget.class, label, widget -> label(widget).equals(label));
	}

	List<String> labels() {
		List<Widget> all = seen();
		return see(() -> all.stream().filter(widget -> !widget.isDisposed()).map(Hands::label)
				.filter(text -> !text.isEmpty() && text.length() < 80).distinct().limit(60).toList());
	}

	boolean says(String part) {
		List<Widget> all = seen();
		return see(() -> all.stream().filter(widget -> !widget.isDisposed()).anyMatch(widget -> label(widget).contains(part)));
	}

	/** The title of the window that has the keyboard. */
	String front() {
		return see(() -> display.getActiveShell() == null ? "" : display.getActiveShell().getText());
	}

	// ---- hands -----------------------------------------------------------------------------------------------------

	void click(Widget widget) {
		click(middle(widget), 1, 1);
	}

	void rightClick(Widget widget) {
		click(middle(widget), 3, 1);
	}

	void doubleClick(Widget widget) {
		click(middle(widget), 1, 2);
	}

	void click(Point at, int button, int times) {
		// two clicks that follow one another closely are one of two strokes
		if (at.equals(clicked)) {
			rest(Math.max(0, 700 - (System.nanoTime() - clickedAt) / 1_000_000));
		}
		tool("mousemove", "" + at.x, "" + at.y);
		rest(80);
		clicked = at;
		clickedAt = System.nanoTime();
		if (button == 1) {
			tool("click", "--repeat", "" + times, "--delay", "60", "" + button);
		} else {
			// no finger is so quick that a menu which takes a moment to fill meets a button that is up again
			tool("mousedown", "" + button);
			rest(150);
			tool("mouseup", "" + button);
		}
		settle();
	}

	/** Drags from one point of the screen to another, as slowly as a hand does. */
	void drag(Point from, Point to) {
		tool("mousemove", "" + from.x, "" + from.y);
		rest(150);
		tool("mousedown", "1");
		for (int step = 1; step <= 12; step++) {
			rest(60);
			tool("mousemove", "" + (from.x + (to.x - from.x) * step / 12), "" + (from.y + (to.y - from.y) * step / 12));
		}
		rest(500);
		tool("mouseup", "1");
		settle();
	}

	/** Where a widget's middle is on the screen. */
	Point middle(Widget widget) {
		return see(() -> {
			if (widget instanceof TreeItem item) {
				Rectangle bounds = item.getBounds();
				return item.getParent().toDisplay(bounds.x + Math.min(bounds.width / 2, 30), bounds.y + bounds.height / 2);
			}
			if (widget instanceof ToolItem item) {
				Rectangle bounds = item.getBounds();
				return item.getParent().toDisplay(bounds.x + Math.min(bounds.width / 2, 12), bounds.y + bounds.height / 2);
			}
			if (widget instanceof CTabItem item) {
				Rectangle bounds = item.getBounds();
				return item.getParent().toDisplay(bounds.x + bounds.width / 3, bounds.y + bounds.height / 2);
			}
			Control control = (Control) widget;
			for (Control at = control.getParent(); at != null; at = at.getParent()) {
				if (at instanceof ScrolledComposite room) {
					room.showControl(control);
				}
			}
			Point size = control.getSize();
			boolean wide = control instanceof Button button && (button.getStyle() & (SWT.CHECK | SWT.RADIO)) != 0;
			return control.toDisplay(wide ? Math.min(12, size.x / 2) : size.x / 2, size.y / 2);
		});
	}

	/** Clicks into a text where some words stand. */
	void clickWords(StyledText text, String words) {
		click(wordsAt(text, words), 1, 1);
	}

	/** Returns where on the screen some words of a text stand, after they were brought into sight. */
	Point wordsAt(StyledText text, String words) {
		Point at = see(() -> {
			int offset = text.getText().indexOf(words);
			if (offset < 0) {
				return null;
			}
			text.setTopIndex(Math.max(0, text.getLineAtOffset(offset) - 3));
			Point place = text.getLocationAtOffset(offset + Math.min(4, words.length() - 1));
			return text.toDisplay(place.x + 2, place.y + text.getLineHeight(offset) / 2);
		});
		if (at == null) {
			throw new AssertionError("\"" + words + "\" does not stand in the text");
		}
		return at;
	}

	/** Returns the largest thing in the view in front that shows what the view is about. */
	Control body(String view) {
		List<Widget> all = seen();
		return see(() -> all.stream().filter(widget -> widget instanceof Tree || widget instanceof Table || widget instanceof Canvas
				|| widget instanceof StyledText).map(Control.class::cast)
				.filter(control -> !(control instanceof CTabFolder) && !(control instanceof ToolBar) && belongsTo(control, view))
				.filter(control -> !(control instanceof Composite box) || box.getChildren().length == 0 || control instanceof Tree || control instanceof Table)
				.max(Comparator.comparingInt(control -> control.getSize().x * control.getSize().y)).orElseThrow());
	}

	private static boolean belongsTo(Control control, String view) {
		for (Control at = control.getParent(); at != null; at = at.getParent()) {
			if (at instanceof CTabFolder folder) {
				return folder.getSelection() != null && folder.getSelection().getText().equals(view);
			}
		}
		return false;
	}

	void type(String words) {
		type(words, 25);
	}

	void type(String words, int delayMillis) {
		tool("type", "--delay", "" + delayMillis, words);
		settle();
	}

	/** Types lines, with Enter behind each in the same rhythm. */
	void typeLines(String lines, int delayMillis) {
		List<String> words = new ArrayList<>();
		lines.lines().forEach(line -> words.addAll(List.of("type", "--args", "1", "--delay", "" + delayMillis, line,
				"sleep", "" + delayMillis / 1000.0, "key", "--delay", "" + delayMillis, "Return", "sleep", "" + delayMillis / 1000.0)));
		tool(words.toArray(String[]::new));
		settle();
	}

	void key(String... keys) {
		for (String key : keys) {
			tool("key", key);
			rest(60);
		}
		settle();
	}

	/** Goes through the menu bar with the keyboard: each label is an entry, the first a menu's. */
	void menu(String... path) {
		String letter = see(() -> Arrays.stream(display.getActiveShell().getMenuBar().getItems())
				.filter(item -> plain(item.getText()).equals(path[0])).findFirst()
				.map(item -> item.getText().replaceAll(".*&(.).*", "$1").toLowerCase()).orElseThrow());
		key("alt+" + letter);
		chooseOpen(Arrays.copyOfRange(path, 1, path.length));
	}

	/** Chooses in a menu that is open. */
	void chooseOpen(String... path) {
		for (int i = 0; i < path.length; i++) {
			choose(path[i]);
			key(i == path.length - 1 ? "Return" : "Right");
		}
	}

	private void choose(String label) {
		for (int steps = 0; steps < 60; steps++) {
			// what is undone is named in the entry
			if (armed.get().equals(label) || label.matches("Undo|Redo") && armed.get().startsWith(label + " ")) {
				return;
			}
			tool("key", "Down");
			rest(60);
		}
		key("Escape", "Escape");
		throw new AssertionError("no entry \"" + label + "\" in the menu that is open");
	}

	/** Takes an entry of the menu of the right button at a point of a control. */
	void popup(Control on, Point at, String entry) {
		click(see(() -> on.toDisplay(at)), 3, 1);
		rest(300);
		choose(entry);
		key("Return");
	}

	/** Takes an entry of a list that folds out. */
	void pick(Combo list, String entry) {
		click(list);
		rest(300);
		key("Home");
		for (int i = 0; i < see(() -> list.indexOf(entry)); i++) {
			key("Down");
		}
		key("Return");
		until(entry, () -> list.getText().equals(entry));
	}

	void popup(Widget on, String entry) {
		click(on);
		rightClick(on);
		rest(300);
		choose(entry);
		key("Return");
	}

	TreeItem item(Tree tree, Predicate<String> which) {
		return see(() -> item(tree.getItems(), which));
	}

	private static TreeItem item(TreeItem[] items, Predicate<String> which) {
		for (TreeItem item : items) {
			if (which.test(item.getText())) {
				return item;
			}
			TreeItem below = item(item.getItems(), which);
			if (below != null) {
				return below;
			}
		}
		return null;
	}

	/** Waits until the screen's thread has done what waits for it. */
	void settle() {
		rest(60);
		CountDownLatch done = new CountDownLatch(1);
		display.asyncExec(done::countDown);
		finished(done, 5);
		rest(40);
	}

	void picture(String name) {
		run("import", "-window", "root", pictures.resolve(name + ".png").toString());
	}

	/** Returns the colours of a picture that was taken, between two corners. */
	List<Color> colours(String name, Point from, Point to) {
		try {
			BufferedImage image = ImageIO.read(pictures.resolve(name + ".png").toFile());
			List<Color> all = new ArrayList<>();
			for (int x = from.x; x < Math.min(to.x, image.getWidth()); x++) {
				for (int y = from.y; y < Math.min(to.y, image.getHeight()); y++) {
					all.add(new Color(image.getRGB(x, y)));
				}
			}
			return all;
		} catch (IOException e) {
			throw new IllegalStateException(e);
		}
	}

	/** Returns the colours of the whole screen, as they are while a dialog of the system keeps the toolkit waiting too. */
	int[] screen() {
		Path now = pictures.resolve("now.rgb");
		run("import", "-window", "root", "-depth", "8", now.toString());
		try {
			byte[] bytes = Files.readAllBytes(now);
			int[] colours = new int[bytes.length / 3];
			for (int i = 0; i < colours.length; i++) {
				colours[i] = bytes[3 * i] << 16 | (bytes[3 * i + 1] & 0xff) << 8 | bytes[3 * i + 2] & 0xff;
			}
			return colours;
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Makes the window in front as large as given, in pixels. */
	void resize(int width, int height) {
		tool("getactivewindow", "windowmove", "0", "0", "windowsize", "" + width, "" + height);
		rest(800);
	}

	/** Closes with Escape whatever is open before the window. */
	void alone() {
		for (int i = 0; i < 6; i++) {
			boolean front = see(() -> {
				Shell active = display.getActiveShell();
				return active != null && active.getMenuBar() != null;
			});
			if (front && i > 0) {
				return;
			}
			key("Escape");
			rest(100);
		}
	}

	/** Returns whether a button is in the tool bar of a view, or in its body. To be called on the screen's thread. */
	boolean belongsTo(ToolItem item, String view) {
		for (Control at = item.getParent(); at != null; at = at.getParent()) {
			if (at instanceof CTabFolder folder) {
				return folder.getSelection() != null && folder.getSelection().getText().equals(view)
						&& !String.valueOf(item.getToolTipText()).matches("Minimize|Maximize|Restore");
			}
		}
		return false;
	}

	private static void tool(String... words) {
		List<String> command = new ArrayList<>(List.of("xdotool"));
		command.addAll(List.of(words));
		run(command.toArray(String[]::new));
	}

	private static void run(String... command) {
		try {
			Process process = new ProcessBuilder(command).inheritIO().start();
			if (process.waitFor() != 0) {
				throw new IllegalStateException(String.join(" ", command) + " failed");
			}
		} catch (IOException | InterruptedException e) {
			throw new IllegalStateException(e);
		}
	}
}
