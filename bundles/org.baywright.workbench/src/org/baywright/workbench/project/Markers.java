package org.baywright.workbench.project;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import org.baywright.analysis.Flaw;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.workbench.Baywright;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.IWorkspace;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.NullProgressMonitor;

/** Writes problems and flaws as markers; only what differs from the markers there is touched. */
final class Markers {

	private Markers() {
	}

	/** What a marker says. */
	private record Note(String type, String file, Map<String, Object> attributes) {
	}

	/** Shows the problems of the texts; flaws stay as they are. */
	static void problems(IProject project, List<Problem> problems) {
		List<Note> notes = new ArrayList<>();
		for (Problem problem : problems) {
			String text = problem.advice().isEmpty() ? problem.message() : problem.message() + " " + problem.advice();
			notes.add(note(RuleMarkers.PROBLEM, problem.span(), problem.severity(), text, problem.id(), problem.id()));
		}
		write(project, RuleMarkers.PROBLEM, notes);
	}

	/** Shows the flaws that nobody has accepted; problems of the texts stay as they are. */
	static void flaws(IProject project, List<Flaw> flaws) {
		List<Note> notes = new ArrayList<>();
		for (Flaw flaw : flaws) {
			if (flaw.accepted().isEmpty()) {
				notes.add(note(RuleMarkers.FLAW, flaw.span(), flaw.severity(), flaw.message(), flaw.check(),
						flaw.id()));
			}
		}
		write(project, RuleMarkers.FLAW, notes);
	}

	static void clear(IProject project) throws CoreException {
		project.deleteMarkers(RuleMarkers.PROBLEM, true, IResource.DEPTH_INFINITE);
		project.deleteMarkers(RuleMarkers.FLAW, true, IResource.DEPTH_INFINITE);
	}

	private static Note note(String type, Span span, Severity severity, String message, String kind, String id) {
		Map<String, Object> attributes = new HashMap<>();
		attributes.put(IMarker.SEVERITY, severity(severity));
		attributes.put(IMarker.MESSAGE, message);
		attributes.put(IMarker.LINE_NUMBER, span.line());
		attributes.put(IMarker.CHAR_START, span.offset());
		attributes.put(IMarker.CHAR_END, span.offset() + Math.max(1, span.length()));
		attributes.put(IMarker.SOURCE_ID, Baywright.ID);
		attributes.put(RuleMarkers.KIND, kind);
		attributes.put(RuleMarkers.FLAW_ID, id);
		return new Note(type, span.file(), attributes);
	}

	private static int severity(Severity severity) {
		return switch (severity) {
		case ERROR -> IMarker.SEVERITY_ERROR;
		case WARNING -> IMarker.SEVERITY_WARNING;
		default -> IMarker.SEVERITY_INFO;
		};
	}

	private static void write(IProject project, String type, List<Note> notes) {
		if (!project.isAccessible()) {
			return;
		}
		try {
			// one operation, so that screens hear of one change
			ResourcesPlugin.getWorkspace().run(monitor -> replace(project, type, notes), null, IWorkspace.AVOID_UPDATE,
					new NullProgressMonitor());
		} catch (CoreException e) {
			if (project.isAccessible()) {
				Baywright.log("The markers of " + project.getName() + " could not be written.", e);
			}
		}
	}

	private static void replace(IProject project, String type, List<Note> notes) throws CoreException {
		Map<String, List<IMarker>> present = new HashMap<>();
		for (IMarker marker : project.findMarkers(type, true, IResource.DEPTH_INFINITE)) {
			present.computeIfAbsent(key(marker.getResource(), marker.getAttributes()), key -> new ArrayList<>()).add(marker);
		}
		List<Note> missing = new ArrayList<>();
		for (Note note : notes) {
			List<IMarker> same = present.get(key(resource(project, note.file()), note.attributes()));
			if (same == null || same.isEmpty()) {
				missing.add(note);
			} else {
				same.remove(same.size() - 1);
			}
		}
		for (List<IMarker> gone : present.values()) {
			for (IMarker marker : gone) {
				marker.delete();
			}
		}
		for (Note note : missing) {
			resource(project, note.file()).createMarker(note.type(), note.attributes());
		}
	}

	private static IResource resource(IProject project, String file) {
		IFile found = project.getFile(file);
		return found.exists() ? found : project;
	}

	private static String key(IResource resource, Map<String, Object> attributes) {
		Map<String, Object> known = attributes == null ? Map.of() : attributes;
		StringBuilder key = new StringBuilder(resource.getFullPath().toString());
		for (String name : RuleMarkers.COMPARED) {
			key.append('\n').append(Objects.toString(known.get(name), ""));
		}
		return key.toString();
	}
}
