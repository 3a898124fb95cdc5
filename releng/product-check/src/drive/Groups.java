package drive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Table;
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
		all.put("bench", () -> new BenchCases(drive, hands, controls).go());
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
		new BenchCases(drive, hands, controls).go();
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
					hands.rest(1000); // the button moves while the page is laid out
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
