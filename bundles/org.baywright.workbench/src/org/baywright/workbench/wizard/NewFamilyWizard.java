package org.baywright.workbench.wizard;

import java.util.List;
import java.util.Optional;

import org.baywright.model.Family;
import org.baywright.workbench.Icon;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.wizard.IWizardPage;
import org.eclipse.jface.wizard.WizardPage;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;

/** Adds a vehicle family. */
public final class NewFamilyWizard extends ElementWizard {

	private Page page;

	@Override
	String title() {
		return WizardMessages.FamilyTitle;
	}

	@Override
	IWizardPage page(Target to) {
		page = new Page(to);
		return page;
	}

	@Override
	String file() {
		return page.file.getText().strip();
	}

	@Override
	String text() {
		return page.family.draft().text();
	}

	private static final class Page extends WizardPage {

		private final Target to;
		private FamilyFields family;
		private Combo file;

		Page(Target to) {
			super("family", WizardMessages.FamilyTitle, Icon.FAMILY.large());
			this.to = to;
			setDescription(WizardMessages.FamilyText);
		}

		@Override
		public void createControl(Composite parent) {
			Composite fields = new Composite(parent, SWT.NONE);
			GridLayoutFactory.swtDefaults().numColumns(2).applyTo(fields);
			family = new FamilyFields(fields, this::judge);
			file = to.fileField(fields, "families.bay");
			file.addModifyListener(event -> judge());
			setControl(fields);
			judge();
			setErrorMessage(null);
			family.setFocus();
		}

		private void judge() {
			List<String> taken = to.rules().families().stream().map(Family::name).toList();
			Optional<String> wrong = family.draft().problem(taken);
			setErrorMessage(wrong.orElse(null));
			setPageComplete(wrong.isEmpty() && file != null && !file.getText().isBlank());
		}
	}
}
