package org.baywright.workbench.editor.card;

import java.util.Locale;

import org.baywright.workbench.Icon;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.swt.graphics.Image;

/** The icon of each kind of element. */
final class KindIcon {

	private KindIcon() {
	}

	static Image of(String kind) {
		return icon(kind).image();
	}

	static ImageDescriptor descriptor(String kind) {
		return icon(kind).descriptor();
	}

	private static Icon icon(String kind) {
		for (Icon icon : Icon.values()) {
			if (icon.name().toLowerCase(Locale.ROOT).equals(kind)) {
				return icon;
			}
		}
		return switch (kind) {
		case "job" -> Icon.CASE;
		case "chain" -> Icon.RULE;
		case "remark", "reviewer", "sign_off" -> Icon.REVIEW;
		case "workshop" -> Icon.TOOL;
		default -> Icon.SKELETON;
		};
	}
}
