package org.baywright.sharing;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.eclipse.jgit.dircache.DirCache;
import org.eclipse.jgit.dircache.DirCacheBuilder;
import org.eclipse.jgit.lib.CommitBuilder;
import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.ObjectInserter;
import org.eclipse.jgit.lib.PersonIdent;
import org.eclipse.jgit.lib.Ref;
import org.eclipse.jgit.lib.RefUpdate;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.lib.RepositoryState;
import org.eclipse.jgit.revwalk.RevCommit;
import org.eclipse.jgit.revwalk.RevWalk;
import org.eclipse.jgit.revwalk.filter.RevFilter;
import org.eclipse.jgit.storage.file.FileRepositoryBuilder;

/** The repository in the folder of one who shares a project, and its files. */
final class Copy implements AutoCloseable {

	private static final String LOCK = "baywright.lock";

	private final Repository repository;
	private final Path root;
	private final WorkingFiles files;

	Copy(Repository repository) throws IOException {
		this.repository = repository;
		root = repository.getWorkTree().toPath().toRealPath();
		files = new WorkingFiles(root);
	}

	/** Opens the copy that a folder lies in. */
	static Copy open(Path folder) throws SharingException {
		FileRepositoryBuilder builder = new FileRepositoryBuilder().findGitDir(folder.toAbsolutePath().normalize().toFile());
		if (builder.getGitDir() == null) {
			throw new SharingException(folder + " is not shared yet. Share it first, or join a shared place.");
		}
		return Failures.told(folder.toString(), () -> {
			Repository found = builder.setMustExist(true).build();
			if (found.isBare()) {
				found.close();
				throw new SharingException(folder + " is a shared place itself. Join it in a folder of your own, and work there.");
			}
			return new Copy(found);
		});
	}

	Repository repository() {
		return repository;
	}

	Path root() {
		return root;
	}

	WorkingFiles files() {
		return files;
	}

	/** Makes sure that nobody has left the repository in the middle of something. */
	void requireInOrder() throws SharingException, IOException {
		RepositoryState state = repository.getRepositoryState();
		if (state != RepositoryState.SAFE && state != RepositoryState.BARE) {
			throw new SharingException("Somebody has begun something with Git in " + root + " and not ended it (" + state.getDescription()
					+ "). End it there, or take it back, and try again.");
		}
		Ref head = repository.exactRef(Constants.HEAD);
		if (head == null || !head.isSymbolic()) {
			throw new SharingException("Somebody has gone to an old state in " + root + " with Git. Go back to the branch " + branch() + " there, and try again.");
		} else if (!head.getTarget().getName().equals(Constants.R_HEADS + branch())) {
			throw new SharingException("Somebody has gone to the branch " + Repository.shortenRefName(head.getTarget().getName()) + " in " + root
					+ " with Git. Go back to the branch " + branch() + " there, and try again.");
		} else if (!repository.getObjectDatabase().getShallowCommits().isEmpty()) {
			throw new SharingException(root + " holds only the end of its history. Join the shared place in a new folder, which fetches all of it.");
		}
	}

	/** Returns the branch that all share. */
	String branch() {
		String set = repository.getConfig().getString(Names.SECTION, null, "branch");
		return set == null ? "main" : set;
	}

	/** Returns who works with this copy. */
	PersonIdent me() throws SharingException {
		String name = repository.getConfig().getString("user", null, "name");
		if (name == null || name.isBlank()) {
			throw new SharingException("It is not known who works with " + root + ". Say your name, and try again.");
		}
		String address = repository.getConfig().getString("user", null, "email");
		return new PersonIdent(name, address == null || address.isBlank() ? Names.of(name) + "@baywright.invalid" : address);
	}

	ObjectId head() throws IOException {
		return repository.resolve(Constants.HEAD);
	}

	Optional<ObjectId> ref(String name) throws IOException {
		return Optional.ofNullable(repository.exactRef(name)).map(Ref::getObjectId);
	}

	RevCommit commit(ObjectId id) throws IOException {
		try (RevWalk walk = new RevWalk(repository)) {
			return walk.parseCommit(id);
		}
	}

	Tree tree(ObjectId commit) throws IOException {
		return Tree.of(repository, commit(commit).getTree());
	}

	/** Returns the files as they are on the disk. */
	Tree working() throws IOException {
		return files.read(tree(head()));
	}

	boolean contains(ObjectId newer, ObjectId older) throws IOException {
		try (RevWalk walk = new RevWalk(repository)) {
			return walk.isMergedInto(walk.parseCommit(older), walk.parseCommit(newer));
		}
	}

	/** Returns the last state that both came of; nothing if there is none. */
	Optional<ObjectId> common(ObjectId one, ObjectId other) throws IOException {
		try (RevWalk walk = new RevWalk(repository)) {
			walk.setRevFilter(RevFilter.MERGE_BASE);
			walk.markStart(List.of(walk.parseCommit(one), walk.parseCommit(other)));
			return Optional.ofNullable(walk.next()).map(RevCommit::copy);
		}
	}

	/** Keeps a state; no name leads to it yet. */
	ObjectId keep(Tree tree, String message, ObjectId... parents) throws IOException, SharingException {
		PersonIdent me = me();
		try (ObjectInserter inserter = repository.newObjectInserter()) {
			CommitBuilder commit = new CommitBuilder();
			commit.setTreeId(tree.write(inserter));
			commit.setParentIds(parents);
			commit.setAuthor(me);
			commit.setCommitter(me);
			commit.setMessage(message.endsWith("\n") ? message : message + "\n");
			ObjectId id = inserter.insert(commit);
			inserter.flush();
			return id;
		}
	}

	/** Lets a name lead to a state; the zero id takes the name away. */
	void point(String name, ObjectId id, String why) throws IOException {
		RefUpdate update = repository.updateRef(name);
		update.setForceUpdate(true);
		update.setRefLogMessage(why, false);
		RefUpdate.Result result;
		if (ObjectId.zeroId().equals(id)) {
			result = update.delete();
		} else {
			update.setNewObjectId(id);
			result = update.update();
		}
		switch (result) {
		case NEW, FORCED, FAST_FORWARD, NO_CHANGE -> {
			// it leads there now
		}
		case LOCK_FAILURE -> throw new IOException("cannot lock " + name);
		default -> throw new IOException(name + " could not be written: " + result);
		}
	}

	/** Notes for Git that the folder is at the state of the branch; what differs there is not noted for a commit. */
	void noteFiles() throws IOException {
		DirCache index = repository.lockDirCache();
		try {
			DirCacheBuilder builder = index.builder();
			tree(head()).entries().forEach((path, entry) -> builder.add(Tree.entry(path, entry)));
			if (!builder.commit()) {
				throw new IOException("the list of files could not be written");
			}
		} finally {
			index.unlock();
		}
	}

	/** Keeps all other steps out while one is under way; the system takes the lock away from a program that has ended. */
	Lock lock() throws IOException, SharingException {
		Path file = repository.getDirectory().toPath().resolve(LOCK);
		FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
		FileLock lock = null;
		try {
			lock = channel.tryLock();
		} catch (OverlappingFileLockException e) {
			// this very program is at it
		}
		if (lock == null) {
			channel.close();
			throw new SharingException("Another step is under way in " + root + ". Let it end, and try again.");
		}
		// what is in the file says that a step was begun; who ends it takes that out again
		if (channel.size() > 0) {
			sweep();
		}
		Path index = repository.getDirectory().toPath().resolve("index.lock");
		if (Files.exists(index)) {
			channel.close();
			throw new SharingException("Another program works with " + root + " just now. Let it end, and try again; if there is none, one was stopped in the middle, and the file "
					+ index + " can be deleted.");
		}
		channel.write(ByteBuffer.wrap(new byte[] { '1' }), 0);
		return () -> {
			channel.truncate(0);
			channel.close();
		};
	}

	/** Removes the locks that a program left which was stopped in the middle of a step. */
	private void sweep() throws IOException {
		Path git = repository.getDirectory().toPath();
		for (Path file : List.of(git.resolve("index.lock"), git.resolve("packed-refs.lock"), git.resolve("HEAD.lock"))) {
			Files.deleteIfExists(file);
		}
		try (Stream<Path> refs = Files.walk(git.resolve("refs"))) {
			for (Path file : refs.filter(path -> path.toString().endsWith(".lock")).toList()) {
				Files.deleteIfExists(file);
			}
		}
	}

	/** Held while a step is under way. */
	interface Lock extends AutoCloseable {
		@Override
		void close() throws IOException;
	}

	@Override
	public void close() {
		repository.close();
	}
}
