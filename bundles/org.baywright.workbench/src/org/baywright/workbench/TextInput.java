package org.baywright.workbench;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

import org.eclipse.core.resources.IEncodedStorage;
import org.eclipse.core.runtime.IPath;
import org.eclipse.core.runtime.PlatformObject;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.ui.IPersistableElement;
import org.eclipse.ui.IStorageEditorInput;

/** A text as an editor shows it that cannot write: what a pack holds, or what stood in a file. */
public final class TextInput extends PlatformObject implements IStorageEditorInput, IEncodedStorage {

	private final String name;
	private final String place;
	private final Icon icon;
	private final String text;
	private final Object same;

	/**
	 * @param name what the editor's tab says
	 * @param place where it comes from
	 * @param icon the tab's picture
	 * @param text what is shown
	 * @param same inputs with an equal one are the same input
	 */
	public TextInput(String name, String place, Icon icon, String text, Object same) {
		this.name = name;
		this.place = place;
		this.icon = icon;
		this.text = text;
		this.same = same;
	}

	@Override
	public String getName() {
		return name;
	}

	@Override
	public String getToolTipText() {
		return place;
	}

	@Override
	public ImageDescriptor getImageDescriptor() {
		return icon.descriptor();
	}

	@Override
	public TextInput getStorage() {
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
		return null; // what is shown is a copy
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
		return null; // it may say something else after a restart
	}

	@Override
	public boolean equals(Object other) {
		return other instanceof TextInput input && input.same.equals(same);
	}

	@Override
	public int hashCode() {
		return same.hashCode();
	}
}
