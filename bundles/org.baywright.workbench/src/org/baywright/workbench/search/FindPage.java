package org.baywright.workbench.search;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.presenter.search.RuleSearch;
import org.baywright.presenter.search.Subject;
import org.baywright.workbench.Accessible;
import org.baywright.workbench.Baywright;
import org.eclipse.jface.dialogs.DialogPage;
import org.eclipse.jface.dialogs.DialogSettings;
import org.eclipse.jface.dialogs.IDialogSettings;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.search.ui.ISearchPage;
import org.eclipse.search.ui.ISearchPageContainer;
import org.eclipse.search.ui.NewSearchUI;
import org.eclipse.swt.SWT;
import org.eclipse.swt.events.SelectionListener;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Group;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;

/** The page of the search dialog that finds rules by what they speak of. */
public final class FindPage extends DialogPage implements ISearchPage {

	/** The page's id. */
	public static final String ID = "org.baywright.workbench.search.find";

	private static final String SETTINGS = "find";
	private static final int WIDTH = 420;

	private final Map<Subject, Button> subjects = new EnumMap<>(Subject.class);
	private ISearchPageContainer container;
	private Text words;
	private Label refusal;

	@Override
	public void setContainer(ISearchPageContainer to) {
		container = to;
	}

	@Override
	public void createControl(Composite parent) {
		Composite page = new Composite(parent, SWT.NONE);
		GridLayoutFactory.swtDefaults().applyTo(page);
		new Label(page, SWT.NONE).setText(SearchMessages.Words);
		words = new Text(page, SWT.SEARCH | SWT.ICON_SEARCH | SWT.ICON_CANCEL);
		Accessible.name(words, SearchMessages.Words.replace("&", ""));
		GridDataFactory.fillDefaults().grab(true, false).applyTo(words);
		words.setText(selected());
		words.selectAll();
		words.addModifyListener(event -> tell());
		Label hint = new Label(page, SWT.WRAP);
		hint.setText(SearchMessages.Hint);
		GridDataFactory.fillDefaults().grab(true, false).hint(WIDTH, SWT.DEFAULT).applyTo(hint);

		Group about = new Group(page, SWT.NONE);
		about.setText(SearchMessages.About);
		GridLayoutFactory.swtDefaults().numColumns(3).applyTo(about);
		GridDataFactory.fillDefaults().grab(true, false).applyTo(about);
		for (Subject subject : Subject.values()) {
			Button button = new Button(about, SWT.CHECK);
			button.setText(subject.words());
			button.setSelection(settings().get(subject.name()) == null || settings().getBoolean(subject.name()));
			button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> tell()));
			subjects.put(subject, button);
		}
		all(about, SearchMessages.All, true);
		all(about, SearchMessages.None, false);

		refusal = new Label(page, SWT.WRAP);
		GridDataFactory.fillDefaults().grab(true, false).hint(WIDTH, SWT.DEFAULT).applyTo(refusal);
		setControl(page);
	}

	private void all(Composite about, String text, boolean on) {
		Button button = new Button(about, SWT.PUSH);
		button.setText(text);
		button.addSelectionListener(SelectionListener.widgetSelectedAdapter(event -> {
			subjects.values().forEach(subject -> subject.setSelection(on));
			tell();
		}));
	}

	/** A word that is marked in the editor is most likely what is looked for. */
	private String selected() {
		return container.getSelection() instanceof ITextSelection selection && selection.getText() != null
				? selection.getText().lines().findFirst().orElse("").strip()
				: "";
	}

	private static IDialogSettings settings() {
		return DialogSettings.getOrCreateSection(Baywright.instance().getDialogSettings(), SETTINGS);
	}

	private RuleSearch search() {
		Set<Subject> chosen = EnumSet.noneOf(Subject.class);
		subjects.forEach((subject, button) -> {
			if (button.getSelection()) {
				chosen.add(subject);
			}
		});
		return new RuleSearch(words.getText(), chosen);
	}

	private void tell() {
		Optional<String> why = search().refusal();
		refusal.setText(why.orElse(""));
		container.setPerformActionEnabled(why.isEmpty());
	}

	@Override
	public void setVisible(boolean visible) {
		super.setVisible(visible);
		if (visible) {
			tell();
			words.setFocus();
		}
	}

	@Override
	public boolean performAction() {
		RuleSearch search = search();
		if (search.refusal().isPresent()) {
			return false;
		}
		subjects.forEach((subject, button) -> settings().put(subject.name(), button.getSelection()));
		NewSearchUI.runQueryInBackground(FindInRules.query(search));
		return true;
	}
}
