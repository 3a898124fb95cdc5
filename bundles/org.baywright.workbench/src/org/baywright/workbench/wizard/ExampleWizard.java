package org.baywright.workbench.wizard;

import java.io.IOException;

import org.baywright.workbench.Icon;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IImportWizard;

/** Brings one of the example projects into the workspace. */
public final class ExampleWizard extends ProjectWizard implements IImportWizard {

	private Page page;

	/** Makes the wizard. */
	public ExampleWizard() {
		super(WizardMessages.ExampleTitle);
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
			return make(example.id(), Examples.files(example.id()), example.opens());
		} catch (IOException e) {
			failed(e);
			return false;
		}
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
