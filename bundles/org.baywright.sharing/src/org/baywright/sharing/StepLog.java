package org.baywright.sharing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.Ref;
import org.eclipse.jgit.revwalk.RevCommit;

/** The steps of a copy, kept as states before and after each of them, so that none loses anything and each can be undone. */
final class StepLog {

	private final Copy copy;

	StepLog(Copy copy) {
		this.copy = copy;
	}

	/**
	 * A step.
	 *
	 * @param words what it does
	 * @param headFrom where the branch of the copy was
	 * @param headTo where it is then
	 * @param place what is moved at the shared place, if anything
	 * @param undoes the number of the step that it undoes; 0 if it is none of these
	 */
	record Plan(String words, ObjectId headFrom, ObjectId headTo, Optional<Place.Move> place, int undoes) {

		String message() {
			StringBuilder message = new StringBuilder(words + "\n\nhead " + headFrom.name() + " " + headTo.name() + "\nundoes " + undoes + "\n");
			place.ifPresent(move -> message.append("place " + move.from().name() + " " + move.to().name() + " " + move.branch() + "\n"));
			return message.toString();
		}

		private static Plan of(RevCommit kept) {
			Map<String, String[]> said = new TreeMap<>();
			kept.getFullMessage().lines().skip(1).filter(line -> !line.isEmpty()).forEach(line -> said.put(line.split(" ")[0], line.split(" ", 4)));
			String[] head = said.get("head");
			Optional<Place.Move> place = Optional.ofNullable(said.get("place"))
					.map(move -> new Place.Move(move[3], ObjectId.fromString(move[1]), ObjectId.fromString(move[2])));
			return new Plan(kept.getShortMessage(), ObjectId.fromString(head[1]), ObjectId.fromString(head[2]), place, Integer.parseInt(said.get("undoes")[1]));
		}
	}

	/** A step that was begun. */
	record Entry(int number, Plan plan, RevCommit before, RevCommit after, boolean undone) {

		Step told() {
			return new Step(number, plan.words(), after.getCommitterIdent().getWhenAsInstant(), undone);
		}
	}

	/** Returns all steps, the first one first. */
	List<Entry> all() throws IOException {
		List<Entry> entries = new ArrayList<>();
		for (Ref ref : copy.repository().getRefDatabase().getRefsByPrefix(Names.AFTER)) {
			String number = ref.getName().substring(Names.AFTER.length());
			Optional<ObjectId> before = copy.ref(Names.BEFORE + number);
			if (before.isPresent()) {
				RevCommit after = copy.commit(ref.getObjectId());
				entries.add(new Entry(Integer.parseInt(number), Plan.of(after), copy.commit(before.get()), after, copy.ref(Names.UNDONE + number).isPresent()));
			}
		}
		entries.sort((one, other) -> Integer.compare(one.number(), other.number()));
		return entries;
	}

	/** Keeps the states before and after a step, before it is done. */
	Entry begin(Plan plan, Tree from, Tree to) throws IOException, SharingException {
		int number = 1;
		for (Ref ref : copy.repository().getRefDatabase().getRefsByPrefix(Names.BEFORE)) {
			number = Math.max(number, 1 + Integer.parseInt(ref.getName().substring(Names.BEFORE.length())));
		}
		ObjectId before = copy.keep(from, "Before: " + plan.words(), plan.headFrom());
		ObjectId pushed = plan.place().map(Place.Move::to).filter(id -> !ObjectId.zeroId().equals(id) && !id.equals(plan.headTo())).orElse(before);
		ObjectId after = copy.keep(to, plan.message(), plan.headTo(), pushed);
		copy.point(Names.BEFORE + number, before, plan.words());
		copy.point(Names.AFTER + number, after, plan.words());
		return new Entry(number, plan, copy.commit(before), copy.commit(after), false);
	}

	/** Forgets a step that was not done after all. */
	void drop(Entry entry) throws IOException {
		copy.point(Names.AFTER + entry.number(), ObjectId.zeroId(), "not done");
		copy.point(Names.BEFORE + entry.number(), ObjectId.zeroId(), "not done");
	}

	/** Does in the copy what a step leads to. If it is stopped in the middle, {@link #recover} ends it. */
	void carryOut(Entry entry) throws IOException {
		copy.point(Names.DOING, entry.after(), entry.plan().words());
		finish(entry);
	}

	private void finish(Entry entry) throws IOException {
		copy.files().write(copy.repository(), copy.tree(entry.before()), copy.tree(entry.after()));
		Plan plan = entry.plan();
		if (copy.head().equals(plan.headFrom()) && !plan.headFrom().equals(plan.headTo())) {
			copy.point(Constants.R_HEADS + copy.branch(), plan.headTo(), plan.words());
		}
		copy.noteFiles();
		if (plan.undoes() > 0) {
			mark(plan.undoes());
		}
		copy.point(Names.DOING, ObjectId.zeroId(), "done");
	}

	private void mark(int undone) throws IOException {
		copy.point(Names.UNDONE + undone, copy.ref(Names.AFTER + undone).orElseThrow(() -> new IOException("there is no step " + undone)), "undone");
		for (Entry entry : all()) {
			// who undoes an undoing has the first step done again
			if (entry.number() == undone && entry.plan().undoes() > 0) {
				copy.point(Names.UNDONE + entry.plan().undoes(), ObjectId.zeroId(), "done again");
			}
		}
	}

	/** Ends a step in the middle of which a program was stopped. */
	void recover() throws IOException {
		Optional<ObjectId> doing = copy.ref(Names.DOING);
		if (doing.isPresent()) {
			for (Entry entry : all()) {
				if (entry.after().equals(doing.get())) {
					finish(entry);
				}
			}
			copy.point(Names.DOING, ObjectId.zeroId(), "done");
		}
	}
}
