package org.baywright.workbench.editor;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

import org.baywright.model.Meaning;
import org.baywright.pack.WholeFile;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.FileEdits;
import org.baywright.workbench.project.OpenProject;
import org.eclipse.core.filebuffers.FileBuffers;
import org.eclipse.core.filebuffers.IFileBuffer;
import org.eclipse.core.filebuffers.IFileBufferListener;
import org.eclipse.core.filebuffers.ITextFileBuffer;
import org.eclipse.core.filebuffers.LocationKind;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.IResource;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.ICoreRunnable;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.jobs.Job;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.ui.IEditorReference;
import org.eclipse.ui.IFileEditorInput;
import org.eclipse.ui.IStartup;
import org.eclipse.ui.IWorkbench;
import org.eclipse.ui.IWorkbenchListener;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PartInitException;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.ide.IDE;

/**
 * Keeps what is typed and not saved, aside and within a second, so that it outlives a crash; when the workbench starts
 * again, it stands in its editors as before, unsaved, and the user is told.
 */
public final class Unsaved implements IStartup {

	private static final long DELAY = 1000;
	private static final String ENDING = ".text";
	/** What the platform puts, after a crash, in the place of an editor of something that is no file. */
	private static final String NOTHING = "org.eclipse.ui.internal.emptyEditorTab";
	private static final Map<IFile, String> WAITING = new HashMap<>();
	/** What tells the text apart that an editor has read or saved last, so that somebody types on from it. */
	private static final Map<IFile, String> BASES = new ConcurrentHashMap<>();
	private static final Job WRITING = Job.createSystem("Keeping what is not saved", (ICoreRunnable) monitor -> write());

	static {
		FileBuffers.getTextFileBufferManager().addFileBufferListener(new IFileBufferListener() {
			@Override
			public void bufferCreated(IFileBuffer buffer) {
				read(buffer);
			}

			@Override
			public void bufferDisposed(IFileBuffer buffer) {
				file(buffer).ifPresent(BASES::remove);
			}

			@Override
			public void bufferContentAboutToBeReplaced(IFileBuffer buffer) {
				// only what is saved matters here
			}

			@Override
			public void bufferContentReplaced(IFileBuffer buffer) {
				read(buffer);
			}

			@Override
			public void stateChanging(IFileBuffer buffer) {
				// only what is saved matters here
			}

			@Override
			public void stateValidationChanged(IFileBuffer buffer, boolean isStateValidated) {
				// only what is saved matters here
			}

			@Override
			public void underlyingFileMoved(IFileBuffer buffer, IPath path) {
				// only what is saved matters here
			}

			@Override
			public void underlyingFileDeleted(IFileBuffer buffer) {
				// only what is saved matters here
			}

			@Override
			public void stateChangeFailed(IFileBuffer buffer) {
				// only what is saved matters here
			}

			@Override
			public void dirtyStateChanged(IFileBuffer buffer, boolean isDirty) {
				if (!isDirty) {
					read(buffer);
					file(buffer).ifPresent(Unsaved::forget);
				}
			}
		});
		for (IFileBuffer buffer : FileBuffers.getTextFileBufferManager().getFileBuffers()) {
			if (!buffer.isDirty()) {
				read(buffer);
			}
		}
	}

	private static Optional<IFile> file(IFileBuffer buffer) {
		IPath location = buffer.getLocation();
		return Optional.ofNullable(location).filter(path -> path.segmentCount() > 1).map(ResourcesPlugin.getWorkspace().getRoot()::getFile);
	}

	/** Notes the text that an editor has read from the disk, or written there: whatever else is there later, somebody else wrote. */
	private static void read(IFileBuffer buffer) {
		if (buffer instanceof ITextFileBuffer text && text.getDocument() != null) {
			file(buffer).filter(OpenProject::isRules).ifPresent(file -> BASES.put(file, fingerprint(text.getDocument().get())));
		}
	}

	/** Notes the text of an editor that is not saved. Returns at once. */
	static void note(IFile file, String text) {
		synchronized (WAITING) {
			WAITING.put(file, text);
		}
		if (WRITING.getState() == Job.NONE || WRITING.getState() == Job.RUNNING) {
			WRITING.schedule(DELAY);
		}
	}

	/** Notes that the text of an editor is that of the disk again. Returns at once. */
	static void forget(IFile file) {
		note(file, null);
	}

	private static Path folder() {
		return Baywright.instance().getStateLocation().append("unsaved").toPath();
	}

	/** Writes at once what waits; for the end of the workbench. */
	private static void flush() {
		WRITING.cancel();
		write();
	}

	/** A file's name stands for the path, whatever letters that has. */
	private static Path aside(IFile file) {
		byte[] hash = Meaning.sha256(file.getFullPath().toPortableString());
		return folder().resolve(HexFormat.of().formatHex(hash, 0, 16) + ENDING);
	}

	private static synchronized void write() {
		Map<IFile, String> now;
		synchronized (WAITING) {
			now = new HashMap<>(WAITING);
			WAITING.clear();
		}
		now.forEach((file, text) -> {
			try {
				Path aside = aside(file);
				if (text == null) {
					Files.deleteIfExists(aside);
				} else {
					String kept = file.getFullPath().toPortableString() + "\n" + BASES.computeIfAbsent(file, Unsaved::base) + "\n" + text;
					WholeFile.write(aside, kept.getBytes(StandardCharsets.UTF_8));
				}
			} catch (IOException e) {
				Baywright.log("What is not saved in " + file.getFullPath() + " cannot be kept aside.", e);
			}
		});
	}

	/** Returns what tells the saved text that somebody types on from every other; the empty text if that is gone already. */
	private static String base(IFile file) {
		try {
			return file.getLocation() == null ? "" : fingerprint(Files.readString(file.getLocation().toPath()));
		} catch (IOException e) {
			return "";
		}
	}

	private static String fingerprint(String text) {
		return HexFormat.of().formatHex(Meaning.sha256(text.startsWith("\uFEFF") ? text.substring(1) : text), 0, 16);
	}

	/** Brings back what an earlier run could not save. */
	@Override
	public void earlyStartup() {
		PlatformUI.getWorkbench().addWorkbenchListener(new IWorkbenchListener() {
			@Override
			public boolean preShutdown(IWorkbench workbench, boolean forced) {
				return true;
			}

			@Override
			public void postShutdown(IWorkbench workbench) {
				flush();
			}
		});
		Map<IFile, String> found = new HashMap<>();
		List<String> homeless = new ArrayList<>();
		List<String> overtaken = new ArrayList<>();
		for (Path aside : asides()) {
			try {
				String kept = Files.readString(aside);
				int end = kept.indexOf('\n');
				int second = kept.indexOf('\n', end + 1);
				IFile file = ResourcesPlugin.getWorkspace().getRoot().getFile(IPath.fromPortableString(kept.substring(0, Math.max(0, end))));
				String base = kept.substring(end + 1, Math.max(end + 1, second));
				String text = kept.substring(second + 1);
				Optional<String> saved = isOnDisk(file) ? onDisk(file) : Optional.empty();
				if (saved.map(Unsaved::fingerprint).filter(base::equals).isPresent() && !saved.get().equals(text)) {
					found.put(file, text);
					continue;
				}
				// whoever took back what was typed has typed nothing
				if (!saved.equals(Optional.of(text)) && !fingerprint(text).equals(base)) {
					// saved from the editor it would overwrite what somebody else wrote, if there still is a file
					(saved.isPresent() ? overtaken : homeless).add(file.getFullPath().toPortableString().substring(1) + ": " + keep(file, text));
				}
				Files.delete(aside);
			} catch (IOException | IllegalArgumentException e) {
				Baywright.log("What was kept in " + aside + " cannot be brought back.", e);
			}
		}
		PlatformUI.getWorkbench().getDisplay().asyncExec(() -> {
			for (IWorkbenchWindow window : PlatformUI.getWorkbench().getWorkbenchWindows()) {
				if (window.getActivePage() != null) {
					closeEditorsOfNothing(window.getActivePage());
				}
			}
			if (!found.isEmpty() || !homeless.isEmpty() || !overtaken.isEmpty()) {
				bringBack(found, homeless, overtaken);
			}
		});
	}

	/** Writes the text of a file that is gone where a user finds it, and returns where. */
	private static Path keep(IFile file, String text) throws IOException {
		Path folder = Files.createDirectories(ResourcesPlugin.getWorkspace().getRoot().getLocation().append("brought-back").toPath());
		Path kept = folder.resolve(file.getName());
		for (int number = 2; Files.exists(kept); number++) {
			kept = folder.resolve(number + "-" + file.getName());
		}
		return Files.writeString(kept, text, StandardOpenOption.CREATE_NEW);
	}

	private static List<Path> asides() {
		if (!Files.isDirectory(folder())) {
			return List.of();
		}
		try (Stream<Path> all = Files.list(folder())) {
			return all.filter(path -> path.toString().endsWith(ENDING)).sorted().toList();
		} catch (IOException e) {
			Baywright.log("What was not saved cannot be looked for.", e);
			return List.of();
		}
	}

	/** What the platform remembers of a file may be older than the disk. */
	private static boolean isOnDisk(IFile file) {
		return file.getLocation() != null && Files.isRegularFile(file.getLocation().toPath());
	}

	/** Returns the text that is saved; nothing if it is there but not in a project that can be opened. */
	private static Optional<String> onDisk(IFile file) throws IOException {
		IProject project = file.getProject();
		try {
			if (!project.isOpen()) {
				// the platform forgets after a crash that a project was open
				project.open(null);
			}
			file.refreshLocal(IResource.DEPTH_ZERO, null);
		} catch (CoreException e) {
			Baywright.log("The project of " + file.getFullPath() + " does not open.", e);
			return Optional.empty();
		}
		// whatever its letters are: it is only compared
		return Optional.of(new String(Files.readAllBytes(file.getLocation().toPath()), StandardCharsets.UTF_8));
	}

	/** An editor of a file that is gone would show that alone, and still do so when the file is there again. */
	private static void closeEditorsOfNothing(IWorkbenchPage page) {
		IEditorReference[] gone = Arrays.stream(page.getEditorReferences()).filter(Unsaved::isOfNothing).toArray(IEditorReference[]::new);
		if (gone.length > 0) {
			page.closeEditors(gone, false);
		}
	}

	private static boolean isOfNothing(IEditorReference editor) {
		if (NOTHING.equals(editor.getId())) {
			return true;
		}
		try {
			return Baywright.EDITOR.equals(editor.getId()) && !editor.isDirty() && editor.getEditorInput() instanceof IFileEditorInput input
					&& !isOnDisk(input.getFile());
		} catch (PartInitException e) {
			// the platform cannot even tell of which file
			return true;
		}
	}

	private static void bringBack(Map<IFile, String> found, List<String> homeless, List<String> overtaken) {
		var window = PlatformUI.getWorkbench().getWorkbenchWindows()[0];
		List<String> told = new ArrayList<>();
		found.forEach((file, text) -> {
			try {
				IDE.openEditor(window.getActivePage(), file, false);
				ITextFileBuffer buffer = FileBuffers.getTextFileBufferManager().getTextFileBuffer(file.getFullPath(), LocationKind.IFILE);
				if (buffer == null) {
					FileEdits.change(file, document -> document.set(text));
				} else if (!buffer.isDirty()) {
					buffer.getDocument().set(text);
				}
				told.add(file.getFullPath().toPortableString().substring(1));
			} catch (PartInitException e) {
				Baywright.log("The editor of " + file.getFullPath() + " does not open.", e);
			} catch (CoreException e) {
				Baywright.log("What was not saved of " + file.getFullPath() + " cannot be brought back.", e);
			}
		});
		told.sort(null);
		homeless.sort(null);
		overtaken.sort(null);
		List<String> all = new ArrayList<>();
		if (!told.isEmpty()) {
			all.add(EditorMessages.bind(EditorMessages.BackText, String.join("\n", told)));
		}
		if (!homeless.isEmpty()) {
			all.add(EditorMessages.bind(EditorMessages.BackGone, String.join("\n", homeless)));
		}
		if (!overtaken.isEmpty()) {
			all.add(EditorMessages.bind(EditorMessages.BackOvertaken, String.join("\n", overtaken)));
		}
		if (!all.isEmpty()) {
			MessageDialog.openInformation(window.getShell(), EditorMessages.BackTitle, String.join("\n\n", all));
		}
	}
}
