package drive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Tree;

/** Goes through each wizard: what is wrong is refused while typing, Cancel leaves nothing, Finish leaves sound rules. */
final class Wizards {

	private final Hands hands;
	private Map<Path, FileTime> before = Map.of();

	Wizards(Hands hands) {
		this.hands = hands;
	}

	void project(String author) {
		open("File", "New", "Rule project");
		finish(false);
		fill("Name of the project:", "bad/name");
		refused("project");
		fill("Name of the project:", "first-walk");
		refused("already");
		fill("Name of the project:", "tried");
		fill("Title of the family:", "Wren W2 (invented)");
		fill("Author:", author);
		finish(true);
		hands.picture("wizard-project");
		cancel();
		if (!Drive.ELSEWHERE) {
			// the welcome fills the window and must make way for what is made
			hands.menu("Help", "Welcome");
			hands.rest(1000);
		}
		open("File", "New", "Rule project");
		fill("Name of the project:", "tried");
		fill("Title of the family:", "Wren W2 (invented)");
		fill("Author:", author);
		hands.click(hands.find(Button.class, "Finish"));
		hands.until("the project", () -> there("tried").exists());
		hands.until("the project is seen", () -> hands.look(Tree.class, tree -> hands.item(tree, "tried"::equals) != null).isPresent());
		sound("tried");
	}

	/** Makes a project with a family and nothing else. */
	void empty(String name, String family) {
		open("File", "New", "Rule project");
		fill("Name of the project:", name);
		fill("Title of the family:", family);
		hands.click(hands.find(Button.class, "the first rules", button -> Hands.label(button).startsWith("Write a first sign")));
		hands.click(hands.find(Button.class, "Finish"));
		hands.until("the project", () -> there(name).exists());
	}

	/** Writes the pack of the project that is shown. */
	void export(Path pack) {
		open("File", "Export rule pack\u2026");
		hands.until("the check is done", 60, () -> !hands.says("still being checked"));
		fill("Write to:", pack.toString());
		hands.rest(500);
		hands.click(hands.find(Button.class, "Finish"));
		hands.until("the message", () -> hands.says("Fingerprint"));
		hands.click(hands.find(Button.class, "OK"));
	}

	/** The platform's page to choose from, there and back again. */
	void thereAndBack() {
		open("File", "New", "Other...");
		hands.rest(500);
		hands.key("Down", "Down");
		Button next = hands.find(Button.class, "Next >", button -> Hands.label(button).startsWith("Next"));
		for (int i = 0; i < 12 && !hands.see(next::isEnabled); i++) {
			hands.key("Right", "Down");
		}
		hands.picture("wizard-other");
		hands.click(next);
		hands.until("the second page", () -> hands.look(Button.class, button -> Hands.label(button).contains("Back") && button.isEnabled()).isPresent());
		hands.click(hands.find(Button.class, "Back", button -> Hands.label(button).contains("Back")));
		hands.until("the first page", () -> hands.look(Button.class, button -> Hands.label(button).contains("Back") && !button.isEnabled()).isPresent());
		hands.click(hands.find(Button.class, "Cancel"));
	}

	void file() {
		open("File", "New", "Rule file");
		String label = label("ile");
		fill(label, "rules");
		finish(false);
		fill(label, "no:good?");
		refused("cannot be named");
		hands.picture("wizard-file");
		fill(label, "there/deeper");
		refused("cannot be named");
		fill(label, "extra");
		cancel();
		open("File", "New", "Rule file");
		fill(label, "extra");
		finish(true);
		hands.click(hands.find(Button.class, "Finish"));
		hands.until("the file", () -> there("first-walk").getFile("extra.bay").exists());
		sound("first-walk");
	}

	void family() {
		open("File", "New", "Vehicle family");
		finish(false);
		fill("Title of the family:", "Lark L3 light van");
		finish(true);
		hands.picture("wizard-family");
		cancel();
		open("File", "New", "Vehicle family");
		fill("Title of the family:", "Lark L3 light van");
		hands.click(hands.find(Button.class, "Finish"));
		contains("first-walk", "Lark L3 light van");
		sound("first-walk");
	}

	void rule() {
		open("File", "New", "Rule");
		finish(false);
		fillRule();
		hands.picture("wizard-rule");
		cancel();
		open("File", "New", "Rule");
		fillRule();
		hands.click(hands.find(Button.class, "Finish"));
		contains("first-walk", "Battery is low at rest");
		hands.picture("wizard-rule-written");
		sound("first-walk");
	}

	private void fillRule() {
		fill("What it is about:", "Battery is low at rest");
		choose("Given the sign:", 1);
		choose("Test to run:", 0);
		finish(false);
		fill("Expected:", "12.4");
		hands.key("Tab");
		hands.type("15");
		choose("below", 1);
		choose("above", 1);
		fill("Because:", "A battery that is low at rest does not crank.");
		fill("Author:", "A. Author");
		finish(true);
	}

	void pack(Path work) {
		// in another workbench the File menu is the platform's
		open(Drive.ELSEWHERE ? "Rules" : "File", "Export rule pack\u2026");
		Path pack = work.resolve("tried.baypack");
		hands.until("the check is done", 60, () -> !hands.says("still being checked"));
		String label = "Write to:";
		fill(label, "");
		finish(false);
		fill(label, work.resolve("no/such/folder/x.baypack").toString());
		refused("no folder");
		hands.picture("wizard-pack-bad");
		fill(label, pack.toString());
		hands.rest(500);
		hands.picture("wizard-pack");
		finish(true);
		for (String answer : List.of("OK", "Open the sheet", "Show the pack")) {
			if (!answer.equals("OK")) {
				open(Drive.ELSEWHERE ? "Rules" : "File", "Export rule pack\u2026");
				hands.until("the check is done", 60, () -> !hands.says("still being checked"));
				fill(label, pack.toString());
				hands.rest(500);
			}
			hands.click(hands.find(Button.class, "Finish"));
			hands.until("the message", () -> hands.says("Fingerprint"));
			hands.picture("wizard-pack-written");
			hands.click(hands.find(Button.class, answer));
			hands.rest(2000);
			hands.picture("pack-" + answer.replace(' ', '-'));
			// where the system has no program for web pages that is told
			hands.key("Escape");
		}
		hands.until("what the pack holds", () -> hands.look(StyledText.class, text -> !text.getEditable() && text.getText().contains("made by Baywright")
				&& text.getText().contains("finished jobs")).isPresent());
		hands.key("ctrl+w");
		if (!Files.exists(pack) || !Files.exists(work.resolve("tried.html"))) {
			throw new AssertionError("pack and page are not both there");
		}
	}

	// ---- hands and eyes --------------------------------------------------------------------------------------------

	private void open(String... path) {
		before = files();
		hands.menu(path);
		hands.until("a wizard", () -> hands.look(Button.class, button -> Hands.label(button).equals("Cancel")).isPresent());
		hands.rest(400);
	}

	private String label(String part) {
		return hands.labels().stream().filter(text -> text.endsWith(":") && text.contains(part)).findFirst()
				.orElseThrow(() -> new AssertionError("no field with " + part + ": " + hands.labels()));
	}

	private Control after(String label) {
		Label before = hands.find(Label.class, label);
		return hands.see(() -> {
			List<Control> all = Arrays.asList(before.getParent().getChildren());
			return all.stream().skip(all.indexOf(before) + 1).flatMap(control -> control instanceof Composite inner && !(control instanceof Combo)
					? Arrays.stream(inner.getChildren()) : Stream.of(control)).filter(control -> control instanceof Text || control instanceof Combo)
					.findFirst().orElseThrow();
		});
	}

	private void fill(String label, String words) {
		hands.click(after(label));
		hands.key("ctrl+a", "BackSpace");
		if (!words.isEmpty()) {
			hands.type(words);
		}
		hands.rest(300);
	}

	private void choose(String label, int index) {
		Combo combo = (Combo) after(label);
		hands.click(combo);
		hands.rest(300);
		hands.key("Home");
		for (int i = 0; i < index; i++) {
			hands.key("Down");
		}
		hands.key("Return");
		hands.rest(300);
	}

	private void finish(boolean enabled) {
		Button finish = hands.find(Button.class, "Finish");
		hands.until("Finish can " + (enabled ? "" : "not ") + "be chosen; seen: " + hands.labels(), () -> finish.isEnabled() == enabled);
	}

	private void refused(String part) {
		finish(false);
		hands.until("a sentence with \"" + part + "\"; seen: " + hands.labels(), () -> hands.says(part));
	}

	private static IProject there(String project) {
		return ResourcesPlugin.getWorkspace().getRoot().getProject(project);
	}

	/** Cancels: every file is as it was when the wizard opened, and there is no other. */
	private void cancel() {
		hands.click(hands.find(Button.class, "Cancel"));
		hands.rest(700);
		Map<Path, FileTime> after = files();
		if (!after.equals(before)) {
			throw new AssertionError("after Cancel there is " + after + " where there was " + before);
		}
	}

	/** Every file of the workspace but what the workbench keeps for itself. */
	private static Map<Path, FileTime> files() {
		Path root = ResourcesPlugin.getWorkspace().getRoot().getLocation().toPath();
		try (Stream<Path> all = Files.walk(root)) {
			return all.filter(path -> !path.startsWith(root.resolve(".metadata")) && Files.isRegularFile(path))
					.collect(Collectors.toMap(path -> path, Wizards::written, (one, other) -> one, TreeMap::new));
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	private static FileTime written(Path path) {
		try {
			return Files.getLastModifiedTime(path);
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	private void contains(String project, String words) {
		hands.key("ctrl+shift+s");
		hands.until(words, () -> {
			try (var files = Files.walk(there(project).getLocation().toPath())) {
				return files.filter(file -> file.toString().endsWith(".bay")).anyMatch(file -> {
					try {
						return Files.readString(file).contains(words);
					} catch (IOException e) {
						return false;
					}
				});
			} catch (IOException e) {
				return false;
			}
		});
	}

	/** No mark says that the text is wrong. */
	private void sound(String project) {
		hands.rest(3000);
		List<String> errors = new ArrayList<>();
		try {
			for (IMarker marker : there(project).findMarkers(IMarker.PROBLEM, true, IResource.DEPTH_INFINITE)) {
				String message = String.valueOf(marker.getAttribute(IMarker.MESSAGE));
				// the contradiction of the walk may not be mended yet
				if (marker.getAttribute(IMarker.SEVERITY, 0) == IMarker.SEVERITY_ERROR && !message.contains("strap_by_drop")) {
					errors.add(message);
				}
			}
		} catch (CoreException e) {
			throw new IllegalStateException(e);
		}
		if (!errors.isEmpty()) {
			throw new AssertionError("errors in " + project + ": " + errors);
		}
	}
}
