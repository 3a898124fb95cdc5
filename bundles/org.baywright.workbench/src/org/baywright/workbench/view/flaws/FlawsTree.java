package org.baywright.workbench.view.flaws;

import org.baywright.presenter.flaws.Flaws;
import org.baywright.presenter.flaws.Group;
import org.eclipse.jface.viewers.ITreeContentProvider;

/** Kinds of flaws, and the flaws of each. */
final class FlawsTree implements ITreeContentProvider {

	@Override
	public Object[] getElements(Object input) {
		return ((Flaws) input).groups().toArray();
	}

	@Override
	public Object[] getChildren(Object parent) {
		return parent instanceof Group group ? group.items().toArray() : new Object[0];
	}

	@Override
	public Object getParent(Object element) {
		return null;
	}

	@Override
	public boolean hasChildren(Object element) {
		return element instanceof Group;
	}
}
