package org.baywright.workbench.editor;

import java.util.Iterator;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

import org.baywright.workbench.project.RuleMarkers;
import org.eclipse.core.filebuffers.IAnnotationModelFactory;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.jface.text.BadLocationException;
import org.eclipse.jface.text.IDocument;
import org.eclipse.jface.text.Position;
import org.eclipse.jface.text.source.Annotation;
import org.eclipse.jface.text.source.AnnotationModel;
import org.eclipse.jface.text.source.IAnnotationModel;
import org.eclipse.ui.texteditor.MarkerAnnotation;
import org.eclipse.ui.texteditor.MarkerUtilities;
import org.eclipse.ui.texteditor.ResourceMarkerAnnotationModel;

/**
 * What is marked in the text of a rule file. The platform's own moves all markers when a file is saved, and hears of none
 * meanwhile: those that a check makes and takes away at that moment would be missed, and what stands for a marker that is
 * gone would stay. The markers of rules are moved by the next check, so here those of others are moved alone, and it goes
 * on hearing.
 */
public final class Marks extends ResourceMarkerAnnotationModel {

	/** Makes them. */
	public static final class Factory implements IAnnotationModelFactory {

		@Override
		public IAnnotationModel createAnnotationModel(IPath location) {
			IResource file = ResourcesPlugin.getWorkspace().getRoot().findMember(location);
			return file == null ? new AnnotationModel() : new Marks(file);
		}
	}

	/** Of which the words went since the file was saved. */
	private final Queue<IMarker> gone = new ConcurrentLinkedQueue<>();

	Marks(IResource file) {
		super(file);
	}

	@Override
	protected void removeAnnotations(List<? extends Annotation> marks, boolean told, boolean byText) {
		if (byText) {
			marks.stream().filter(MarkerAnnotation.class::isInstance).map(mark -> ((MarkerAnnotation) mark).getMarker()).forEach(gone::add);
		}
		super.removeAnnotations(marks, told, byText);
	}

	@Override
	public void resetMarkers() {
		gone.clear();
		super.resetMarkers();
	}

	@Override
	public void updateMarkers(IDocument document) throws CoreException {
		for (IMarker marker = gone.poll(); marker != null; marker = gone.poll()) {
			if (isOfOthers(marker)) {
				marker.delete();
			}
		}
		for (Iterator<Annotation> all = getAnnotationIterator(false); all.hasNext();) {
			if (all.next() instanceof MarkerAnnotation mark) {
				Position place = getPosition(mark);
				IMarker marker = mark.getMarker();
				if (place != null && isOfOthers(marker)) {
					move(marker, place, document);
				}
			}
		}
	}

	private static boolean isOfOthers(IMarker marker) throws CoreException {
		return marker.exists() && !marker.isSubtypeOf(RuleMarkers.BOTH);
	}

	private static void move(IMarker marker, Position place, IDocument document) throws CoreException {
		if (place.isDeleted()) {
			marker.delete();
			return;
		}
		try {
			// at once, as what hears of a part of it would take the place from that
			int start = place.getOffset();
			int end = start + place.getLength();
			int line = document.getLineOfOffset(start) + 1;
			if (MarkerUtilities.getCharStart(marker) >= 0) {
				marker.setAttributes(new String[] { IMarker.CHAR_START, IMarker.CHAR_END, IMarker.LINE_NUMBER }, new Object[] { start, end, line });
			} else if (MarkerUtilities.getLineNumber(marker) != line) {
				MarkerUtilities.setLineNumber(marker, line);
			}
		} catch (BadLocationException e) {
			// the text is shorter now; where it was is told by the line
		}
	}
}
