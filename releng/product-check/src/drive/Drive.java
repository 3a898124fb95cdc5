package drive;

import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.IPath;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.MenuItem;
import org.eclipse.swt.widgets.ToolItem;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.swt.widgets.TreeItem;
import org.eclipse.swt.widgets.Widget;

/** What a user does in the product, from an empty folder on. It goes on where it was after each start of the product. */
final class Drive {

	/** Something to try. */
	interface Case {
		void run() throws Exception;
	}

	/** Whether it is another workbench into which the plug-in was installed. */
	static final boolean ELSEWHERE = "elsewhere".equals(System.getProperty("drive.only"));

	/** The groups of a whole drive. */
	private static final String[] EVERY = "first typing contexts wizards card fields grid project labels outside controls restart".split(" ");

	private final Hands hands;
	private final Controls controls;
	private final Path work;
	private final Restarts restarts;
	/** The group of the case that is driven, by the name that ONLY knows. */
	private String group = "first";

	Drive(Hands hands, Controls controls, Path work) {
		this.hands = hands;
		this.controls = controls;
		this.work = work;
		restarts = new Restarts(this, hands, work);
	}

	void go() {
		try {
			if (!part(work).equals("1")) {
				group = "restart";
			}
			switch (part(work)) {
			case "1" -> first();
			case "theme" -> restarts.afterTheme();
			case "2" -> restarts.afterRestart();
			case "3" -> restarts.afterKill();
			default -> throw new IllegalStateException("unknown part");
			}
		} catch (Throwable e) {
			note("FAILED the drive itself: " + e);
			e.printStackTrace();
			halt();
		}
	}

	static String part(Path work) {
		try {
			Path part = work.resolve("part");
			return Files.exists(part) ? Files.readString(part).strip() : "1";
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Drives a group to its end, or as far as the product lasts. */
	void group(String name, Case cases) {
		group = name;
		try {
			cases.run();
			if (!hands.gone()) {
				append("done-groups", name);
			}
		} catch (Exception e) {
			note("FAILED group " + name + ": " + e);
			e.printStackTrace();
		}
	}

	private void append(String file, String line) {
		try {
			Files.writeString(work.resolve(file), line + "\n", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
		} catch (IOException e) {
			e.printStackTrace();
		}
	}

	void note(String line) {
		append("result", line);
		if (line.startsWith("FAILED")) {
			append("failed-groups", group);
		}
	}

	void halt() {
		if (hands.gone()) {
			// the product is ending by itself, which takes its time on a busy machine, and how it ends is what the script looks at
			Hands.rest(600_000);
		}
		Runtime.getRuntime().halt(0);
	}

	void check(String name, Case body) {
		try {
			body.run();
			note("passed " + name);
			controls.save();
		} catch (Throwable e) {
			if (hands.gone()) {
				// the product ended while it was looked at; the script and the next start tell whether it should have
				return;
			}
			hands.picture("failed-" + name.replaceAll("[^A-Za-z0-9]+", "-"));
			note("FAILED " + name + ": " + String.valueOf(e.getMessage()).replace('\n', ' '));
			e.printStackTrace();
			// what is open must not stand in the way of what follows
			hands.key("Escape", "Escape", "Escape");
		}
	}

	// ---- first start -----------------------------------------------------------------------------------------------

	private void first() throws IOException {
		hands.picture("welcome");
		String only = System.getProperty("drive.only", "");
		Groups groups = new Groups(this, hands, controls, work);
		if (ELSEWHERE) {
			new Elsewhere(this, hands, controls, groups, work).go();
			halt();
		}
		Set<String> named = Set.of(only.isEmpty() ? EVERY : only.split("[+]"));
		boolean first = named.contains("first");
		group("first", () -> {
			if (first) {
				everything(groups);
			} else {
				walk();
			}
		});
		if (named.contains("typing")) {
			group("typing", () -> new Typing(this, hands).go());
		}
		if (named.contains("controls") && !first) {
			groups.words();
		}
		groups.go(named);
		if (first) {
			group("first", () -> {
				check("the text is as it was saved", this::revert);
				check("nothing is logged", () -> log());
			});
		}
		if (named.contains("restart")) {
			group = "restart";
			restarts.theme();
		}
		halt();
	}

	/** What is on the welcome page, the walk, and each menu, page of the preferences and button of a tool bar. */
	private void everything(Groups groups) throws IOException {
		check("welcome: Read the help", () -> {
			hands.click(hands.findAny("Read the help"));
			hands.until("the help's first page", () -> hands.says("First steps"));
			reopenWelcome();
		});
		check("welcome: Make a rule project", () -> {
			hands.click(hands.findAny("Make a rule project"));
			hands.until("a wizard", () -> !hands.front().equals("") && hands.look(Button.class, b -> Hands.label(b).equals("Finish")).isPresent());
			hands.picture("new-project");
			hands.click(hands.find(Button.class, "Cancel"));
			reopenWelcome();
		});
		check("welcome: Bring in an example", () -> {
			hands.click(hands.findAny("Bring in an example"));
			hands.click(hands.find(Button.class, "Cancel"));
			reopenWelcome();
		});
		check("welcome: Go to the workbench", () -> {
			hands.click(hands.findAny("Go to the workbench"));
			hands.until("the views", () -> hands.look(CTabItem.class, tab -> tab.getText().startsWith("Flaws")).isPresent());
		});
		check("the empty tree says how to begin", () -> {
			for (String link : List.of("Make a rule project", "Bring in an example", "Bring in a folder of rules")) {
				hands.click(hands.findAny(link));
				hands.rest(1500);
				hands.picture("empty-tree");
				if (link.endsWith("rules")) {
					hands.key("Escape");
				} else {
					hands.click(hands.find(Button.class, "Cancel"));
				}
				hands.rest(500);
			}
			reopenWelcome();
		});
		walk();
		check("walk: read a rule", () -> {
			step("Show the rule");
			hands.until("the rule is selected", () -> selected().equals("rule strap_by_drop"));
		});
		check("walk: meet the contradiction", () -> {
			step("Show the flaws");
			hands.until("the contradiction", 60, () -> flaw("confirm") != null);
			hands.click(hands.see(() -> flaw("confirm")));
			hands.until("its story", () -> hands.says("For example:"));
			hands.picture("walk-3");
		});
		groups.words();
		check("F1 on a flaw", () -> {
			hands.click(tab("Flaws"));
			hands.click(hands.see(() -> flaw("confirm")));
			hands.key("F1");
			hands.until("the help", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("Help")).isPresent());
			hands.picture("help-on-flaw");
			hands.click(tab("Ten-minute walk"));
		});
		check("walk: mend it by the fix in the view", () -> {
			step("Show the line");
			hands.until("the line is selected", () -> selected().contains("clears ground_strap.loose"));
			mend();
			hands.picture("mended");
		});
		check("walk: play a job through", () -> {
			step("Show the bench");
			hands.until("bench and walk, side by side", () -> hands.says("Step 5 of 8") && hands.says("Vehicle"));
			hands.picture("walk-5");
		});
		check("walk: run the finished jobs", () -> step("Show the finished jobs"));
		check("walk: look at the picture", () -> {
			step("Show the picture");
			hands.picture("walk-7");
		});
		check("walk: write the rule pack", () -> {
			step("Export the rule pack");
			hands.until("the wizard", () -> hands.look(Button.class, b -> Hands.label(b).equals("Finish")).isPresent());
			hands.picture("pack");
			hands.click(hands.find(Button.class, "Cancel"));
			hands.click(hands.find(Button.class, "Next step"));
			hands.click(hands.find(Button.class, "Make a rule project of your own"));
			hands.until("the wizard for a project", () -> hands.front().equals("Rule project"));
			hands.picture("walk-over");
			hands.click(hands.find(Button.class, "Cancel"));
			hands.click(hands.find(Button.class, "End the walk"));
		});
		check("Back and forward", () -> {
			hands.click(editor());
			hands.key("ctrl+Home");
			StyledText text = editor();
			hands.clickWords(text, "run ground_drop");
			hands.key("End", "Left", "F3");
			hands.until("the declaration", () -> text.getSelectionText().equals("ground_drop") && !line(text).contains("run"));
			hands.key("alt+Left");
			hands.until("the cursor goes back", () -> line(text).contains("run ground_drop"));
			hands.key("alt+Right");
			hands.until("the cursor goes forward", () -> !line(text).contains("run ground_drop"));
		});
		check("rename refuses while typing", () -> {
			hands.clickWords(editor(), "strap_by_drop");
			hands.key("F2");
			hands.until("the dialog", () -> hands.look(Button.class, b -> Hands.label(b).equals("OK") || Hands.label(b).equals("Finish")).isPresent());
			hands.key("ctrl+a");
			hands.type("9 bad name");
			hands.until("the refusal", () -> hands.says("is not a valid name"));
			Button finish = hands.find(Button.class, "OK", b -> List.of("OK", "Finish").contains(Hands.label(b)));
			if (hands.see(finish::isEnabled)) {
				throw new AssertionError("a name that is not allowed can be given");
			}
			hands.picture("rename-refused");
			hands.click(hands.find(Button.class, "Cancel"));
		});
		for (String view : List.of("Flaws", "Picture", "Plan", "Test grid", "Bench", "Finished jobs")) {
			check("F1 in " + view, () -> helpOn(view));
		}
		check("deleting all and undo", () -> {
			hands.click(tab("rules.bay"));
			hands.click(editor());
			hands.key("ctrl+a", "Delete");
			hands.key("ctrl+z");
			hands.until("the text is back", () -> editorText().contains("rule strap_by_drop"));
		});
		check("a part typed slowly has its braces once", () -> {
			hands.click(editor());
			hands.key("ctrl+End", "Return");
			hands.type("part lamp {");
			hands.key("Return");
			hands.type("fault dim");
			hands.key("Down");
			hands.rest(300);
			String text = hands.see(Drive.this::editorText);
			if (!text.contains("fault dim\n}") || text.contains("}}")) {
				throw new AssertionError("braces after typing: " + text.substring(Math.max(0, text.length() - 80)));
			}
		});
		check("undo back to what was saved", () -> {
			hands.click(editor());
			for (int i = 0; i < 60 && hands.see(() -> editorText().contains("part lamp")); i++) {
				hands.key("ctrl+z");
			}
			hands.key("ctrl+s");
			hands.until("nothing is left to save", () -> hands.look(CTabItem.class, t -> t.getText().equals("rules.bay")).isPresent());
		});
		check("a sign can be chosen for the picture", () -> {
			hands.click(tab("Picture"));
			Combo about = hands.find(Combo.class, "rules about", combo -> combo.getItemCount() == 4);
			hands.click(about);
			hands.rest(400);
			hands.picture("list");
			Point at = hands.see(() -> about.toDisplay(about.getSize().x / 2, about.getSize().y + 60));
			readable(hands.colours("list", hands.see(() -> about.toDisplay(8, about.getSize().y + 34)), at));
			hands.key("Down", "Return");
			hands.until("a third list", () -> hands.look(Combo.class, combo -> combo.getText().contains("crank")).isPresent());
			hands.rest(700);
			hands.picture("picture-of-a-sign");
		});
		check("the order of the grid is the one that is chosen", () -> {
			hands.click(tab("Test grid"));
			hands.click(hands.find(Combo.class, "Cheapest first"));
			hands.key("Down", "Down", "Return");
			hands.until("by title", () -> hands.look(Combo.class, combo -> combo.getText().equals("By title")).isPresent());
			hands.picture("grid-by-title");
		});
		check("bring in a folder of rules", () -> {
			hands.menu("File", "Bring in a folder of rules\u2026");
			hands.rest(1500);
			// the toolkit opens its field for a path on the first stroke and loses what is typed meanwhile
			hands.type("/");
			hands.rest(1000);
			hands.type(System.getProperty("drive.folder").substring(1));
			hands.key("Return");
			hands.rest(700);
			hands.picture("folder-dialog");
			if (hands.see(() -> org.eclipse.ui.PlatformUI.getWorkbench().getDisplay().getActiveShell() == null)) {
				hands.key("Return");
			}
			hands.until("its first file", () -> hands.look(CTabItem.class, t -> t.getText().equals("mine.bay")).isPresent());
			hands.click(tab("Flaws"));
			hands.until("the views show it", () -> hands.says("my-rules"));
			hands.picture("folder");
			hands.click(tab("rules.bay"));
			hands.until("the views show the other project", () -> hands.look(Label.class, l -> l.getText().startsWith("first-walk")).isPresent()
					|| hands.says("first-walk"));
		});
		check("menus", this::menus);
		check("preferences: every page", this::preferences);
		new Entries(hands, this::ready, this::note).menus(entry -> !DRIVEN_ELSEWHERE.contains(entry) && !ON_FILES.contains(entry), list());
		new Entries(hands, this::readyInTree, this::note).menus(ON_FILES::contains, list());
		// nothing on the bench can be clicked before a job is begun; its own cases do
		for (String view : List.of("Flaws", "Picture", "Plan", "Test grid", "Finished jobs")) {
			toolBar(view);
		}
	}

	/** The start of the walk, which brings in rules to work with. */
	private void walk() {
		check("welcome: Take the ten-minute walk", () -> {
			hands.click(hands.findAny("Take the ten-minute walk"));
			hands.until("the walk's first step", () -> hands.says("Step 1 of 8"));
			hands.picture("walk-1");
		});
		check("walk: bring in the example", () -> {
			hands.click(hands.find(Button.class, "Bring in the example"));
			hands.click(hands.find(Button.class, "Finish"));
			hands.until("the rules in the editor", () -> editorText().contains("rule strap_by_drop"));
			hands.until("the project unfolded in the tree", () -> hands.seen().stream().filter(Tree.class::isInstance)
					.anyMatch(tree -> hands.item((Tree) tree, text -> text.contains("vehicles.bay")) != null));
			hands.rest(1000);
			hands.until("the first line on top", () -> editor().getTopIndex() == 0);
		});
	}

	/** What is on the disk, whatever was typed. */
	void revertNow() {
		hands.menu("File", "Revert");
		hands.rest(700);
		if (!hands.front().equals("Baywright")) {
			// the platform asks only where it knows of a change
			hands.key("Return");
		}
	}

	void revert() {
		ready();
		revertNow();
		hands.until("the rules", () -> editorText().contains("rule strap_by_drop"));
	}

	/** Shows a view by the menu. */
	void show(String view) {
		if (view.equals("Search")) {
			hands.click(tab(view));
		} else if (ELSEWHERE) {
			hands.menu("Window", "Show View", view);
		} else {
			hands.menu("View", "Show", view);
		}
	}

	void helpOn(String view) {
		hands.click(tab(view));
		hands.key("F1");
		hands.until("help on this view", () -> hands.look(StyledText.class,
				text -> !text.getEditable() && text.getSelectionText().equals(view)).isPresent());
		hands.picture("view-" + view.replace(' ', '-'));
	}

	void toolBar(String view) {
		check("tool bar of " + view, () -> {
			ready();
			hands.click(tab(view));
			hands.rest(700);
			new Entries(hands, () -> {
				ready();
				hands.click(tab(view));
			}, this::note).toolBar(view);
		});
	}

	/** Takes back by a fix in the flaws one of the two conclusions that contradict each other. */
	void mend() {
		hands.click(tab("Flaws"));
		hands.click(hands.see(() -> flaw("confirm")));
		StyledText details = details();
		List<String> fixes = hands.see(() -> details.getText().lines().dropWhile(l -> !l.contains("What could be done")).skip(1).limit(6).toList());
		String fix = fixes.stream().filter(line -> line.contains("relay_by_swap")).findFirst()
				.orElseThrow(() -> new AssertionError("no fix takes the conclusion back: " + fixes));
		hands.popup(hands.see(this::contradiction), fix.strip());
		// the menu of the right button leads to the same
		hands.until("what would be changed", () -> hands.front().equals(fix.strip()));
		hands.picture("fix-by-menu");
		hands.click(hands.find(Button.class, "Cancel"));
		hands.clickWords(details, fix.strip());
		hands.picture("fix");
		hands.click(hands.find(Button.class, "OK"));
		hands.until("the contradiction is gone", 60, () -> flaw("confirm") == null);
	}

	Tree projects() {
		return hands.find(Tree.class, "the projects", each -> hands.item(each, text -> text.equals("first-walk")) != null);
	}

	/** Words and what they stand on are as far apart as the guidelines for web content ask of a text (WCAG 2.1, 1.4.3). */
	static void readable(List<Color> colours) {
		double lightest = colours.stream().mapToDouble(Drive::luminance).max().orElse(0);
		double darkest = colours.stream().mapToDouble(Drive::luminance).min().orElse(0);
		double contrast = (lightest + 0.05) / (darkest + 0.05);
		if (contrast < 4.5) {
			throw new AssertionError("the words of the list stand out by a contrast of only " + contrast);
		}
	}

	static double luminance(Color colour) {
		double[] parts = { colour.getRed(), colour.getGreen(), colour.getBlue() };
		for (int i = 0; i < parts.length; i++) {
			double part = parts[i] / 255;
			parts[i] = part <= 0.03928 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
		}
		return 0.2126 * parts[0] + 0.7152 * parts[1] + 0.0722 * parts[2];
	}

	/** Entries that end or restart the product; they have cases of their own. */
	private static final List<String> DRIVEN_ELSEWHERE = List.of("File > Exit", "File > Restart");
	/** Entries about the file that is chosen in the tree. */
	private static final List<String> ON_FILES = List.of("File > Rename...", "File > Refresh");

	static Path list() {
		return Path.of(System.getProperty("drive.menus"));
	}

	/** The window with all its parts in sight, and nothing open before it. */
	void window() {
		hands.alone();
		hands.look(Widget.class, widget -> Hands.label(widget).equals("Go to the workbench")).ifPresent(hands::click);
		for (int i = 0; i < 4 && hands.look(ToolItem.class, tool -> Hands.label(tool).equals("Restore")).isPresent(); i++) {
			// something fills the whole window, or is put away
			hands.click(hands.find(ToolItem.class, "Restore"));
			hands.rest(500);
		}
	}

	/** An editor with some selected text that is not saved, and something to redo, whatever was closed before. */
	void ready() {
		window();
		if (hands.look(CTabItem.class, tab -> tab.getText().replace("*", "").equals("rules.bay")).isEmpty()) {
			Tree tree = projects();
			TreeItem project = hands.item(tree, text -> text.equals("first-walk"));
			if (!hands.see(project::getExpanded)) {
				hands.click(project);
				hands.key("Right");
				hands.rest(500);
			}
			hands.doubleClick(hands.item(tree, text -> text.equals("rules.bay")));
		}
		hands.click(tab("rules.bay"));
		hands.click(editor());
		StyledText text = editor();
		for (int i = 0; i < 5 && hands.see(() -> text.getCaretOffset() < text.getCharCount()); i++) {
			// a hint that is about to open takes a stroke for itself
			hands.key("Escape", "ctrl+End");
		}
		if (!hands.see(this::editorText).endsWith("// to lose") || !hands.see(() -> tab("rules.bay").getText().startsWith("*"))) {
			hands.key("Return");
			hands.type("// to lose");
			hands.key("Left", "Right");
		}
		hands.type("x");
		hands.key("ctrl+z", "shift+Home");
	}

	/** Deletes a file or project in the tree, also from the disk, so that nothing of it is met later. */
	void forget(String item) {
		window();
		hands.key("ctrl+shift+s");
		hands.rest(1500);
		hands.click(hands.item(projects(), item::equals));
		hands.key("Delete");
		hands.until("the question", () -> hands.front().startsWith("Delete"));
		hands.look(Button.class, button -> Hands.label(button).startsWith("Delete project contents")).ifPresent(hands::click);
		hands.click(hands.find(Button.class, "OK"));
		hands.until("it is gone", () -> hands.item(projects(), item::equals) == null);
		hands.rest(1000);
		if (hands.look(CTabItem.class, tab -> tab.getText().equals(item)).isPresent()) {
			throw new AssertionError("there is still an editor of " + item);
		}
	}

	/** As {@link #ready}, with the keyboard on a file in the tree. */
	private void readyInTree() {
		ready();
		Tree tree = projects();
		hands.click(hands.item(tree, text -> text.equals("rules.bay")));
	}

	/** Opens a page of the preferences, told by the words that lead to it in the tree. */
	void preferencePage(String... path) {
		window();
		hands.menu("View", "Preferences");
		hands.until("the dialog", () -> hands.front().equals("Preferences"));
		Tree tree = hands.find(Tree.class, "the pages", each -> each.getShell().getText().equals("Preferences"));
		for (String step : path) {
			hands.click(hands.item(tree, step::equals));
			hands.key("Right");
			hands.rest(200);
		}
		hands.rest(500);
	}

	/** Each page shows something and says no error. */
	private void preferences() throws IOException {
		ready();
		hands.menu("View", "Preferences");
		hands.until("the dialog", () -> hands.front().equals("Preferences"));
		Tree tree = hands.find(Tree.class, "the pages", each -> each.getShell().getText().equals("Preferences"));
		List<String> pages = new ArrayList<>();
		hands.click(hands.see(() -> tree.getItem(0)));
		hands.key("Home");
		String last = "";
		for (int i = 0; i < 60; i++) {
			hands.key("shift+Right");
			String page = hands.see(() -> path(tree.getSelection()[0]));
			if (page.equals(last)) {
				break;
			}
			pages.add("Preferences > " + page);
			last = page;
			hands.key("Down");
		}
		hands.picture("preferences");
		hands.key("Escape");
		Files.write(work.resolve("preferences.found"), pages);
		Entries.requireAgreed(pages, Entries.agreed(list(), entry -> entry.startsWith("Preferences > ")));
	}

	private static String path(TreeItem item) {
		return item.getParentItem() == null ? item.getText() : path(item.getParentItem()) + " > " + item.getText();
	}

	private void reopenWelcome() {
		hands.menu("Help", "Welcome");
		hands.click(hands.find(CTabItem.class, "Welcome"));
		hands.find(Widget.class, "Take the ten-minute walk", widget -> Hands.label(widget).equals("Take the ten-minute walk"));
	}

	private void step(String button) {
		hands.click(tab("Ten-minute walk"));
		for (int i = 0; i < 8 && hands.look(Button.class, b -> Hands.label(b).equals(button)).isEmpty(); i++) {
			hands.click(hands.find(Button.class, "Next step"));
		}
		hands.click(hands.find(Button.class, button));
	}

	CTabItem tab(String title) {
		return hands.find(CTabItem.class, title, tab -> tab.getText().replace("*", "").equals(title));
	}

	private static String line(StyledText text) {
		return text.getLine(text.getLineAtOffset(text.getCaretOffset()));
	}

	StyledText editor() {
		return hands.find(StyledText.class, "the editor", text -> (text.getStyle() & SWT.READ_ONLY) == 0 && text.getText().length() > 0
				&& text.isVisible() && text.getText().contains("given") || text.getEditable() && text.getText().contains("rule "));
	}

	String editorText() {
		return hands.look(StyledText.class, StyledText::getEditable).map(text -> hands.see(text::getText)).orElse("");
	}

	private String selected() {
		return hands.look(StyledText.class, StyledText::getEditable).map(text -> hands.see(text::getSelectionText)).orElse("");
	}

	StyledText details() {
		return hands.find(StyledText.class, "what is told of the flaw", text -> !text.getEditable() && text.getText().contains("For example:"));
	}

	/** The contradiction of the walk in the list of flaws, or null. */
	TreeItem contradiction() {
		return flaw("confirm");
	}

	private TreeItem flaw(String part) {
		return hands.seen().stream().filter(Tree.class::isInstance).map(Tree.class::cast)
				.map(tree -> hands.item(tree, text -> text.startsWith("Rule ") && text.contains(part) && text.contains("clear"))).filter(item -> item != null)
				.findFirst().orElse(null);
	}

	/** Every entry has words, and the list of all is the one that was agreed on. */
	private void menus() throws IOException {
		TreeSet<String> found = new TreeSet<>();
		MenuItem[] bar = hands.see(() -> org.eclipse.ui.PlatformUI.getWorkbench().getWorkbenchWindows()[0].getShell().getMenuBar().getItems());
		for (MenuItem top : bar) {
			String label = hands.see(() -> top.getText());
			if (label.isEmpty()) {
				continue;
			}
			hands.key("alt+" + label.replaceAll(".*&(.).*", "$1").toLowerCase());
			List<String> entries = new ArrayList<>();
			hands.see(() -> {
				Entries.gather(top.getMenu(), Hands.plain(label), entries);
				return null;
			});
			// where one was is named in the entry
			entries.stream().filter(entry -> !entry.startsWith("View > Back") && !entry.startsWith("View > Forward"))
					.map(entry -> entry.replace(Entries.GREY, "")).forEach(found::add);
			hands.key("Escape", "Escape");
		}
		Files.write(work.resolve("menus.found"), found);
		Entries.requireAgreed(found, Entries.agreed(list(), Entries::isOfMenuBar));
	}

	void log(String... allowed) throws IOException {
		Path log = ResourcesPlugin.getWorkspace().getRoot().getLocation().append(IPath.fromPortableString(".metadata/.log")).toPath();
		if (!Files.exists(log)) {
			return;
		}
		List<String> entries = new ArrayList<>();
		List<String> lines = Files.readAllLines(log);
		for (int i = 0; i < lines.size(); i++) {
			// the platform's own notes above lines now and then change while they are drawn
			boolean notes = lines.subList(i, Math.min(lines.size(), i + 16)).stream().anyMatch(line -> line.contains("CodeMiningLineHeaderAnnotation"))
					&& lines.subList(i, Math.min(lines.size(), i + 6)).stream().anyMatch(line -> line.contains("ConcurrentModificationException"));
			String told = i + 1 < lines.size() ? lines.get(i + 1) : "";
			// it looked into a project in the moment in which the drive took that away
			boolean taken = told.contains("Problems occurred while refreshing local changes")
					&& lines.subList(i, Math.min(lines.size(), i + 20)).stream().anyMatch(line -> line.contains("for 'taken-"));
			boolean expected = taken || Arrays.stream(allowed).anyMatch(told::contains);
			if (!notes && !expected && lines.get(i).matches("!ENTRY \\S+ [24] .*")) {
				entries.add(lines.get(i) + " " + (i + 1 < lines.size() ? lines.get(i + 1) : ""));
			}
		}
		if (!entries.isEmpty()) {
			throw new AssertionError(entries.size() + " entries, the first: " + entries.get(0));
		}
	}
}
