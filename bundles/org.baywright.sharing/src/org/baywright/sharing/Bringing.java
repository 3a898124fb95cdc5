package org.baywright.sharing;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.language.merge.Conflict;
import org.eclipse.jgit.lib.ObjectId;

/** Joins what is in a copy with a state that it shall be at. */
final class Bringing {

	private final Copy copy;
	private final StepLog log;

	Bringing(Copy copy, StepLog log) {
		this.copy = copy;
		this.log = log;
	}

	/**
	 * What came of it.
	 *
	 * @param head the state that the copy is at then
	 * @param joint the files
	 */
	record Brought(ObjectId head, Joint joint) {
	}

	/**
	 * Joins files with another state. Commits that somebody made with Git are kept.
	 *
	 * @param mine the files
	 * @param mineAt the state that they came of
	 * @param to the other state
	 * @param knowsOffers whether what was offered and is part of the other state came with these files
	 */
	Brought bring(Tree mine, ObjectId mineAt, ObjectId to, boolean knowsOffers, Map<String, Conflict.Choice> choices) throws IOException, SharingException {
		if (copy.contains(mineAt, to)) {
			return new Brought(mineAt, new Joint(mine, List.of()));
		}
		Tree base = knowsOffers ? withOffers(mineAt, to) : copy.tree(mineAt);
		if (copy.contains(to, mineAt)) {
			return new Brought(to, Joint.of(copy.repository(), base, mine, copy.tree(to), choices));
		}
		Joint commits = join(copy.common(mineAt, to), copy.tree(mineAt), copy.tree(to), choices);
		if (!commits.open().isEmpty()) {
			return new Brought(mineAt, commits);
		}
		ObjectId joined = copy.keep(commits.tree(), "Bring in what is shared", mineAt, to);
		return new Brought(joined, Joint.of(copy.repository(), base, mine, commits.tree(), choices));
	}

	Joint join(Optional<ObjectId> base, Tree ours, Tree theirs, Map<String, Conflict.Choice> choices) throws IOException {
		return Joint.of(copy.repository(), base.isPresent() ? copy.tree(base.get()) : new Tree(), ours, theirs, choices);
	}

	/** What was offered from here and taken over is no edit of ours any more: who changed it since has seen it. */
	private Tree withOffers(ObjectId mineAt, ObjectId to) throws IOException {
		Tree base = copy.tree(mineAt);
		for (StepLog.Entry entry : log.all()) {
			Optional<ObjectId> offered = entry.plan().place().filter(move -> move.branch().startsWith(Names.OFFER)).map(Place.Move::to)
					.filter(tip -> !entry.undone() && !ObjectId.zeroId().equals(tip));
			if (offered.isPresent() && copy.contains(to, offered.get()) && !copy.contains(mineAt, offered.get())) {
				Optional<ObjectId> common = copy.common(mineAt, offered.get());
				Joint joint = join(common, base, copy.tree(offered.get()), Map.of());
				Map<String, Conflict.Choice> later = new HashMap<>();
				joint.open().forEach(conflict -> later.put(conflict.id(), Conflict.Choice.THEIRS));
				base = later.isEmpty() ? joint.tree() : join(common, base, copy.tree(offered.get()), later).tree();
			}
		}
		return base;
	}
}
