package org.baywright.sharing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;

import org.baywright.language.merge.Change;
import org.baywright.language.merge.Conflict;
import org.baywright.language.merge.Merged;
import org.baywright.language.merge.Piece;
import org.baywright.language.merge.ProjectMerge;
import org.eclipse.jgit.lib.FileMode;
import org.eclipse.jgit.lib.Repository;

/**
 * Two states of a project joined: rule files element by element, all others as a whole.
 *
 * @param tree what comes of both
 * @param open what has to be chosen first
 */
record Joint(Tree tree, List<Conflict> open) {

	static Joint of(Repository repository, Tree base, Tree ours, Tree theirs, Map<String, Conflict.Choice> choices) throws IOException {
		Tree joint = new Tree();
		Stream.of(base, ours, theirs).forEach(tree -> joint.fresh().putAll(tree.fresh()));
		List<Conflict> open = new ArrayList<>();
		List<SortedMap<String, String>> texts = List.of(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
		Set<String> paths = new TreeSet<>(base.entries().keySet());
		paths.addAll(ours.entries().keySet());
		paths.addAll(theirs.entries().keySet());
		for (String path : paths) {
			Tree.Entry before = base.entries().get(path);
			Tree.Entry our = ours.entries().get(path);
			Tree.Entry their = theirs.entries().get(path);
			if (Objects.equals(our, their) && Objects.equals(our, before)) {
				put(joint, path, our);
			} else if (isText(repository, path, base, ours, theirs)) {
				put(repository, path, base, texts.get(0));
				put(repository, path, ours, texts.get(1));
				put(repository, path, theirs, texts.get(2));
			} else if (Objects.equals(before, their) || Objects.equals(our, their)) {
				put(joint, path, our);
			} else if (Objects.equals(before, our)) {
				put(joint, path, their);
			} else {
				Conflict conflict = new Conflict(Piece.FILE + " " + path, Piece.FILE, path, path, told(before), told(our), told(their));
				Conflict.Choice choice = choices.get(conflict.id());
				put(joint, path, choice == Conflict.Choice.THEIRS ? their : our);
				if (choice != Conflict.Choice.OURS && choice != Conflict.Choice.THEIRS) {
					open.add(conflict);
				}
			}
		}
		Merged merged = ProjectMerge.of(texts.get(0), texts.get(1), texts.get(2)).choose(choices);
		merged.texts().forEach((path, text) -> joint.put(path, text.getBytes(StandardCharsets.UTF_8), mode(path, ours, theirs)));
		open.addAll(merged.open());
		return new Joint(joint, List.copyOf(open));
	}

	private static FileMode mode(String path, Tree ours, Tree theirs) {
		Tree.Entry entry = ours.entries().getOrDefault(path, theirs.entries().get(path));
		return entry == null ? FileMode.REGULAR_FILE : entry.mode();
	}

	private static boolean isText(Repository repository, String path, Tree... trees) throws IOException {
		for (Tree tree : trees) {
			if (tree.entries().containsKey(path) && tree.text(repository, path).isEmpty()) {
				return false;
			}
		}
		return true;
	}

	private static void put(Repository repository, String path, Tree tree, SortedMap<String, String> texts) throws IOException {
		tree.text(repository, path).ifPresent(text -> texts.put(path, text));
	}

	private static void put(Tree joint, String path, Tree.Entry entry) {
		if (entry != null) {
			joint.entries().put(path, entry);
		}
	}

	/** A picture is not shown; that it is there is all that is told. */
	private static Optional<String> told(Tree.Entry entry) {
		return Optional.ofNullable(entry).map(there -> "");
	}

	/** Returns what differs between two states. */
	static List<Change> changes(Repository repository, Tree before, Tree after) throws IOException {
		SortedMap<String, String> was = new TreeMap<>();
		SortedMap<String, String> is = new TreeMap<>();
		List<Change> files = new ArrayList<>();
		Set<String> paths = new TreeSet<>(before.entries().keySet());
		paths.addAll(after.entries().keySet());
		for (String path : paths) {
			if (Objects.equals(before.entries().get(path), after.entries().get(path))) {
				continue;
			} else if (isText(repository, path, before, after)) {
				put(repository, path, before, was);
				put(repository, path, after, is);
			} else {
				files.add(Change.ofFile(path, before.entries().containsKey(path), after.entries().containsKey(path)));
			}
		}
		List<Change> changes = new ArrayList<>(Change.between(was, is));
		changes.addAll(files);
		return List.copyOf(changes);
	}
}
