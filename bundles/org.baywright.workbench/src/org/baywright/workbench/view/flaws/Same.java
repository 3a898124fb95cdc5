package org.baywright.workbench.view.flaws;

import org.eclipse.jface.viewers.IElementComparer;

/** Elements of the tree are compared as they are: comparing all that a kind holds would take long. */
final class Same implements IElementComparer {

	@Override
	public boolean equals(Object a, Object b) {
		return a == b;
	}

	@Override
	public int hashCode(Object element) {
		return System.identityHashCode(element);
	}
}
