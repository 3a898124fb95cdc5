package org.baywright.workbench.pack;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

import org.baywright.workbench.Icon;
import org.eclipse.core.resources.IEncodedStorage;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.PlatformObject;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.ui.IPersistableElement;
import org.eclipse.ui.IStorageEditorInput;

/** What a pack holds, in words, as an editor shows it that cannot write. The same pack is the same input. */
final class PackInput extends PlatformObject implements IStorageEditorInput, IEncodedStorage {

	private final IPath pack;
	private final String text;

	PackInput(IPath pack, String text) {
		this.pack = pack;
		this.text = text;
	}

	@Override
	public String getName() {
		return pack.lastSegment();
	}

	@Override
	public String getToolTipText() {
		return pack.toOSString();
	}

	@Override
	public ImageDescriptor getImageDescriptor() {
		return Icon.PACK.descriptor();
	}

	@Override
	public PackInput getStorage() {
		return this;
	}

	@Override
	public InputStream getContents() {
		return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
	}

	@Override
	public String getCharset() {
		return StandardCharsets.UTF_8.name();
	}

	@Override
	public IPath getFullPath() {
		return null; // the text has no file of its own
	}

	@Override
	public boolean isReadOnly() {
		return true;
	}

	@Override
	public boolean exists() {
		return true;
	}

	@Override
	public IPersistableElement getPersistable() {
		return null; // the pack may be another one after a restart
	}

	@Override
	public boolean equals(Object other) {
		return other instanceof PackInput input && input.pack.equals(pack);
	}

	@Override
	public int hashCode() {
		return pack.hashCode();
	}
}
