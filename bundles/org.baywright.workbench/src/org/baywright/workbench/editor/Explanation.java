package org.baywright.workbench.editor;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.hover.Hover;
import org.eclipse.jface.text.IInformationControlCreator;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextHover;
import org.eclipse.jface.text.ITextHoverExtension;
import org.eclipse.jface.text.ITextHoverExtension2;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;

/** Explains the name or word under the mouse. The platform asks on a worker thread. */
public final class Explanation implements ITextHover, ITextHoverExtension, ITextHoverExtension2 {

	@Override
	public Object getHoverInfo2(ITextViewer viewer, IRegion region) {
		return EditedFile.of(viewer.getDocument())
				.flatMap(of -> of.ask((EditorServices services, String path) -> services.hover(path, region.getOffset())))
				.map(Hover::markdown).orElse(null);
	}

	@Override
	public String getHoverInfo(ITextViewer viewer, IRegion region) {
		return (String) getHoverInfo2(viewer, region);
	}

	@Override
	public IRegion getHoverRegion(ITextViewer viewer, int offset) {
		return new Region(offset, 0);
	}

	@Override
	public IInformationControlCreator getHoverControlCreator() {
		return shell -> new ExplanationControl(shell, true);
	}
}
