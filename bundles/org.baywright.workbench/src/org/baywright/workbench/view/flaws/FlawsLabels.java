package org.baywright.workbench.view.flaws;

import org.baywright.model.Severity;
import org.baywright.presenter.flaws.Group;
import org.baywright.presenter.flaws.Item;
import org.baywright.workbench.Icon;
import org.eclipse.jface.viewers.ColumnLabelProvider;
import org.eclipse.swt.graphics.Image;

/** Says what was found, with the picture of its severity. */
final class FlawsLabels extends ColumnLabelProvider {

	@Override
	public String getText(Object element) {
		return element instanceof Group group ? group.label() : ((Item) element).message();
	}

	/** What the list cuts off. */
	@Override
	public String getToolTipText(Object element) {
		return getText(element);
	}

	/** One of our own would lie over the story beside the list. */
	@Override
	public boolean useNativeToolTip(Object element) {
		return true;
	}

	@Override
	public Image getImage(Object element) {
		if (element instanceof Item item && item.accepted().isPresent()) {
			return Icon.ACCEPTED.image();
		}
		return icon(element instanceof Group group ? group.severity() : ((Item) element).severity()).image();
	}

	private static Icon icon(Severity severity) {
		return switch (severity) {
		case ERROR -> Icon.ERROR;
		case WARNING -> Icon.WARNING;
		case NOTE -> Icon.INFO;
		};
	}
}
