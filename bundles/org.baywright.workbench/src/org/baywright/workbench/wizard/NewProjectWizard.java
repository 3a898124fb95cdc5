package org.baywright.workbench.wizard;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.SortedMap;

import org.baywright.presenter.draft.ProjectDraft;
import org.baywright.workbench.Icon;
import org.baywright.workbench.preference.Preferences;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** Makes a rule project with its first family, and a first rule if wanted. */
public final class NewProjectWizard extends ProjectWizard {

	private Page page;

	/** Makes the wizard. */
	public NewProjectWizard() {
		super(WizardMessages.ProjectTitle);
	}

	@Override
	public void addPages() {
		page = new Page();
		addPage(page);
	}

	@Override
	public boolean performFinish() {
		ProjectDraft draft = page.draft();
		Preferences.setAuthor(draft.author());
		SortedMap<String, String> files = draft.files();
		return make(draft.name(), files, files.lastKey());
	}

	private static final class Page extends WizardPage {

		private Text name;
		private FamilyFields family;
		private Button starter;
		private Text author;

		Page() {
			super("project", WizardMessages.ProjectTitle, Icon.PROJECT.large());
			setDescription(WizardMessages.ProjectText);
		}

		@Override
		public void createControl(Composite parent) {
			Composite fields = new Composite(parent, SWT.NONE);
			GridLayoutFactory.swtDefaults().numColumns(2).applyTo(fields);
			name = FamilyFields.field(fields, WizardMessages.ProjectName);
			name.addModifyListener(event -> judge());
			GridDataFactory.fillDefaults().span(2, 1).applyTo(new Label(fields, SWT.SEPARATOR | SWT.HORIZONTAL));
			family = new FamilyFields(fields, this::judge);
			GridDataFactory.fillDefaults().span(2, 1).applyTo(new Label(fields, SWT.SEPARATOR | SWT.HORIZONTAL));
			starter = new Button(fields, SWT.CHECK);
			starter.setText(WizardMessages.Starter);
			starter.setSelection(true);
			starter.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> judge()));
			GridDataFactory.fillDefaults().span(2, 1).applyTo(starter);
			author = FamilyFields.field(fields, WizardMessages.Author);
			author.setText(Preferences.author());
			author.addModifyListener(event -> judge());
			setControl(fields);
			judge();
			setErrorMessage(null);
			name.setFocus();
		}

		ProjectDraft draft() {
			return new ProjectDraft(name.getText().strip(), family.draft(), starter.getSelection(), author.getText().strip(),
					LocalDate.now());
		}

		private void judge() {
			var wrong = draft().problem(Arrays.stream(ResourcesPlugin.getWorkspace().getRoot().getProjects()).map(IResource::getName).toList());
			setErrorMessage(wrong.orElse(null));
			setPageComplete(wrong.isEmpty());
		}
	}
}
