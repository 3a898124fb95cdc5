package org.baywright.workbench.editor;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.fold.Fold;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.ITextViewer;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.reconciler.IReconciler;
import org.eclipse.jface.text.reconciler.IReconcilingStrategy;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotation;
import org.eclipse.jface.text.source.projection.ProjectionAnnotationModel;
import org.eclipse.jface.text.source.projection.ProjectionViewer;

/** Marks what can be folded away; what is folded stays folded. */
public final class Folds extends TextWorker<List<Fold>> implements IReconciler {

	/** Made by the platform. */
	public Folds() {
		super(300);
	}

	@Override
	public void install(ITextViewer viewer) {
		super.install(viewer);
	}

	@Override
	public void uninstall() {
		super.uninstall();
	}

	@Override
	protected List<Fold> ask(EditedFile of) {
		return of.ask((EditorServices services, String path) -> services.folds(path));
	}

	@Override
	protected void show(ITextViewer in, List<Fold> answer) {
		if (!(in instanceof ProjectionViewer viewer)) {
			return;
		}
		ProjectionAnnotationModel model = viewer.getProjectionAnnotationModel();
		if (model == null) {
			viewer.doOperation(ProjectionViewer.TOGGLE);
			model = viewer.getProjectionAnnotationModel();
			if (model == null) {
				return;
			}
		}
		Set<Position> wanted = new HashSet<>();
		for (Fold fold : answer) {
			wanted.add(lines(in.getDocument(), fold));
		}
		Set<Annotation> gone = new HashSet<>();
		for (Iterator<Annotation> all = model.getAnnotationIterator(); all.hasNext();) {
			Annotation annotation = all.next();
			if (annotation instanceof ProjectionAnnotation && !wanted.remove(model.getPosition(annotation))) {
				gone.add(annotation);
			}
		}
		Map<Annotation, Position> added = new HashMap<>();
		wanted.forEach(position -> added.put(new ProjectionAnnotation(), position));
		if (!gone.isEmpty() || !added.isEmpty()) {
			model.modifyAnnotations(gone.toArray(Annotation[]::new), added, new Annotation[0]);
		}
	}

	/** The platform folds whole lines, with the line end of the last. */
	private static Position lines(IDocument document, Fold fold) {
		try {
			int first = document.getLineOfOffset(fold.offset());
			int last = document.getLineOfOffset(Math.min(document.getLength(), fold.offset() + fold.length()));
			int start = document.getLineOffset(first);
			int end = last + 1 < document.getNumberOfLines() ? document.getLineOffset(last + 1) : document.getLength();
			return new Position(start, end - start);
		} catch (BadLocationException e) {
			return new Position(0, 0);
		}
	}

	@Override
	public IReconcilingStrategy getReconcilingStrategy(String contentType) {
		return null;
	}
}
