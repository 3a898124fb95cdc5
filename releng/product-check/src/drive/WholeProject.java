package drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

import org.eclipse.swt.widgets.Button;

/** Writes a whole project from the first sign to the rule pack on cards and in the grid, without a look at the text. */
final class WholeProject extends CardHands {

	private final Drive drive;
	private final Wizards wizards;
	private final Path work;

	WholeProject(Drive drive, Hands hands, Path work) {
		super(hands);
		this.drive = drive;
		this.work = work;
		wizards = new Wizards(hands);
	}

	void go() {
		drive.check("whole project: a wizard makes it, and its first card", () -> {
			drive.window();
			wizards.empty("cart", "Reed Cart (invented)");
			newFile("lamp");
			hands.key("ctrl+s");
			turn("Card");
			wait("the first word", () -> hands.says("Press Add"));
		});
		drive.check("whole project: what can be seen, what can be broken", () -> {
			begin("Sign");
			fill("Title", 0, "Lamp stays dark");
			says("sign lamp_stays_dark");
			begin("Part");
			fill("Title", 0, "Glow lamp");
			says("part glow_lamp");
			fill("Fault, title", 0, "Filament broken");
			says("fault filament_broken");
			press("+ another fault");
			fill("Fault, title", 1, "Feed open");
			says("fault feed_open");
		});
		drive.check("whole project: a test that measures and one with results", () -> {
			begin("Test");
			fill("Title", 0, "Voltage at the socket");
			fill("Measures, unit", 0, "V");
			fill("Measures, from", 0, "0");
			fill("Measures, to", 0, "18");
			fill("Measures, step", 0, "0.1");
			says("measures V 0 .. 18 step 0.1");
			fill("Takes", 0, "5 min");
			press("+ Part it works on");
			fill("Part it works on", 0, "Glow lamp");
			says("at glow_lamp");
			begin("Test");
			fill("Title", 0, "Lamp in another socket");
			says("test lamp_in_another_socket");
			fill("Takes", 0, "3 min");
			press("+ Part it works on");
			fill("Part it works on", 0, "Glow lamp");
			fill("Results, title", 0, "Lights");
			press("+ more");
			fill("Results, title", 1, "Stays dark");
			says("results lights \"Lights\", stays_dark \"Stays dark\"");
			hands.picture("whole-test");
		});
		drive.check("whole project: what was added by mistake goes again", () -> {
			String before = now();
			begin("Sign");
			fill("Title", 0, "Not meant");
			says("sign not_meant");
			hands.click(hands.find(Button.class, "Delete"));
			wait("it is gone", () -> now().equals(before));
		});
		drive.check("whole project: a rule on a card", () -> {
			begin("Rule");
			fill("Title", 0, "No current at the lamp");
			choose("For", 0, "every family");
			fill("Given", 0, "Lamp stays dark");
			fill("Run", 0, "Voltage at the socket");
			choose("Expect", 0, "at least");
			fill("Expect, limit", 0, "11 V");
			says("expect at_least 11 V");
			outcome(0, "met", "clears", "Feed open");
			press("+ another outcome");
			outcome(1, "below", "confirms", "Feed open");
			says("below : confirms glow_lamp.feed_open");
			sign("Without voltage the feed is open.");
			hands.picture("whole-rule");
		});
		drive.check("whole project: a rule from a cell of the grid", () -> {
			hands.key("ctrl+s");
			drive.show("Test grid");
			hands.until("the grid of this project", () -> hands.says("cart"));
			Button all = hands.find(Button.class, "Also what no rule uses");
			if (!hands.see(all::getSelection)) {
				hands.click(all);
			}
			hands.rest(1500);
			hands.picture("whole-grid");
			new Grids(drive, hands).newRule(List.of("Down", "Down", "Right"), "The lamp itself", "Lamp stays dark", "Another socket is fed.", "clears", "confirms");
			says("lights     : clears glow_lamp.filament_broken");
		});
		drive.check("whole project: the repairs, and what to do when nothing explains it", () -> {
			repair("Replace the lamp", "Filament broken", "Pull the old lamp out, push the new one in.", "10 min");
			repair("Mend the feed", "Feed open", "Find the break and renew the wire.", "40 min");
			begin("Rule");
			fill("Title", 0, "Nothing explains it");
			choose("For", 0, "every family");
			fill("Given", 0, "Lamp stays dark");
			choose("Given", 0, "unexplained");
			says("given lamp_stays_dark unexplained");
			choose("Outcome", 0, "then");
			choose("Outcome, then", 0, "refers");
			fill("Outcome, refers", 0, "a specialist, with all results written down");
			sign("Nothing that can be checked here explains it.");
		});
		drive.check("whole project: a finished job", () -> {
			begin("Finished job (job)");
			fill("Name", 0, "Job 1: a dark lamp");
			fill("On", 0, "Reed Cart (invented)");
			fill("Found", 0, "Lamp stays dark");
			press("+ more");
			fill("Found, 2", 0, "Voltage at the socket");
			fill("Found, 2", 1, "12.4 V");
			press("+ more");
			fill("Found, 3", 0, "Lamp in another socket");
			fill("Found, value", 0, "Stays dark");
			choose("Was", 0, "fault");
			fill("Was", 0, "Filament broken");
			says("was glow_lamp.filament_broken");
			hands.picture("whole-job");
			hands.key("ctrl+s");
		});
		drive.check("whole project: it checks clean and is exported", () -> {
			drive.show("Flaws");
			hands.until("nothing is found", 60, () -> hands.says("Nothing found; "));
			hands.picture("whole-clean");
			Path pack = work.resolve("cart.baypack");
			wizards.export(pack);
			said("check", folder().toString());
			said("verify", pack.toString());
		});
		drive.check("whole project: it is deleted", () -> drive.forget("cart"));
	}

	private Path folder() {
		return work.resolve("empty/cart");
	}

	private void outcome(int number, String result, String proves, String fault) {
		choose("Outcome", number, result);
		choose("Outcome, " + result, 0, proves);
		fill("Outcome, " + proves, 0, fault);
		says(result + " : " + proves + " ");
	}

	private void sign(String because) {
		fill("Because", 0, because);
		choose("Source", 0, "practice");
		fill("By", 0, "A. Author");
		says("because \"" + because + "\"");
	}

	private void repair(String title, String fault, String step, String takes) {
		begin("Repair");
		fill("Title", 0, title);
		fill("Fixes", 0, fault);
		fill("Steps", 0, step);
		fill("Takes", 0, takes);
		choose("Verify", 0, "repeat what confirmed");
		says("takes " + takes);
	}

	/** Asks the command line of the product, which must have nothing to say against it. */
	private void said(String command, String about) throws IOException, InterruptedException {
		Path told = work.resolve(command + ".txt");
		Process process = new ProcessBuilder(work.resolve("place/releng/baywright").toString(), command, about).redirectErrorStream(true)
				.redirectOutput(told.toFile()).start();
		if (!process.waitFor(2, TimeUnit.MINUTES) || process.exitValue() != 0) {
			throw new AssertionError(command + " says: " + Files.readString(told));
		}
	}
}
