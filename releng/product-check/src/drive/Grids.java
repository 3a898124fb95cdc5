package drive;

import java.util.List;

import org.eclipse.swt.SWT;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolItem;

/** Edits cells of the grid; the text is only read to see what came of it. */
final class Grids {

	private static final String EDIT = "Edit a cell of the grid";
	private static final String PASTE = "Paste from a spreadsheet";
	private static final String EMPTY = "Let the test say nothing of the fault";
	/** Where the first cell is, behind test and effort and below the faults. */
	private static final Point FIRST = new Point(340 + 60, 46 + 12);

	private final Drive drive;
	private final Hands hands;
	private Control table;

	Grids(Drive drive, Hands hands) {
		this.drive = drive;
		this.hands = hands;
	}

	void go() {
		drive.check("grid: what no rule uses is shown on request", () -> {
			drive.ready();
			drive.show("Test grid");
			Button all = hands.find(Button.class, "Also what no rule uses");
			hands.click(all);
			hands.rest(800);
			hands.picture("grid-all");
			hands.click(all);
			hands.rest(800);
		});
		drive.check("grid: the cheapest test first, so that the cells are where they are looked for", () -> {
			drive.ready();
			drive.show("Test grid");
			Combo order = hands.find(Combo.class, "the order", combo -> combo.indexOf("Cheapest first") >= 0);
			hands.pick(order, "Cheapest first");
			hands.until("cheapest first", () -> order.getText().equals("Cheapest first"));
		});
		drive.check("grid: a cell is edited with the keyboard, and one undo takes it back", () -> {
			String before = text();
			choose("Right");
			hands.key("F2");
			window(EDIT);
			List<Combo> results = results();
			hands.pick(results.get(0), "suspects");
			hands.until("what will be written", () -> preview().contains("+   met   : suspects ground_strap.loose"));
			hands.picture("grid-edit");
			hands.pick(results.get(1), "confirms");
			shown(EDIT);
			hands.click(hands.find(Button.class, "Write"));
			hands.until("the rule", () -> text().contains("  met   : suspects ground_strap.loose\n"));
			undo(before);
		});
		drive.check("grid: Enter edits too; a limit is added", () -> {
			String before = text();
			choose("Down");
			hands.key("Return");
			window(EDIT);
			Text limit = hands.find(Text.class, "the limit", field -> field.getEditable() && front(field, EDIT) && field.getSize().x < 200);
			hands.click(limit);
			hands.type("40");
			hands.click(hands.find(Button.class, "Add limit"));
			hands.until("why not", () -> hands.says("The test measures 0.0 V to 18.0 V"));
			hands.click(limit);
			hands.key("ctrl+a");
			hands.type("11");
			hands.key("Return");
			hands.until("four results", () -> results().size() == 4);
			hands.pick(results().get(1), "suspects");
			hands.until("what will be written", () -> preview().contains("on 11 V .. 11.9 V"));
			hands.click(hands.find(Button.class, "Write"));
			hands.until("the rule", () -> text().contains("on 11 V .. 11.9 V") && text().contains("suspects battery.flat\n  on 12.0 V .. 12.3 V"));
			undo(before);
		});
		drive.check("grid: Delete asks, and takes the fault out", () -> {
			String before = text();
			choose("Right");
			hands.key("Delete");
			window(EMPTY);
			hands.picture("grid-delete");
			hands.click(hands.find(Button.class, "Cancel"));
			hands.rest(500);
			same(before);
			hands.key("Delete");
			window(EMPTY);
			hands.click(hands.find(Button.class, "OK"));
			hands.until("the rule", () -> text().contains("  above : proves nothing\n"));
			undo(before);
		});
		drive.check("grid: a new rule from a cell", () -> {
			String before = text();
			choose();
			hands.popup(table, FIRST, "Edit\u2026");
			window(EDIT);
			hands.pick(hands.find(Combo.class, "the rule", combo -> combo.indexOf("A new rule") >= 0), "A new rule");
			hands.pick(results().get(1), "suspects");
			describe("A drop and a flat battery", "Intermittent no-crank", "It may be both.", "rules.bay");
			hands.until("what will be written", () -> preview().contains("+ rule a_drop_and_a_flat_battery"));
			hands.picture("grid-new-rule");
			hands.click(hands.find(Button.class, "Write"));
			hands.until("the rule", () -> text().contains("rule a_drop_and_a_flat_battery \"A drop and a flat battery\" {"));
			undo(before);
		});
		drive.check("grid: many cells at once, and one undo takes them back", () -> {
			String before = text();
			clipboard("Test\tbattery.flat\tstart_relay.burnt\trelay.gone\nrest_voltage\tbelow 11 V confirms; above clears\t\nrelay_swap\t\tfails with both clears; sometimes confirms\n");
			choose();
			hands.key("ctrl+v");
			window(PASTE);
			hands.until("what is not understood", () -> hands.says("Row 1, column 4: the grid has no single fault") && hands.says("Row 3, column 3: “sometimes” is no result"));
			hands.until("what will be written", () -> preview().contains("on below 11 V"));
			hands.picture("grid-paste");
			shown(PASTE);
			hands.click(hands.find(Button.class, "Write"));
			hands.until("the rule", () -> text().contains("on below 11 V"));
			undo(before);
		});
		drive.check("grid: a table of thousands of cells is answered, not laid out", () -> {
			StringBuilder huge = new StringBuilder();
			for (int i = 0; i < 2000; i++) {
				huge.append("relay_swap\t").append("sometimes\t".repeat(40)).append('\n');
			}
			clipboard("Test" + "\tbattery.flat".repeat(40) + "\n" + huge);
			choose();
			hands.key("ctrl+v");
			window(PASTE);
			hands.until("that there are more", () -> hands.says("more like these"));
			hands.picture("grid-paste-huge");
			hands.click(hands.find(Button.class, "Cancel"));
		});
		drive.check("grid: paste without a text, and a copy pasted again", () -> {
			String before = text();
			choose();
			hands.click(hands.find(ToolItem.class, "Copy the whole grid"));
			hands.click(hands.find(ToolItem.class, PASTE));
			window(PASTE);
			hands.until("nothing to do", () -> hands.says("Nothing will be changed."));
			hands.click(hands.find(Button.class, "Cancel"));
			same(before);
		});
	}

	/** Writes a new rule from the cell where the keys lead: what each result of its test proves of its fault. */
	void newRule(List<String> keys, String about, String sign, String because, String... proves) {
		choose(keys.toArray(String[]::new));
		hands.key("F2");
		window(EDIT);
		for (int i = 0; i < proves.length; i++) {
			hands.pick(results().get(i), proves[i]);
		}
		describe(about, sign, because, "lamp.bay");
		hands.picture("whole-cell");
		hands.click(hands.find(Button.class, "Write"));
		hands.until("the window goes", () -> !hands.front().equals(EDIT));
	}

	private void describe(String about, String sign, String because, String file) {
		field("what it is about", 0, about);
		hands.pick(hands.find(Combo.class, "the sign", combo -> combo.indexOf("(no sign)") >= 0), sign);
		hands.pick(hands.find(Combo.class, "the family", combo -> combo.indexOf("(every family)") >= 0), "(every family)");
		field("why", 1, because);
		field("who", 2, "A. Author");
		hands.click(hands.find(Combo.class, "the file", combo -> front(combo, EDIT) && (combo.getStyle() & SWT.READ_ONLY) == 0));
		hands.key("ctrl+a");
		hands.type(file);
	}

	/** Chooses the first cell, and from there another one by keys. */
	private void choose(String... keys) {
		drive.show("Test grid");
		hands.rest(800);
		table = hands.find(Control.class, "the grid", control -> control.getClass().getSimpleName().equals("NatTable"));
		hands.click(hands.see(() -> table.toDisplay(FIRST)), 1, 1);
		hands.key(keys);
	}

	private String text() {
		return hands.see(drive::editorText);
	}

	private void same(String before) {
		if (!text().equals(before)) {
			throw new AssertionError("the text has changed: " + text());
		}
	}

	private void undo(String before) {
		hands.click(drive.editor());
		hands.key("ctrl+z");
		hands.until("one undo takes it back", () -> text().equals(before));
		hands.rest(800);
	}

	private void window(String title) {
		hands.until(title, () -> hands.front().equals(title));
		hands.rest(500);
	}

	private static boolean front(Control control, String title) {
		return control.getShell().getText().equals(title);
	}

	private List<Combo> results() {
		return hands.seen().stream().filter(Combo.class::isInstance).map(Combo.class::cast)
				.filter(combo -> hands.see(() -> !combo.isDisposed() && combo.getItemCount() == 4 && combo.getItem(1).equals("suspects"))).toList();
	}

	/** Clicks into what is only shown: it takes the keyboard, so that it can be read by ear and copied. */
	private void shown(String title) {
		hands.seen().stream().filter(Text.class::isInstance).map(Text.class::cast)
				.filter(field -> hands.see(() -> !field.isDisposed() && !field.getEditable() && front(field, title) && (field.getStyle() & SWT.MULTI) != 0)).forEach(hands::click);
	}

	private String preview() {
		return hands.seen().stream().filter(Text.class::isInstance).map(Text.class::cast)
				.map(field -> hands.see(() -> field.isDisposed() || field.getEditable() ? "" : field.getText())).reduce("", (a, b) -> a + "\n" + b);
	}

	/** Fills in a field of the new rule, by its number among those that can be written into, without that of the limit. */
	private void field(String what, int number, String typed) {
		List<Text> fields = hands.seen().stream().filter(Text.class::isInstance).map(Text.class::cast)
				.filter(each -> hands.see(() -> !each.isDisposed() && each.getEditable() && front(each, EDIT) && each.getSize().x > 200)).toList();
		if (fields.size() <= number) {
			throw new AssertionError("no field for " + what);
		}
		hands.click(fields.get(number));
		hands.key("ctrl+a");
		hands.type(typed);
	}

	private void clipboard(String content) {
		hands.see(() -> {
			Clipboard clipboard = new Clipboard(table.getDisplay());
			clipboard.setContents(new Object[] { content }, new Transfer[] { TextTransfer.getInstance() });
			clipboard.dispose();
			return true;
		});
	}
}
