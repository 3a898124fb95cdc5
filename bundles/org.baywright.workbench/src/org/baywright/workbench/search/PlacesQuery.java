package org.baywright.workbench.search;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.Function;

import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.search.ui.ISearchQuery;
import org.eclipse.search.ui.ISearchResult;

/** A search for places in rules. */
public final class PlacesQuery implements ISearchQuery {

	/**
	 * What a search found.
	 *
	 * @param headline what was found, in words
	 * @param places where
	 */
	public record Answer(String headline, List<PlaceFound> places) {
	}

	private final Function<IProgressMonitor, Answer> ask;
	private final PlacesFound found = new PlacesFound(this);
	private volatile String headline;

	/**
	 * @param title what the search is called while it goes on
	 * @param ask searches, on a worker thread; throws a {@code CancellationException} if it shall stop
	 */
	public PlacesQuery(String title, Function<IProgressMonitor, Answer> ask) {
		headline = title;
		this.ask = ask;
	}

	@Override
	public IStatus run(IProgressMonitor monitor) {
		found.removeAll();
		try {
			Answer answer = ask.apply(monitor);
			headline = answer.headline();
			answer.places().forEach(found::addMatch);
			return Status.OK_STATUS;
		} catch (CancellationException e) {
			return Status.CANCEL_STATUS;
		}
	}

	@Override
	public String getLabel() {
		return headline;
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
