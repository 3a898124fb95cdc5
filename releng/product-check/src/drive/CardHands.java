package drive;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Widget;

/** Works on a card with mouse and keys; the text is only read to see what came of it. */
class CardHands {

	final Hands hands;
	StyledText text;

	CardHands(Hands hands) {
		this.hands = hands;
	}

	/** Opens a new file, empties it and keeps hold of its text. */
	void newFile(String called) {
		hands.menu("File", "New", "Rule file");
		Text name = hands.find(Text.class, "the name of the file", field -> field.getEditable() && field.getShell().getText().contains("ule file"));
		hands.click(name);
		hands.key("ctrl+a");
		hands.type(called);
		hands.click(hands.find(Button.class, "Finish"));
		wait("the editor", () -> hands.look(CTabItem.class, tab -> tab.getText().equals(called + ".bay")).isPresent());
		hands.rest(800);
		text = hands.find(StyledText.class, "the text", field -> field.getEditable() && field.isFocusControl());
		hands.click(text);
		hands.key("ctrl+a", "Delete");
	}

	void turn(String page) {
		hands.click(hands.find(CTabItem.class, page, tab -> tab.getText().equals(page)));
		hands.rest(300);
	}

	String now() {
		return hands.see(() -> text.getText().replace("\r", ""));
	}

	void says(String part) {
		try {
			wait(part, () -> now().contains(part));
		} catch (AssertionError e) {
			throw new AssertionError("not written: " + part + " in: " + now());
		}
	}

	void begin(String kind) {
		hands.click(hands.find(Button.class, "Add\u2026"));
		hands.rest(400);
		String title = kind.substring(0, 1).toUpperCase() + kind.substring(1);
		hands.chooseOpen(title);
		wait("a new card", () -> hands.says("New: " + title.replaceFirst(" \\(.*", "")));
		hands.rest(300);
	}

	/** Returns a field by what is told of it under the mouse. */
	Optional<Text> box(String name, int number) {
		List<Text> all = all(Text.class, name);
		return number < all.size() ? Optional.of(all.get(number)) : Optional.empty();
	}

	<C extends Control> List<C> all(Class<C> kind, String name) {
		List<Widget> seen = hands.seen();
		return hands.see(() -> seen.stream().filter(kind::isInstance).map(kind::cast).filter(each -> !each.isDisposed() && name.equals(each.getToolTipText()))
				.toList());
	}

	boolean shows(String name, String value) {
		Optional<Text> field = box(name, 0);
		return field.isPresent() && hands.see(() -> !field.get().isDisposed() && field.get().getText().equals(value));
	}

	void fill(String name, int number, String typed) {
		seen("the field " + name, () -> box(name, number).isPresent());
		Text field = box(name, number).orElseThrow();
		hands.click(field);
		hands.key("ctrl+a");
		hands.type(typed);
		hands.rest(200);
		// a list that is open is left first
		hands.key("Escape", "Tab");
		hands.rest(300);
	}

	void choose(String name, int number, String option) {
		seen("the choice " + name, () -> all(Combo.class, name).size() > number);
		Combo combo = all(Combo.class, name).get(number);
		hands.click(combo);
		hands.rest(1000);
		hands.key("Home");
		for (int i = hands.see(() -> combo.indexOf(option)); i > 0; i--) {
			hands.key("Down");
		}
		hands.key("Return");
		hands.rest(400);
	}

	void press(String label) {
		hands.click(hands.findAny(label));
		hands.rest(500);
	}

	void select(String title) {
		Table list = hands.find(Table.class, "the elements", table -> table.getItemCount() > 0 && table.getColumnCount() == 0);
		hands.click(list);
		hands.key("Home");
		for (int i = 0; i < 30 && !hands.see(() -> list.getSelectionCount() > 0 && list.getSelection()[0].getText().equals(title)); i++) {
			hands.key("Down");
		}
		wait("its card", () -> hands.look(Label.class, label -> Hands.label(label).endsWith(": " + title)).isPresent());
	}

	/** Waits for a control; an error tells which there are. */
	private void seen(String what, BooleanSupplier so) {
		try {
			wait(what, so);
		} catch (AssertionError e) {
			List<Widget> all = hands.seen();
			throw new AssertionError(what + " is not among " + hands.see(() -> all.stream().filter(each -> !each.isDisposed() && each instanceof Control)
					.map(each -> ((Control) each).getToolTipText()).filter(tip -> tip != null && !tip.isEmpty()).toList()));
		}
	}

	void wait(String what, BooleanSupplier so) {
		long end = System.nanoTime() + 20_000_000_000L;
		while (!so.getAsBoolean()) {
			if (System.nanoTime() > end) {
				throw new AssertionError("not seen: " + what + "; seen: " + hands.labels());
			}
			Hands.rest(100);
		}
	}
}
