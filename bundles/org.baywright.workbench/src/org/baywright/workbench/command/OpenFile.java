package org.baywright.workbench.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;

import org.baywright.workbench.project.Places;
import org.eclipse.core.commands.AbstractHandler;
import org.eclipse.core.commands.ExecutionEvent;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.ResourcesPlugin;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.core.runtime.IPath;

/** Opens a file of the workspace where a text stands; the steps of the walk use it. */
public final class OpenFile extends AbstractHandler {

	@Override
	public Object execute(ExecutionEvent event) {
		IFile file = ResourcesPlugin.getWorkspace().getRoot().getFile(IPath.fromPortableString(event.getParameter("file")));
		String text = event.getParameter("text");
		if (!file.exists()) {
			return null;
		}
		int offset = 0;
		if (text != null) {
			try (var in = file.getContents()) {
				String content = new String(in.readAllBytes(), StandardCharsets.UTF_8);
				offset = Math.max(0, content.indexOf(text));
			} catch (CoreException | IOException e) {
				offset = 0;
			}
		}
		Places.open(file, offset, text == null ? 0 : text.length(), true);
		return null;
	}
}
