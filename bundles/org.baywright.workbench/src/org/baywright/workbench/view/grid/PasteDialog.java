package org.baywright.workbench.view.grid;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.baywright.language.ide.grid.NewRule;
import org.baywright.language.ide.grid.Pasted;
import org.baywright.model.words.Words;
import org.baywright.workbench.preference.Preferences;
import org.eclipse.osgi.util.NLS;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Shell;

/** Lists what a paste changes and what is not understood, before anything is written. */
final class PasteDialog extends WritingDialog {

	private static final int MOST_LINES = 200;

	private final Pasted pasted;
	private final Optional<String> family;
	private NewRuleFields draft;

	PasteDialog(Shell parent, Pasted pasted, Optional<String> family) {
		super(parent, GridMessages.Paste, 620);
		this.pasted = pasted;
		this.family = family;
	}

	@Override
	void createFields(Composite fields) {
		setTitle(GridMessages.Paste);
		listed(fields, NLS.bind(GridMessages.PasteChanges, pasted.changes().size()), pasted.changes());
		if (!pasted.troubles().isEmpty()) {
			listed(fields, NLS.bind(GridMessages.PasteTroubles, pasted.troubles().size()), pasted.troubles());
		}
		if (!pasted.added().isEmpty()) {
			Words words = new Words(pasted.snapshot().rules());
			note(fields, NLS.bind(GridMessages.PasteAdded, Words.and(pasted.added().keySet().stream().map(words::test).toList())));
			NewRule start = new NewRule("", family.stream().toList(), "", "", null, "", Preferences.author(), LocalDate.now(), "");
			draft = new NewRuleFields(fields, pasted.snapshot(), start, true, this::ask);
		}
		preview(fields, 90);
	}

	private void listed(Composite parent, String title, List<String> lines) {
		int left = lines.size() - MOST_LINES;
		// a field of thousands of lines takes minutes to lay out
		String all = String.join("\n", lines.subList(0, Math.min(lines.size(), MOST_LINES)));
		shown(parent, title, 90, SWT.WRAP).setText(left <= 0 ? all : all + "\n" + NLS.bind(GridMessages.PasteMore, left));
	}

	@Override
	Asked asked() {
		List<NewRule> rules = draft == null ? List.of()
				: pasted.rules(draft.families(), draft.sign(), draft.because(), draft.author(), LocalDate.now());
		Optional<String> wrong = Pasted.problem(rules);
		return new Asked(wrong, pasted.changes().isEmpty() ? GridMessages.PasteNothing : GridMessages.PasteText,
				() -> pasted.edit(wrong.isPresent() ? List.of() : rules));
	}

	@Override
	protected void okPressed() {
		if (draft != null) {
			Preferences.setAuthor(draft.author());
		}
		super.okPressed();
	}
}
