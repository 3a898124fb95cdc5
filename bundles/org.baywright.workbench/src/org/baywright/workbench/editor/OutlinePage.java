package org.baywright.workbench.editor;

import java.util.ArrayList;
import java.util.List;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.outline.OutlineItem;
import org.baywright.workbench.Accessible;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.viewers.IPostSelectionProvider;
import org.eclipse.jface.viewers.ISelectionChangedListener;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.SelectionChangedEvent;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TreePath;
import org.eclipse.jface.viewers.TreeSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.views.contentoutline.ContentOutlinePage;

/** The elements of the file in front; follows the cursor and leads it. */
public final class OutlinePage extends ContentOutlinePage {

	private final ITextEditor editor;
	private final ISelectionChangedListener moved = event -> follow();
	private final Reader reader = new Reader();
	private List<OutlineItem> shown = List.of();
	private boolean following;

	OutlinePage(ITextEditor editor) {
		this.editor = editor;
	}

	@Override
	protected int getTreeStyle() {
		return SWT.H_SCROLL | SWT.V_SCROLL | SWT.SINGLE;
	}

	@Override
	public void createControl(Composite parent) {
		super.createControl(parent);
		Accessible.name(getTreeViewer().getControl(), EditorMessages.Outline);
		getTreeViewer().setContentProvider(new Content());
		getTreeViewer().setLabelProvider(new OutlineLabels());
		getTreeViewer().setUseHashlookup(true);
		ITextViewer viewer = editor.getAdapter(ITextViewer.class);
		if (viewer != null) {
			reader.install(viewer);
		}
		if (editor.getSelectionProvider() instanceof IPostSelectionProvider provider) {
			provider.addPostSelectionChangedListener(moved);
		}
	}

	@Override
	public void dispose() {
		reader.uninstall();
		if (editor.getSelectionProvider() instanceof IPostSelectionProvider provider) {
			provider.removePostSelectionChangedListener(moved);
		}
		super.dispose();
	}

	@Override
	public void selectionChanged(SelectionChangedEvent event) {
		super.selectionChanged(event);
		if (!following && event.getStructuredSelection().getFirstElement() instanceof OutlineItem item) {
			editor.selectAndReveal(item.nameOffset(), item.nameLength());
		}
	}

	private void show(List<OutlineItem> items) {
		if (getTreeViewer() == null || getTreeViewer().getControl().isDisposed() || items.equals(shown)) {
			return;
		}
		List<String> open = new ArrayList<>();
		for (Object element : getTreeViewer().getExpandedElements()) {
			open.add(((OutlineItem) element).label());
		}
		following = true;
		getTreeViewer().getControl().setRedraw(false);
		shown = items;
		getTreeViewer().setInput(items);
		getTreeViewer().setExpandedElements(items.stream().filter(item -> open.contains(item.label())).toArray());
		getTreeViewer().getControl().setRedraw(true);
		following = false;
		follow();
	}

	private void follow() {
		if (getTreeViewer() == null || getTreeViewer().getControl().isDisposed()
				|| !(editor.getSelectionProvider().getSelection() instanceof ITextSelection selection)) {
			return;
		}
		List<OutlineItem> path = new ArrayList<>();
		at(shown, selection.getOffset(), path);
		following = true;
		getTreeViewer().setSelection(path.isEmpty() ? StructuredSelection.EMPTY : new TreeSelection(new TreePath(path.toArray())), true);
		following = false;
	}

	private static void at(List<OutlineItem> items, int offset, List<OutlineItem> path) {
		for (OutlineItem item : items) {
			if (offset >= item.offset() && offset <= item.offset() + item.length()) {
				path.add(item);
				at(item.children(), offset, path);
				return;
			}
		}
	}

	private final class Reader extends TextWorker<List<OutlineItem>> {

		Reader() {
			super(250);
		}

		@Override
		protected List<OutlineItem> ask(EditedFile of) {
			return of.ask((EditorServices services, String path) -> services.outline(path));
		}

		@Override
		protected void show(ITextViewer in, List<OutlineItem> answer) {
			OutlinePage.this.show(answer);
		}
	}

	private static final class Content implements ITreeContentProvider {

		@Override
		public Object[] getElements(Object input) {
			return ((List<?>) input).toArray();
		}

		@Override
		public Object[] getChildren(Object parent) {
			return ((OutlineItem) parent).children().toArray();
		}

		@Override
		public Object getParent(Object element) {
			return null;
		}

		@Override
		public boolean hasChildren(Object element) {
			return !((OutlineItem) element).children().isEmpty();
		}
	}
}
