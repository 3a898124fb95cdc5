package org.baywright.workbench;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.baywright.workbench.project.Places;
import org.baywright.workbench.wizard.ProjectMaker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.runtime.NullProgressMonitor;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is typed into the platform's list of all actions (Ctrl+3) finds views and commands for rules. */
class QuickAccessTest {

	private static IProject project;
	private Shell list;

	@BeforeAll
	static void editRules() throws Exception {
		Ui.closeWelcome();
		project = ProjectMaker.make("quick", new TreeMap<>(Map.of("a.bay", "family tarn \"Tarn\"\n")), new NullProgressMonitor());
		Ui.run(() -> Places.open(project.getFile("a.bay"), 0, 0, true));
	}

	@AfterAll
	static void leaveNothing() throws Exception {
		Ui.run(() -> Ui.page().closeAllEditors(false));
		project.delete(true, true, null);
	}

	@AfterEach
	void close() {
		Ui.run(() -> {
			if (list != null && !list.isDisposed()) {
				list.close();
			}
		});
	}

	@ParameterizedTest
	@CsvSource({ "grid, Test grid", "picture, Picture", "bench, Bench", "jobs, Finished jobs", "flaws, Flaws",
			"rules, Check all rules again", "rules, Find in rules", "check, Check all rules again", "pack, Export rule pack", "tidy, Lay out",
			"folder, Bring in a folder of rules", "example, Bring in an example", "find, Find in rules", "walk, Ten-minute walk" })
	void finds(String typed, String wanted) {
		List<Shell> before = Ui.get(() -> List.of(Display.getCurrent().getShells()));
		// what is about the text is offered where there is one
		Ui.run(() -> Ui.page().activate(Ui.page().getActiveEditor()));
		Ui.command("org.eclipse.ui.window.quickAccess");
		Ui.await(() -> "no list", () -> opened(before) != null);
		list = Ui.get(() -> opened(before));
		Ui.run(() -> Ui.all(list, Text.class).get(0).setText(typed));
		Table table = Ui.get(() -> Ui.all(list, Table.class).get(0));
		Ui.await(() -> typed + " finds " + Arrays.toString(lines(table)), () -> Arrays.stream(lines(table)).anyMatch(line -> line.startsWith(wanted)));
	}

	private static Shell opened(List<Shell> before) {
		return Arrays.stream(Display.getCurrent().getShells()).filter(shell -> !before.contains(shell) && shell.isVisible()
				&& !Ui.all(shell, Table.class).isEmpty()).findFirst().orElse(null);
	}

	/** The text is drawn by the platform, in the second column. */
	private static String[] lines(Table table) {
		return Arrays.stream(table.getItems()).map(item -> item.getText(1).isEmpty() ? String.valueOf(item.getData()) : item.getText(1))
				.toArray(String[]::new);
	}
}
