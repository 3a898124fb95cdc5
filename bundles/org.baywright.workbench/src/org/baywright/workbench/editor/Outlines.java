package org.baywright.workbench.editor;

import org.eclipse.core.runtime.IAdapterFactory;
import org.eclipse.ui.texteditor.ITextEditor;
import org.eclipse.ui.views.contentoutline.IContentOutlinePage;

/** Gives the platform's editor of a rule file an outline. */
public final class Outlines implements IAdapterFactory {

	@Override
	public <T> T getAdapter(Object of, Class<T> type) {
		if (type == IContentOutlinePage.class && of instanceof ITextEditor editor && EditedFile.of(editor).isPresent()) {
			return type.cast(new OutlinePage(editor));
		}
		return null;
	}

	@Override
	public Class<?>[] getAdapterList() {
		return new Class<?>[] { IContentOutlinePage.class };
	}
}
