package org.baywright.sharing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

import org.baywright.language.merge.Piece;
import org.baywright.language.merge.Pieces;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.PersonIdent;
import org.eclipse.jgit.revwalk.RevCommit;
import org.eclipse.jgit.revwalk.RevSort;
import org.eclipse.jgit.revwalk.RevWalk;

/** Follows each element through all states of a project, also from file to file. */
final class Histories {

	private final Copy copy;
	private final Map<ObjectId, List<Piece>> cut = new HashMap<>();
	private final Map<Piece.Key, Written> first = new HashMap<>();
	private final Map<Piece.Key, Written> last = new HashMap<>();

	private Histories(Copy copy) {
		this.copy = copy;
	}

	/** Returns the history of each element of the newest state of a copy, in the order of files and texts. */
	static List<History> of(Copy copy) throws IOException {
		Histories histories = new Histories(copy);
		ObjectId head = copy.head();
		try (RevWalk walk = new RevWalk(copy.repository())) {
			walk.sort(RevSort.TOPO);
			walk.sort(RevSort.REVERSE, true);
			walk.markStart(walk.parseCommit(head));
			Map<ObjectId, Tree> trees = new HashMap<>();
			for (RevCommit commit : walk) {
				histories.add(commit, trees);
			}
		}
		return histories.told(copy.tree(head));
	}

	private void add(RevCommit commit, Map<ObjectId, Tree> trees) throws IOException {
		Tree tree = Tree.of(copy.repository(), commit.getTree());
		trees.put(commit.copy(), tree);
		Set<ObjectId> unchanged = new HashSet<>();
		List<Tree> before = new ArrayList<>();
		for (RevCommit parent : commit.getParents()) {
			Tree was = trees.get(parent);
			before.add(was);
			was.entries().forEach((path, entry) -> {
				if (entry.equals(tree.entries().get(path))) {
					unchanged.add(entry.id());
				}
			});
		}
		Map<Piece.Key, Set<String>> bodies = new HashMap<>();
		for (Tree was : before) {
			for (String path : was.entries().keySet()) {
				if (!was.entries().get(path).equals(tree.entries().get(path))) {
					pieces(was, path).forEach(piece -> bodies.computeIfAbsent(piece.key(), key -> new HashSet<>()).add(piece.body()));
				}
			}
		}
		Written by = written(commit);
		for (String path : tree.entries().keySet()) {
			if (!unchanged.contains(tree.entries().get(path).id())) {
				for (Piece piece : pieces(tree, path)) {
					if (!bodies.getOrDefault(piece.key(), Set.of()).contains(piece.body())) {
						first.putIfAbsent(piece.key(), by);
						last.put(piece.key(), by);
					}
				}
			}
		}
	}

	private List<Piece> pieces(Tree tree, String path) throws IOException {
		ObjectId id = tree.entries().get(path).id();
		List<Piece> known = cut.get(id);
		if (known == null) {
			Optional<String> text = tree.text(copy.repository(), path);
			known = text.flatMap(all -> Pieces.of(path, all.replace("\r\n", "\n"))).map(Pieces::pieces).orElse(List.of());
			cut.put(id, known);
		}
		return known;
	}

	/** Returns who made a state. */
	static Written written(RevCommit commit) {
		PersonIdent author = commit.getAuthorIdent();
		String message = commit.getFullMessage();
		int end = message.indexOf('\n');
		return new Written(author.getName(), author.getWhenAsInstant(), commit.getShortMessage(), end < 0 ? "" : message.substring(end).strip(), commit.name());
	}

	private List<History> told(Tree head) throws IOException {
		Map<String, List<String>> reviews = new HashMap<>();
		for (String path : head.entries().keySet()) {
			for (Piece piece : pieces(head, path)) {
				String[] words = piece.key().name().split(" ", 3);
				if (piece.key().kind().equals("review") && words.length == 3) {
					reviews.computeIfAbsent(words[1], rule -> new ArrayList<>()).add(said(piece.body()));
				}
			}
		}
		List<History> told = new ArrayList<>();
		for (String path : head.entries().keySet()) {
			for (Piece piece : pieces(head, path)) {
				Piece.Key key = piece.key();
				if (first.containsKey(key)) {
					List<String> about = key.kind().equals("rule") || key.kind().equals("chain") ? reviews.getOrDefault(key.name(), List.of()) : List.of();
					told.add(new History(key.kind(), key.name(), path, first.get(key), last.get(key), List.copyOf(about)));
				}
			}
		}
		return List.copyOf(told);
	}

	/** Returns what a review says, without what it is tied to. */
	private static String said(String review) {
		return review.substring(review.indexOf(" by ") + 1).replaceFirst("\\s+meaning\\s+\"[^\"]*\".*", "").replaceAll("\\s+", " ").strip();
	}
}
