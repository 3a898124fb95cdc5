package org.baywright.sharing;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.baywright.language.merge.Conflict;
import org.eclipse.jgit.lib.ObjectId;

/** Undoes a step: what it did in the copy is taken out of it, and what it did at the shared place is made good there. */
final class Undoing {

	private final Copy copy;
	private final Place place;
	private final StepLog log;
	private final Moving moving;
	private final MovingMain movingMain;

	/** Moves something at the shared place. */
	interface Moving {
		boolean move(StepLog.Plan plan, Tree from, Tree to) throws SharingException, IOException;
	}

	/** Moves the shared state. */
	interface MovingMain {
		Optional<Outcome> move(String words, ObjectId to, int undoes, Tree mine, ObjectId mineAt) throws SharingException, IOException;
	}

	Undoing(Copy copy, Place place, StepLog log, Moving moving, MovingMain movingMain) {
		this.copy = copy;
		this.place = place;
		this.log = log;
		this.moving = moving;
		this.movingMain = movingMain;
	}

	void undo(StepLog.Entry entry) throws SharingException, IOException {
		StepLog.Plan plan = entry.plan();
		String words = "Undone: " + plan.words();
		Tree working = copy.working();
		boolean here = copy.head().equals(plan.headTo());
		Tree mine = here || !isAtMain(plan) ? taken(working, entry.after(), entry.before(), plan.words()) : working;
		ObjectId mineAt = here ? plan.headFrom() : copy.head();
		if (plan.place().isEmpty()) {
			copy.files().requireRoomFor(working, mine);
			log.carryOut(log.begin(new StepLog.Plan(words, copy.head(), mineAt, Optional.empty(), entry.number()), working, mine));
		} else if (isAtMain(plan)) {
			if (movingMain.move(words, reverted(plan), entry.number(), mine, mineAt).isEmpty()) {
				throw new SharingException("Somebody else has just changed the shared state. Try again.");
			}
		} else if (!moving.move(new StepLog.Plan(words, copy.head(), copy.head(), Optional.of(back(plan)), entry.number()), working, working)) {
			throw new SharingException("Somebody else has just changed that offer. Try again.");
		}
	}

	private boolean isAtMain(StepLog.Plan plan) {
		return plan.place().filter(move -> move.branch().equals(copy.branch())).isPresent();
	}

	/** Returns the shared state without what a step brought: a state of its own, so that whoever has the step gets that too. */
	private ObjectId reverted(StepLog.Plan plan) throws SharingException, IOException {
		Place.Move move = plan.place().orElseThrow();
		ObjectId main = copy.ref(place.known(copy.branch())).orElseThrow(() -> new IOException("nothing is shared"));
		if (!copy.contains(main, move.to())) {
			throw new SharingException("The step was not ended, so there is nothing to undo.");
		}
		Tree tree = taken(copy.tree(main), move.to(), move.from(), plan.words());
		return copy.keep(tree, "Undo: " + plan.words() + "\n\nThis takes back " + move.to().name() + ".", main);
	}

	/** Returns how an offer comes to say what it said before a step: by a state of its own, by going, or by being there again. */
	private Place.Move back(StepLog.Plan plan) throws SharingException, IOException {
		Place.Move move = plan.place().orElseThrow();
		ObjectId now = copy.ref(place.known(move.branch())).orElse(ObjectId.zeroId());
		boolean same = now.equals(move.to()) || !ObjectId.zeroId().equals(now) && !ObjectId.zeroId().equals(move.to()) && copy.tree(now).hasSameFiles(copy.tree(move.to()));
		if (!same) {
			throw new SharingException("That offer has changed since. Undo what changed it first.");
		}
		ObjectId main = copy.ref(place.known(copy.branch())).orElse(ObjectId.zeroId());
		if (!ObjectId.zeroId().equals(now) && !ObjectId.zeroId().equals(main) && copy.contains(main, now)) {
			throw new SharingException("That offer was taken over. Undo that first.");
		}
		boolean again = !ObjectId.zeroId().equals(move.to()) && !ObjectId.zeroId().equals(move.from());
		return new Place.Move(move.branch(), now,
				again ? copy.keep(copy.tree(move.from()), copy.commit(move.from()).getFullMessage(), now) : move.from());
	}

	/** Returns a state without what lies between two others. */
	private Tree taken(Tree from, ObjectId with, ObjectId without, String words) throws SharingException, IOException {
		Joint joint = Joint.of(copy.repository(), copy.tree(with), from, copy.tree(without), Map.of());
		List<Conflict> open = joint.open();
		if (!open.isEmpty()) {
			throw new SharingException("\"" + words + "\" cannot be undone as it is, since this has changed after it: "
					+ open.stream().map(Conflict::id).collect(Collectors.joining(", ")) + ". Change it back by hand, or undo what came after first.");
		}
		return joint.tree();
	}
}
