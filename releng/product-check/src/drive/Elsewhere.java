package drive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.widgets.Button;

/** The plug-in in a platform that has nothing else of ours: no welcome, none of our menus but one. */
final class Elsewhere {

	private static final List<String> VIEWS = List.of("Flaws", "Picture", "Plan", "Test grid", "Finished jobs", "Bench");

	private final Drive drive;
	private final Hands hands;
	private final Controls controls;
	private final Groups groups;
	private final Path work;

	Elsewhere(Drive drive, Hands hands, Controls controls, Groups groups, Path work) {
		this.drive = drive;
		this.hands = hands;
		this.controls = controls;
		this.groups = groups;
		this.work = work;
	}

	void go() throws IOException {
		hands.resize(1280, 720);
		drive.check("elsewhere: example rules are brought in by File, New, Other", () -> {
			hands.menu("File", "New", "Other...");
			hands.until("the wizards", () -> hands.look(Button.class, button -> Hands.label(button).startsWith("Next")).isPresent());
			hands.rest(500);
			hands.type("Example rules");
			hands.rest(1500);
			hands.picture("elsewhere-new");
			hands.key("Down");
			hands.click(hands.find(Button.class, "Next >"));
			hands.rest(500);
			hands.picture("elsewhere-example");
			hands.click(hands.find(Button.class, "Finish"));
		});
		drive.check("elsewhere: the first rule file offers the views", () -> {
			hands.until("the offer", () -> hands.front().equals("Show the views for rules?"));
			hands.picture("elsewhere-offer");
			hands.click(hands.find(Button.class, "Yes"));
			for (String view : VIEWS) {
				hands.until(view, () -> hands.look(CTabItem.class, tab -> tab.getText().equals(view)).isPresent());
			}
			hands.picture("elsewhere-views");
		});
		groups.words();
		drive.check("elsewhere: a flaw is mended by the fix in the view", drive::mend);
		BenchCases bench = new BenchCases(drive, hands, controls);
		bench.bench();
		bench.plan();
		groups.jobs();
		for (String view : VIEWS) {
			drive.check("elsewhere: F1 in " + view, () -> drive.helpOn(view));
		}
		drive.check("elsewhere: a pack and a sheet in the tree open to be read", () -> new Outside(drive, hands, work).written());
		new Entries(hands, drive::ready, drive::note).menus(entry -> entry.startsWith("Rules > "), Drive.list());
		drive.check("elsewhere: the walk", () -> {
			drive.ready();
			hands.menu("Help", "Ten-minute walk");
			hands.until("the first step", () -> hands.says("Step 1 of 8"));
		});
		groups.contexts(VIEWS);
		Sweep sweep = new Sweep(drive, hands, controls);
		for (String view : VIEWS) {
			drive.check("elsewhere: controls of " + view, () -> sweep.view(view));
		}
		drive.check("elsewhere: no control of the five views is without a drive", () -> Controls.none(controls.unused().stream()
				.filter(name -> VIEWS.stream().anyMatch(view -> name.startsWith(view + " > "))).toList()));
		// the platform asks the desktop for its links, where there is one
		drive.check("elsewhere: nothing is logged", () -> drive.log("xdg-mime"));
	}
}
