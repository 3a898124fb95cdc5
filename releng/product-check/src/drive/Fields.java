package drive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.dnd.Clipboard;
import org.eclipse.swt.dnd.TextTransfer;
import org.eclipse.swt.dnd.Transfer;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.forms.widgets.Hyperlink;

/** Fills in fields of a card as people do: with pauses, with things forgotten and gone back to. */
final class Fields extends CardHands {

	/** Longer than the card waits before it writes, and than a check of the project takes. */
	private static final int PAUSE = 4000;
	private final Drive drive;
	private final Path folder;

	Fields(Drive drive, Hands hands, Path work) {
		super(hands);
		this.drive = drive;
		folder = work.resolve("empty/first-walk");
	}

	void go() {
		drive.check("card: what is wrong comes and goes while somebody types with pauses", () -> {
			drive.window();
			newFile("fields");
			hands.typeLines("part lamp \"Lamp\" {\n fault broken \"Broken\"\n}\nsign flicker \"Lamp flickers\"\ntest volts \"Voltage\" {\n measures V 0 .. 18 step 0.1\n"
					+ "takes 5 min\n}\nstate ignition \"Ignition\" : off \"Off\", on \"On\"\nmodule box \"Box\"\n"
					+ "code one \"Code one\" on box = dtc P0AA6\nfamily finch \"Finch\" {\n trait engine : petrol \"Petrol\"\n}\nrule lit \"Lamp lit\" {\n for every family\n given flicker\n run volts\n}\n", 10);
			turn("Card");
			wait("the list", () -> hands.says("Rule: Lamp lit") || hands.says("Part: Lamp"));
			select("Lamp lit");
			choose("Expect", 0, "at least");
			type("Expect, limit", "11", ".5 V", "11.5 V");
			says("  expect at_least 11.5 V\n");
			hands.key("Tab");
			type("Because", "One", " two", " three", "One two three");
			says("because \"One two three\"");
			type("Title", " here", ", and", " there", "Lamp lit here, and there");
			says("rule lit \"Lamp lit here, and there\"");
			type("Title", " again", "Lamp lit here, and there again");
			hands.picture("card-pauses");
		});
		drive.check("card: a new element is written while somebody types its title with pauses", () -> {
			begin("part");
			type("Title", "Glow", " lamp", " here", "Glow lamp here");
			says("\"Glow lamp here\"");
			select("Lamp lit here, and there again");
		});
		drive.check("card: several lines are pasted, and typing goes on behind them", () -> {
			at("Because");
			hands.see(() -> {
				Clipboard clipboard = new Clipboard(Display.getCurrent());
				clipboard.setContents(new Object[] { " four\nfive\nsix" }, new Transfer[] { TextTransfer.getInstance() });
				clipboard.dispose();
				return true;
			});
			hands.key("ctrl+v");
			hands.rest(PAUSE);
			hands.type(" seven");
			hands.rest(PAUSE);
			String because = hands.see(box("Because", 0).orElseThrow()::getText);
			if (!because.replaceAll("\\s+", " ").equals("One two three four five six seven")) {
				throw new AssertionError("the field has: " + because);
			}
			hands.key("ctrl+a");
			hands.type("One two three");
			hands.rest(2000);
		});
		drive.check("card: a value that is put right has no complaint", () -> {
			Text limit = at("Expect, limit");
			hands.key("ctrl+a");
			hands.type("12 xyz xyz");
			wait("a complaint", () -> hands.says("does not fit"));
			hands.key("ctrl+a");
			hands.type("11.5 V");
			wait("no complaint", () -> !hands.says("does not fit") && hands.see(() -> limit.getText().equals("11.5 V")));
		});
		drive.check("card: what does not fit is kept, told at a save, and keeps the editor open", () -> {
			at("Expect, limit");
			hands.key("ctrl+a");
			hands.type("12 Ohm xx");
			wait("a complaint", () -> hands.says("does not fit"));
			select("Voltage");
			select("Lamp lit here, and there again");
			wait("what did not fit, and why", () -> shows("Expect, limit", "12 Ohm xx") && hands.says("does not fit"));
			hands.key("ctrl+s");
			wait("what is told", () -> hands.front().equals("Not all is in the text"));
			hands.picture("card-refused");
			hands.click(hands.find(Button.class, "OK"));
			hands.key("ctrl+w");
			wait("a question", () -> hands.look(Button.class, button -> Hands.label(button).equals("Don't Save")).isPresent());
			hands.click(hands.find(Button.class, "Save", button -> Hands.label(button).equals("Save")));
			wait("what is told", () -> hands.front().equals("Not all is in the text"));
			hands.click(hands.find(Button.class, "OK"));
			wait("the editor is still open", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("*fields.bay")).isPresent());
			at("Expect, limit");
			hands.key("ctrl+a");
			hands.type("11.5 V");
			wait("nothing is left to save", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("fields.bay")).isPresent());
		});
		drive.check("card: another program changes the file while somebody types", () -> {
			at("Because");
			hands.key("ctrl+s", "End");
			hands.type("; four");
			hands.rest(PAUSE);
			hands.key("ctrl+s");
			wait("it is saved", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("fields.bay")).isPresent());
			change();
			// what is typed before the change is noticed makes the editor ask, as it must
			says("changed outside");
			hands.type(", five");
			hands.rest(PAUSE);
			says("because \"One two three; four, five\"");
			wait("the same card", () -> hands.says("Rule: Lamp lit here"));
		});
		drive.check("card: who saves in the middle of typing saves what is typed", () -> {
			at("Because");
			hands.key("End");
			hands.type("; six");
			hands.key("ctrl+s");
			wait("it is on the disk", () -> onDisk().contains("four, five; six"));
			wait("nothing is left to save", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("fields.bay")).isPresent());
		});
		drive.check("card: what is not written yet is kept while one looks at another element", () -> {
			select("Voltage");
			select("Lamp lit here, and there again");
			choose("Outcome", 0, "met");
			wait("a line that is not whole", () -> hands.says("Not written yet"));
			row("Voltage");
			wait("its card", () -> hands.says("Test: Voltage"));
			row("Lamp lit here, and there again (not written yet)");
			wait("what was begun", () -> all(Combo.class, "Outcome").stream().anyMatch(combo -> hands.see(() -> combo.getText().equals("met"))));
			hands.picture("card-kept");
			choose("Outcome, met", 0, "confirms");
			fill("Outcome, confirms", 0, "Broken");
			says("met : confirms lamp.broken");
			hands.click(hands.find(Button.class, "Add\u2026"));
			hands.rest(400);
			hands.chooseOpen("Trouble code (code)");
			wait("a new card", () -> hands.says("New: Trouble code"));
			fill("Title", 0, "Code two");
			row("Voltage");
			wait("its card", () -> hands.says("Test: Voltage"));
			row("New: Trouble code (not written yet)");
			wait("what was begun", () -> shows("Title", "Code two"));
		});
		drive.check("card: Tab takes what is chosen in the list, and nothing is lost by who goes on at once", () -> {
			select("Code one");
			press("+ Runs");
			choose("Runs", 0, "in");
			Text state = box("Runs, in", 0).orElseThrow();
			hands.click(state);
			hands.rest(1500);
			hands.type("Ignit");
			hands.rest(800);
			hands.key("Tab");
			hands.type("on");
			hands.key("Tab");
			hands.click(hands.find(Button.class, "Add\u2026"));
			hands.rest(400);
			hands.chooseOpen("Part");
			says("runs in ignition on");
		});
		drive.check("card: the keyboard goes on where something has to be filled in", () -> {
			select("Finch");
			press("+ more");
			stands("title");
			hands.type("Diesel");
			hands.key("Tab");
			hands.rest(PAUSE);
			says("diesel \"Diesel\"");
			if (hands.see(() -> Display.getCurrent().getFocusControl() instanceof Text field && field.getText().equals("Diesel"))) {
				throw new AssertionError("Tab came back into the same field");
			}
		});
		drive.check("card: what cannot be put right by itself leads into its field", () -> {
			select("Code one");
			Text code = box("Code, dtc", 0).orElseThrow();
			hands.click(code);
			hands.key("ctrl+a");
			hands.type("X1");
			hands.key("Tab");
			wait("what is wrong", () -> hands.look(Hyperlink.class, link -> link.getText().equals("Fix\u2026")).isPresent());
			press("Fix\u2026");
			wait("the keyboard in the field", () -> hands.see(code::isFocusControl));
			hands.key("ctrl+a");
			hands.type("P0AA6");
			hands.key("Tab");
			says("dtc P0AA6");
		});
		drive.check("card: a link that is clicked while something is typed does what it says", () -> {
			select("Lamp");
			at("Fault, title");
			hands.type(" wire");
			press("+ another fault");
			hands.rest(2000);
			says("\"Broken wire\"");
			wait("one more fault", () -> box("Fault, title", 1).isPresent());
			stands("title");
		});
		drive.check("card: what is begun stays, on the card that shows by itself and when another program changes the file", () -> {
			hands.key("ctrl+s");
			turn("Text");
			hands.click(text);
			hands.key("ctrl+Home");
			turn("Card");
			wait("the first card", () -> hands.says("Part: Lamp"));
			press("+ Picture");
			hands.type("here");
			hands.key("Tab");
			wait("a line that is not whole", () -> hands.says("Not written yet"));
			row("Voltage");
			wait("its card", () -> hands.says("Test: Voltage"));
			row("Lamp (not written yet)");
			wait("what was begun", () -> hands.says("Part: Lamp") && hands.says("Not written yet"));
			hands.rest(1000);
			change();
			says("// changed outside\n// changed outside\n");
			hands.rest(PAUSE);
			wait("what was begun", () -> hands.says("Part: Lamp") && hands.says("Not written yet"));
		});
		drive.check("card: what is begun and all of the text stay when another program deletes the file", () -> {
			String before = now();
			hands.key("ctrl+s");
			hands.rest(1000);
			delete();
			wait("what is told", () -> hands.front().equals("The file is gone"));
			hands.click(hands.find(Button.class, "Keep it here"));
			hands.rest(500);
			hands.key("ctrl+s");
			wait("the question where to", () -> hands.front().equals("Save As"));
			hands.picture("card-gone");
			hands.click(hands.find(Button.class, "OK"));
			wait("the file", () -> Files.exists(folder.resolve("fields.bay")) && onDisk().equals(before));
			wait("the text", () -> now().equals(before));
			row("Lamp (not written yet)");
			wait("what was begun", () -> hands.says("Part: Lamp") && hands.says("Not written yet"));
		});
		drive.check("card: who closes the editor is asked about what is begun and not whole", () -> {
			hands.key("ctrl+s");
			hands.rest(1000);
			hands.key("ctrl+w");
			wait("a question", () -> hands.front().equals("Not all is in the text") && hands.says("New: Trouble code"));
			hands.picture("card-begun");
			hands.click(hands.find(Button.class, "Go on with the card"));
			hands.rest(500);
			row("New: Trouble code (not written yet)");
			wait("what was begun", () -> shows("Title", "Code two"));
			hands.key("ctrl+w");
			wait("a question", () -> hands.front().equals("Not all is in the text"));
			hands.click(hands.find(Button.class, "Close and lose it"));
			wait("the editor is closed", () -> hands.look(CTabItem.class, tab -> tab.getText().endsWith("fields.bay")).isEmpty());
		});
		drive.check("card: a file with begun lines is deleted", () -> drive.forget("fields.bay"));
	}

	/** Chooses an element by the words of its row. */
	private void row(String words) {
		Table list = hands.find(Table.class, "the elements", table -> table.getItemCount() > 0 && table.getColumnCount() == 0);
		TableItem found = hands.see(() -> {
			for (TableItem item : list.getItems()) {
				if (item.getText().equals(words)) {
					return item;
				}
			}
			return null;
		});
		if (found == null) {
			throw new AssertionError("no row " + words + " in " + hands.see(() -> Arrays.stream(list.getItems()).map(TableItem::getText).toList()));
		}
		Point at = hands.see(() -> list.toDisplay(found.getBounds().x + 20, found.getBounds().y + found.getBounds().height / 2));
		hands.click(at, 1, 1);
		hands.rest(500);
	}

	/** Sees that the keyboard is in an empty field whose name ends so. */
	private void stands(String name) {
		try {
			wait("the keyboard in " + name, () -> hands.see(() -> Display.getCurrent().getFocusControl() instanceof Text field
					&& field.getText().isEmpty() && String.valueOf(field.getToolTipText()).endsWith(name)));
		} catch (AssertionError e) {
			throw new AssertionError("the keyboard is not in " + name + " but in " + hands.see(() -> Display.getCurrent().getFocusControl() + " "
					+ Display.getCurrent().getFocusControl().getToolTipText()));
		}
	}

	private void change() {
		try {
			Files.writeString(folder.resolve("fields.bay"), "// changed outside\n" + onDisk());
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	private void delete() {
		try {
			Files.delete(folder.resolve("fields.bay"));
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	private String onDisk() {
		try {
			return Files.readString(folder.resolve("fields.bay"));
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Types parts with a pause behind each, and sees that the field has them in a row at last. */
	private void type(String name, String... partsAndResult) {
		at(name);
		for (int i = 0; i < partsAndResult.length - 1; i++) {
			hands.type(partsAndResult[i]);
			hands.rest(PAUSE);
		}
		String result = partsAndResult[partsAndResult.length - 1];
		wait(name + " with " + result + " and not " + box(name, 0).map(field -> hands.see(field::getText)).orElse("nothing"), () -> shows(name, result));
	}

	/** Puts the keyboard at the end of a field. */
	private Text at(String name) {
		wait("the field " + name, () -> box(name, 0).isPresent());
		Text field = box(name, 0).orElseThrow();
		hands.click(field);
		hands.key("End");
		return field;
	}
}
