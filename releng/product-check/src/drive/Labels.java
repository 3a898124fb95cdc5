package drive;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CLabel;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.graphics.GC;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Group;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableColumn;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeColumn;
import org.eclipse.swt.widgets.Widget;

/** Looks whether what is seen can be read whole: nothing cut off, no button or field without a word. */
final class Labels {

	/** Fonts are measured in whole pixels. */
	private static final int SLACK = 2;
	/** What a head of a column keeps free on both sides together. */
	private static final int HEAD = 6;
	/** What a tab keeps free beside its words and its image. */
	private static final int TAB = 12;
	/** The same of the pages of an editor, which stand below it. */
	private static final int PAGE = 8;

	private Labels() {
	}

	/** Returns what cannot be read, a line for each; to be called while nothing moves. */
	static List<String> wrong(Hands hands) {
		List<Widget> all = hands.seen();
		return hands.see(() -> {
			TreeSet<String> wrong = new TreeSet<>();
			GC gc = new GC(all.stream().filter(Control.class::isInstance).map(Control.class::cast).findFirst().orElseThrow());
			for (Widget widget : all) {
				if (!widget.isDisposed()) {
					look(widget, gc, wrong);
				}
			}
			gc.dispose();
			return new ArrayList<>(wrong);
		});
	}

	private static void look(Widget widget, GC gc, TreeSet<String> wrong) {
		if (widget instanceof CTabItem tab) {
			CTabFolder folder = tab.getParent();
			gc.setFont(folder.getFont());
			int wanted = gc.textExtent(tab.getText()).x + (tab.getImage() == null ? 0 : tab.getImage().getBounds().width)
					+ (folder.getTabPosition() == SWT.BOTTOM ? PAGE : TAB);
			if (tab.isShowing() && tab.getBounds().width < wanted) {
				wrong.add("cut: the tab \"" + tab.getText() + "\"");
			} else if (!tab.isShowing()) {
				wrong.add("not seen: the tab \"" + tab.getText() + "\"");
			}
		} else if (widget instanceof ToolItem item) {
			boolean separator = (item.getStyle() & SWT.SEPARATOR) != 0;
			if (!separator && item.getText().isEmpty() && (item.getToolTipText() == null || item.getToolTipText().isBlank())) {
				wrong.add("without a word: a button in a tool bar of " + owner(item.getParent()));
			}
		} else if (widget instanceof Label || widget instanceof Button || widget instanceof Link || widget instanceof CLabel || widget instanceof Group) {
			control((Control) widget, wrong);
		} else if (widget instanceof Combo combo) {
			if (combo.isEnabled() && (combo.getStyle() & SWT.READ_ONLY) != 0 && combo.getItemCount() == 0) {
				wrong.add("empty: a list in " + owner(combo));
			}
			named(combo, wrong);
		} else if (widget instanceof Text field && (field.getStyle() & SWT.READ_ONLY) == 0) {
			named(field, wrong);
		} else if (widget instanceof Table table && table.getHeaderVisible()) {
			for (TableColumn column : table.getColumns()) {
				gc.setFont(table.getFont());
				head(column.getText(), column.getWidth(), gc, table, wrong);
			}
		} else if (widget instanceof Tree tree && tree.getHeaderVisible()) {
			for (TreeColumn column : tree.getColumns()) {
				gc.setFont(tree.getFont());
				head(column.getText(), column.getWidth(), gc, tree, wrong);
			}
		}
	}

	private static void head(String text, int width, GC gc, Control of, TreeSet<String> wrong) {
		if (!text.isEmpty() && gc.textExtent(text).x + HEAD > width) {
			wrong.add("cut: the head \"" + text + "\" in " + owner(of));
		}
	}

	private static void control(Control control, TreeSet<String> wrong) {
		String text = control instanceof Group group ? group.getText() : control instanceof CLabel label ? label.getText()
				: control instanceof Link link ? link.getText() : Hands.label(control);
		boolean picture = control instanceof Label label && label.getImage() != null || control instanceof CLabel clear && clear.getImage() != null
				|| control instanceof Button button && button.getImage() != null;
		if (text.isBlank()) {
			if (control instanceof Button button && !picture && (button.getStyle() & SWT.ARROW) == 0) {
				wrong.add("without a word: a button in " + owner(control));
			}
			return;
		}
		Point size = control.getSize();
		boolean wraps = (control.getStyle() & SWT.WRAP) != 0 || control instanceof Link;
		Point wanted = wraps ? control.computeSize(size.x, SWT.DEFAULT) : control.computeSize(SWT.DEFAULT, SWT.DEFAULT);
		if (wanted.x > size.x + SLACK || wanted.y > size.y + SLACK) {
			wrong.add("cut: \"" + text + "\" in " + owner(control) + ", " + size + " of " + wanted);
			return;
		}
		// also what lies partly beyond its parent cannot be read
		Rectangle bounds = control.getBounds();
		Rectangle room = control.getParent().getClientArea();
		boolean scrolls = control.getParent().getVerticalBar() != null || control.getParent().getParent() != null
				&& control.getParent().getParent().getVerticalBar() != null;
		if (!scrolls && (bounds.x + bounds.width > room.x + room.width + SLACK || bounds.y + bounds.height > room.y + room.height + SLACK)) {
			wrong.add("beyond the edge: \"" + text + "\" in " + owner(control));
		}
	}

	/** A field says what it is for by a label in front of it, a hint in it, or a name for those who do not see it. */
	private static void named(Control field, TreeSet<String> wrong) {
		String hint = field instanceof Text text ? text.getMessage() : "";
		// of fields that lie over each other one is seen, and what is beside them all tells of it
		Composite parent = field.getParent().getLayout() instanceof StackLayout ? field.getParent().getParent() : field.getParent();
		Control[] beside = parent.getChildren();
		boolean label = false;
		for (Control each : beside) {
			label |= (each instanceof Label || each instanceof CLabel || each instanceof Button || each instanceof Link) && each.isVisible() && each != field;
		}
		boolean tip = field.getToolTipText() != null && !field.getToolTipText().isBlank();
		if (hint.isEmpty() && !label && !tip) {
			wrong.add("without a word: a field in " + owner(field));
		}
	}

	/** The nearest thing with a title around a control. */
	private static String owner(Control control) {
		for (Control at = control.getParent(); at != null; at = at.getParent()) {
			if (at instanceof CTabFolder folder && folder.getSelection() != null) {
				return folder.getSelection().getText();
			}
		}
		return "\"" + control.getShell().getText() + "\"";
	}
}
