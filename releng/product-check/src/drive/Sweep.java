package drive;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CCombo;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StyleRange;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeColumn;
import org.eclipse.swt.widgets.Widget;

/** Uses each control of a view or a window that no other case has used, and looks whether it does what its kind does. */
final class Sweep {

	/** A cursor that blinks and the light under the mouse are no more than this. */
	private static final int FEW_PIXELS = 60;
	/** What ends a window comes last. */
	private static final List<String> ENDS = List.of("OK", "Finish", "Apply and Close", "Close", "Cancel", "Open", "Search", "Yes", "No", "Done");

	private final Drive drive;
	private final Hands hands;
	private final Controls controls;
	private final Set<String> tried = new HashSet<>();

	Sweep(Drive drive, Hands hands, Controls controls) {
		this.drive = drive;
		this.hands = hands;
		this.controls = controls;
		tried.add("Window > tab Card");
	}

	/** Uses what is in a view. */
	void view(String title) {
		Runnable open = () -> {
			if (title.equals("Editor") || title.equals("Window")) {
				drive.ready();
			} else {
				drive.window();
				drive.show(title);
			}
			hands.rest(300);
		};
		open.run();
		for (int i = 0; i < 60; i++) {
			Widget next = next(title);
			if (next == null) {
				return;
			}
			use(title, next, 0);
			if (hands.gone()) {
				return;
			}
			open.run();
		}
	}

	/** Uses what is in the window that is in front. */
	void window(Runnable open) {
		window(open, 0);
	}

	private void window(Runnable open, int depth) {
		String title = hands.front();
		for (int i = 0; i < 80; i++) {
			if (!hands.front().equals(title)) {
				hands.alone();
				open.run();
				hands.rest(700);
				if (!hands.front().equals(title)) {
					throw new AssertionError("\"" + title + "\" does not open again but \"" + hands.front() + "\"");
				}
			}
			Widget next = next(null);
			if (next == null) {
				break;
			}
			String name = hands.see(() -> String.valueOf(Controls.name(next)));
			use(title, next, depth);
			// what it opened
			String inner = hands.front();
			if (!inner.equals(title) && depth < 2 && hands.see(() -> isWindow()) && next(null) != null) {
				drive.check("window " + inner, () -> window(() -> {
					open.run();
					hands.rest(500);
					Optional<Widget> again = hands.look(Widget.class, widget -> name.equals(Controls.name(widget)));
					hands.click(again.orElseThrow(() -> new AssertionError("no more: " + name)));
					hands.rest(500);
				}, depth + 1));
			}
			for (int j = 0; j < 3 && !hands.front().equals(title) && hands.see(() -> isWindow()); j++) {
				hands.key("Escape");
				hands.rest(300);
			}
		}
	}

	private boolean isWindow() {
		Shell active = org.eclipse.ui.PlatformUI.getWorkbench().getDisplay().getActiveShell();
		return active != null && active.getMenuBar() == null && !active.getText().isEmpty();
	}

	/** The next control of a view, or of the window in front, that nobody has used. */
	private Widget next(String place) {
		List<Widget> all = hands.seen();
		return hands.see(() -> {
			List<Widget> open = new ArrayList<>();
			Shell front = org.eclipse.ui.PlatformUI.getWorkbench().getDisplay().getActiveShell();
			for (Widget widget : all) {
				String name = Controls.name(widget);
				if (name != null && !controls.isUsed(name) && !tried.contains(name) && live(widget)
						&& (place == null ? Controls.control(widget).getShell() == front : name.startsWith(place + " > "))) {
					open.add(widget);
				}
				if (widget instanceof StyledText text && !text.isDisposed() && hasNewLink(text)
						&& (place == null ? text.getShell() == front : Controls.place(text).equals(place))) {
					open.add(widget);
				}
			}
			return open.stream().min((one, other) -> Integer.compare(rank(one), rank(other))).orElse(null);
		});
	}

	private static int rank(Widget widget) {
		String label = Hands.label(widget);
		int end = widget instanceof Button ? ENDS.indexOf(label) : -1;
		return end < 0 ? widget instanceof CTabItem ? 1 : 0 : 10 + (label.equals("Cancel") ? -1 : end);
	}

	private static boolean live(Widget widget) {
		return widget instanceof org.eclipse.swt.widgets.ToolItem item ? item.isEnabled() : Controls.control(widget).isEnabled();
	}

	private void use(String place, Widget widget, int depth) {
		String name = hands.see(() -> Controls.name(widget));
		boolean links = name == null || tried.contains(name) || controls.isUsed(name);
		if (links) {
			StyledText text = (StyledText) widget;
			link(text);
			return;
		}
		tried.add(name);
		drive.check("control " + name, () -> {
			act(widget);
			hands.closeMenu();
			if (!controls.isUsed(name)) {
				throw new AssertionError("it takes no click");
			}
		});
	}

	/** Follows every word of a text that leads somewhere; each kind once. */
	void links(Runnable open, Supplier<StyledText> text) {
		for (int i = 0; i < 20; i++) {
			open.run();
			StyledText now = text.get();
			if (!hands.see(() -> hasNewLink(now))) {
				return;
			}
			link(now);
			hands.alone();
		}
	}

	private boolean hasNewLink(StyledText text) {
		return Controls.linkRanges(text).stream().map(range -> Controls.linkName(text, range)).anyMatch(link -> !controls.isUsed(link) && !tried.contains(link));
	}

	private void link(StyledText text) {
		StyleRange range = hands.see(() -> Controls.linkRanges(text).stream().filter(each -> {
			String link = Controls.linkName(text, each);
			return !controls.isUsed(link) && !tried.contains(link);
		}).findFirst().orElseThrow());
		String name = hands.see(() -> Controls.linkName(text, range));
		tried.add(name);
		drive.check("control " + name, () -> {
			Point at = hands.see(() -> {
				text.setTopIndex(Math.max(0, text.getLineAtOffset(range.start) - 2));
				Point place = text.getLocationAtOffset(range.start + Math.min(4, range.length - 1));
				return text.toDisplay(place.x + 2, place.y + text.getLineHeight(range.start) / 2);
			});
			changes(() -> hands.click(at, 1, 1));
		});
	}

	private void act(Widget widget) {
		int style = hands.see(widget::getStyle);
		if (widget instanceof Button button && (style & (SWT.CHECK | SWT.RADIO | SWT.TOGGLE)) != 0) {
			toggle(button, (style & SWT.RADIO) != 0);
		} else if (widget instanceof Combo || widget instanceof CCombo) {
			choose((Control) widget, (style & SWT.READ_ONLY) == 0);
		} else if (widget instanceof Text || widget instanceof StyledText) {
			write((Control) widget);
		} else if (widget instanceof Tree || widget instanceof Table || widget instanceof org.eclipse.swt.widgets.List) {
			entries((Control) widget);
		} else if (widget instanceof TreeColumn || widget instanceof TableColumn) {
			Point at = hands.see(() -> head(widget));
			changes(() -> hands.click(at, 1, 1));
		} else if (widget instanceof CTabItem tab) {
			hands.click(tab);
			hands.until("the tab in front", () -> tab.isDisposed() || tab.getParent().getSelection() == tab);
		} else {
			changes(() -> hands.click(widget));
		}
	}

	/** Something comes of it, on the screen or by the end of the window. */
	private void changes(Runnable act) {
		String title = hands.front();
		int[] before = hands.screen();
		act.run();
		for (int i = 0; i < 10; i++) {
			if (hands.gone() || Entries.differ(before, hands.screen()) > FEW_PIXELS || !hands.front().equals(title)) {
				return;
			}
			hands.rest(150);
		}
		throw new AssertionError("nothing came of it");
	}

	private void toggle(Button button, boolean radioButton) {
		boolean before = hands.see(button::getSelection);
		if (before && radioButton) {
			Button other = hands.see(() -> {
				for (Control each : button.getParent().getChildren()) {
					if (each != button && each instanceof Button radio && (radio.getStyle() & SWT.RADIO) != 0 && radio.isEnabled()) {
						return radio;
					}
				}
				return null;
			});
			if (other != null) {
				hands.click(other);
				hands.until("the other choice", () -> !button.getSelection());
			}
			hands.click(button);
			hands.until("the choice", button::getSelection);
			if (other != null) {
				// what depends on it is live now
				hands.click(other);
			}
			return;
		}
		hands.click(button);
		hands.until("the other state", () -> button.isDisposed() || button.getSelection() != before);
		if (!radioButton && !hands.see(button::isDisposed)) {
			hands.click(button);
		}
	}

	private void choose(Control list, boolean typed) {
		if (typed) {
			write(list);
			return;
		}
		int count = hands.see(() -> list instanceof Combo combo ? combo.getItemCount() : ((CCombo) list).getItemCount());
		int at = hands.see(() -> list instanceof Combo combo ? combo.getSelectionIndex() : ((CCombo) list).getSelectionIndex());
		if (count == 0) {
			throw new AssertionError("there is nothing to choose");
		}
		if (count == 1) {
			// it can only be looked at
			changes(() -> hands.click(list));
			controls.use(list);
			hands.key("Escape");
			return;
		}
		hands.click(list);
		hands.rest(300);
		hands.key(at == count - 1 ? "Up" : "Down", "Return");
		hands.until("another choice", () -> list.isDisposed()
				|| (list instanceof Combo combo ? combo.getSelectionIndex() : ((CCombo) list).getSelectionIndex()) != at);
	}

	private void write(Control field) {
		hands.click(field);
		boolean fixed = hands.see(() -> (field.getStyle() & SWT.READ_ONLY) != 0 || field instanceof StyledText text && !text.getEditable()
				|| field instanceof Text text && !text.getEditable());
		if (fixed) {
			hands.key("ctrl+a");
			hands.until("its words chosen", () -> field.isDisposed() || words(field).isEmpty()
					|| (field instanceof Text text ? text.getSelectionCount() : ((StyledText) field).getSelectionCount()) > 0);
			return;
		}
		String before = hands.see(() -> words(field));
		hands.key("End");
		hands.type("7");
		if (hands.see(() -> !field.isDisposed() && words(field).equals(before))) {
			// a short field is full, or the window has just filled it anew
			hands.click(field);
			hands.key("ctrl+a");
			hands.type("7");
		}
		hands.until("what was typed", () -> field.isDisposed() || !words(field).equals(before));
		hands.key("BackSpace");
	}

	private static String words(Control field) {
		return field instanceof Text text ? text.getText() : field instanceof StyledText text ? text.getText()
				: field instanceof Combo combo ? combo.getText() : ((CCombo) field).getText();
	}

	private void entries(Control list) {
		Point at = hands.see(() -> {
			Rectangle first = list instanceof Tree tree ? tree.getItemCount() == 0 ? null : tree.getItem(0).getBounds()
					: list instanceof Table table ? table.getItemCount() == 0 ? null : table.getItem(table.getTopIndex()).getBounds() : new Rectangle(0, 0, 40, 12);
			return first == null ? null : list.toDisplay(first.x + Math.min(20, first.width / 2), first.y + first.height / 2);
		});
		if (at == null) {
			hands.click(list);
			return;
		}
		hands.click(at, 1, 1);
		hands.key("End");
		hands.until("something chosen", () -> list.isDisposed() || (list instanceof Tree tree ? tree.getSelectionCount()
				: list instanceof Table table ? table.getSelectionCount() : ((org.eclipse.swt.widgets.List) list).getSelectionCount()) > 0);
	}

	private static Point head(Widget column) {
		Control list = Controls.control(column);
		int x = 0;
		if (list instanceof Tree tree) {
			for (int index : tree.getColumnOrder()) {
				if (tree.getColumn(index) == column) {
					break;
				}
				x += tree.getColumn(index).getWidth();
			}
			// what is below the heads begins at zero
			return tree.toDisplay(x + 12, -tree.getHeaderHeight() / 2);
		}
		Table table = (Table) list;
		for (int index : table.getColumnOrder()) {
			if (table.getColumn(index) == column) {
				break;
			}
			x += table.getColumn(index).getWidth();
		}
		return table.toDisplay(x + 12, -table.getHeaderHeight() / 2);
	}
}
