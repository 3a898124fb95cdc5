package org.baywright.workbench.wizard;

import java.io.IOException;

import org.baywright.workbench.Accessible;
import org.baywright.workbench.Icon;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.MouseListener;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.List;
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
			return make(example.id(), Examples.files(example.id()), Examples.pictures(example.id()), example.opens());
		} catch (IOException e) {
			failed(e);
			return false;
		}
	}

	private static final class Page extends WizardPage {

		private Examples.Example chosen;
		private List list;
		private Label about;

		Page() {
			super("example", WizardMessages.ExampleTitle, Icon.SKELETON.large());
			setDescription(WizardMessages.ExampleText);
		}

		@Override
		public void createControl(Composite parent) {
			Composite fields = new Composite(parent, SWT.NONE);
			GridLayoutFactory.swtDefaults().applyTo(fields);
			list = new List(fields, SWT.BORDER | SWT.SINGLE | SWT.V_SCROLL);
			Examples.ALL.forEach(example -> list.add(example.title()));
			Accessible.name(list, WizardMessages.ExampleTitle);
			GridDataFactory.fillDefaults().grab(true, true).applyTo(list);
			about = new Label(fields, SWT.WRAP);
			GridDataFactory.fillDefaults().hint(460, 2 * about.computeSize(SWT.DEFAULT, SWT.DEFAULT).y).grab(true, false).applyTo(about);
			list.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> choose()));
			list.addMouseListener(MouseListener.mouseDoubleClickAdapter(event -> {
				if (isPageComplete() && getWizard().performFinish()) {
					getShell().close();
				}
			}));
			// the first that is not there yet
			list.select((int) Examples.ALL.stream().takeWhile(Page::isThere).count() % Examples.ALL.size());
			choose();
			setControl(fields);
			list.setFocus();
		}

		private static boolean isThere(Examples.Example example) {
			return ResourcesPlugin.getWorkspace().getRoot().getProject(example.id()).exists();
		}

		private void choose() {
			chosen = Examples.ALL.get(list.getSelectionIndex());
			about.setText(chosen.about());
			setErrorMessage(isThere(chosen) ? NLS.bind(WizardMessages.ExampleThere, chosen.id()) : null);
			setPageComplete(!isThere(chosen));
		}
	}
}
