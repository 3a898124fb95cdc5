package org.baywright.workbench.search;

import org.baywright.workbench.Icon;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.search.ui.ISearchQuery;
import org.eclipse.search.ui.text.AbstractTextSearchResult;
import org.eclipse.search.ui.text.IEditorMatchAdapter;
import org.eclipse.search.ui.text.IFileMatchAdapter;
import org.eclipse.search.ui.text.Match;
import org.eclipse.ui.IEditorPart;

/** What a search for places found. */
public final class PlacesFound extends AbstractTextSearchResult implements IEditorMatchAdapter, IFileMatchAdapter {

	private final PlacesQuery query;

	PlacesFound(PlacesQuery query) {
		this.query = query;
	}

	@Override
	public String getLabel() {
		return query.getLabel();
	}

	@Override
	public String getTooltip() {
		return getLabel();
	}

	@Override
	public ImageDescriptor getImageDescriptor() {
		return Icon.FIND.descriptor();
	}

	@Override
	public ISearchQuery getQuery() {
		return query;
	}

	@Override
	public IEditorMatchAdapter getEditorMatchAdapter() {
		return this;
	}

	@Override
	public IFileMatchAdapter getFileMatchAdapter() {
		return this;
	}

	@Override
	public boolean isShownInEditor(Match match, IEditorPart editor) {
		return match.getElement().equals(Adapters.adapt(editor.getEditorInput(), IFile.class));
	}

	@Override
	public Match[] computeContainedMatches(AbstractTextSearchResult result, IEditorPart editor) {
		IFile file = Adapters.adapt(editor.getEditorInput(), IFile.class);
		return file == null ? new Match[0] : getMatches(file);
	}

	@Override
	public Match[] computeContainedMatches(AbstractTextSearchResult result, IFile file) {
		return getMatches(file);
	}

	@Override
	public IFile getFile(Object element) {
		return element instanceof IFile file ? file : null;
	}
}
