package org.baywright.workbench.wizard;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

import org.baywright.workbench.Ui;
import org.baywright.workbench.project.RuleProjects;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.wizard.WizardDialog;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Text;
import org.eclipse.ui.IWorkbenchWizard;
import org.eclipse.ui.PlatformUI;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A project and a rule made by somebody who types into the wizards' fields. */
class WizardsTest {

	private static IProject project() {
		return ResourcesPlugin.getWorkspace().getRoot().getProject("wizard-vans");
	}

	@AfterEach
	void deleteTheProject() throws Exception {
		Ui.run(() -> Ui.page().closeAllEditors(false));
		if (project().exists()) {
			project().delete(true, true, null);
		}
	}

	private static WizardDialog open(IWorkbenchWizard wizard, StructuredSelection on) {
		return Ui.get(() -> {
			var intro = PlatformUI.getWorkbench().getIntroManager();
			if (intro.getIntro() != null) {
				intro.closeIntro(intro.getIntro());
			}
			wizard.init(PlatformUI.getWorkbench(), on);
			WizardDialog dialog = new WizardDialog(Ui.page().getWorkbenchWindow().getShell(), wizard);
			dialog.setBlockOnOpen(false);
			dialog.open();
			return dialog;
		});
	}

	private static <T extends Control> List<T> all(Composite in, Class<T> type) {
		List<T> found = new ArrayList<>();
		for (Control child : in.getChildren()) {
			if (child.getClass() == type) {
				found.add(type.cast(child));
			} else if (child instanceof Composite inner) {
				found.addAll(all(inner, type));
			}
		}
		return found;
	}

	private static void choose(Combo combo, String text) {
		int index = Arrays.asList(combo.getItems()).indexOf(text);
		assertTrue(index >= 0, () -> text + " is not among " + Arrays.toString(combo.getItems()));
		combo.select(index);
		combo.notifyListeners(SWT.Selection, new Event());
	}

	@Test
	void aProjectAndThenARule() throws Exception {
		NewProjectWizard making = new NewProjectWizard();
		WizardDialog dialog = open(making, StructuredSelection.EMPTY);
		Ui.run(() -> {
			assertFalse(making.canFinish());
			List<Text> fields = all((Composite) making.getPages()[0].getControl(), Text.class);
			fields.get(0).setText("wizard-vans");
			fields.get(1).setText("Heron \"H2\" chassis");
			assertEquals("heron_h2_chassis", fields.get(2).getText());
			fields.get(3).setText("2019");
			assertNotNull(making.getPages()[0].getErrorMessage());
			fields.get(4).setText("2024");
			fields.get(7).setText("A. Author");
		});
		Ui.picture("wizard-project");
		Ui.run(() -> {
			assertTrue(making.canFinish(), () -> making.getPages()[0].getErrorMessage());
			assertTrue(making.performFinish());
			dialog.close();
		});
		Ui.await(() -> "not checked", () -> RuleProjects.of(project()).state().isFresh());
		assertArrayEquals(new String[0], Ui.marks(project()), () -> Arrays.toString(Ui.marks(project())));

		NewRuleWizard rule = new NewRuleWizard();
		WizardDialog asking = open(rule, new StructuredSelection(project().getFile("starting.bay")));
		Ui.run(() -> {
			Composite page = (Composite) rule.getPages()[0].getControl();
			List<Text> fields = all(page, Text.class);
			fields.get(0).setText("Nearly empty");
			assertEquals("nearly_empty", fields.get(1).getText());
			List<Combo> choices = all(page, Combo.class);
			choose(choices.get(1), "Engine does not start (no_start)");
			choose(choices.get(2), "Battery voltage at rest (rest_voltage)");
			fields.get(2).setText("11");
			List<Combo> results = all(page, Combo.class);
			choose(results.get(5), "confirms");
			choose(results.get(6), "Low state of charge (battery.discharged)");
			fields.get(4).setText("Below 11 V it is empty.");
		});
		Ui.picture("wizard-rule");
		Ui.run(() -> {
			assertTrue(rule.canFinish(), () -> rule.getPages()[0].getErrorMessage());
			assertTrue(rule.performFinish());
			asking.close();
		});
		Ui.run(() -> Ui.page().saveAllEditors(false));
		String text = new String(project().getFile("starting.bay").getContents(true).readAllBytes(), StandardCharsets.UTF_8);
		assertTrue(text.contains("""
				rule nearly_empty "Nearly empty" {
				  given no_start
				  run rest_voltage
				  expect at_least 11 V
				  below : confirms battery.discharged
				  because "Below 11 V it is empty."
				"""), text);
		// the new rule says no more than the first one already does
		Ui.await(() -> Arrays.toString(Ui.marks(project())), () -> Ui.mark(project(), "redundant-rule") != null);
	}
}
