package org.baywright.sharing;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

import org.eclipse.jgit.dircache.DirCache;
import org.eclipse.jgit.dircache.DirCacheBuilder;
import org.eclipse.jgit.dircache.DirCacheEntry;
import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.FileMode;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.ObjectInserter;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.revwalk.RevTree;
import org.eclipse.jgit.treewalk.TreeWalk;

/**
 * The files of a project in one of its states.
 *
 * @param entries what each path holds
 * @param fresh contents that are not kept in the repository yet
 */
record Tree(SortedMap<String, Entry> entries, Map<ObjectId, byte[]> fresh) {

	/** The ending of rule files; some systems write it in capitals. */
	private static final String RULES = ".bay";

	/** What a path holds. */
	record Entry(ObjectId id, FileMode mode) {

		boolean isFile() {
			return (mode.getBits() & FileMode.TYPE_MASK) == FileMode.TYPE_FILE;
		}
	}

	Tree() {
		this(new TreeMap<>(), new HashMap<>());
	}

	static Tree of(Repository repository, RevTree root) throws IOException {
		Tree tree = new Tree();
		try (TreeWalk walk = new TreeWalk(repository)) {
			walk.addTree(root);
			walk.setRecursive(true);
			while (walk.next()) {
				tree.entries.put(walk.getPathString(), new Entry(walk.getObjectId(0), walk.getFileMode(0)));
			}
		}
		return tree;
	}

	static boolean isRules(String path) {
		return path.toLowerCase(Locale.ROOT).endsWith(RULES);
	}

	void put(String path, byte[] content, FileMode mode) {
		ObjectId id;
		try (ObjectInserter.Formatter formatter = new ObjectInserter.Formatter()) {
			id = formatter.idFor(Constants.OBJ_BLOB, content);
		}
		fresh.put(id, content);
		entries.put(path, new Entry(id, mode));
	}

	byte[] bytes(Repository repository, String path) throws IOException {
		Entry entry = entries.get(path);
		byte[] content = fresh.get(entry.id());
		return content != null ? content : repository.open(entry.id()).getBytes();
	}

	/** Returns the text of a rule file; nothing if there is none, or none in UTF-8. */
	Optional<String> text(Repository repository, String path) throws IOException {
		Entry entry = entries.get(path);
		if (entry == null || !entry.isFile() || !isRules(path)) {
			return Optional.empty();
		}
		try {
			return Optional.of(StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes(repository, path))).toString());
		} catch (CharacterCodingException e) {
			return Optional.empty();
		}
	}

	Contents contents(Repository repository) throws IOException {
		Contents contents = new Contents(new TreeMap<>(), new TreeMap<>());
		for (Map.Entry<String, Entry> entry : entries.entrySet()) {
			Optional<String> text = text(repository, entry.getKey());
			if (text.isPresent()) {
				contents.texts().put(entry.getKey(), text.get());
			} else if (entry.getValue().isFile()) {
				contents.others().put(entry.getKey(), bytes(repository, entry.getKey()));
			}
		}
		return contents;
	}

	boolean hasSameFiles(Tree other) {
		return entries.equals(other.entries);
	}

	/** Keeps the tree with all contents in the repository; nothing refers to it yet. */
	ObjectId write(ObjectInserter inserter) throws IOException {
		DirCache all = DirCache.newInCore();
		DirCacheBuilder builder = all.builder();
		for (Map.Entry<String, Entry> entry : entries.entrySet()) {
			byte[] content = fresh.get(entry.getValue().id());
			if (content != null) {
				inserter.insert(Constants.OBJ_BLOB, content);
			}
			builder.add(entry(entry.getKey(), entry.getValue()));
		}
		builder.finish();
		return all.writeTree(inserter);
	}

	static DirCacheEntry entry(String path, Entry entry) {
		DirCacheEntry made = new DirCacheEntry(path);
		made.setFileMode(entry.mode());
		made.setObjectId(entry.id());
		return made;
	}

	/** Some systems take names for the same that differ only in capitals: there one of two files would be lost. */
	void requireNamesThatAllSystemsTellApart() throws SharingException {
		Map<String, String> seen = new HashMap<>();
		for (String path : entries.keySet()) {
			String other = seen.put(path.toLowerCase(Locale.ROOT), path);
			if (other != null) {
				throw new SharingException("The files " + other + " and " + path + " differ only in capitals, and some systems cannot tell them apart. "
						+ "Give one of them another name.");
			}
		}
	}
}
