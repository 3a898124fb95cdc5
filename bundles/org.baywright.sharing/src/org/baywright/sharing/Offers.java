package org.baywright.sharing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.revwalk.RevCommit;

/** The offers that a copy knows of. */
final class Offers {

	private final Copy copy;
	private final Place place;
	private final Map<String, ObjectId> branches;

	Offers(Copy copy, Place place) throws IOException {
		this.copy = copy;
		this.place = place;
		branches = place.known();
	}

	List<Offer> all() throws IOException, SharingException {
		List<Offer> offers = new ArrayList<>();
		for (String branch : branches.keySet()) {
			boolean withdrawn = branch.startsWith(Names.WITHDRAWN);
			// what was offered again after it was withdrawn is told once
			if (branch.startsWith(Names.OFFER) || withdrawn && !branches.containsKey(Names.OFFER + branch.substring(Names.WITHDRAWN.length()))) {
				offers.add(of(branch));
			}
		}
		offers.sort(Comparator.comparing(Offer::standing).thenComparing(Comparator.comparing(Offer::date).reversed()).thenComparing(Offer::id));
		return List.copyOf(offers);
	}

	/** Returns the offer that a branch of the place is. */
	Offer of(String branch) throws IOException, SharingException {
		ObjectId main = branches.get(copy.branch());
		RevCommit tip = copy.commit(known(branch));
		Written written = Histories.written(tip);
		String base = main == null ? "" : copy.common(main, tip).map(ObjectId::name).orElse("");
		Offer.Standing standing = branch.startsWith(Names.WITHDRAWN) ? Offer.Standing.WITHDRAWN
				: main != null && copy.contains(main, tip) ? Offer.Standing.TAKEN_OVER : Offer.Standing.OPEN;
		String id = branch.substring(branch.indexOf('/') + 1);
		return new Offer(id, written.author(), written.date(), written.title(), written.note(), written.revision(), base,
				main != null && base.equals(main.name()), standing);
	}

	/** Returns where a branch leads now; the zero id if there is none. */
	ObjectId known(String branch) throws IOException {
		return copy.ref(place.known(branch)).orElse(ObjectId.zeroId());
	}

	/** Returns the open offer of an id. */
	Offer open(String id) throws IOException, SharingException {
		List<Offer> all = all().stream().filter(offer -> offer.id().equals(id)).toList();
		if (all.isEmpty()) {
			List<String> open = all().stream().filter(offer -> offer.standing() == Offer.Standing.OPEN).map(Offer::id).toList();
			throw new SharingException("There is no offer " + id + ". " + (open.isEmpty() ? "Nothing is offered now." : "There are: " + String.join(", ", open) + "."));
		}
		Offer offer = all.get(0);
		if (offer.standing() != Offer.Standing.OPEN) {
			throw new SharingException("The offer " + id + " is " + (offer.standing() == Offer.Standing.TAKEN_OVER ? "taken over already." : "withdrawn. Its author can offer it again."));
		}
		return offer;
	}

	/** Returns the branch for an offer of who works with the copy; somebody else may write their name, and another title, the same way. */
	String branch(String title) throws IOException, SharingException {
		String author = copy.me().getName();
		String branch = Names.OFFER + Names.of(author) + "/" + Names.of(title);
		ObjectId there = known(branch);
		boolean others = !ObjectId.zeroId().equals(there) && !copy.commit(there).getAuthorIdent().getName().equals(author);
		if (others) {
			branch = Names.OFFER + Names.of(author) + "-" + Names.number(author) + "/" + Names.of(title);
			there = known(branch);
		}
		boolean otherTitle = !ObjectId.zeroId().equals(there) && !copy.commit(there).getShortMessage().equals(title.replaceAll("\\s+", " "));
		return otherTitle ? branch + "-" + Names.number(title) : branch;
	}

	/**
	 * Returns the states that what is in the copy comes of: what was offered from here and stands, and the state that the copy is at.
	 *
	 * @param same where the branch of the offer leads now; the zero id if there is none
	 */
	List<ObjectId> before(ObjectId same, List<StepLog.Entry> steps) throws IOException {
		List<ObjectId> before = new ArrayList<>();
		add(before, same);
		for (int i = steps.size() - 1; i >= 0; i--) {
			Optional<Place.Move> offered = steps.get(i).plan().place().filter(move -> move.branch().startsWith(Names.OFFER));
			if (offered.isPresent() && !steps.get(i).undone() && branches.containsKey(offered.get().branch())) {
				add(before, offered.get().to());
			}
		}
		add(before, copy.head());
		return before;
	}

	private void add(List<ObjectId> states, ObjectId state) throws IOException {
		for (ObjectId there : states) {
			if (copy.contains(there, state)) {
				return;
			}
		}
		if (!ObjectId.zeroId().equals(state) && (state.equals(copy.head()) || !copy.contains(copy.head(), state))) {
			states.add(state);
		}
	}

	/** Returns a name that is not taken yet. */
	String free(String branch) {
		String free = branch;
		for (int i = 2; branches.containsKey(free); i++) {
			free = branch + "-" + i;
		}
		return free;
	}
}
