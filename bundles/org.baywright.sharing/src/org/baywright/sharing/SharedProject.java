package org.baywright.sharing;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

import org.baywright.language.merge.Conflict;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.revwalk.RevCommit;
import org.eclipse.jgit.revwalk.RevWalk;

/**
 * A copy of a project that several people share. Each works in a copy of their own; a change is offered to the others, and becomes
 * part of the shared state when somebody takes it over. Only one step at a time runs in a copy, from whatever program; each either is
 * done as a whole or changes nothing, and can be undone. All methods may be called from any thread.
 */
public final class SharedProject implements AutoCloseable {

	/** So often somebody else may be faster before it is told. */
	private static final int TRIES = 8;

	private final Copy copy;
	private final SharingListener listener;
	private final StepLog log;
	private final Bringing bringing;

	private SharedProject(Copy copy, SharingListener listener) {
		this.copy = copy;
		this.listener = listener;
		log = new StepLog(copy);
		bringing = new Bringing(copy, log);
	}

	/**
	 * Shares a project: makes a copy of the folder that it lies in, and a shared place of a folder that is empty or not there yet. A
	 * folder that is kept with Git already is connected as it is.
	 *
	 * @param folder the folder of the project
	 * @param place a folder that all reach, or an address
	 * @param author the name of who works here
	 * @throws SharingException if it does not work; nothing has changed then
	 */
	public static SharedProject begin(Path folder, String place, String author, SharingListener listener) throws SharingException {
		return new SharedProject(Beginning.begin(folder, place, author, listener), listener);
	}

	/**
	 * Makes a copy of what is shared.
	 *
	 * @param folder where the copy shall be; it is not there yet, or empty
	 * @throws SharingException if it does not work; nothing has changed then
	 */
	public static SharedProject join(String place, Path folder, String author, SharingListener listener) throws SharingException {
		return new SharedProject(Beginning.join(place, folder, author, listener), listener);
	}

	/**
	 * Opens the copy that a folder lies in, and ends a step in the middle of which a program was stopped.
	 *
	 * @throws SharingException if there is none, or somebody has left it in the middle of something
	 */
	public static SharedProject open(Path folder, SharingListener listener) throws SharingException {
		SharedProject project = new SharedProject(Copy.open(folder), listener);
		boolean done = false;
		try {
			Failures.told(folder.toString(), () -> {
				Place.of(project.copy.repository());
				project.copy.requireInOrder();
				if (project.copy.ref(Names.DOING).isPresent()) {
					project.step(() -> null);
				}
				return null;
			});
			done = true;
			return project;
		} finally {
			if (!done) {
				project.close();
			}
		}
	}

	/** Returns the folder of the copy. */
	public Path folder() {
		return copy.root();
	}

	/** Returns the name of who works with the copy. */
	public String author() throws SharingException {
		return copy.me().getName();
	}

	/** Returns where it is shared. */
	public String place() throws SharingException {
		return Place.of(copy.repository()).address();
	}

	/** Asks the shared place what is there now; all that is told about others is of the last time it was asked. */
	public void refresh() throws SharingException {
		step(() -> {
			shared().fetch(listener);
			return null;
		});
	}

	/** Returns how the copy stands to the shared state. */
	public State state() throws SharingException {
		return look(() -> {
			Tree working = copy.working();
			ObjectId main = main();
			ObjectId base = copy.common(main, copy.head()).orElse(main);
			Optional<String> offeredAs = Optional.empty();
			for (Offer offer : offers()) {
				if (offer.standing() == Offer.Standing.OPEN && copy.tree(ObjectId.fromString(offer.revision())).hasSameFiles(working)) {
					offeredAs = Optional.of(offer.id());
				}
			}
			return new State(Joint.changes(copy.repository(), copy.tree(base), working), offeredAs, ahead(main, copy.head()).size());
		});
	}

	/** Returns the files as they are in the folder now. */
	public Contents mine() throws SharingException {
		return look(() -> copy.working().contents(copy.repository()));
	}

	/** Returns the newest shared state that is known. */
	public String newest() throws SharingException {
		return look(() -> main().name());
	}

	/**
	 * Returns the files of a state.
	 *
	 * @param revision that of an offer, of a history or of news, or {@link #newest()}
	 */
	public Contents texts(String revision) throws SharingException {
		return look(() -> {
			ObjectId id = copy.repository().resolve(revision);
			if (id == null) {
				throw new SharingException("There is no state " + revision + ". Ask the shared place again.");
			}
			return copy.tree(id).contents(copy.repository());
		});
	}

	/** Returns all offers: the open ones first, then by date, the newest first. */
	public List<Offer> offers() throws SharingException {
		return look(() -> new Offers(copy, shared()).all());
	}

	/**
	 * Offers what is in the folder to the others. What is offered once more under the same title takes the place of what was offered
	 * before; the copy stays as it is. An offer holds all that is in the folder, so it comes after what was offered from here before.
	 *
	 * @param title what it is, in a few words
	 * @param note what else to say; may be empty
	 * @throws SharingException if there is nothing to offer, or it does not work; nothing has changed then
	 */
	public Offer offer(String title, String note) throws SharingException {
		return step(() -> {
			for (int i = 0; i < TRIES; i++) {
				shared().fetch(listener);
				Optional<Offer> made = offerOnce(title.strip(), note.strip());
				if (made.isPresent()) {
					return made.get();
				}
			}
			throw busy();
		});
	}

	private Optional<Offer> offerOnce(String title, String note) throws SharingException, IOException {
		Offers offers = new Offers(copy, shared());
		Tree working = copy.working();
		working.requireNamesThatAllSystemsTellApart();
		String branch = offers.branch(title);
		ObjectId from = offers.known(branch);
		ObjectId head = copy.head();
		boolean again = !ObjectId.zeroId().equals(from) && !copy.contains(main(), from);
		if (again && copy.tree(from).hasSameFiles(working) && copy.contains(from, head)) {
			return Optional.of(offers.of(branch)); // it is offered already
		} else if (copy.tree(main()).hasSameFiles(working) || copy.tree(head).hasSameFiles(working) && copy.contains(main(), head)) {
			throw new SharingException("There is nothing to offer: your copy says what the shared state says.");
		}
		List<ObjectId> parents = offers.before(from, log.all());
		ObjectId offered = copy.keep(working, note.isEmpty() ? title : title + "\n\n" + note, parents.toArray(ObjectId[]::new));
		return moved(plan("Offered \"" + title + "\"", head, new Place.Move(branch, from, offered)), working, working) ? Optional.of(offers.of(branch))
				: Optional.empty();
	}

	/**
	 * Takes an offer back. It is kept, and offered again by offering once more.
	 *
	 * @param id that of an open offer
	 */
	public void withdraw(String id) throws SharingException {
		step(() -> {
			shared().fetch(listener);
			Offers offers = new Offers(copy, shared());
			Offer offer = offers.open(id);
			if (!offer.author().equals(author())) {
				throw new SharingException("Only " + offer.author() + " can take this offer back.");
			}
			ObjectId tip = ObjectId.fromString(offer.revision());
			Tree working = copy.working();
			if (!shared().push(listener, new Place.Move(offers.free(Names.WITHDRAWN + id), ObjectId.zeroId(), tip))
					|| !moved(plan("Withdrew \"" + offer.title() + "\"", copy.head(), new Place.Move(Names.OFFER + id, tip, ObjectId.zeroId())), working, working)) {
				throw busy();
			}
			return null;
		});
	}

	/**
	 * Makes an offer part of the shared state, joined with it element by element, and brings the copy up to that.
	 *
	 * @param id that of an open offer
	 * @param choices what is chosen for each conflict, by its id
	 * @param check gets the joined texts by path and says what is against them; nothing changes if it says anything
	 * @return what came of it; nothing has changed if it is not done
	 */
	public Outcome takeOver(String id, Map<String, Conflict.Choice> choices, Function<Map<String, String>, List<String>> check) throws SharingException {
		return step(() -> {
			for (int i = 0; i < TRIES; i++) {
				shared().fetch(listener);
				Optional<Outcome> outcome = takeOverOnce(new Offers(copy, shared()).open(id), choices, check);
				if (outcome.isPresent()) {
					return outcome.get();
				}
			}
			throw busy();
		});
	}

	private Optional<Outcome> takeOverOnce(Offer offer, Map<String, Conflict.Choice> choices, Function<Map<String, String>, List<String>> check)
			throws SharingException, IOException {
		ObjectId main = main();
		ObjectId tip = ObjectId.fromString(offer.revision());
		Joint joint = bringing.join(copy.common(main, tip), copy.tree(main), copy.tree(tip), choices);
		if (!joint.open().isEmpty()) {
			return Optional.of(Outcome.conflicting(joint.open()));
		}
		joint.tree().requireNamesThatAllSystemsTellApart();
		List<String> refused = check.apply(joint.tree().contents(copy.repository()).texts());
		if (!refused.isEmpty()) {
			return Optional.of(Outcome.refused(refused));
		}
		ObjectId taken = copy.keep(joint.tree(), "Take over \"" + offer.title() + "\" of " + offer.author(), main, tip);
		return mainMoved("Took over \"" + offer.title() + "\"", taken, 0, copy.working(), copy.head());
	}

	/** Moves the shared state, and the copy with it, unless something has to be chosen about the copy first. */
	private Optional<Outcome> mainMoved(String words, ObjectId to, int undoes, Tree mine, ObjectId mineAt) throws SharingException, IOException {
		Tree working = copy.working();
		Bringing.Brought brought = bringing.bring(mine, mineAt, to, undoes == 0, Map.of());
		boolean waits = !brought.joint().open().isEmpty();
		Tree after = waits ? working : brought.joint().tree();
		if (!waits) {
			copy.files().requireRoomFor(working, after);
		}
		StepLog.Plan plan = new StepLog.Plan(words, copy.head(), waits ? copy.head() : brought.head(),
				Optional.of(new Place.Move(copy.branch(), main(), to)), undoes);
		if (!moved(plan, working, after)) {
			return Optional.empty();
		}
		return Optional.of(new Outcome(true, List.of(), List.of(), Joint.changes(copy.repository(), working, after), waits));
	}

	/**
	 * Brings the copy up to the newest shared state. What is in the copy and not offered yet stays, joined element by element.
	 *
	 * @param choices what is chosen for each conflict, by its id; ours is what is in the copy
	 * @return what came of it; nothing has changed if it is not done
	 */
	public Outcome catchUp(Map<String, Conflict.Choice> choices) throws SharingException {
		return step(() -> {
			shared().fetch(listener);
			ObjectId main = main();
			if (copy.contains(copy.head(), main)) {
				return Outcome.done(List.of());
			}
			Tree working = copy.working();
			Bringing.Brought brought = bringing.bring(working, copy.head(), main, true, choices);
			if (!brought.joint().open().isEmpty()) {
				return Outcome.conflicting(brought.joint().open());
			}
			copy.files().requireRoomFor(working, brought.joint().tree());
			log.carryOut(log.begin(new StepLog.Plan("Brought the copy up", copy.head(), brought.head(), Optional.empty(), 0), working, brought.joint().tree()));
			return Outcome.done(Joint.changes(copy.repository(), working, brought.joint().tree()));
		});
	}

	/** Returns what came into the shared state since {@link #looked()}. */
	public News newSinceLastLook() throws SharingException {
		return look(() -> {
			ObjectId main = main();
			ObjectId seen = copy.ref(looked(copy)).orElse(copy.head());
			List<Written> steps = ahead(main, seen).stream().map(Histories::written).toList();
			return new News(steps, steps.isEmpty() ? List.of() : Joint.changes(copy.repository(), copy.tree(seen), copy.tree(main)));
		});
	}

	/** Notes that all is known to who works with the copy. */
	public void looked() throws SharingException {
		step(() -> {
			copy.point(looked(copy), main(), "looked");
			return null;
		});
	}

	/** Returns what keeps how far who works with a copy has looked. */
	static String looked(Copy copy) throws SharingException {
		return Names.LOOKED + Names.of(copy.me().getName());
	}

	/** Returns the steps that were done in the copy, the newest first. */
	public List<Step> steps() throws SharingException {
		return look(() -> {
			List<Step> steps = new ArrayList<>(log.all().stream().map(StepLog.Entry::told).toList());
			Collections.reverse(steps);
			return List.copyOf(steps);
		});
	}

	/** Undoes the last step that was not undone; one that undoes is not undone itself, but by {@link #undo(int)}. */
	public Step undo() throws SharingException {
		return step(() -> {
			List<StepLog.Entry> entries = log.all().stream().filter(entry -> !entry.undone() && entry.plan().undoes() == 0).toList();
			if (entries.isEmpty()) {
				throw new SharingException("There is no step to undo.");
			}
			return undo(entries.get(entries.size() - 1));
		});
	}

	/**
	 * Undoes a step.
	 *
	 * @param number that of a step
	 * @return the step that was undone
	 * @throws SharingException if what it brought was changed since, which somebody would have to choose about; nothing has changed then
	 */
	public Step undo(int number) throws SharingException {
		return step(() -> {
			StepLog.Entry entry = log.all().stream().filter(one -> one.number() == number).findFirst()
					.orElseThrow(() -> new SharingException("There is no step " + number + "."));
			if (entry.undone()) {
				throw new SharingException("That step is undone already.");
			}
			return undo(entry);
		});
	}

	private Step undo(StepLog.Entry entry) throws SharingException, IOException {
		shared().fetch(listener);
		new Undoing(copy, shared(), log, this::moved, this::mainMoved).undo(entry);
		return entry.told();
	}

	/** Returns who has worked on an element, such as {@code rule} and its name. */
	public Optional<History> history(String kind, String name) throws SharingException {
		return historyOfAll().stream().filter(history -> history.kind().equals(kind) && history.name().equals(name)).findFirst();
	}

	/** Returns who has worked on each element, in the order of files and texts, as far as it is in the state that the copy is at. */
	public List<History> historyOfAll() throws SharingException {
		return look(() -> Histories.of(copy));
	}

	private List<RevCommit> ahead(ObjectId newer, ObjectId older) throws IOException {
		List<RevCommit> ahead = new ArrayList<>();
		try (RevWalk walk = new RevWalk(copy.repository())) {
			walk.markStart(walk.parseCommit(newer));
			walk.markUninteresting(walk.parseCommit(older));
			walk.forEach(ahead::add);
		}
		return ahead;
	}

	private Place shared() throws SharingException {
		return Place.of(copy.repository());
	}

	private ObjectId main() throws IOException, SharingException {
		ObjectId main = copy.ref(shared().known(copy.branch())).orElse(null);
		if (main == null) {
			throw new SharingException("Nothing is shared at " + place() + " any more. Ask whoever looks after it, or share again.");
		}
		return main;
	}

	private static StepLog.Plan plan(String words, ObjectId head, Place.Move move) {
		return new StepLog.Plan(words, head, head, Optional.of(move), 0);
	}

	/** Does a step that moves something at the shared place: keeps what was, moves it, and then does its part in the copy. */
	private boolean moved(StepLog.Plan plan, Tree from, Tree to) throws SharingException, IOException {
		StepLog.Entry entry = log.begin(plan, from, to);
		boolean done = false;
		try {
			done = shared().push(listener, plan.place().orElseThrow());
		} finally {
			if (!done) {
				log.drop(entry);
			}
		}
		if (done) {
			log.carryOut(entry);
		}
		return done;
	}

	private SharingException busy() throws SharingException {
		return new SharingException("Others are writing to " + place() + " all the time. Try again in a moment."
				+ shared().locked().map(file -> " If nobody is, a program was stopped in the middle, and the file " + file + " can be deleted.").orElse(""));
	}

	private <T> T look(Failures.Work<T> work) throws SharingException {
		return Failures.told(copy.root().toString(), work);
	}

	/** Does a step while no other runs. */
	private <T> T step(Failures.Work<T> work) throws SharingException {
		return look(() -> {
			try (Copy.Lock lock = copy.lock()) {
				copy.requireInOrder();
				log.recover();
				return work.run();
			}
		});
	}

	@Override
	public void close() {
		copy.close();
	}
}
