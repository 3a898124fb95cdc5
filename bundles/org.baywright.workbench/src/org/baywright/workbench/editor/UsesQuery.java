package org.baywright.workbench.editor;

import java.util.List;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.names.Target;
import org.baywright.language.ide.names.Use;
import org.baywright.workbench.Baywright;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.osgi.util.NLS;
import org.eclipse.search.ui.ISearchQuery;
import org.eclipse.search.ui.ISearchResult;

/** Searches for a name. */
final class UsesQuery implements ISearchQuery {

	private final EditedFile edited;
	private final String text;
	private final int offset;
	private final UsesFound found = new UsesFound(this);
	private String name = "";

	UsesQuery(EditedFile edited, String text, int offset) {
		this.edited = edited;
		this.text = text;
		this.offset = offset;
	}

	@Override
	public IStatus run(IProgressMonitor monitor) {
		found.removeAll();
		record Answer(String name, List<Use> uses) {
		}
		Answer answer = edited.project().ask(edited.file(), text,
				(EditorServices services, String path) -> new Answer(
						services.target(path, offset).map(Target::name).orElse(""), services.references(path, offset, true)));
		if (answer.name().isEmpty()) {
			return new Status(IStatus.INFO, Baywright.ID, EditorMessages.UsesNone);
		}
		name = answer.name();
		answer.uses().forEach(use -> found.addMatch(new UseFound(edited.project().file(use.file()), use)));
		return Status.OK_STATUS;
	}

	String name() {
		return name;
	}

	@Override
	public String getLabel() {
		return NLS.bind(EditorMessages.UsesOf, name);
	}

	@Override
	public boolean canRerun() {
		return true;
	}

	@Override
	public boolean canRunInBackground() {
		return true;
	}

	@Override
	public ISearchResult getSearchResult() {
		return found;
	}
}
