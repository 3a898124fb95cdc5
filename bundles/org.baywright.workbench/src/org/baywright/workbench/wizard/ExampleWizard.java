package org.baywright.workbench.wizard;

import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.util.SortedMap;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.Icon;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.wizard.Wizard;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IImportWizard;
import org.eclipse.ui.INewWizard;
import org.eclipse.ui.IWorkbench;

/** Brings one of the example projects into the workspace. */
public final class ExampleWizard extends Wizard implements INewWizard, IImportWizard {

	private Page page;

	@Override
	public void init(IWorkbench workbench, IStructuredSelection selection) {
		setWindowTitle(WizardMessages.ExampleTitle);
		setNeedsProgressMonitor(true);
	}

	@Override
	public void addPages() {
		page = new Page();
		addPage(page);
	}

	@Override
	public boolean performFinish() {
		Examples.Example example = page.chosen;
		try {
			SortedMap<String, String> files = Examples.files(example.id());
			getContainer().run(true, true, monitor -> {
				try {
					ProjectMaker.make(example.id(), files, monitor);
				} catch (CoreException e) {
					throw new InvocationTargetException(e);
				}
			});
			IProject made = ResourcesPlugin.getWorkspace().getRoot().getProject(example.id());
			ProjectMaker.show(made, example.opens());
			return true;
		} catch (InvocationTargetException e) {
			ErrorDialog.openError(getShell(), WizardMessages.ExampleTitle, WizardMessages.ProjectFailed,
					Baywright.error(e.getCause().getMessage(), e.getCause()));
		} catch (IOException e) {
			ErrorDialog.openError(getShell(), WizardMessages.ExampleTitle, WizardMessages.ProjectFailed,
					Baywright.error(e.getMessage(), e));
		} catch (InterruptedException e) {
			// the user cancelled; the half-made project is gone
		}
		return false;
	}

	private static final class Page extends WizardPage {

		private Examples.Example chosen;

		Page() {
			super("example", WizardMessages.ExampleTitle, Icon.SKELETON.large());
			setDescription(WizardMessages.ExampleText);
		}

		@Override
		public void createControl(Composite parent) {
			Composite choices = new Composite(parent, SWT.NONE);
			GridLayoutFactory.swtDefaults().applyTo(choices);
			for (Examples.Example example : Examples.ALL) {
				Button button = new Button(choices, SWT.RADIO);
				button.setText(example.title());
				button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> choose(example)));
				Label about = new Label(choices, SWT.WRAP);
				about.setText(example.about());
				GridDataFactory.fillDefaults().indent(24, 0).hint(460, SWT.DEFAULT).grab(true, false).applyTo(about);
				if (chosen == null) {
					button.setSelection(true);
					choose(example);
				}
			}
			setControl(choices);
		}

		private void choose(Examples.Example example) {
			chosen = example;
			boolean there = ResourcesPlugin.getWorkspace().getRoot().getProject(example.id()).exists();
			setErrorMessage(there ? NLS.bind(WizardMessages.ExampleThere, example.id()) : null);
			setPageComplete(!there);
		}
	}
}
