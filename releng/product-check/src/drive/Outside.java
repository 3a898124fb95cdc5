package drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.CTabItem;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.dnd.DND;
import org.eclipse.swt.dnd.DragSource;
import org.eclipse.swt.dnd.DragSourceAdapter;
import org.eclipse.swt.dnd.DragSourceEvent;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.graphics.Point;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Tree;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PlatformUI;

/** What comes from outside the workbench: folders that are dropped onto it, files that others change or take away. */
final class Outside {

	private static final String RULES = "family wren \"Wren W1 (invented)\" {\n  trait engine : petrol, diesel\n}\nsign dark \"Lamp stays dark\"\n// rule \n";

	private final Drive drive;
	private final Hands hands;
	private final Path work;

	Outside(Drive drive, Hands hands, Path work) {
		this.drive = drive;
		this.hands = hands;
		this.work = work;
	}

	void go() {
		drive.check("a folder of rules that is dropped onto the tree is brought in", () -> {
			drop(folder("dropped"));
			hands.until("its file", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("dropped.bay")).isPresent());
			hands.until("the project in the tree", () -> hands.item(drive.projects(), "dropped"::equals) != null);
			hands.rest(1500);
			if (ResourcesPlugin.getWorkspace().getRoot().getProject("dropped").findMarkers(IMarker.PROBLEM, true, IResource.DEPTH_ZERO).length > 0) {
				throw new AssertionError("the project itself is marked");
			}
			hands.picture("dropped");
		});
		drive.check("a folder within one that is there is refused in words", () -> {
			Path within = Files.createDirectories(work.resolve("outside/dropped/within"));
			Files.writeString(within.resolve("within.bay"), "// within\n");
			drop(within);
			hands.until("a sentence", () -> hands.front().equals("Bring in a folder of rules"));
			hands.picture("dropped-within");
			hands.key("Return");
			Files.delete(within.resolve("within.bay"));
			if (ResourcesPlugin.getWorkspace().getRoot().getProject("within").exists()) {
				throw new AssertionError("a project was made");
			}
		});
		drive.check("of a folder that holds several folders of rules each becomes a project", () -> {
			for (String name : List.of("one", "two")) {
				folder("several/" + name);
			}
			drop(work.resolve("outside/several"));
			hands.until("the question", () -> hands.look(Button.class, button -> Hands.label(button).equals("Each as a project")).isPresent());
			hands.picture("dropped-several");
			hands.key("Return");
			hands.until("both projects in the tree", () -> hands.item(drive.projects(), "one"::equals) != null && hands.item(drive.projects(), "two"::equals) != null);
			hands.until("the file of the first", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("one.bay")).isPresent());
			away("one", "two");
		});
		drive.check("a file that is dropped beside the projects is refused in words", () -> {
			drop(folder("single").resolve("single.bay"));
			hands.until("a sentence", () -> hands.front().equals("Bring in a folder of rules"));
			hands.picture("dropped-file");
			hands.key("Return");
			if (ResourcesPlugin.getWorkspace().getRoot().getProject("single").exists()) {
				throw new AssertionError("a project was made");
			}
		});
		drive.check("a pack and a sheet in the tree open to be read", this::written);
		drive.check("Enter in the search of what blocks the pack does no harm", () -> {
			drive.ready();
			hands.key("ctrl+End", "Return");
			hands.type("sign ");
			hands.key("ctrl+alt+p");
			hands.until("what blocks", 60, () -> hands.look(Table.class, table -> table.getItemCount() > 0 && table.getItem(0).getText().contains("line")).isPresent());
			hands.click(hands.find(Table.class, "what blocks", table -> table.getItemCount() > 0 && table.getItem(0).getText().contains("line")));
			hands.type("zzz");
			hands.rest(300);
			hands.picture("blocks-search");
			hands.key("Escape", "Return");
			hands.rest(700);
			if (hands.look(Shell.class, shell -> shell.getText().contains("Problem")).isPresent()) {
				throw new AssertionError("a problem is told");
			}
			hands.alone();
			drive.revert();
		});
		drive.check("the views are put back when the user agrees", () -> {
			drive.ready();
			hands.see(() -> {
				IWorkbenchPage page = PlatformUI.getWorkbench().getActiveWorkbenchWindow().getActivePage();
				page.hideView(page.findView("org.baywright.workbench.view.picture"));
				return null;
			});
			hands.menu("View", "Put the views back\u2026");
			hands.until("the question", () -> hands.front().equals("Put the views back"));
			hands.picture("put-back");
			hands.click(hands.find(Button.class, "Yes"));
			hands.until("the picture", () -> hands.look(CTabItem.class, tab -> tab.getText().equals("Picture")).isPresent());
		});
		drive.check("a file that something else changes: what was typed is kept, or what is on the disk is taken", () -> {
			for (String answer : List.of("Keep my text", "Take what is on the disk")) {
				drive.ready();
				hands.key("End", "Return");
				hands.type("// mine now");
				Path file = ResourcesPlugin.getWorkspace().getRoot().getProject("first-walk").getLocation().append("rules.bay").toPath();
				String before = Files.readString(file);
				Files.writeString(file, "// theirs\n", StandardOpenOption.APPEND);
				hands.click(hands.item(drive.projects(), "rules.bay"::equals));
				StyledText editor = drive.editor();
				hands.click(editor);
				hands.until("the question", () -> hands.front().equals("The file was changed by something else"));
				hands.picture("changed-outside");
				hands.click(hands.find(Button.class, answer));
				boolean mine = answer.startsWith("Keep");
				hands.until("the text", () -> editor.getText().contains("// mine now") == mine && editor.getText().contains("// theirs") != mine);
				if (mine) {
					drive.revertNow();
					hands.until("theirs", () -> editor.getText().contains("// theirs"));
				}
				Files.writeString(file, before);
				hands.click(hands.item(drive.projects(), "rules.bay"::equals));
				hands.key("F5");
				hands.rest(700);
				hands.click(editor);
				hands.until("the text as it was", () -> editor.getText().equals(before));
			}
		});
		drive.check("what something else wrote is written over only on the author's word", () -> {
			Path file = ResourcesPlugin.getWorkspace().getRoot().getProject("first-walk").getLocation().append("rules.bay").toPath();
			String before = Files.readString(file);
			for (String answer : List.of("Leave it for now", "Write mine over it")) {
				drive.ready();
				hands.key("End", "Return");
				hands.type("// mine now");
				Files.writeString(file, "// theirs\n", StandardOpenOption.APPEND);
				hands.key("ctrl+s");
				Button chosen = hands.find(Button.class, answer);
				hands.picture("conflict");
				if (answer.startsWith("Leave")) {
					hands.key("Return");
				} else {
					hands.click(chosen);
				}
				hands.rest(1000);
				if (Files.readString(file).contains("// mine now") != answer.startsWith("Write")) {
					throw new AssertionError("after " + answer + " the disk holds " + Files.readString(file));
				}
				Files.writeString(file, before);
			}
			hands.click(hands.item(drive.projects(), "rules.bay"::equals));
			hands.key("F5");
			hands.rest(700);
			hands.click(drive.editor());
			hands.until("the text as it was", () -> drive.editorText().equals(before));
		});
		drive.check("a long check is stopped, and no view shows it any more", this::stopped);
		for (String answer : List.of("Keep it here", "Save it elsewhere\u2026", "Close and lose it")) {
			drive.check("a project that is taken away under typed text: " + answer, () -> taken(answer));
		}
	}

	/** What an export wrote into a project. */
	void written() throws IOException, CoreException {
		drive.ready();
		IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject("first-walk");
		Path folder = project.getLocation().toPath();
		Files.writeString(folder.resolve("written.html"), "<!DOCTYPE html>\n<html><head><title>written \u2013 diagnostic rules</title></head></html>\n");
		Files.writeString(folder.resolve("written.baypack"), "no pack");
		project.refreshLocal(IResource.DEPTH_ONE, null);
		hands.until("the files", () -> hands.item(drive.projects(), "written.baypack"::equals) != null);
		hands.doubleClick(hands.item(drive.projects(), "written.baypack"::equals));
		hands.until("that it is no pack", () -> hands.front().equals("Rule pack") && hands.says("cannot be read"));
		hands.picture("no-pack");
		hands.key("Return");
		hands.doubleClick(hands.item(drive.projects(), "written.html"::equals));
		hands.rest(3000);
		hands.picture("sheet");
		// where the system has no program for web pages it is told where the sheet is
		hands.alone();
		for (String none : List.of("written.html", "written.baypack")) {
			if (hands.look(CTabItem.class, tab -> tab.getText().equals(none)).isPresent()) {
				throw new AssertionError(none + " is open in an editor");
			}
		}
		for (String ending : List.of("html", "baypack")) {
			project.getFile("written." + ending).delete(true, null);
		}
	}

	/** Takes projects away again, so that there is room in the tree for what is dropped later. */
	private static void away(String... projects) throws CoreException {
		for (String name : projects) {
			ResourcesPlugin.getWorkspace().getRoot().getProject(name).delete(false, true, null);
		}
	}

	/** Rules of which each contradicts each other, so that their check takes most of a minute. */
	private void stopped() throws IOException {
		Path folder = folder("slow");
		String small = Files.readString(folder.resolve("slow.bay"));
		StringBuilder rules = new StringBuilder(small + "part lamp \"Lamp\" {\n  fault dim \"Dim\"\n}\ntest volts \"Voltage\" {\n  measures V 0 .. 18 step 0.01\n}\n");
		for (int i = 0; i < 200; i++) {
			rules.append("rule r").append(i).append(" \"R\" {\n  given dark\n  run volts\n  expect at_least ").append(5 + i / 100.0)
					.append(" V\n  met : clears lamp.dim\n  below : confirms lamp.dim\n  because \"B.\"\n  source practice\n  by \"A. Author\" on 2026-03-02\n}\n");
		}
		Files.writeString(folder.resolve("slow.bay"), rules);
		hands.click(drive.tab("Flaws"));
		drop(folder);
		hands.until("its way to stop", 40, () -> hands.look(Button.class, button -> Hands.label(button).equals("Stop")).isPresent());
		hands.rest(2000);
		hands.picture("slow");
		hands.click(hands.find(Button.class, "Stop"));
		hands.until("that it was stopped", 20, () -> hands.says("stopped"));
		for (String view : List.of("Picture", "Plan", "Test grid", "Finished jobs", "Bench", "Flaws")) {
			hands.click(drive.tab(view));
			hands.rest(1500);
			if (hands.look(Button.class, button -> Hands.label(button).equals("Stop")).isPresent()) {
				hands.picture("still-at-work");
				throw new AssertionError(view + " shows work though nothing goes on");
			}
		}
		hands.picture("stopped");
		Files.writeString(folder.resolve("slow.bay"), small);
		hands.click(hands.item(drive.projects(), "slow"::equals));
		hands.key("F5");
		hands.until("the smaller file", () -> drive.editorText().equals(small));
	}

	private void taken(String answer) throws IOException {
		String name = "taken-" + answer.charAt(0);
		Path folder = folder(name);
		drop(folder);
		hands.until("its file", () -> hands.look(CTabItem.class, tab -> tab.getText().equals(name + ".bay")).isPresent());
		hands.rest(1000);
		hands.key("ctrl+End");
		hands.type("// typed");
		try (Stream<Path> all = Files.walk(folder)) {
			for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
				Files.delete(path);
			}
		}
		hands.click(hands.item(drive.projects(), name::equals));
		hands.key("F5");
		hands.rest(1500);
		hands.picture("taken-away");
		hands.look(Button.class, button -> Hands.label(button).equals("Delete")).ifPresent(hands::click);
		hands.rest(1000);
		if (!hands.front().equals("The file is gone")) {
			hands.click(drive.tab(name + ".bay"));
		}
		hands.until("the question", () -> hands.front().equals("The file is gone"));
		hands.picture("gone");
		hands.click(hands.find(Button.class, answer));
		hands.rest(1500);
		boolean there = hands.look(CTabItem.class, tab -> tab.getText().replace("*", "").equals(name + ".bay")).isPresent();
		if (answer.startsWith("Save")) {
			Path saved = work.resolve("saved.bay");
			hands.type("/");
			hands.rest(1000);
			hands.key("ctrl+a");
			hands.type(saved.toString());
			hands.rest(500);
			hands.picture("gone-save");
			for (int i = 0; i < 3 && !Files.exists(saved); i++) {
				// the first may only take what the dialog proposes
				hands.key("Return");
				hands.rest(1500);
				hands.picture("gone-saved-" + i);
			}
			if (!Files.isRegularFile(saved) || !Files.readString(saved).endsWith("// typed")) {
				throw new AssertionError("the text was not saved to " + saved);
			}
		} else if (there != answer.startsWith("Keep")) {
			throw new AssertionError("the editor is " + (there ? "there" : "gone"));
		}
		if (answer.startsWith("Keep")) {
			hands.until("what was typed", () -> hands.look(StyledText.class, text -> text.getEditable() && text.getText().endsWith("// typed")).isPresent());
			hands.click(drive.tab(name + ".bay"));
			hands.key("ctrl+w");
			hands.rest(700);
			hands.picture("gone-close");
			hands.look(Button.class, button -> Hands.label(button).equals("Don't Save")).ifPresent(hands::click);
		}
	}

	private Path folder(String name) throws IOException {
		Path folder = Files.createDirectories(work.resolve("outside").resolve(name));
		Files.writeString(folder.resolve(folder.getFileName() + ".bay"), RULES);
		return folder;
	}

	/** Drags something from a window of another hand onto the free place beneath the projects. */
	void drop(Path what) {
		drive.window();
		Tree tree = drive.projects();
		hands.see(() -> {
			// so that there is a free place
			Arrays.stream(tree.getItems()).filter(item -> !item.getText().equals("first-walk")).forEach(item -> item.setExpanded(false));
			return null;
		});
		hands.rest(300);
		Point to = hands.see(() -> tree.toDisplay(tree.getSize().x / 2, tree.getSize().y - 12));
		Shell other = hands.see(() -> {
			Shell shell = new Shell(Display.getCurrent(), SWT.ON_TOP | SWT.TOOL);
			Label label = new Label(shell, SWT.NONE);
			label.setText("files");
			label.setBounds(0, 0, 120, 60);
			DragSource source = new DragSource(label, DND.DROP_COPY | DND.DROP_MOVE | DND.DROP_LINK);
			source.setTransfer(FileTransfer.getInstance());
			source.addDragListener(new DragSourceAdapter() {
				@Override
				public void dragSetData(DragSourceEvent event) {
					event.data = new String[] { what.toString() };
				}
			});
			shell.setBounds(700, 300, 120, 60);
			shell.open();
			return shell;
		});
		hands.rest(500);
		hands.drag(new Point(740, 330), to);
		hands.rest(1000);
		hands.see(() -> {
			other.dispose();
			return null;
		});
	}
}
