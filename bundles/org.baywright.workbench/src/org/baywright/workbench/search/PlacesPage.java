package org.baywright.workbench.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

import org.baywright.workbench.Icon;
import org.baywright.workbench.project.Places;
import org.eclipse.core.resources.IFile;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.OpenEvent;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.TableViewer;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.search.ui.text.AbstractTextSearchResult;
import org.eclipse.search.ui.text.AbstractTextSearchViewPage;
import org.eclipse.search.ui.text.Match;
import org.eclipse.swt.graphics.Image;

/** Shows the places that a search found, by file, each with its line. */
public final class PlacesPage extends AbstractTextSearchViewPage {

	/** Made by the platform. */
	public PlacesPage() {
		super(FLAG_LAYOUT_TREE);
	}

	@Override
	protected void elementsChanged(Object[] objects) {
		getViewer().refresh();
		if (getViewer() instanceof TreeViewer tree) {
			tree.expandAll();
		}
	}

	@Override
	protected void clear() {
		getViewer().refresh();
	}

	@Override
	protected void configureTreeViewer(TreeViewer viewer) {
		viewer.setContentProvider(new Content());
		viewer.setLabelProvider(new Labels());
	}

	@Override
	protected void configureTableViewer(TableViewer viewer) {
		throw new IllegalStateException("there is only a tree");
	}

	@Override
	protected void handleOpen(OpenEvent event) {
		if (((IStructuredSelection) event.getSelection()).getFirstElement() instanceof PlaceFound found) {
			Places.open((IFile) found.getElement(), found.getOffset(), found.getLength(), true);
		} else {
			super.handleOpen(event);
		}
	}

	private static final class Content implements ITreeContentProvider {

		@Override
		public Object[] getElements(Object input) {
			List<Object> files = new ArrayList<>(Arrays.asList(((AbstractTextSearchResult) input).getElements()));
			files.sort(Comparator.comparing(file -> ((IFile) file).getFullPath().toString()));
			current = (AbstractTextSearchResult) input;
			return files.toArray();
		}

		private AbstractTextSearchResult current;

		@Override
		public Object[] getChildren(Object parent) {
			Match[] matches = current == null || !(parent instanceof IFile) ? new Match[0] : current.getMatches(parent);
			Arrays.sort(matches, Comparator.comparingInt(Match::getOffset));
			return matches;
		}

		@Override
		public Object getParent(Object element) {
			return element instanceof Match match ? match.getElement() : null;
		}

		@Override
		public boolean hasChildren(Object element) {
			return element instanceof IFile;
		}
	}

	private static final class Labels extends LabelProvider {

		@Override
		public String getText(Object element) {
			return element instanceof PlaceFound found ? found.line() : ((IFile) element).getFullPath().makeRelative().toString();
		}

		@Override
		public Image getImage(Object element) {
			return element instanceof PlaceFound found ? found.icon().image() : Icon.FILE.image();
		}
	}
}
