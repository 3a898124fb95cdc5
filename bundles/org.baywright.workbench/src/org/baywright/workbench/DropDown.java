package org.baywright.workbench;

import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;

/** Lists to choose from in views. */
public final class DropDown {

	private static final int MOST_SEEN = 20;

	private DropDown() {
	}

	/** Makes a list that says what it is for, under the mouse and to those who hear the screen. */
	public static Combo of(Composite parent, String name) {
		Combo combo = new Combo(parent, SWT.READ_ONLY | SWT.DROP_DOWN);
		combo.setVisibleItemCount(MOST_SEEN);
		// a view passes its background down; without one of its own an open list shows what lies under the window
		combo.setBackground(combo.getDisplay().getSystemColor(SWT.COLOR_LIST_BACKGROUND));
		combo.setToolTipText(name);
		Accessible.name(combo, name);
		return combo;
	}
}
