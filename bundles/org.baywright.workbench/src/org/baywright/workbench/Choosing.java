package org.baywright.workbench;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;

import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.dialogs.ElementListSelectionDialog;
import org.eclipse.ui.dialogs.FilteredList;

/** Lets the user choose one of many by typing some of its words, in any order. */
public final class Choosing {

	private Choosing() {
	}

	/**
	 * Asks, and waits for the answer; to be called on the screen's thread.
	 *
	 * @param image what stands before the label; null for nothing
	 * @return nothing if the user has thought better of it
	 */
	public static <T> Optional<T> one(Shell shell, String title, String message, List<T> all, Function<T, String> label, Function<T, Image> image) {
		LabelProvider labels = new LabelProvider() {
			@SuppressWarnings("unchecked")
			@Override
			public String getText(Object element) {
				return label.apply((T) element);
			}

			@SuppressWarnings("unchecked")
			@Override
			public Image getImage(Object element) {
				return image.apply((T) element);
			}
		};
		ElementListSelectionDialog dialog = new ElementListSelectionDialog(shell, labels) {
			@Override
			protected FilteredList createFilteredList(Composite parent) {
				FilteredList list = super.createFilteredList(parent);
				list.setFilterMatcher(new Words(labels));
				return list;
			}
		};
		dialog.setTitle(title);
		dialog.setMessage(message);
		dialog.setMatchEmptyString(true);
		dialog.setElements(all.toArray());
		if (dialog.open() != Window.OK) {
			return Optional.empty();
		}
		Object chosen = dialog.getFirstResult();
		return all.stream().filter(each -> each == chosen).findFirst();
	}

	/** Everything that was typed stands somewhere in the label. */
	private static final class Words implements FilteredList.FilterMatcher {

		private final LabelProvider labels;
		private String[] typed = {};

		Words(LabelProvider labels) {
			this.labels = labels;
		}

		@Override
		public void setFilter(String pattern, boolean ignoreCase, boolean ignoreWildCards) {
			typed = pattern.toLowerCase(Locale.ROOT).strip().split("[\\s*?]+");
		}

		@Override
		public boolean match(Object element) {
			String text = labels.getText(element).toLowerCase(Locale.ROOT);
			return Arrays.stream(typed).allMatch(text::contains);
		}
	}
}
