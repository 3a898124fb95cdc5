package org.baywright.workbench;

import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.widgets.Control;

/** Names for those who hear the screen instead of seeing it. */
public final class Accessible {

	private Accessible() {
	}

	/** Gives a control that has no label of its own a name. */
	public static void name(Control control, String name) {
		control.getAccessible().addAccessibleListener(new AccessibleAdapter() {
			@Override
			public void getName(AccessibleEvent event) {
				event.result = name;
			}
		});
	}
}
