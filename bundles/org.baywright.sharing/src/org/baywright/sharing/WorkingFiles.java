package org.baywright.sharing;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.baywright.model.PictureFile;
import org.baywright.pack.WholeFile;
import org.eclipse.jgit.lib.FileMode;
import org.eclipse.jgit.lib.Repository;

/** The files in the folder of a copy. What is neither known to the repository nor part of a project is left alone. */
final class WorkingFiles {

	private static final String PACK = ".baypack";
	/** What a project builds on may lie in it. */
	private static final Pattern BUILDS_ON = Pattern.compile("builds_on\\s+\"([^\"\\n]+)\"");
	private static final Set<String> OWN = Set.of(".gitattributes", ".gitignore");

	private final Path root;

	WorkingFiles(Path root) {
		this.root = root;
	}

	/**
	 * Returns the files of the project as they are on the disk.
	 *
	 * @param known the files that the repository knows
	 */
	Tree read(Tree known) throws IOException {
		Tree tree = new Tree();
		Set<String> paths = new TreeSet<>(known.entries().keySet());
		paths.addAll(ofProject());
		Set<String> packs = new HashSet<>();
		for (String path : paths) {
			Tree.Entry entry = known.entries().get(path);
			if (entry != null && !entry.isFile()) {
				tree.entries().put(path, entry); // a link, or another repository: whoever made it looks after it
			} else if (Files.isRegularFile(root.resolve(path), LinkOption.NOFOLLOW_LINKS) && isInside(path)) {
				tree.put(path, Files.readAllBytes(root.resolve(path)), entry == null ? FileMode.REGULAR_FILE : entry.mode());
				packs.addAll(builtOn(path, tree));
			}
		}
		for (String path : packs) {
			if (!tree.entries().containsKey(path)) {
				tree.put(path, Files.readAllBytes(root.resolve(path)), FileMode.REGULAR_FILE);
			}
		}
		return tree;
	}

	private Set<String> builtOn(String path, Tree tree) throws IOException {
		Set<String> packs = new HashSet<>();
		Optional<String> text = tree.text(null, path);
		Matcher written = BUILDS_ON.matcher(text.filter(all -> all.contains("builds_on")).orElse(""));
		while (written.find()) {
			try {
				Path pack = root.resolve(written.group(1)).normalize();
				if (pack.startsWith(root) && pack.toString().endsWith(PACK) && Files.isRegularFile(pack)) {
					packs.add(relative(pack));
				}
			} catch (InvalidPathException e) {
				// the check of the project tells it
			}
		}
		return packs;
	}

	private Set<String> ofProject() throws IOException {
		Set<String> found = new TreeSet<>();
		Files.walkFileTree(root, new SimpleFileVisitor<>() {
			@Override
			public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
				String name = String.valueOf(dir.getFileName());
				boolean skipped = !dir.equals(root) && (name.startsWith(".") || name.equals("target") || Files.exists(dir.resolve(".git")));
				return skipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
			}

			@Override
			public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
				String name = file.getFileName().toString();
				boolean project = Tree.isRules(name) || PictureFile.type(name).isPresent();
				if (attributes.isRegularFile() && (project && !name.startsWith(".") || file.getParent().equals(root) && OWN.contains(name))) {
					found.add(relative(file));
				}
				return FileVisitResult.CONTINUE;
			}
		});
		return found;
	}

	private String relative(Path file) {
		return root.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
	}

	/** A folder that is a link leads elsewhere. */
	private boolean isInside(String path) {
		Path folder = root;
		for (Path name : root.relativize(root.resolve(path).getParent())) {
			folder = folder.resolve(name);
			if (Files.isSymbolicLink(folder)) {
				return false;
			}
		}
		return true;
	}

	/**
	 * Makes of one state of the files another, file by file, each as a whole. A file that holds neither state was changed by
	 * somebody meanwhile and is left alone.
	 */
	void write(Repository repository, Tree from, Tree to) throws IOException {
		Set<String> paths = new TreeSet<>(from.entries().keySet());
		paths.addAll(to.entries().keySet());
		for (String path : paths) {
			Tree.Entry old = from.entries().get(path);
			Tree.Entry now = to.entries().get(path);
			if (!Objects.equals(old, now) && (old == null || old.isFile()) && (now == null || now.isFile()) && isInside(path) && holds(path, old)) {
				Path file = root.resolve(path);
				if (now == null) {
					Files.delete(file);
					removeEmpty(file.getParent());
				} else {
					Files.createDirectories(file.getParent());
					WholeFile.writeRules(file, to.bytes(repository, path));
				}
			}
		}
	}

	private boolean holds(String path, Tree.Entry entry) throws IOException {
		Path file = root.resolve(path);
		if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
			return entry == null;
		}
		if (entry == null || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
			return false;
		}
		Tree one = new Tree();
		one.put(path, Files.readAllBytes(file), entry.mode());
		return one.entries().get(path).equals(entry);
	}

	private void removeEmpty(Path folder) throws IOException {
		for (Path empty = folder; !empty.equals(root); empty = empty.getParent()) {
			try (var inside = Files.list(empty)) {
				if (inside.findAny().isPresent()) {
					return;
				}
			}
			Files.delete(empty);
		}
	}

	/**
	 * Makes sure that nothing stands in the way of a state of the files.
	 *
	 * @throws SharingException if a file that the project does not know has the name of one that comes, or a folder
	 */
	void requireRoomFor(Tree from, Tree to) throws SharingException, IOException {
		to.requireNamesThatAllSystemsTellApart();
		for (Map.Entry<String, Tree.Entry> entry : to.entries().entrySet()) {
			String path = entry.getKey();
			if (from.entries().containsKey(path)) {
				continue;
			}
			Path file = root.resolve(path);
			boolean same = Files.isRegularFile(file) && holds(path, entry.getValue());
			Path parent = file.getParent();
			while (!parent.equals(root) && !Files.exists(parent, LinkOption.NOFOLLOW_LINKS)) {
				parent = parent.getParent();
			}
			if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !same || !Files.isDirectory(parent) || !isInside(path)) {
				throw new SharingException("A file " + path + " comes from the others, and something else lies there in your copy. Give that another name, and try again.");
			}
		}
	}

	/** Writes a file of ours, unless there is one. */
	void writeOwn(String name, String text) throws IOException {
		if (!Files.exists(root.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
			WholeFile.writeRules(root.resolve(name), text.getBytes(StandardCharsets.UTF_8));
		}
	}
}
