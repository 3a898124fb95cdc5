package drive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;

/** Groups of cases that can be driven by themselves, once there are rules to work with. */
final class Groups {

	/** Whether the controls of the platform's own windows are used too, which takes some minutes more. */
	static final boolean ALL = Boolean.getBoolean("drive.all");
	/** What we show ourselves, or bring into the window. */
	private static final Set<String> OURS = Set.of("Flaws", "Picture", "Plan", "Test grid", "Bench", "Finished jobs", "Help", "Ten-minute walk", "Outline",
			"Project Explorer", "Editor", "Window", "Rule project", "Rule file", "Rule", "Vehicle family", "Example rules", "Rule pack", "Jump to",
			"About Baywright", "Enter something else", "Edit a cell of the grid", "Paste from a spreadsheet", "Let the test say nothing of the fault");

	private static final String CHAIN = """
			sign dark "Lamp dark" do_not_start "It may burn."
			test at_fuse "Voltage behind the fuse" { measures V 0 .. 18 step 0.1 }
			test at_plug "Voltage at the plug" { measures V 0 .. 18 step 0.1 }
			test at_lamp "Voltage at the lamp" { measures V 0 .. 18 step 0.1 }
			part lamp_line "Lamp line" {
			fault fuse
			fault wire
			fault socket
			}
			chain lamp_feed "Feed of the lamp" {
			given dark
			point at_fuse expect at_least 11 V : lamp_line.fuse
			point at_plug expect at_least 11 V : lamp_line.wire
			point at_lamp expect at_least 11 V : lamp_line.socket
			because "It is a line."
			source practice
			by "A. Author" on 2026-03-02
			}
			""";

	/** What the bench alone says. */
	private static final Pattern BENCH = Pattern.compile("Found so far|What each rule says|Choose the vehicle to begin");

	private final Drive drive;
	private final Hands hands;
	private final Controls controls;
	private final Path work;

	Groups(Drive drive, Hands hands, Controls controls, Path work) {
		this.drive = drive;
		this.controls = controls;
		this.hands = hands;
		this.work = work;
	}

	/** Drives those that are named. */
	void go(Set<String> named) {
		Map<String, Drive.Case> all = new LinkedHashMap<>();
		all.put("contexts", () -> contexts(List.of("Flaws", "Picture", "Plan", "Test grid", "Bench", "Finished jobs", "Outline", "Help")));
		all.put("bench", () -> {
			bench();
			dangerAndChain();
			plan();
		});
		all.put("wizards", this::wizards);
		// before what is written on cards brings in more columns
		all.put("grid", () -> new Grids(drive, hands).go());
		all.put("card", () -> new Cards(drive, hands).go());
		all.put("fields", () -> new Fields(drive, hands, work).go());
		all.put("project", () -> new WholeProject(drive, hands, work).go());
		all.put("labels", this::labels);
		all.put("outside", () -> new Outside(drive, hands, work).go());
		all.put("jobs", () -> new Jobs(drive, hands, work).go());
		all.put("controls", this::controls);
		all.forEach((name, cases) -> {
			if (named.contains(name)) {
				drive.group(name, cases);
			}
		});
	}

	/** Follows the words that lead somewhere in what is told of a flaw. */
	void words() {
		drive.check("words that lead in a flaw", () -> new Sweep(drive, hands, controls).links(() -> {
			drive.window();
			hands.click(drive.tab("Flaws"));
			hands.click(hands.see(drive::contradiction));
			hands.rest(500);
		}, drive::details));
	}

	/** Enters what the bench asks for, until a rule fires. */
	void bench() {
		drive.check("bench: what becomes of a job", this::becomesOfJob);
		drive.check("words that lead in the help on bench and plan", () -> {
			for (String view : List.of("Bench", "Plan")) {
				new Sweep(drive, hands, controls).links(() -> {
					drive.window();
					drive.helpOn(view);
				}, () -> hands.find(StyledText.class, "the help", text -> text.isVisible() && Controls.place(text).equals("Help")));
			}
		});
		drive.check("bench: enter, undo, redo, begin anew", () -> {
			// the views show the project of the editor
			drive.ready();
			drive.show("Bench");
			// a year, which is typed
			enterElse("vehicle built");
			Text year = hands.find(Text.class, "the year", field -> field.getMessage().matches("\\d+ to \\d+"));
			hands.click(year);
			hands.type("2018");
			hands.click(hands.find(Button.class, "Enter"));
			hands.until("one line", () -> tells("built: 2018"));
			hands.click(hands.find(ToolItem.class, "Undo"));
			hands.until("no line", () -> !tells("built: 2018"));
			hands.click(hands.find(ToolItem.class, "Redo"));
			hands.until("one line again", () -> tells("built: 2018"));
			hands.clickWords(told(), "built: 2018");
			hands.click(hands.find(Button.class, "Take away"));
			hands.until("taken away", () -> !tells("built: 2018"));
			hands.click(hands.find(ToolItem.class, "Undo"));
			hands.until("it is back", () -> tells("built: 2018"));
			hands.click(hands.find(ToolItem.class, "Start over with the same family"));
			hands.until("no line again", () -> !tells("built: 2018"));
			// what the bench asks for next, until a rule fires
			hands.until("the complaint is asked for", () -> hands.says("What is wrong with the vehicle?"));
			hands.pick(hands.find(Combo.class, "the complaint", list -> Controls.place(list).equals("Bench") && list.indexOf("Intermittent no-crank") >= 0), "Intermittent no-crank");
			hands.click(hands.find(Button.class, "Enter"));
			hands.until("why the next step", () -> tells("Why this"));
			hands.picture("bench-prompt");
			followBench();
			enterElse("rest voltage");
			hands.until("what to type", () -> hands.says("Type the value, from "));
			hands.type("11.5");
			hands.key("Return");
			hands.until("it is noted", () -> tells("Battery voltage at rest: 11.5 V"));
			hands.clickWords(told(), "What each rule says");
			hands.until("a rule applies", () -> tells("Rules that applied"));
			hands.picture("bench-applied");
			followBench();
		});
	}

	/** A job as far as its repair: its page, its copy, the rule that it teaches, and keeping it, which is thought better of. */
	private void becomesOfJob() {
		drive.ready();
		drive.show("Bench");
		hands.until("the complaint is asked for", () -> hands.says("What is wrong with the vehicle?"));
		hands.pick(hands.find(Combo.class, "the complaint", list -> Controls.place(list).equals("Bench") && list.indexOf("Intermittent no-crank") >= 0), "Intermittent no-crank");
		hands.click(hands.find(Button.class, "Enter"));
		hands.until("why the next step", () -> tells("Why this"));
		hands.click(hands.find(Button.class, "Enter something else\u2026"));
		hands.until("all that can be entered", () -> hands.front().equals("Enter something else"));
		hands.click(hands.find(Button.class, "Cancel"));
		hands.until("nothing was chosen", () -> !hands.front().equals("Enter something else"));
		enterElse("rest voltage");
		hands.type("11.5");
		hands.key("Return");
		hands.until("the repair", () -> tells("Repair: "));
		hands.click(hands.find(Button.class, "Done"));
		hands.rest(1000);
		String draft = "Draft a rule from this job";
		String before = hands.see(drive::editorText);
		for (String end : List.of("Cancel", "OK")) {
			hands.click(hands.find(ToolItem.class, draft));
			hands.until("the dialog", () -> hands.front().equals(draft));
			hands.pick(hands.find(Combo.class, "the cause", list -> list.getShell().getText().equals(draft) && list.indexOf("Starter relay: Contacts burnt") >= 0), "Starter relay: Contacts burnt");
			Combo test = hands.find(Combo.class, "the test", list -> list.getShell().getText().equals(draft) && list.indexOf("Battery voltage at rest") >= 0);
			hands.pick(test, "Battery voltage at rest");
			controls.use(test);
			hands.until("what comes of it", 60, () -> hands.look(Text.class, text -> text.getText().startsWith("With this rule") || text.getText().startsWith("The rules still")).isPresent());
			hands.picture("draft");
			hands.click(hands.find(Button.class, end, button -> button.getShell().getText().equals(draft) && Hands.label(button).equals(end)));
			hands.until("the window", () -> !hands.front().equals(draft));
		}
		hands.until("the draft", () -> drive.editorText().contains("_by_rest_voltage"));
		// by the draft another cause is confirmed too, with a repair of its own
		hands.until("a choice of repairs", 30, () -> tells("Repairs"));
		hands.clickWords(told(), "Replace the starter relay");
		hands.until("the other repair", () -> tells("Repair: Replace the starter relay"));
		for (int i = 0; i < 40 && !hands.see(drive::editorText).equals(before); i++) {
			hands.key("ctrl+z");
		}
		hands.until("it is taken back", () -> drive.editorText().equals(before));
		for (String tool : List.of("Job sheet", "Keep as a finished job", "Copy as a finished job")) {
			hands.click(hands.find(ToolItem.class, tool));
			hands.rest(1500);
			hands.picture("bench-" + tool.replace(' ', '-'));
			hands.alone();
		}
		hands.until("the job is copied", () -> Entries.copied().contains("found sometimes_dead"));
		hands.click(hands.find(ToolItem.class, "Start over with the same family"));
		hands.until("begun anew", () -> hands.says("What is wrong with the vehicle?"));
	}

	private StyledText told() {
		return hands.find(StyledText.class, "what the bench tells", text -> (text.getStyle() & SWT.READ_ONLY) != 0 && BENCH.matcher(text.getText()).find());
	}

	private boolean tells(String words) {
		return hands.look(StyledText.class, text -> (text.getStyle() & SWT.READ_ONLY) != 0 && text.getText().contains(words)).isPresent();
	}

	/** Chooses among all that can be entered, by some of its words. */
	private void enterElse(String words) {
		hands.click(hands.find(Button.class, "Enter something else\u2026"));
		hands.until("all that can be entered", () -> hands.front().equals("Enter something else"));
		hands.type(words);
		hands.until("the only one", () -> hands.look(Table.class, table -> table.getShell().getText().equals("Enter something else") && table.getItemCount() == 1).isPresent());
		hands.picture("enter-else");
		hands.key("Return");
		hands.until("what is entered", () -> !hands.front().equals("Enter something else"));
	}

	/** Follows the words that lead somewhere in what the bench tells. */
	private void followBench() {
		new Sweep(drive, hands, controls).links(() -> {
			drive.window();
			drive.show("Bench");
		}, this::told);
	}

	/** What can hurt stands on top; of a line of check points the one that halves what is left comes first. */
	private void dangerAndChain() {
		drive.check("bench: a precaution stands on top, and a chain is halved", () -> {
			drive.ready();
			String before = hands.see(drive::editorText);
			hands.click(drive.editor());
			hands.key("ctrl+End", "Return");
			hands.typeLines(CHAIN, 12);
			hands.key("Escape");
			drive.show("Bench");
			hands.click(hands.find(ToolItem.class, "Start over with the same family"));
			hands.until("the complaint is asked for", () -> hands.look(Combo.class, list -> Controls.place(list).equals("Bench") && list.indexOf("Lamp dark") >= 0).isPresent());
			hands.pick(hands.find(Combo.class, "the complaint", list -> Controls.place(list).equals("Bench") && list.indexOf("Lamp dark") >= 0), "Lamp dark");
			hands.click(hands.find(Button.class, "Enter"));
			hands.until("do not start, before all else", () -> told().getText().strip().startsWith("Before anything else")
					&& told().getText().contains("Do not start the vehicle. It may burn."));
			hands.until("the middle of the chain first", () -> hands.look(Label.class, label -> label.getText().equals("Voltage at the plug")).isPresent());
			hands.picture("bench-chain");
			followBench();
			hands.click(hands.find(ToolItem.class, "Start over with the same family"));
			hands.click(drive.editor());
			for (int i = 0; i < 400 && !hands.see(drive::editorText).equals(before); i++) {
				hands.key("ctrl+z");
			}
			hands.until("all of it is undone", () -> drive.editorText().equals(before));
		});
	}

	/** What a change of the rules moves in the plan stands on top of it. */
	void plan() {
		drive.check("plan: a fault that is seen oftener moves it", () -> {
			drive.ready();
			drive.show("Plan");
			hands.until("the figures", 60, () -> planTells("No order of steps costs less."));
			hands.until("no change yet", () -> !planTells("Moved by changes of the rules: "));
			hands.picture("plan");
			hands.clickWords(drive.editor(), "seen 12");
			hands.key("End", "BackSpace", "BackSpace");
			hands.type("92");
			hands.until("what the change moved", 60, () -> planTells("Moved by changes of the rules: cost 19 \u2192 18, "));
			hands.until("the last of it", 60, () -> planTells("first step: Voltage drop from the engine block to battery minus, key in start \u2192 Battery voltage at rest"));
			hands.picture("plan-moved");
			hands.click(hands.find(ToolItem.class, "Hold what comes against this plan"));
			hands.until("begun anew", () -> !planTells("Moved by changes"));
			hands.clickWords(drive.editor(), "seen 92");
			for (int i = 0; i < 20 && !hands.see(drive::editorText).contains("seen 12"); i++) {
				hands.key("ctrl+z");
			}
			hands.until("and back", 60, () -> planTells("Moved by changes of the rules: cost 18 \u2192 19, "));
			hands.click(hands.find(ToolItem.class, "Hold what comes against this plan"));
			hands.until("begun anew again", () -> !planTells("Moved by changes"));
			hands.click(hands.find(ToolItem.class, "Show the plan as a page to print"));
			hands.rest(1500);
			hands.picture("plan-sheet");
			hands.alone();
		});
	}

	private boolean planTells(String words) {
		return hands.look(StyledText.class, text -> (text.getStyle() & SWT.READ_ONLY) != 0 && Controls.place(text).equals("Plan") && text.getText().contains(words)).isPresent();
	}

	/** Follows the words that lead somewhere in what is told of a job. */
	void jobs() {
		drive.check("words that lead in a job", () -> new Sweep(drive, hands, controls).links(() -> {
			drive.ready();
			drive.show("Finished jobs");
			Table jobs = hands.find(Table.class, "the jobs", table -> table.getColumnCount() > 2 && table.getColumn(0).getText().equals("Job") && table.getItemCount() > 0);
			Point first = hands.see(() -> {
				Rectangle bounds = jobs.getItem(0).getBounds(0);
				return jobs.toDisplay(bounds.x + 20, bounds.y + bounds.height / 2);
			});
			hands.click(first, 1, 1);
			hands.rest(400);
		}, () -> hands.find(StyledText.class, "what is told of the job", text -> text.isVisible() && text.getText().contains("Rules that applied")
				&& Controls.place(text).equals("Finished jobs"))));
	}

	/** What is live only after something else was done. */
	private void sequences() {
		bench();
		dangerAndChain();
		plan();
		jobs();
		drive.check("find whole words", () -> {
			drive.ready();
			hands.menu("Edit", "Find/Replace...");
			hands.key("ctrl+a");
			hands.type("ground_drop");
			Button whole = hands.find(Button.class, "Whole word");
			hands.until("Whole word is live", whole::isEnabled);
			boolean before = hands.see(whole::getSelection);
			hands.click(whole);
			hands.until("Whole word is chosen", () -> whole.getSelection() != before);
			hands.click(hands.find(Button.class, "Find"));
			hands.click(hands.find(Button.class, "Close"));
			hands.until("the word", () -> drive.editor().getSelectionText().equals("ground_drop"));
		});
		drive.check("rename with a preview, and back", () -> {
			for (String[] names : new String[][] { { "strap_by_drop", "strap_by_fall" }, { "strap_by_fall", "strap_by_drop" } }) {
				drive.ready();
				hands.clickWords(drive.editor(), names[0]);
				hands.key("F2");
				hands.until("the dialog", () -> hands.look(Button.class, button -> Hands.label(button).startsWith("Preview")).isPresent());
				hands.key("ctrl+a");
				hands.type(names[1]);
				if (names[1].endsWith("fall")) {
					hands.click(hands.find(Button.class, "Preview >"));
					hands.until("what will change", () -> hands.look(Button.class, button -> Hands.label(button).contains("Back") && button.isEnabled()).isPresent());
					hands.picture("rename-preview");
				}
				hands.click(hands.find(Button.class, "OK"));
				hands.until("the new name", () -> drive.editor().getText().contains("rule " + names[1]));
			}
		});
		drive.check("search for a text, and its Replace", () -> {
			for (String end : List.of("Replace...", "Search")) {
				drive.ready();
				hands.menu("Search", "File...");
				hands.until("the dialog", () -> hands.front().equals("Search"));
				hands.key("ctrl+a");
				hands.type("ground_drop");
				hands.click(hands.find(Button.class, end));
				hands.rest(2500);
				hands.picture("search-" + end.charAt(0));
				if (end.startsWith("R")) {
					hands.until("the dialog for what to write", () -> hands.front().contains("Replace"));
					hands.alone();
				} else {
					hands.until("what was found", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("Search")).isPresent() && hands.says("ground_drop"));
				}
			}
		});
		drive.check("a view is opened from the list of all", () -> {
			drive.ready();
			hands.menu("View", "Show", "Other...");
			hands.until("the list", () -> hands.front().equals("Show View"));
			hands.type("Test grid");
			hands.rest(1000);
			hands.key("Down");
			hands.click(hands.find(Button.class, "Open"));
			hands.until("the view in front", () -> drive.tab("Test grid").getParent().getSelection().getText().equals("Test grid"));
		});
		drive.check("views that were put away come back by their buttons", () -> {
			drive.window();
			hands.click(drive.tab("Flaws"));
			hands.menu("View", "Maximize Active View or Editor");
			hands.rest(800);
			hands.picture("put-away");
			hands.click(hands.find(ToolItem.class, "Bench"));
			hands.rest(800);
			hands.until("the bench", () -> hands.says("Vehicle"));
			drive.window();
		});
	}

	/** Uses every control that no other case has used. */
	private void controls() {
		sequences();
		Sweep sweep = new Sweep(drive, hands, controls);
		for (String view : List.of("Project Explorer", "Outline", "Flaws", "Picture", "Plan", "Test grid", "Bench", "Finished jobs", "Help", "Ten-minute walk",
				"Progress", "Search", "Editor", "Window")) {
			drive.check("controls of " + view, () -> sweep.view(view));
		}
		List<String> windows = List.of("File > New > Rule project", "File > New > Rule file", "File > New > Rule", "File > New > Vehicle family",
				"File > Bring in an example\u2026", "File > Export rule pack\u2026", "Rules > Find in rules\u2026", "Rules > Jump in the project\u2026",
				"Rules > Jump in this file\u2026", "Help > About Baywright");
		windows(sweep, windows);
		if (ALL) {
			windows(sweep, List.of("File > New > Other...", "File > Save As...", "Edit > Find/Replace...", "Rules > Rename\u2026", "Search > Search...",
					"View > Show > Other...", "Help > Find Actions"));
			platform(sweep);
		}
		drive.check("no control of ours is without a drive", () -> Controls.none(controls.unused().stream()
				.filter(name -> OURS.contains(name.substring(0, name.indexOf(" > ")))).toList()));
	}

	private void windows(Sweep sweep, List<String> windows) {
		for (String entry : windows) {
			drive.check("controls of " + entry, () -> {
				Runnable open = () -> {
					drive.ready();
					if (entry.contains("Rename")) {
						hands.clickWords(drive.editor(), "strap_by_drop");
					}
					hands.menu(entry.split(" > "));
					hands.rest(900);
				};
				open.run();
				sweep.window(open);
			});
			hands.alone();
		}
	}

	/** Windows that are the platform's, with all their fields. */
	private void platform(Sweep sweep) {
		List<String> pages;
		try {
			pages = Entries.agreed(Drive.list(), entry -> entry.startsWith("Preferences > "));
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
		drive.check("controls of the preview of Rename", () -> {
			Runnable open = () -> {
				drive.ready();
				hands.clickWords(drive.editor(), "strap_by_drop");
				hands.key("F2");
				hands.rest(700);
				hands.key("ctrl+a");
				hands.type("strap_by_fall");
				hands.click(hands.find(Button.class, "Preview >"));
				hands.rest(900);
			};
			open.run();
			sweep.window(open);
		});
		hands.alone();
		for (String page : pages) {
			drive.check("controls of " + page, () -> {
				Runnable open = () -> drive.preferencePage(page.substring("Preferences > ".length()).split(" > "));
				open.run();
				sweep.window(open);
			});
			hands.alone();
		}
	}

	/** Opens the menus of the right button: elsewhere those of the views alone, as the others are the platform's. */
	void contexts(List<String> views) {
		Contexts contexts = new Contexts(hands, drive::ready, new Entries(hands, () -> {
		}, drive::note), Drive.list());
		if (!Drive.ELSEWHERE) {
			contextsOfWindow(contexts);
		}
		for (String view : views) {
			drive.check("right button in " + view, () -> contexts.look(view, () -> hands.body(view), () -> {
				drive.show(view);
				hands.rest(500);
				Control body = hands.body(view);
				TreeItem flaw = view.equals("Flaws") ? hands.see(drive::contradiction) : null;
				return flaw != null ? hands.middle(flaw) : hands.see(() -> body instanceof Tree tree && tree.getItemCount() > 0 ? tree.toDisplay(60, tree.getHeaderHeight() + 10)
						: body instanceof Table table && table.getItemCount() > 0 ? table.toDisplay(60, table.getHeaderHeight() + 10)
								: body.toDisplay(body.getSize().x / 3, body.getSize().y / 3));
			}));
		}
	}

	private void contextsOfWindow(Contexts contexts) {
		drive.check("right button in the editor", () -> contexts.look("Editor", drive::editor, () -> hands.wordsAt(drive.editor(), "strap_by_drop")));
		for (String item : List.of("first-walk", "rules.bay")) {
			drive.check("right button on " + item, () -> contexts.look(item.endsWith(".bay") ? "File" : "Project", drive::projects,
					() -> hands.middle(hands.item(drive.projects(), item::equals))));
		}
		drive.check("what was pasted is taken back", drive::revert);
		drive.check("Copy and Cut in the editor are live on chosen words", () -> {
			for (String entry : List.of("Copy", "Cut")) {
				drive.ready();
				Point at = hands.wordsAt(drive.editor(), "strap_by_drop");
				hands.click(at, 1, 2);
				hands.until("the word", () -> drive.editor().getSelectionText().equals("strap_by_drop"));
				hands.click(at, 3, 1);
				hands.rest(400);
				hands.chooseOpen(entry);
				hands.until(entry + " brings the word to the clipboard", () -> Entries.copied().equals("strap_by_drop"));
				drive.revert();
			}
		});
		drive.check("right button beside the projects", () -> contexts.look("Beside the projects", drive::projects, () -> hands.see(() -> {
			Tree tree = drive.projects();
			return tree.toDisplay(tree.getSize().x / 2, tree.getSize().y - 8);
		})));
		drive.check("Paste in the projects is live once a file was copied", () -> {
			drive.ready();
			hands.click(hands.item(drive.projects(), "rules.bay"::equals));
			hands.key("ctrl+c");
			hands.popup(hands.item(drive.projects(), "rules.bay"::equals), "Paste");
			hands.until("the platform asks for another name", () -> hands.front().contains("Name Conflict") || hands.front().contains("Copy"));
			hands.picture("paste-of-a-file");
		});
	}

	void wizards() {
		Wizards wizards = new Wizards(hands);
		wizard("rule project", () -> wizards.project("A. Author"));
		wizard("File, New, Other, there and back", wizards::thereAndBack);
		wizard("rule file", wizards::file);
		wizard("vehicle family", wizards::family);
		wizard("rule", wizards::rule);
		wizard("rule pack", () -> {
			hands.doubleClick(hands.item(drive.projects(), "starting.bay"::equals));
			hands.until("the views show it", () -> hands.says("tried"));
			wizards.pack(work);
		});
	}

	private void wizard(String name, Runnable way) {
		drive.check("wizard: " + name, () -> {
			drive.ready();
			way.run();
		});
	}

	/** Looks whether all can be read in views. */
	void readable(List<String> views) {
		for (String view : views) {
			drive.check("all can be read in " + view, () -> {
				drive.ready();
				drive.show(view);
				hands.rest(800);
				read(view);
			});
		}
	}

	private void labels() {
		List<String> views = List.of("Project Explorer", "Outline", "Flaws", "Picture", "Plan", "Test grid", "Bench", "Finished jobs", "Help");
		readable(views);
		Rectangle before = hands.see(() -> Display.getCurrent().getActiveShell().getBounds());
		hands.resize(1280, 720);
		readable(views);
		hands.resize(before.width, before.height);
		drive.check("all can be read in the walk", () -> {
			drive.ready();
			hands.menu("Help", "Ten-minute walk");
			hands.until("the first step", () -> hands.says("Step 1 of 8"));
			List<String> wrong = new ArrayList<>();
			for (int step = 1; step <= 8; step++) {
				hands.rest(400);
				for (String each : Labels.wrong(hands)) {
					wrong.add("step " + step + ": " + each);
				}
				if (step < 8) {
					hands.click(hands.find(Button.class, "Next step"));
				}
			}
			none(wrong);
		});
		for (String entry : List.of("File > New > Rule project", "File > New > Rule file", "File > New > Rule", "File > New > Vehicle family",
				"File > Bring in an example\u2026", "File > Export rule pack\u2026", "Rules > Rename\u2026", "Search > Search...", "View > Preferences",
				"Help > About Baywright")) {
			drive.check("all can be read in " + entry, () -> {
				drive.ready();
				if (entry.contains("Rename")) {
					hands.clickWords(drive.editor(), "strap_by_drop");
				}
				hands.menu(entry.split(" > "));
				hands.rest(1500);
				read(entry);
				hands.alone();
			});
		}
	}

	private void read(String name) {
		hands.picture("read-" + name.replaceAll("[^A-Za-z0-9]+", "-"));
		none(Labels.wrong(hands));
	}

	private static void none(List<String> wrong) {
		if (!wrong.isEmpty()) {
			throw new AssertionError(wrong.size() + ": " + String.join("; ", wrong));
		}
	}
}
