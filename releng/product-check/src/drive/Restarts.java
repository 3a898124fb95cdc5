package drive;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.swt.custom.CTabFolder;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Tree;

/** What is there again after the product was restarted, by itself or by a kill, and at last its end. */
final class Restarts {

	private final Drive drive;
	private final Hands hands;
	private final Path work;

	Restarts(Drive drive, Hands hands, Path work) {
		this.drive = drive;
		this.hands = hands;
		this.work = work;
	}

	private void next(String part) throws IOException {
		Files.writeString(work.resolve("part"), part);
	}

	/** The dark look, which the platform brings by a restart. */
	void theme() throws IOException {
		next("theme");
		drive.check("dark theme, Restart", () -> {
			drive.ready();
			hands.key("ctrl+shift+s");
			hands.rest(1500);
			drive.preferencePage("General", "Appearance");
			Combo themes = hands.find(Combo.class, "the themes", combo -> Arrays.asList(combo.getItems()).contains("Dark"));
			hands.click(themes);
			hands.rest(300);
			hands.key("Home");
			for (int i = 0; i < hands.see(() -> themes.indexOf("Dark")); i++) {
				hands.key("Down");
			}
			hands.key("Return");
			hands.until("Dark", () -> themes.getText().equals("Dark"));
			hands.picture("theme");
			hands.click(hands.find(Button.class, "Apply and Close"));
			hands.rest(1500);
			hands.picture("theme-restart");
			hands.click(hands.find(Button.class, "Restart"));
			hands.rest(15_000);
			throw new AssertionError("the workbench did not restart");
		});
	}

	void afterTheme() throws IOException {
		drive.note("passed dark theme, Restart");
		drive.check("after it the editor is back and the tree unfolded", () -> {
			hands.until("the editor", () -> drive.editorText().contains("rule strap_by_drop"));
			hands.until("the tree", () -> hands.item(drive.projects(), "rules.bay"::equals) != null);
			hands.rest(3000);
			hands.picture("dark");
		});
		for (String view : List.of("Flaws", "Picture", "Plan", "Test grid", "Finished jobs", "Bench", "Outline", "Project Explorer")) {
			drive.check("dark and readable: " + view, () -> {
				hands.alone();
				drive.show(view);
				hands.rest(1200);
				Rectangle area = hands.see(() -> {
					CTabFolder folder = drive.tab(view).getParent();
					Point corner = folder.toDisplay(2, folder.getTabHeight() + 4);
					return new Rectangle(corner.x, corner.y, folder.getSize().x - 4, folder.getSize().y - folder.getTabHeight() - 8);
				});
				String picture = "dark-" + view.replace(' ', '-');
				hands.picture(picture);
				List<Color> colours = hands.colours(picture, new Point(area.x, area.y), new Point(area.x + area.width, area.y + area.height));
				double ground = colours.stream().mapToDouble(Drive::luminance).sorted().skip(colours.size() / 2).findFirst().orElse(1);
				if (ground > 0.1) {
					throw new AssertionError("its ground is not dark but " + ground);
				}
				Drive.readable(colours);
			});
		}
		restart();
		drive.halt();
	}

	private void restart() throws IOException {
		next("2");
		drive.check("File, Restart", () -> {
			hands.alone();
			hands.key("ctrl+shift+s");
			hands.rest(1500);
			// a view has the keyboard, not the editor
			hands.click(drive.tab("Flaws"));
			hands.menu("File", "Restart");
			hands.rest(15_000);
			throw new AssertionError("the workbench did not restart");
		});
	}

	// ---- second start ----------------------------------------------------------------------------------------------

	void afterRestart() throws IOException {
		drive.note("passed File, Restart");
		drive.check("after a restart the editor is back, and its outline", () -> {
			hands.until("the editor", () -> drive.editorText().contains("rule strap_by_drop"));
			hands.until("the outline", () -> hands.look(Tree.class, tree -> hands.item(tree, item -> item.contains("(strap_by_drop)")) != null).isPresent());
			hands.picture("restarted");
		});
		drive.check("what is typed is kept aside, also of a file that goes", () -> {
			Path moved = typedInto("moved", "// typed into what is moved").getParent();
			Path going = typedInto("going", "// typed into what goes");
			Path overtaken = typedInto("overtaken", "");
			hands.type("// typed");
			// before anything of it is kept aside
			Files.writeString(overtaken, "// rule of somebody else\n");
			hands.type(" and overtaken");
			hands.rest(3000);
			hands.click(drive.tab("rules.bay"));
			hands.click(drive.editor());
			hands.key("ctrl+End", "Return");
			hands.type("// typed before the crash");
			hands.rest(3000);
			// at last, as the workbench asks when it sees that a file is gone
			Files.move(moved, work.resolve("moved-away"));
			Files.delete(going);
		});
		next("3");
		hands.picture("before-kill");
		// the script kills the product now
		Files.writeString(work.resolve("kill"), "now");
		Hands.rest(30_000);
		drive.note("FAILED the script did not kill the product");
		drive.halt();
	}

	/** Brings in a folder with one file and types behind it without saving; returns the file. */
	private Path typedInto(String name, String words) throws IOException {
		Path folder = Files.createDirectories(work.resolve(name));
		Path file = Files.writeString(folder.resolve(name + ".bay"), "// rule\n");
		new Outside(drive, hands, work).drop(folder);
		hands.until("its file", () -> hands.look(CTabItem.class, tab -> tab.getText().equals(name + ".bay")).isPresent());
		hands.rest(800);
		hands.key("ctrl+End");
		if (!words.isEmpty()) {
			hands.type(words);
			hands.rest(3000);
		}
		return file;
	}

	// ---- third start -----------------------------------------------------------------------------------------------

	void afterKill() throws IOException {
		drive.check("after a kill it is told and stands in the editor", () -> {
			hands.until("the message", () -> hands.says("typed and not saved") || hands.front().contains("Brought back"));
			hands.until("what is told of the file that went", () -> hands.says("going.bay"));
			hands.until("what is told of the file whose project went", () -> hands.says("moved.bay"));
			hands.until("what is told of the file that something else changed", () -> hands.says("overtaken.bay"));
			hands.picture("brought-back");
			Path folder = ResourcesPlugin.getWorkspace().getRoot().getLocation().append("brought-back").toPath();
			for (Map.Entry<String, String> kept : Map.of("going.bay", "// typed into what goes", "moved.bay", "// typed into what is moved", "overtaken.bay", "// typed and overtaken").entrySet()) {
				if (!Files.readString(folder.resolve(kept.getKey())).endsWith(kept.getValue())) {
					throw new AssertionError("it is not in " + kept.getKey());
				}
			}
			if (!Files.readString(work.resolve("overtaken/overtaken.bay")).equals("// rule of somebody else\n")) {
				throw new AssertionError("what something else wrote is gone");
			}
			hands.click(hands.find(Button.class, "OK"));
			hands.until("the text", () -> drive.editorText().contains("typed before the crash"));
			for (String gone : List.of("going.bay", "moved.bay")) {
				if (hands.look(CTabItem.class, tab -> tab.getText().equals(gone)).isPresent()) {
					throw new AssertionError("there is an editor of " + gone + ", which is gone");
				}
			}
		});
		drive.check("nothing is logged after restart and kill", () -> drive.log("The workspace exited with unsaved changes",
				// the project that was moved
				"Workspace restored, but some problems occurred", "Save operation warnings"));
		drive.check("File, Exit", () -> {
			hands.key("ctrl+s");
			next("4");
			hands.menu("File", "Exit");
			hands.rest(20_000);
			throw new AssertionError("the workbench did not end");
		});
		drive.halt();
	}
}
