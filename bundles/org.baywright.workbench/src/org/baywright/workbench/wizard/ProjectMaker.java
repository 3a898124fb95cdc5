package org.baywright.workbench.wizard;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

import org.baywright.workbench.Baywright;
import org.baywright.workbench.project.ActiveProject;
import org.baywright.workbench.project.Nature;
import org.baywright.workbench.project.Places;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IFolder;
import org.eclipse.core.resources.IProject;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.SubMonitor;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.PlatformUI;
import org.eclipse.ui.intro.IIntroManager;

/** Makes rule projects and puts files into them. */
public final class ProjectMaker {

	private ProjectMaker() {
	}

	/**
	 * Makes a rule project; if that fails half-way, nothing of it stays.
	 *
	 * @param name its name
	 * @param files its files by path
	 * @throws CoreException if there is already such a project or it cannot be written
	 */
	public static IProject make(String name, Map<String, String> files, IProgressMonitor monitor) throws CoreException {
		return make(name, files, Map.of(), monitor);
	}

	/**
	 * As {@link #make(String, Map, IProgressMonitor)}, for rules that show pictures.
	 *
	 * @param pictures the content of the pictures by path
	 */
	public static IProject make(String name, Map<String, String> files, Map<String, byte[]> pictures, IProgressMonitor monitor) throws CoreException {
		IProject project = ResourcesPlugin.getWorkspace().getRoot().getProject(name);
		SubMonitor progress = SubMonitor.convert(monitor, name, 100);
		// one operation, so that the rules are checked once, when all are there
		ResourcesPlugin.getWorkspace().run(inner -> {
			project.create(progress.split(10));
			try {
				project.open(progress.split(10));
				project.setDefaultCharset(StandardCharsets.UTF_8.name(), progress.split(5));
				SubMonitor each = progress.split(60).setWorkRemaining(files.size());
				for (Map.Entry<String, String> file : files.entrySet()) {
					write(project.getFile(IPath.fromPortableString(file.getKey())), file.getValue(), each.split(1));
				}
				for (Map.Entry<String, byte[]> picture : pictures.entrySet()) {
					write(project.getFile(IPath.fromPortableString(picture.getKey())), picture.getValue(), null);
				}
				Nature.add(project, progress.split(15));
			} catch (CoreException | RuntimeException e) {
				project.delete(true, true, null);
				throw e;
			}
		}, progress);
		remember();
		return project;
	}

	/** Has the platform write down which projects there are, so that they are open again after a crash. */
	static void remember() {
		try {
			ResourcesPlugin.getWorkspace().save(false, null);
		} catch (CoreException e) {
			// the project is there all the same
			Baywright.log("Which projects are open cannot be remembered.", e);
		}
	}

	/** Writes a new file, with the folders that are missing. */
	public static void write(IFile file, String text, IProgressMonitor monitor) throws CoreException {
		write(file, text.getBytes(StandardCharsets.UTF_8), monitor);
	}

	private static void write(IFile file, byte[] content, IProgressMonitor monitor) throws CoreException {
		if (file.getParent() instanceof IFolder folder && !folder.exists()) {
			folder.create(false, true, null);
		}
		file.create(new ByteArrayInputStream(content), false, monitor);
	}

	/** Opens a file of a project in the editor, in a window. To be called on the screen's thread. */
	public static void show(IWorkbenchWindow window, IProject project, String file) {
		// the welcome page fills the window and would hide what was asked for
		IIntroManager welcome = PlatformUI.getWorkbench().getIntroManager();
		welcome.closeIntro(welcome.getIntro());
		ActiveProject.of(window).activate(project);
		IFile opened = project.getFile(IPath.fromPortableString(file));
		Places.open(window.getActivePage(), opened, 0, 0, true);
		// so that the new project is seen
		Places.reveal(window.getActivePage(), opened);
	}
}
