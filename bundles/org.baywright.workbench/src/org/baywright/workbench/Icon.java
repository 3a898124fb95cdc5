package org.baywright.workbench;

import java.net.URL;
import java.util.Locale;

import org.eclipse.core.runtime.FileLocator;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.resource.ImageRegistry;
import org.eclipse.swt.graphics.Image;

/** The workbench's own icons. Each exists in two sizes; the platform takes the one that fits the screen. */
public enum Icon {
	ACCEPT, ACCEPTED, BENCH, CASE, CASES, CHECK, CODE, COPY, ERROR, EXCLUSIVE, EXPORT, FAILED, FAMILY, FAULT, FILE, FIND, FLAWS,
	FIRED, FIT, GRID, HAZARD, HELP, INFO, KEYWORD, LAW, LINK, MODULE, OPEN, PACK, PART, PASSED, PICTURE, PROJECT, REPAIR, RESET,
	REVIEW, RULE, RULEDOUT, SIGN, SKELETON, STATE, TEST, TIDY, TOOL, TRAIT, UNDECIDED, VALUE, WARNING, ZOOMIN, ZOOMOUT;

	/** Returns the icon's description, for actions and wizards. */
	public ImageDescriptor descriptor() {
		String file = "icons/" + name().toLowerCase(Locale.ROOT) + ".png";
		URL url = FileLocator.find(Baywright.instance().getBundle(), IPath.fromPortableString(file), null);
		return url == null ? ImageDescriptor.getMissingImageDescriptor() : ImageDescriptor.createFromURL(url);
	}

	/** Returns the icon in the size of a wizard's head. */
	public ImageDescriptor large() {
		URL url = FileLocator.find(Baywright.instance().getBundle(),
				IPath.fromPortableString("icons/" + name().toLowerCase(Locale.ROOT) + "_large.png"), null);
		return url == null ? descriptor() : ImageDescriptor.createFromURL(url);
	}

	/** Returns the icon as an image that all share; it must not be disposed. To be called on the screen's thread. */
	public Image image() {
		ImageRegistry registry = Baywright.instance().getImageRegistry();
		Image known = registry.get(name());
		if (known == null) {
			registry.put(name(), descriptor());
			known = registry.get(name());
		}
		return known;
	}
}
