package org.baywright.workbench.editor;

import java.util.List;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.names.Target;
import org.baywright.language.ide.names.Use;
import org.baywright.presenter.Say;
import org.baywright.workbench.Icon;
import org.baywright.workbench.search.PlaceFound;
import org.baywright.workbench.search.PlacesQuery;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.osgi.util.NLS;
import org.eclipse.search.ui.NewSearchUI;

/** Lists all places where the thing at the cursor is named, in the platform's search view. */
public final class FindUses extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		AtCursor.of(event).ifPresent(at -> NewSearchUI
				.runQueryInBackground(query(at.edited(), at.edited().document().get(), at.selection().getOffset())));
		return null;
	}

	static PlacesQuery query(EditedFile edited, String text, int offset) {
		return new PlacesQuery(EditorMessages.UsesTitle, monitor -> edited.project().ask(edited.file(), text,
				(EditorServices services, String path) -> services.target(path, offset).map(Target::name)
						.map(name -> answer(edited, name, services.references(path, offset, true)))
						.orElse(new PlacesQuery.Answer(EditorMessages.UsesNone, List.of()))));
	}

	private static PlacesQuery.Answer answer(EditedFile edited, String name, List<Use> uses) {
		return new PlacesQuery.Answer(NLS.bind(EditorMessages.UsesMatches, name, Say.count(uses.size(), "place")),
				uses.stream().filter(use -> edited.project().file(use.file()).exists()).map(use -> new PlaceFound(edited.project().file(use.file()), use.offset(), use.length(), use.line(),
						use.declaration() ? Icon.LINK : Icon.OPEN)).toList());
	}
}
