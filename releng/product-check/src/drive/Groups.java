package drive;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Tree;

/** Groups of cases that can be driven by themselves, once there are rules to work with. */
final class Groups {

	private final Drive drive;
	private final Hands hands;
	private final Path work;

	Groups(Drive drive, Hands hands, Path work) {
		this.drive = drive;
		this.hands = hands;
		this.work = work;
	}

	/** Drives those that are named. */
	void go(String which) {
		if (which.contains("contexts")) {
			contexts();
		}
		if (which.contains("wizards")) {
			wizards();
		}
		if (which.contains("labels")) {
			labels();
		}
	}

	private void contexts() {
		Contexts contexts = new Contexts(hands, drive::ready, new Entries(hands, () -> {
		}, drive::note), Drive.list());
		drive.check("right button in the editor", () -> contexts.look("Editor", drive::editor, () -> hands.wordsAt(drive.editor(), "strap_by_drop")));
		for (String item : List.of("first-walk", "rules.bay")) {
			drive.check("right button on " + item, () -> contexts.look(item.endsWith(".bay") ? "File" : "Project", drive::projects,
					() -> hands.middle(hands.item(drive.projects(), item::equals))));
		}
		drive.check("what was pasted is taken back", drive::revert);
		drive.check("right button beside the projects", () -> contexts.look("Beside the projects", drive::projects, () -> hands.see(() -> {
			Tree tree = drive.projects();
			return tree.toDisplay(tree.getSize().x / 2, tree.getSize().y - 8);
		})));
		for (String view : List.of("Findings", "Picture", "Test grid", "Bench", "Finished jobs", "Outline", "Help")) {
			drive.check("right button in " + view, () -> contexts.look(view, () -> hands.body(view), () -> {
				hands.menu("View", "Show", view);
				hands.rest(500);
				Control body = hands.body(view);
				return hands.see(() -> body instanceof Tree tree && tree.getItemCount() > 0 ? tree.toDisplay(60, tree.getHeaderHeight() + 10)
						: body.toDisplay(body.getSize().x / 3, body.getSize().y / 3));
			}));
		}
	}

	private void wizards() {
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

	private void labels() {
		for (String view : List.of("Project Explorer", "Outline", "Findings", "Picture", "Test grid", "Bench", "Finished jobs", "Help")) {
			drive.check("all can be read in " + view, () -> {
				drive.ready();
				hands.menu("View", "Show", view);
				hands.rest(800);
				read(view);
			});
		}
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
