package org.baywright.workbench.editor;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.names.Use;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.reconciler.IReconciler;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.jface.text.source.IAnnotationModelExtension;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.jface.viewers.ISelectionChangedListener;
import org.eclipse.jface.viewers.IPostSelectionProvider;

/** Marks where else in the file the thing at the cursor is named. */
public final class Occurrences extends TextWorker<List<Use>> implements IReconciler {

	private static final String USED = "org.baywright.workbench.occurrence";
	private static final String DECLARED = "org.baywright.workbench.declaration";

	private final ISelectionChangedListener moved = event -> {
		if (viewer() != null && viewer().getTextWidget() != null) {
			caret = viewer().getSelectedRange().x;
			again();
		}
	};
	private volatile int caret = -1;
	private Annotation[] shown = {};

	/** Made by the platform. */
	public Occurrences() {
		super(150);
	}

	@Override
	public void install(ITextViewer viewer) {
		super.install(viewer);
		if (viewer.getSelectionProvider() instanceof IPostSelectionProvider provider) {
			provider.addPostSelectionChangedListener(moved);
		}
	}

	@Override
	public void uninstall() {
		if (viewer() != null && viewer().getSelectionProvider() instanceof IPostSelectionProvider provider) {
			provider.removePostSelectionChangedListener(moved);
		}
		super.uninstall();
	}

	@Override
	protected List<Use> ask(EditedFile of) {
		int at = caret;
		return at < 0 ? List.of() : of.ask((EditorServices services, String path) -> services.occurrences(path, at));
	}

	@Override
	protected void show(ITextViewer in, List<Use> answer) {
		IAnnotationModel model = in instanceof ISourceViewer viewer ? viewer.getAnnotationModel() : null;
		if (!(model instanceof IAnnotationModelExtension several)) {
			return;
		}
		Map<Annotation, Position> added = new HashMap<>();
		for (Use use : answer) {
			added.put(new Annotation(use.declaration() ? DECLARED : USED, false, use.line()), new Position(use.offset(), use.length()));
		}
		if (shown.length > 0 || !added.isEmpty()) {
			several.replaceAnnotations(shown, added);
			shown = added.keySet().toArray(Annotation[]::new);
		}
	}

	@Override
	public IReconcilingStrategy getReconcilingStrategy(String contentType) {
		return null;
	}
}
