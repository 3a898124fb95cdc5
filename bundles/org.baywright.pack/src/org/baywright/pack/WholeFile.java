package org.baywright.pack;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Writes files as a whole: whoever reads one at any moment sees the old content or the new one, never a part. Only plain
 * files are ever replaced; into a pipe or a device the content is written.
 */
public final class WholeFile {

	private static final String ASIDE = ".baywright-";
	private static final String ENDING = ".part";
	private static final String RULES = ".bay";
	/** Somebody else's clock may be a little off. */
	private static final long LEFT_BEHIND_SECONDS = 60;
	private static final int MOST_LINKS = 40;
	private static final AtomicInteger NUMBERS = new AtomicInteger();

	private WholeFile() {
	}

	/**
	 * Writes what was made of rules. A file that is there is replaced, and its owner and permissions are kept; a link is
	 * followed. A rule file is never replaced.
	 *
	 * @param target the file; folders that are missing are made, but not those that a link names
	 * @throws IOException if the file cannot be written, or may not be; nothing has changed then
	 */
	public static void write(Path target, byte[] content) throws IOException {
		Path whole = destination(target);
		if (isOfProcess(whole) || Files.exists(whole) && !Files.isRegularFile(whole)) {
			writeThrough(target, content);
			return;
		}
		Files.createDirectories(whole.getParent());
		replace(whole, content, Optional.empty());
	}

	/**
	 * Returns the file that would be written, behind all links.
	 *
	 * @throws IOException if it may not be written: a folder, a rule file, or a link into a folder that is not there
	 */
	public static Path destination(Path target) throws IOException {
		Path whole = followed(target);
		if (Files.isDirectory(whole)) {
			throw new FileSystemException(target.toString(), null, "it is a folder");
		}
		if (whole.toString().toLowerCase(Locale.ROOT).endsWith(RULES)) {
			throw new FileSystemException(target.toString(), null,
					"it is a rule file, which only its author replaces; choose a name with another ending");
		}
		if (!whole.equals(target.toAbsolutePath().normalize()) && !isOfProcess(whole) && !Files.isDirectory(whole.getParent())) {
			throw new FileSystemException(target.toString(), null,
					"it is a link into the folder " + whole.getParent() + ", which is not there");
		}
		return whole;
	}

	/**
	 * Replaces a file's content, unless somebody else has changed it meanwhile.
	 *
	 * @param target the file
	 * @param before what the file held when it was read
	 * @param content what it shall hold
	 * @return false if the file holds something else than {@code before}; it is left as it is then
	 * @throws IOException if the file cannot be written, or may not be; nothing has changed then
	 */
	public static boolean replace(Path target, byte[] before, byte[] content) throws IOException {
		Path whole = followed(target);
		return Arrays.equals(Files.readAllBytes(whole), before) && replace(whole, content, Optional.of(before));
	}

	/**
	 * Writes a rule file where its author has chosen; a file that is there is replaced.
	 *
	 * @param target the file; its folder is there
	 * @throws IOException if the file cannot be written, or may not be; nothing has changed then
	 */
	public static void writeRules(Path target, byte[] content) throws IOException {
		replace(followed(target), content, Optional.empty());
	}

	/**
	 * Finds out whether a folder has room for a content, by writing it aside.
	 *
	 * @throws IOException if there is none, or the folder may not be written
	 */
	public static void requireRoom(Path folder, byte[] content) throws IOException {
		Path aside = aside(folder);
		try {
			put(aside, content, StandardOpenOption.CREATE_NEW);
		} finally {
			Files.deleteIfExists(aside);
		}
	}

	private static Path aside(Path folder) {
		Path aside = numbered(folder);
		// a run that was killed may have had the same number, and its file lies there until it is swept away
		while (Files.exists(aside, LinkOption.NOFOLLOW_LINKS)) {
			aside = numbered(folder);
		}
		return aside;
	}

	private static Path numbered(Path folder) {
		return folder.resolve(ASIDE + ProcessHandle.current().pid() + "-" + NUMBERS.incrementAndGet() + ENDING);
	}

	private static boolean replace(Path whole, byte[] content, Optional<byte[]> before) throws IOException {
		if (Files.exists(whole) && isReadOnly(whole)) {
			throw new AccessDeniedException(whole.toString(), null, "it is read-only");
		}
		Path folder = whole.getParent();
		sweep(folder);
		Path aside = aside(folder);
		try {
			put(aside, content, StandardOpenOption.CREATE_NEW);
			boolean alike = copyRights(whole, aside);
			if (before.isPresent() && !Arrays.equals(Files.readAllBytes(whole), before.get())) {
				return false;
			}
			if (alike) {
				Files.move(aside, whole, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
				sync(folder);
			} else {
				// only its owner could give a new file to the owner of the old one
				Files.delete(aside); // where the disk is almost full its room is needed
				overwrite(whole, content);
			}
			return true;
		} catch (AccessDeniedException e) {
			// whoever reads this knows no file that was written aside
			throw new AccessDeniedException(whole.toString(), null, e.getReason());
		} catch (FileSystemException e) {
			throw aside.toString().equals(e.getFile()) ? named(whole, e, e.getReason()) : e;
		} catch (IOException e) {
			throw named(whole, e, e.getMessage());
		} finally {
			Files.deleteIfExists(aside);
		}
	}

	/** Follows links to the end, also where the last of them leads to a file that is not there yet. */
	private static Path followed(Path target) throws IOException {
		Path path = target.toAbsolutePath().normalize();
		// what such a link leads to has no path of its own when it is a pipe
		for (int links = 0; Files.isSymbolicLink(path) && !isOfProcess(path); links++) {
			if (links == MOST_LINKS) {
				throw new FileSystemException(target.toString(), null, "its links go round in a circle");
			}
			path = path.resolveSibling(Files.readSymbolicLink(path)).normalize();
		}
		return path;
	}

	private static boolean isOfProcess(Path path) {
		return path.startsWith("/proc");
	}

	private static void writeThrough(Path target, byte[] content) throws IOException {
		try (var out = Files.newOutputStream(target, StandardOpenOption.WRITE)) {
			out.write(content);
		} catch (FileSystemException e) {
			throw e;
		} catch (IOException e) {
			throw named(target, e, e.getMessage());
		}
	}

	private static void put(Path file, byte[] content, StandardOpenOption how) throws IOException {
		try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE, how)) {
			ByteBuffer rest = ByteBuffer.wrap(content);
			while (rest.hasRemaining()) {
				channel.write(rest);
			}
			channel.force(true);
		}
	}

	private static void overwrite(Path file, byte[] content) throws IOException {
		byte[] old = Files.readAllBytes(file);
		try {
			put(file, content, StandardOpenOption.TRUNCATE_EXISTING);
		} catch (IOException e) {
			put(file, old, StandardOpenOption.TRUNCATE_EXISTING);
			throw e;
		}
	}

	/** What was moved is safe only when the folder is written too; not every system can do that. */
	private static void sync(Path folder) {
		try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
			channel.force(true);
		} catch (IOException e) {
			// the file itself is safe
		}
	}

	private static IOException named(Path file, IOException e, String reason) {
		FileSystemException named = new FileSystemException(file.toString(), null, reason);
		named.initCause(e);
		return named;
	}

	/** Who runs as root may write everything, and shall still not change what was put under lock. */
	private static boolean isReadOnly(Path file) throws IOException {
		PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
		if (view != null) {
			Set<PosixFilePermission> may = view.readAttributes().permissions();
			if (!may.contains(PosixFilePermission.OWNER_WRITE) && !may.contains(PosixFilePermission.GROUP_WRITE)
					&& !may.contains(PosixFilePermission.OTHERS_WRITE)) {
				return true;
			}
		}
		return !Files.isWritable(file);
	}

	/** Returns whether the new file has the owner, the group and the permissions of the old one now. */
	private static boolean copyRights(Path from, Path to) throws IOException {
		PosixFileAttributeView old = Files.getFileAttributeView(from, PosixFileAttributeView.class);
		if (old == null || !Files.exists(from)) {
			return true;
		}
		PosixFileAttributes was = old.readAttributes();
		PosixFileAttributeView made = Files.getFileAttributeView(to, PosixFileAttributeView.class);
		Files.setPosixFilePermissions(to, was.permissions());
		try {
			PosixFileAttributes is = made.readAttributes();
			if (!is.group().equals(was.group())) {
				made.setGroup(was.group());
			}
			if (!is.owner().equals(was.owner())) {
				made.setOwner(was.owner());
			}
			return true;
		} catch (IOException e) {
			return false;
		}
	}

	/** Takes away what a run that was killed has left in a folder a minute ago or earlier. */
	public static void sweep(Path folder) {
		try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, ASIDE + "*" + ENDING)) {
			for (Path file : left) {
				String number = file.getFileName().toString().substring(ASIDE.length()).replaceFirst("-.*", "");
				Instant written = Files.getLastModifiedTime(file).toInstant();
				// numbers of processes come again: one that began later has not written it
				boolean alive = number.matches("[0-9]{1,18}") && ProcessHandle.of(Long.parseLong(number))
						.filter(process -> !process.info().startInstant().orElse(Instant.MIN).isAfter(written.plusSeconds(LEFT_BEHIND_SECONDS))).isPresent();
				if (!alive && written.isBefore(Instant.now().minusSeconds(LEFT_BEHIND_SECONDS))) {
					Files.deleteIfExists(file);
				}
			}
		} catch (IOException e) {
			// it does no harm where it lies
		}
	}
}
