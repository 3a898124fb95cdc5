package org.baywright.workbench.view;

import org.baywright.presenter.picture.Theme;
import org.eclipse.swt.graphics.Color;
import org.eclipse.swt.graphics.RGB;
import org.eclipse.swt.widgets.Control;

/** Finds the colours that suit the ground that the platform's theme gives a control. */
public final class Grounds {

	private Grounds() {
	}

	/** Returns the colours for a control as it looks now. */
	public static Theme theme(Control control) {
		Color ground = control.getBackground();
		double light = 0.299 * ground.getRed() + 0.587 * ground.getGreen() + 0.114 * ground.getBlue();
		return light < 128 ? Theme.DARK : Theme.LIGHT;
	}

	/** Returns the colour that a theme writes as {@code #rrggbb}; it need not be disposed. */
	public static Color colour(String hex) {
		int rgb = Integer.parseInt(hex.substring(1), 16);
		return new Color(new RGB(rgb >> 16, rgb >> 8 & 255, rgb & 255));
	}
}
