package org.baywright.workbench.project;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Span;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.Icon;
import org.baywright.workbench.TextInput;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.ui.IEditorPart;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.texteditor.ITextEditor;

/** Files of the projects and rule packs that a project builds on, which need not be in the workspace. */
public final class Elsewhere {

	/** The platform's editor of texts, without its tools for programmers. */
	private static final String EDITOR = Baywright.ID + ".packText";

	private Elsewhere() {
	}

	/**
	 * Returns the file in the workspace, if it is in one of its projects.
	 *
	 * @param project the project that builds on the other
	 * @param path the file's path as it stands in spans
	 */
	public static Optional<IFile> file(IProject project, String path) {
		return location(project, path).stream()
				.flatMap(location -> Arrays.stream(ResourcesPlugin.getWorkspace().getRoot().findFilesForLocationURI(location.toUri())))
				.filter(IResource::exists).findFirst();
	}

	private static Optional<Path> location(IProject project, String path) {
		try {
			return Optional.of(Path.of(project.getLocationURI()).toRealPath().resolve(path).normalize());
		} catch (IOException e) {
			return Optional.empty(); // the project is just being removed
		}
	}

	/** Opens a place as it was read, in an editor that cannot write: a rule pack, or a file that is in no project of the workspace. */
	static void open(IWorkbenchPage page, IProject project, Span span, boolean focus) throws PartInitException {
		Optional<Snapshot> texts = RuleProjects.of(project).state().texts();
		Optional<String> text = texts.map(known -> known.sources().get(span.file()));
		Optional<Path> location = location(project, span.file());
		if (text.isEmpty() || location.isEmpty()) {
			return;
		}
		Path path = location.get();
		String name = path.getFileName().toString();
		// another text of the same file is another input
		TextInput input = new TextInput(name, path.toString(), Span.isElsewhere(name) ? Icon.PACK : Icon.FILE, text.get(), List.of(path, text.get()));
		IEditorPart editor = page.openEditor(input, EDITOR, focus);
		ITextEditor shown = editor.getAdapter(ITextEditor.class);
		if (shown != null) {
			shown.selectAndReveal(span.offset(), span.length());
		}
	}
}
