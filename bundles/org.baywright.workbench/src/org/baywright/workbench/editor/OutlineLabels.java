package org.baywright.workbench.editor;

import org.baywright.language.ide.outline.OutlineItem;
import org.baywright.workbench.Icon;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider.IStyledLabelProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StyledString;
import org.eclipse.swt.graphics.Image;

/** How elements look in the outline. */
final class OutlineLabels extends LabelProvider implements IStyledLabelProvider {

	static Icon icon(OutlineItem.Kind kind) {
		return kind == OutlineItem.Kind.ACCEPTANCE ? Icon.ACCEPTED : Icon.valueOf(kind.name());
	}

	@Override
	public StyledString getStyledText(Object element) {
		OutlineItem item = (OutlineItem) element;
		StyledString text = new StyledString(item.label());
		if (!item.detail().isEmpty()) {
			text.append("  " + item.detail(), StyledString.QUALIFIER_STYLER);
		}
		return text;
	}

	@Override
	public String getText(Object element) {
		return ((OutlineItem) element).label();
	}

	@Override
	public Image getImage(Object element) {
		return icon(((OutlineItem) element).kind()).image();
	}
}
