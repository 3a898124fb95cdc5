package org.baywright.workbench.view.findings;

import org.baywright.presenter.findings.Findings;
import org.baywright.presenter.findings.Group;
import org.eclipse.jface.viewers.ITreeContentProvider;

/** Kinds of findings, and the findings of each. */
final class FindingsTree implements ITreeContentProvider {

	@Override
	public Object[] getElements(Object input) {
		return ((Findings) input).groups().toArray();
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
