package org.baywright.workbench.wizard;

import org.baywright.workbench.preference.Preferences;
import org.eclipse.jface.wizard.IWizardPage;

/** Adds a rule. */
public final class NewRuleWizard extends ElementWizard {

	private RulePage page;

	@Override
	String title() {
		return WizardMessages.RuleTitle;
	}

	@Override
	IWizardPage page(Target to) {
		page = new RulePage(to);
		return page;
	}

	@Override
	String file() {
		return page.file();
	}

	@Override
	String text() {
		Preferences.setAuthor(page.draft().author());
		return page.text();
	}
}
