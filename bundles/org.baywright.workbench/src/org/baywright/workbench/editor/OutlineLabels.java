package org.baywright.workbench.editor;

import org.baywright.language.ide.outline.OutlineItem;
import org.baywright.workbench.Icon;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.swt.graphics.Image;

/** How elements look in the outline; in one colour, as the toolkit draws styled words over one another now and then. */
final class OutlineLabels extends LabelProvider {

	static Icon icon(OutlineItem.Kind kind) {
		return switch (kind) {
		case ACCEPTANCE -> Icon.ACCEPTED;
		case BUILDSON -> Icon.PROJECT;
		case REMARK, REVIEWER, SIGNOFF -> Icon.REVIEW;
		case WORKSHOP -> Icon.TOOL;
		default -> Icon.valueOf(kind.name());
		};
	}

	@Override
	public String getText(Object element) {
		OutlineItem item = (OutlineItem) element;
		return item.detail().isEmpty() ? item.label() : item.label() + " (" + item.detail() + ")";
	}

	@Override
	public Image getImage(Object element) {
		return icon(((OutlineItem) element).kind()).image();
	}
}
