package org.baywright.sharing;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.Ref;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.storage.file.FileRepositoryBuilder;

/** How a folder comes to be a copy of a shared project. */
final class Beginning {

	private static final String MAIN = "main";
	/** Bytes stay as they are, and whoever merges with Git may use the merge of rules: see the help of {@code baywright merge-driver}. */
	private static final String ATTRIBUTES = "*.bay -text merge=bay\n";
	/** What the workbench and a program that was stopped leave behind. */
	private static final String IGNORED = ".project\n.baywright-*.part\n";

	private Beginning() {
	}

	/** See {@link SharedProject#begin}. */
	static Copy begin(Path given, String place, String author, SharingListener listener) throws SharingException {
		Path folder = given.toAbsolutePath().normalize();
		requireAuthor(author);
		if (!Files.isDirectory(folder)) {
			throw new SharingException("There is no folder " + given + " to share. Name the folder of a rule project.");
		}
		File known = new FileRepositoryBuilder().findGitDir(folder.toFile()).getGitDir();
		Path own = folder.resolve(Constants.DOT_GIT);
		if (known != null && !known.toPath().toAbsolutePath().normalize().equals(own) && !Files.exists(own)) {
			throw new SharingException(given + " lies within " + known.getParent() + ", which is kept with Git already. Share that folder, or move this one out of it.");
		}
		String address = address(place, folder);
		boolean fresh = known == null;
		return Failures.told(given.toString(), () -> {
			prepare(address);
			if (fresh) {
				initialize(folder);
			}
			Copy copy = new Copy(new FileRepositoryBuilder().setWorkTree(folder.toFile()).setup().build());
			boolean done = false;
			try (Copy.Lock lock = copy.lock()) {
				connect(copy, address, author, listener);
				done = true;
			} finally {
				if (!done) {
					copy.close();
					if (fresh) {
						delete(own);
					}
				}
			}
			return copy;
		});
	}

	private static void connect(Copy copy, String address, String author, SharingListener listener) throws IOException, SharingException {
		Repository repository = copy.repository();
		String had = repository.getConfig().getString(Names.SECTION, null, "branch");
		Ref head = repository.exactRef(Constants.HEAD);
		String branch = had != null ? had : head != null && head.isSymbolic() ? Repository.shortenRefName(head.getTarget().getName()) : MAIN;
		setAuthor(repository, author);
		Place place = Place.connect(repository, address, branch);
		if (copy.head() == null) {
			copy.files().writeOwn(".gitattributes", ATTRIBUTES);
			copy.files().writeOwn(".gitignore", IGNORED);
			Tree all = copy.files().read(new Tree());
			all.requireNamesThatAllSystemsTellApart();
			copy.point(Constants.R_HEADS + branch, copy.keep(all, "Begin " + copy.root().getFileName()), "begin");
			copy.noteFiles();
		}
		copy.requireInOrder();
		place.fetch(listener);
		ObjectId there = place.known().get(branch);
		if (there == null && !place.known().isEmpty()) {
			throw new SharingException(address + " holds something else already. Name an empty folder, or join what is shared there.");
		} else if (there == null) {
			pointHead(address, branch);
			if (!place.push(listener, new Place.Move(branch, ObjectId.zeroId(), copy.head()))) {
				throw new SharingException("Somebody else has just begun to share at " + address + ". Join what is shared there.");
			}
		} else if (copy.common(there, copy.head()).isEmpty()) {
			throw new SharingException(address + " holds another project already. Name an empty folder; or join what is shared there in a new folder, and copy your rule files into that.");
		}
		copy.point(SharedProject.looked(copy), place.known().get(branch), "begin");
	}

	/** See {@link SharedProject#join}. */
	static Copy join(String place, Path given, String author, SharingListener listener) throws SharingException {
		Path folder = given.toAbsolutePath().normalize();
		requireAuthor(author);
		boolean there = Files.exists(folder);
		return Failures.told(given.toString(), () -> {
			if (there && (!Files.isDirectory(folder) || !isEmpty(folder))) {
				throw new SharingException(given + " is there already, and not empty. Name a new folder for your copy.");
			}
			String address = address(place, folder);
			Files.createDirectories(folder);
			Copy copy = null;
			boolean done = false;
			try {
				initialize(folder);
				copy = new Copy(new FileRepositoryBuilder().setWorkTree(folder.toFile()).setup().build());
				fill(copy, address, author, listener);
				done = true;
				return copy;
			} finally {
				if (!done) {
					if (copy != null) {
						copy.close();
					}
					clear(folder, there);
				}
			}
		});
	}

	private static void fill(Copy copy, String address, String author, SharingListener listener) throws IOException, SharingException {
		Repository repository = copy.repository();
		setAuthor(repository, author);
		String branch = Place.connect(repository, address, MAIN).mainBranch(listener).orElse(MAIN);
		repository.getConfig().unsetSection("branch", MAIN);
		Place place = Place.connect(repository, address, branch);
		place.fetch(listener);
		ObjectId main = place.known().get(branch);
		if (main == null) {
			throw new SharingException("Nothing is shared at " + address + " yet. Share a project there first.");
		}
		if (!branch.equals(MAIN)) {
			repository.updateRef(Constants.HEAD).link(Constants.R_HEADS + branch);
		}
		Tree tree = copy.tree(main);
		copy.files().requireRoomFor(new Tree(), tree);
		copy.files().write(repository, new Tree(), tree);
		copy.point(Constants.R_HEADS + branch, main, "join");
		copy.noteFiles();
		copy.point(SharedProject.looked(copy), main, "join");
	}

	private static void requireAuthor(String author) throws SharingException {
		if (author == null || author.isBlank() || author.chars().anyMatch(c -> c < ' ' || c == '<' || c == '>')) {
			throw new SharingException("Say who you are: a name that others know, without < and >.");
		}
	}

	private static void setAuthor(Repository repository, String author) throws IOException {
		if (!author.equals(repository.getConfig().getString("user", null, "name"))) {
			repository.getConfig().setString("user", null, "name", author.strip());
			repository.getConfig().setString("user", null, "email", Names.of(author) + "@baywright.invalid");
		}
		repository.getConfig().save();
	}

	/** Returns a folder as a whole path, so that it is found from everywhere; anything else as it is. */
	private static String address(String place, Path folder) throws SharingException {
		try {
			if (place.isBlank()) {
				throw new SharingException("Say where to share: a folder on a drive that all reach, or an address.");
			} else if (Place.folder(place) == null) {
				return place;
			}
			Path path = Path.of(place).toAbsolutePath().normalize();
			if (path.startsWith(folder) || folder.startsWith(path)) {
				throw new SharingException("The shared place " + place + " and your folder lie within each other. Choose a shared place outside of your folder.");
			}
			return path.toString();
		} catch (InvalidPathException e) {
			throw new SharingException(place + " is no folder and no address.", e);
		}
	}

	/** Makes a shared place of an empty folder. */
	private static void prepare(String address) throws IOException, SharingException {
		Path folder = Place.folder(address);
		if (folder == null) {
			return;
		}
		if (!Files.exists(folder)) {
			if (folder.getParent() == null || !Files.isDirectory(folder.getParent())) {
				throw new SharingException("There is no folder " + folder.getParent() + " for the shared place. See that the drive is connected, or make the folder.");
			}
			Files.createDirectory(folder);
		} else if (!Files.isDirectory(folder)) {
			throw new SharingException(address + " is a file. Name an empty folder for the shared place.");
		}
		if (isEmpty(folder)) {
			try (Repository bare = new FileRepositoryBuilder().setGitDir(folder.toFile()).setBare().build()) {
				bare.create(true);
				bare.updateRef(Constants.HEAD).link(Constants.R_HEADS + MAIN);
			}
		} else if (!Files.exists(folder.resolve(Constants.HEAD)) && !Files.exists(folder.resolve(Constants.DOT_GIT))) {
			throw new SharingException(address + " holds other files. Name an empty folder for the shared place.");
		}
	}

	/** Lets whoever joins with Git find the branch that all share. */
	private static void pointHead(String address, String branch) throws IOException {
		Path folder = Place.folder(address);
		if (folder != null && !branch.equals(MAIN)) {
			try (Repository bare = new FileRepositoryBuilder().setGitDir(folder.toFile()).setMustExist(true).build()) {
				bare.updateRef(Constants.HEAD).link(Constants.R_HEADS + branch);
			}
		}
	}

	private static void initialize(Path folder) throws IOException {
		try (Repository made = new FileRepositoryBuilder().setWorkTree(folder.toFile()).setGitDir(folder.resolve(Constants.DOT_GIT).toFile()).build()) {
			made.create(false);
			made.updateRef(Constants.HEAD).link(Constants.R_HEADS + MAIN);
		}
	}

	private static boolean isEmpty(Path folder) throws IOException {
		try (Stream<Path> inside = Files.list(folder)) {
			return inside.findAny().isEmpty();
		}
	}

	private static void clear(Path folder, boolean keep) throws IOException {
		try (Stream<Path> inside = Files.list(folder)) {
			for (Path path : inside.toList()) {
				delete(path);
			}
		}
		if (!keep) {
			Files.delete(folder);
		}
	}

	private static void delete(Path path) throws IOException {
		try (Stream<Path> all = Files.walk(path)) {
			for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
				Files.deleteIfExists(one);
			}
		}
	}
}
