package org.baywright.language.merge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * Joins two states of a project that both came of a third, element by element. What one side has changed is taken over;
 * what both have added is kept; an element that one has moved to another file and the other has edited ends there, edited.
 */
public final class ProjectMerge {

	private final Map<String, String> baseTexts;
	private final Map<String, String> ourTexts;
	private final Map<String, String> theirTexts;
	private final Side base;
	private final Side ours;
	private final Side theirs;
	private final Map<Piece.Key, Slot> slots = new LinkedHashMap<>();
	/** Files from which new elements go to another one, since the other side has moved all of them there. */
	private final Map<String, Set<String>> followed = new TreeMap<>();

	private ProjectMerge(Map<String, String> base, Map<String, String> ours, Map<String, String> theirs) {
		baseTexts = base;
		ourTexts = ours;
		theirTexts = theirs;
		Set<String> whole = new HashSet<>();
		for (String file : paths()) {
			if (Stream.of(base, ours, theirs).anyMatch(texts -> texts.containsKey(file) && Pieces.of(file, Lines.plain(texts.get(file))).isEmpty())) {
				whole.add(file);
			}
		}
		this.base = side(base, whole);
		this.ours = side(ours, whole);
		this.theirs = side(theirs, whole);
	}

	private static Side side(Map<String, String> texts, Set<String> whole) {
		Map<String, String> plain = new TreeMap<>();
		texts.forEach((file, text) -> plain.put(file, Lines.plain(text)));
		return Side.of(plain, whole);
	}

	/**
	 * Joins two states of the rule files of a project.
	 *
	 * @param base the texts that both came of, by path
	 * @param ours our texts
	 * @param theirs those of the other side
	 */
	public static Merged of(Map<String, String> base, Map<String, String> ours, Map<String, String> theirs) {
		return new ProjectMerge(base, ours, theirs).merged();
	}

	private SortedMap<String, Boolean> existing() {
		SortedMap<String, Boolean> files = new TreeMap<>();
		for (String file : paths()) {
			files.put(file, Joining.changedOnce(baseTexts.containsKey(file), ourTexts.containsKey(file), theirTexts.containsKey(file)).orElse(true));
		}
		return files;
	}

	private Set<String> paths() {
		Set<String> paths = new TreeSet<>(baseTexts.keySet());
		paths.addAll(ourTexts.keySet());
		paths.addAll(theirTexts.keySet());
		return paths;
	}

	private Merged merged() {
		Set<Piece.Key> keys = new LinkedHashSet<>();
		Stream.of(ours, theirs, base).forEach(side -> side.files().keySet().forEach(file -> keys.addAll(side.order(file))));
		keys.forEach(key -> decide(key).ifPresent(slot -> slots.put(key, slot)));
		follow(ours, theirs);
		follow(theirs, ours);

		SortedMap<String, List<Slot>> files = new TreeMap<>();
		SortedMap<String, Function<String, String>> writing = new TreeMap<>();
		Map<String, Set<Piece.Key>> present = new TreeMap<>();
		slots.forEach((key, slot) -> present.computeIfAbsent(slot.file(), file -> new LinkedHashSet<>()).add(key));
		existing().forEach((file, exists) -> {
			List<Slot> order = order(file, present.getOrDefault(file, Set.of())).stream().map(slots::get).toList();
			if (exists || !order.isEmpty()) {
				files.put(file, order);
				String end = Joining.changedOnce(base.end(file), ours.end(file), theirs.end(file)).orElse(ours.end(file)).orElse("\n");
				writing.put(file, text -> Lines.written(text + end, of(baseTexts, file), of(ourTexts, file), of(theirTexts, file)));
			}
		});
		return new Merged(files, existing(), writing, Map.of());
	}

	private static Optional<String> of(Map<String, String> texts, String file) {
		return Optional.ofNullable(texts.get(file));
	}

	/** Returns what becomes of a piece; nothing if it goes. */
	private Optional<Slot> decide(Piece.Key key) {
		Optional<Side.Place> before = base.place(key);
		Optional<Side.Place> our = ours.place(key);
		Optional<Side.Place> their = theirs.place(key);
		Side.Place any = our.or(() -> their).or(() -> before).orElseThrow();
		String file = moved(before, our, their).orElse(any.file());
		Piece.Gap gap = Joining.changedOnce(gap(before), gap(our), gap(their)).orElse(gap(our)).orElse(any.piece().gap());
		Optional<Optional<String>> body = Joining.changedOnce(body(before), body(our), body(their));
		if (body.isEmpty() && our.isPresent() && their.isPresent() && !key.kind().equals(Piece.FILE)) {
			body = Joining.of(body(before), body(our).get(), body(their).get()).map(Optional::of);
		} else if (body.isEmpty() && before.isPresent()) {
			body = onlyLaidOut(body(before).get(), body(our).or(() -> body(their)).orElseThrow());
		}
		if (body.isPresent()) {
			return body.get().map(text -> new Slot(file, gap, Optional.of(text), Optional.empty()));
		}
		return Optional.of(new Slot(file, gap, body(our),
				Optional.of(new Conflict(key.toString(), key.kind(), key.name(), file, body(before), body(our), body(their)))));
	}

	/** What one side has taken out goes, if the other has only laid it out anew. */
	private static Optional<Optional<String>> onlyLaidOut(String before, String left) {
		Optional<Words> was = Words.of(before);
		return was.isPresent() && Words.of(left).filter(was.get()::sayTheSame).isPresent() ? Optional.of(Optional.empty()) : Optional.empty();
	}

	private static Optional<String> moved(Optional<Side.Place> before, Optional<Side.Place> our, Optional<Side.Place> their) {
		Optional<String> was = before.map(Side.Place::file);
		Optional<String> ourFile = our.map(Side.Place::file);
		Optional<String> theirFile = their.map(Side.Place::file);
		return ourFile.isEmpty() || ourFile.equals(was) && theirFile.isPresent() ? theirFile : ourFile;
	}

	private static Optional<Piece.Gap> gap(Optional<Side.Place> place) {
		return place.map(at -> at.piece().gap());
	}

	private static Optional<String> body(Optional<Side.Place> place) {
		return place.map(at -> at.piece().body());
	}

	/** What one side adds to a file that the other has given another name, or split, goes where its neighbour went. */
	private void follow(Side adding, Side moving) {
		for (String file : adding.files().keySet()) {
			if (base.files().containsKey(file) && !moving.files().containsKey(file)) {
				String beside = null;
				List<Piece.Key> order = adding.order(file);
				for (Piece.Key key : order) {
					Slot slot = slots.get(key);
					if (slot != null && base.place(key).isPresent() && !slot.file().equals(file)) {
						beside = beside == null ? slot.file() : beside;
					}
				}
				for (Piece.Key key : order) {
					Slot slot = slots.get(key);
					if (slot != null && !slot.file().equals(file)) {
						beside = slot.file();
					} else if (slot != null && beside != null && base.place(key).isEmpty() && !key.kind().equals(Piece.COMMENT)) {
						slots.put(key, slot.in(beside));
						followed.computeIfAbsent(beside, to -> new TreeSet<>()).add(file);
					}
				}
			}
		}
	}

	/** Returns the keys of a file in the order that comes of both sides. */
	private List<Piece.Key> order(String file, Set<Piece.Key> present) {
		List<Piece.Key> our = ours.order(file);
		List<Piece.Key> their = theirs.order(file);
		List<Piece.Key> before = base.order(file);
		boolean oursIsAsBefore = common(before, our).equals(common(our, before));
		boolean theirsIsAsBefore = common(before, their).equals(common(their, before));
		boolean byTheirs = oursIsAsBefore && !theirsIsAsBefore;
		List<Piece.Key> order = new ArrayList<>(byTheirs ? their : our);
		order.retainAll(present);
		Set<Piece.Key> first = new HashSet<>(byTheirs ? Set.of() : our);
		insert(order, byTheirs ? our : their, present, key -> first.contains(key) && theirs.place(key).isEmpty());
		for (String other : followed.getOrDefault(file, Set.of())) {
			insert(order, ours.order(other), present, key -> false);
			insert(order, theirs.order(other), present, key -> false);
		}
		// what both have moved, each from another place
		present.stream().filter(key -> !order.contains(key)).sorted(Comparator.comparing(Piece.Key::toString)).forEach(order::add);
		return order;
	}

	private static List<Piece.Key> common(List<Piece.Key> keys, List<Piece.Key> others) {
		List<Piece.Key> common = new ArrayList<>(keys);
		common.retainAll(new HashSet<>(others));
		return common;
	}

	/** Puts what is missing behind its neighbour in another order; behind what our side has added there, too. */
	private static void insert(List<Piece.Key> order, List<Piece.Key> other, Set<Piece.Key> present, Predicate<Piece.Key> goesFirst) {
		Set<Piece.Key> there = new HashSet<>(order);
		int at = 0;
		for (Piece.Key key : other) {
			if (there.contains(key)) {
				at = order.indexOf(key) + 1;
			} else if (present.contains(key)) {
				while (at < order.size() && goesFirst.test(order.get(at))) {
					at++;
				}
				order.add(at++, key);
			}
		}
	}

	/**
	 * What comes of a piece.
	 *
	 * @param file where it goes
	 * @param gap the blanks in front of it
	 * @param body its text; nothing if it goes unless somebody chooses otherwise
	 * @param conflict what has to be chosen
	 */
	record Slot(String file, Piece.Gap gap, Optional<String> body, Optional<Conflict> conflict) {

		Slot in(String other) {
			return new Slot(other, gap, body, conflict);
		}

		/** Returns its text after what was chosen. */
		Optional<String> text(Map<String, Conflict.Choice> choices) {
			return conflict.flatMap(one -> Optional.ofNullable(choices.get(one.id())).map(one::chosen)).orElse(body);
		}
	}
}
