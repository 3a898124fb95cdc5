package org.baywright.workbench.wizard;

import org.baywright.presenter.draft.ProjectDraft;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.Icon;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.wizard.IWizardPage;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Text;

/** Adds an empty rule file. */
public final class NewFileWizard extends ElementWizard {

	private Page page;

	@Override
	String title() {
		return WizardMessages.FileTitle;
	}

	@Override
	IWizardPage page(Target to) {
		page = new Page(to);
		return page;
	}

	@Override
	String file() {
		return page.path().toPortableString();
	}

	@Override
	String text() {
		return "";
	}

	private static final class Page extends WizardPage {

		private final Target to;
		private Text name;

		Page(Target to) {
			super("file", WizardMessages.FileTitle, Icon.FILE.large());
			this.to = to;
			setDescription(WizardMessages.FileText);
		}

		@Override
		public void createControl(Composite parent) {
			Composite fields = new Composite(parent, SWT.NONE);
			GridLayoutFactory.swtDefaults().numColumns(2).applyTo(fields);
			name = FamilyFields.field(fields, WizardMessages.File);
			name.setText("rules." + Baywright.ENDING);
			name.setSelection(0, 5);
			name.addModifyListener(event -> judge());
			setControl(fields);
			judge();
			name.setFocus();
		}

		IPath path() {
			IPath path = to.folder().getProjectRelativePath().append(name.getText().strip());
			return Baywright.ENDING.equalsIgnoreCase(path.getFileExtension()) ? path : path.addFileExtension(Baywright.ENDING);
		}

		private void judge() {
			boolean blank = name.getText().isBlank();
			String wrong = null;
			if (!blank) {
				IStatus valid = ResourcesPlugin.getWorkspace().validateName(path().lastSegment(), IResource.FILE);
				// what some system refuses would keep the project from being shared
				boolean refused = name.getText().matches(".*[/\\\\:*?\"<>|].*") || ProjectDraft.isTooLong(path().lastSegment());
				wrong = refused || !valid.isOK() ? NLS.bind(WizardMessages.FileBadName, name.getText().strip())
						: to.project().exists(path()) ? NLS.bind(WizardMessages.FileThere, to.project().getName(), path()) : null;
			}
			setErrorMessage(wrong);
			setPageComplete(wrong == null && !blank);
		}
	}
}
