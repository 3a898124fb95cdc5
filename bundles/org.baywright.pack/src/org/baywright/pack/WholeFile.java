package org.baywright.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** Writes files as a whole: whoever reads one at any moment sees the old content or the new one, never a part. */
public final class WholeFile {

	private WholeFile() {
	}

	/**
	 * Writes a file. A file that is there is replaced and its permissions are kept; a link is followed.
	 *
	 * @param target the file; folders that are missing are made
	 * @throws IOException if the file cannot be written; nothing has changed then
	 */
	public static void write(Path target, byte[] content) throws IOException {
		Path whole = Files.exists(target) ? target.toRealPath() : target.toAbsolutePath();
		Path folder = whole.getParent();
		if (folder == null || Files.isDirectory(whole)) {
			throw new IOException(target + " is a folder");
		}
		Files.createDirectories(folder);
		Path aside = folder.resolve("." + whole.getFileName() + "." + ProcessHandle.current().pid() + ".part");
		try {
			Files.write(aside, content);
			copyPermissions(whole, aside);
			Files.move(aside, whole, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
		} finally {
			Files.deleteIfExists(aside);
		}
	}

	private static void copyPermissions(Path from, Path to) throws IOException {
		PosixFileAttributeView old = Files.getFileAttributeView(from, PosixFileAttributeView.class);
		if (old != null && Files.exists(from)) {
			Files.setPosixFilePermissions(to, old.readAttributes().permissions());
		}
	}
}
