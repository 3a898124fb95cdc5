package org.baywright.workbench.tree;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

import org.baywright.workbench.wizard.FolderOfRules;
import org.eclipse.core.resources.IWorkspaceRoot;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.swt.dnd.DropTargetEvent;
import org.eclipse.swt.dnd.FileTransfer;
import org.eclipse.swt.dnd.TransferData;
import org.eclipse.ui.navigator.CommonDropAdapter;
import org.eclipse.ui.navigator.CommonDropAdapterAssistant;

/**
 * Brings a folder of rules in that is dropped onto the project tree from outside. Files that are dropped onto a project are
 * left to the platform, which copies them.
 */
public final class Dropped extends CommonDropAdapterAssistant {

	@Override
	public boolean isSupportedType(TransferData type) {
		return FileTransfer.getInstance().isSupportedType(type);
	}

	@Override
	public IStatus validateDrop(Object target, int operation, TransferData type) {
		// what is dragged is not known on every system before it is dropped
		return FileTransfer.getInstance().isSupportedType(type) ? Status.OK_STATUS : Status.CANCEL_STATUS;
	}

	@Override
	public IStatus handleDrop(CommonDropAdapter adapter, DropTargetEvent event, Object target) {
		if (!(event.data instanceof String[] names) || names.length == 0) {
			return Status.CANCEL_STATUS;
		}
		List<Path> dropped = Arrays.stream(names).map(Path::of).toList();
		if (!(target instanceof IWorkspaceRoot) && !dropped.stream().allMatch(Files::isDirectory)) {
			return Status.CANCEL_STATUS;
		}
		dropped.forEach(path -> FolderOfRules.bringIn(getShell(), path));
		return Status.OK_STATUS;
	}
}
