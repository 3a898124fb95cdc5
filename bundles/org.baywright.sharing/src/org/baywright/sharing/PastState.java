package org.baywright.sharing;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

import org.eclipse.jgit.errors.RevisionSyntaxException;
import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.FileMode;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.revwalk.RevWalk;
import org.eclipse.jgit.storage.file.FileRepositoryBuilder;
import org.eclipse.jgit.treewalk.TreeWalk;

/**
 * A project as it was in an earlier state of the Git repository that it lies in, in a folder of its own. What lies beside it in the
 * repository is there too, since a project may build on it. Closing takes the folder away.
 */
public final class PastState implements AutoCloseable {

	private final Path all;
	private final Path project;

	private PastState(Path all, Path project) {
		this.all = all;
		this.project = project;
	}

	/**
	 * Brings out a state.
	 *
	 * @param folder the folder of the project, or a rule file; it need not have been there then
	 * @param revision a name that Git knows: of a branch, a tag, a commit, or {@code HEAD~3}
	 * @throws SharingException if there is no such state, or it cannot be read
	 */
	public static PastState of(Path folder, String revision) throws SharingException {
		Path asked = folder.toAbsolutePath().normalize();
		FileRepositoryBuilder builder = new FileRepositoryBuilder().findGitDir(asked.toFile());
		if (builder.getGitDir() == null) {
			throw new SharingException(folder + " is not kept with Git and not shared, so there is no state before. Name a folder to compare with instead.");
		}
		try (Repository repository = builder.setMustExist(true).build(); RevWalk walk = new RevWalk(repository)) {
			if (repository.isBare()) {
				throw new SharingException(folder + " is a shared place and no copy of a project.");
			}
			ObjectId commit = resolve(repository, revision);
			Path root = repository.getWorkTree().toPath().toRealPath();
			Path within = root.relativize(Files.exists(asked) ? asked.toRealPath() : asked);
			Path all = Files.createTempDirectory("baywright-state-");
			PastState state = new PastState(all, all.resolve(within.toString()));
			boolean whole = false;
			try {
				write(repository, walk.parseCommit(commit).getTree(), all);
				if (!Files.exists(state.project)) {
					throw new SharingException(folder + " was not there yet in " + revision + ".");
				}
				whole = true;
				return state;
			} finally {
				if (!whole) {
					state.close();
				}
			}
		} catch (IOException e) {
			throw new SharingException("The state " + revision + " of " + folder + " cannot be read: " + e.getMessage() + ".", e);
		}
	}

	private static ObjectId resolve(Repository repository, String revision) throws IOException, SharingException {
		try {
			ObjectId found = repository.resolve(revision + "^{commit}");
			if (found != null) {
				return found;
			}
		} catch (RevisionSyntaxException e) {
			// no name at all is told as one that is not known
		}
		throw new SharingException("There is no state " + revision + ". Name a branch, a tag or a commit of " + repository.getWorkTree() + ".");
	}

	private static void write(Repository repository, ObjectId tree, Path into) throws IOException {
		try (TreeWalk files = new TreeWalk(repository)) {
			files.addTree(tree);
			files.setRecursive(true);
			while (files.next()) {
				Path file = into.resolve(files.getPathString()).normalize();
				boolean plain = FileMode.REGULAR_FILE.equals(files.getRawMode(0)) || FileMode.EXECUTABLE_FILE.equals(files.getRawMode(0));
				if (plain && file.startsWith(into) && !files.getPathString().contains("/" + Constants.DOT_GIT + "/")) {
					Files.createDirectories(file.getParent());
					try (OutputStream out = Files.newOutputStream(file)) {
						repository.open(files.getObjectId(0)).copyTo(out);
					}
				}
			}
		}
	}

	/** Returns the folder of the project, or the rule file, as it was. */
	public Path project() {
		return project;
	}

	@Override
	public void close() {
		try (Stream<Path> files = Files.walk(all)) {
			List<Path> deepestFirst = files.sorted(Comparator.reverseOrder()).toList();
			for (Path file : deepestFirst) {
				Files.deleteIfExists(file);
			}
		} catch (IOException e) {
			// left in the folder for temporary files, which the system sweeps
		}
	}
}
