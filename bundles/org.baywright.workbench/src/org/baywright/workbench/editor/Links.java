package org.baywright.workbench.editor;

import java.util.List;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.names.Use;
import org.baywright.workbench.project.OpenProject;
import org.baywright.workbench.project.Places;
import org.eclipse.jface.text.IRegion;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Region;
import org.eclipse.jface.text.hyperlink.AbstractHyperlinkDetector;
import org.eclipse.jface.text.hyperlink.IHyperlink;
import org.eclipse.osgi.util.NLS;

/** Leads from a name to where it is declared. */
public final class Links extends AbstractHyperlinkDetector {

	@Override
	public IHyperlink[] detectHyperlinks(ITextViewer viewer, IRegion region, boolean several) {
		int offset = region.getOffset();
		return EditedFile.of(viewer.getDocument()).flatMap(of -> of.ask((EditorServices services, String path) -> services
				.prepareRename(path, offset).map(name -> links(of.project(), name, services.definition(path, offset))))).orElse(null);
	}

	private static IHyperlink[] links(OpenProject project, Use name, List<Use> declared) {
		IRegion at = new Region(name.offset(), name.length());
		IHyperlink[] links = declared.stream().map(use -> new Link(project, at, use)).toArray(IHyperlink[]::new);
		return links.length == 0 ? null : links;
	}

	private record Link(OpenProject project, IRegion at, Use use) implements IHyperlink {

		@Override
		public IRegion getHyperlinkRegion() {
			return at;
		}

		@Override
		public String getTypeLabel() {
			return EditorMessages.Declaration;
		}

		@Override
		public String getHyperlinkText() {
			return NLS.bind(EditorMessages.OpenDeclaration, use.line(), use.file());
		}

		@Override
		public void open() {
			Places.open(project, use.file(), use.offset(), use.length());
		}
	}
}
