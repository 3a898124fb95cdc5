package org.baywright.model;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a file must be so that it can be shown as a picture: a PNG or JPEG file of the project, not too large. */
public final class PictureFile {

	/** A photo that shows a place on a vehicle has less; in bytes. */
	public static final int MAX_BYTES = 1_000_000;

	/** All pictures of a project have less together; in bytes. */
	public static final int MAX_TOTAL = 16_000_000;

	/** The best cameras make no more points in as few bytes; whoever shows a picture needs four bytes for each. */
	public static final long MAX_PIXELS = 40_000_000;

	private static final int MEGABYTE = 1_000_000;
	private static final int MOST_LISTED = 400;

	private PictureFile() {
	}

	/** What is wrong with a picture, in a sentence, and what to do about it, in another. */
	public record Wrong(ProblemKind kind, String message, String advice) {
	}

	/** Returns the media type that the ending of a file's name promises, such as {@code image/png}; nothing for one that is no picture. */
	public static Optional<String> type(String file) {
		String name = file.toLowerCase(Locale.ROOT);
		return name.endsWith(".png") ? Optional.of("image/png")
				: name.endsWith(".jpg") || name.endsWith(".jpeg") ? Optional.of("image/jpeg") : Optional.empty();
	}

	/** Returns what is wrong with the name of a picture, wherever the file is. */
	public static Optional<Wrong> ofName(String file) {
		if (!isInside(file)) {
			return Optional.of(new Wrong(ProblemKind.PICTURE_OUTSIDE, "`" + file + "` does not lie in the project.",
					"Copy the picture into the project and write its path from there, with forward slashes, such as pictures/fuse_box.jpg."));
		}
		return type(file).isPresent() ? Optional.empty() : Optional.of(new Wrong(ProblemKind.PICTURE_TYPE,
				"`" + file + "` does not end in .png, .jpg or .jpeg.", "Save the picture as PNG or JPEG and write that file's name."));
	}

	private static boolean isInside(String file) {
		return !file.startsWith("/") && file.chars().noneMatch(c -> c == '\\' || c == ':' || c < ' ')
				&& List.of(file.split("/", -1)).stream().noneMatch(name -> name.isEmpty() && !file.isEmpty() || name.equals(".") || name.equals(".."));
	}

	/**
	 * Returns what is wrong with a picture of a project.
	 *
	 * @param folder the folder of the project
	 * @param file the path of the picture, whose name is right
	 */
	public static Optional<Wrong> look(Path folder, String file) {
		try {
			Path path = folder.resolve(file);
			if (!Files.isRegularFile(path)) {
				return Optional.of(missing(file));
			}
			if (!path.toRealPath().startsWith(folder.toRealPath())) {
				return Optional.of(new Wrong(ProblemKind.PICTURE_OUTSIDE, "`" + file + "` is a link to what does not lie in the project.",
						"Copy the picture itself into the project."));
			}
			try (InputStream in = Files.newInputStream(path)) {
				return ofContent(file, in.readNBytes(MAX_BYTES + 1), Files.size(path));
			}
		} catch (IOException | InvalidPathException e) {
			return Optional.of(missing(file));
		}
	}

	private static Wrong missing(String file) {
		return new Wrong(ProblemKind.PICTURE_MISSING, "There is no file `" + file + "` in the project that can be read.",
				"Correct the path, or copy the picture there.");
	}

	/**
	 * Returns what is wrong with the content of a picture.
	 *
	 * @param content its bytes; of those behind {@link #MAX_BYTES} none are needed
	 * @param size how many bytes it has
	 */
	public static Optional<Wrong> ofContent(String file, byte[] content, long size) {
		Optional<PictureContent> picture = PictureContent.of(content);
		Optional<String> found = picture.map(PictureContent::type);
		if (!found.equals(type(file))) {
			return Optional.of(new Wrong(ProblemKind.PICTURE_TYPE, "`" + file + "` is " + found.map(type -> type.equals("image/png") ? "a PNG file" : "a JPEG file")
					.orElse("no picture that can be shown") + ", which its ending does not say.", "Save it as PNG or JPEG with the ending of what it is."));
		}
		if (size > MAX_BYTES) {
			return Optional.of(tooLarge("`" + file + "` has " + megabytes(size) + " MB; a picture may have at most " + megabytes(MAX_BYTES) + " MB."));
		} else if (picture.get().pixels() > MAX_PIXELS) {
			return Optional.of(tooLarge("`" + file + "` has more than " + MAX_PIXELS / MEGABYTE + " million points."));
		}
		return picture.get().whole() ? Optional.empty() : Optional.of(new Wrong(ProblemKind.PICTURE_TYPE, "`" + file + "` ends in the middle.",
				"Copy it again from where it is whole."));
	}

	/** Returns what is wrong when the pictures of a project are too much together. */
	public static Wrong tooMuch(long total) {
		return tooLarge("With this one the pictures of the project have " + megabytes(total) + " MB; together they may have at most "
				+ megabytes(MAX_TOTAL) + " MB.");
	}

	private static Wrong tooLarge(String message) {
		return new Wrong(ProblemKind.PICTURE_TOO_LARGE, message, "Save it smaller, or cut it to what matters.");
	}

	/** Rounded up, so that what is too large is also said to be more. */
	private static String megabytes(long bytes) {
		long tenths = (bytes * 10 + MEGABYTE - 1) / MEGABYTE;
		return tenths / 10 + (tenths % 10 == 0 ? "" : "." + tenths % 10);
	}

	/** Returns the pictures that lie in the folder of a project, by their path in it, sorted; at most a few hundred. */
	public static List<String> in(Path folder) {
		List<String> found = new ArrayList<>();
		try {
			Files.walkFileTree(folder, new SimpleFileVisitor<>() {
				@Override
				public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
					String name = String.valueOf(dir.getFileName());
					return !dir.equals(folder) && (name.startsWith(".") || name.equals("target")) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
				}

				@Override
				public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
					String path = folder.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
					if (ofName(path).isEmpty()) {
						found.add(path);
					}
					return found.size() < MOST_LISTED ? FileVisitResult.CONTINUE : FileVisitResult.TERMINATE;
				}

				@Override
				public FileVisitResult visitFileFailed(Path file, IOException e) {
					return FileVisitResult.CONTINUE;
				}
			});
		} catch (IOException e) {
			return List.of(); // nothing is proposed of a folder that cannot be read
		}
		Collections.sort(found);
		return found;
	}
}
