package org.baywright.workbench.help;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.RuleMarkers;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.runtime.Adapters;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.text.ITextSelection;
import org.eclipse.ui.texteditor.ITextEditor;

/** Finds the page on the flaw at the cursor. */
final class HelpAtCursor {

	private HelpAtCursor() {
	}

	static Optional<String> page(ITextEditor editor) {
		IFile file = Adapters.adapt(editor.getEditorInput(), IFile.class);
		if (file == null || !(editor.getSelectionProvider().getSelection() instanceof ITextSelection selection)) {
			return Optional.empty();
		}
		try {
			IMarker[] markers = file.findMarkers(RuleMarkers.FLAW, true, IResource.DEPTH_ZERO);
			return Arrays.stream(markers)
					.filter(marker -> marker.getAttribute(IMarker.LINE_NUMBER, 0) == selection.getStartLine() + 1)
					.min(Comparator.comparing((IMarker marker) -> -marker.getAttribute(IMarker.SEVERITY, 0))
							.thenComparing(marker -> marker.getAttribute(RuleMarkers.KIND, "")))
					.map(marker -> marker.getAttribute(RuleMarkers.KIND, ""));
		} catch (CoreException e) {
			Baywright.log("The flaws of " + file.getFullPath() + " cannot be read.", e);
			return Optional.empty();
		}
	}
}
