package drive;

import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Writes rules on cards alone, as somebody does who never looks at the text; the text is only read to see what came of it. */
final class Cards extends CardHands {

	private final Drive drive;

	Cards(Drive drive, Hands hands) {
		super(hands);
		this.drive = drive;
	}

	void go() {
		drive.check("card: an empty file has one, which says how to begin", () -> {
			drive.window();
			newFile("cards");
			turn("Card");
			wait("the first word", () -> hands.says("Press Add"));
			hands.picture("card-empty");
		});
		drive.check("card: a part with its faults", () -> {
			begin("part");
			fill("Title", 0, "Glow lamp");
			says("part glow_lamp \"Glow lamp\" {\n}\n");
			fill("Fault, title", 0, "Filament broken");
			says("  fault filament_broken \"Filament broken\"\n");
			press("+ another fault");
			fill("Fault, title", 1, "Socket corroded");
			says("  fault socket_corroded \"Socket corroded\"\n");
			hands.picture("card-part");
		});
		drive.check("card: a sign and a test", () -> {
			begin("sign");
			fill("Title", 0, "Lamp stays dark");
			says("sign lamp_stays_dark \"Lamp stays dark\"");
			begin("test");
			fill("Title", 0, "Voltage at the socket");
			fill("Measures, unit", 0, "V");
			fill("Measures, from", 0, "0");
			fill("Measures, to", 0, "18");
			fill("Measures, step", 0, "0.1");
			says("  measures V 0 .. 18 step 0.1\n");
			fill("Takes", 0, "5 min");
			says("  takes 5 min\n");
			hands.picture("card-test");
		});
		drive.check("card: a rule with its outcomes", () -> {
			begin("rule");
			fill("Title", 0, "Lamp without current");
			choose("For", 0, "every family");
			says("  for every family\n");
			fill("Given", 0, "Lamp stays dark");
			says("  given lamp_stays_dark\n");
			fill("Run", 0, "Voltage at the socket");
			says("  run voltage_at_the_socket\n");
			choose("Expect", 0, "at least");
			fill("Expect, limit", 0, "11 V");
			says("  expect at_least 11 V\n");
			choose("Outcome", 0, "met");
			choose("Outcome, met", 0, "confirms");
			fill("Outcome, confirms", 0, "Filament broken");
			says("  met : confirms glow_lamp.filament_broken\n");
			fill("Because", 0, "Voltage is there and the lamp is dark.");
			choose("Source", 0, "practice");
			fill("By", 0, "A. Author");
			says("  source practice\n");
			says("  by \"A. Author\" on ");
			hands.picture("card-rule");
		});
		drive.check("card: a repair and how it is verified", () -> {
			begin("repair");
			fill("Title", 0, "Replace the lamp");
			fill("Fixes", 0, "Filament broken");
			says("  fixes glow_lamp.filament_broken\n");
			fill("Steps", 0, "Pull the old lamp out, push the new one in.");
			says("  steps \"Pull the old lamp out, push the new one in.\"\n");
			fill("Takes", 0, "10 min");
			hands.picture("card-repair");
		});
		drive.check("card: what is done is undone one by one", () -> {
			String before = now();
			fill("Takes", 0, "12 min");
			says("  takes 12 min\n");
			hands.key("ctrl+z");
			wait("one step back", () -> now().equals(before));
			wait("the card shows it", () -> shows("Takes", "10 min"));
		});
		drive.check("card: copy and paste work in the field and not on the text", () -> {
			String before = now();
			Text field = box("Takes", 0).orElseThrow();
			hands.click(field);
			hands.key("ctrl+a", "ctrl+c", "End", "ctrl+a", "ctrl+v");
			wait("the same again", () -> shows("Takes", "10 min"));
			hands.key("ctrl+a", "ctrl+x");
			wait("nothing", () -> shows("Takes", ""));
			hands.key("ctrl+v");
			wait("the same again", () -> shows("Takes", "10 min"));
			hands.key("Tab");
			wait("the text as it was", () -> now().equals(before));
		});
		drive.check("card: a sign that is missing is added where it is named, and one undo takes it back", () -> {
			begin("rule");
			fill("Title", 0, "Hums");
			says("rule hums \"Hums\" {\n}\n");
			String before = now();
			Text given = box("Given", 0).orElseThrow();
			hands.click(given);
			hands.rest(1500);
			hands.type("Hums at night");
			hands.rest(800);
			hands.picture("card-new-sign");
			hands.key("Down", "Return");
			says("  given hums_at_night\n");
			says("sign hums_at_night \"Hums at night\"\n");
			hands.rest(800);
			hands.key("ctrl+z");
			wait("both are gone", () -> now().equals(before));
			hands.click(hands.find(Button.class, "Delete"));
			wait("the rule is gone", () -> !now().contains("rule hums"));
		});
		drive.check("card: another element like the one that is shown", () -> {
			String before = now();
			select("Glow lamp");
			hands.click(hands.find(Button.class, "Add\u2026"));
			hands.rest(400);
			hands.chooseOpen("Another like \u201cGlow lamp\u201d");
			says("part glow_lamp_2 \"Glow lamp (copy)\" {\n  fault filament_broken \"Filament broken\"\n");
			wait("its card", () -> hands.says("Part: Glow lamp (copy)"));
			hands.click(hands.find(Button.class, "Delete"));
			wait("it is gone", () -> now().equals(before));
		});
		drive.check("card: an element that others speak of goes only when one is sure", () -> {
			String before = now();
			select("Voltage at the socket");
			hands.click(hands.find(Button.class, "Delete"));
			wait("a question", () -> hands.says("Other elements speak of it"));
			hands.picture("card-delete");
			hands.click(hands.find(Button.class, "Keep"));
			wait("nothing is gone", () -> now().equals(before));
			hands.click(hands.find(Button.class, "Delete"));
			wait("a question", () -> hands.says("Other elements speak of it"));
			hands.click(hands.find(Button.class, "Delete", button -> Hands.label(button).equals("Delete") && button.getShell().getText().startsWith("Delete ")));
			wait("it is gone", () -> !now().contains("test voltage_at_the_socket"));
			select("Lamp without current");
			wait("what is wrong stands at its field", () -> hands.look(Label.class, label -> Hands.label(label).contains("voltage_at_the_socket")).isPresent());
			hands.picture("card-problem");
			hands.key("ctrl+z");
			wait("it is back", () -> now().equals(before));
		});
		drive.check("card: the page of the text has the keyboard again", () -> {
			turn("Text");
			wait("the text is seen", () -> hands.see(text::isVisible));
			hands.click(text);
			hands.key("ctrl+s");
			wait("it is saved", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("cards.bay")).isPresent());
		});
		drive.check("card: its file is deleted", () -> drive.forget("cards.bay"));
	}
}
