package org.baywright.language.merge;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Joins what two people have made of one element. */
final class Joining {

	private Joining() {
	}

	/**
	 * Joins the texts of an element that both have changed.
	 *
	 * @param base the text before, if it was there
	 * @return nothing if both have changed what it means, or both the same words beside that
	 */
	static Optional<String> of(Optional<String> base, String ours, String theirs) {
		if (ours.equals(theirs)) {
			return Optional.of(ours);
		}
		Optional<Words> our = Words.of(ours);
		Optional<Words> their = Words.of(theirs);
		if (our.isEmpty() || their.isEmpty()) {
			return Optional.empty();
		} else if (our.get().sayTheSame(their.get())) {
			return Optional.of(ours);
		} else if (base.isEmpty() && our.get().isLike(their.get())) {
			return our.get().comments().containsAll(their.get().comments()) ? Optional.of(ours)
					: Optional.of(theirs).filter(text -> their.get().comments().containsAll(our.get().comments()));
		}
		return base.flatMap(Words::of).flatMap(before -> joined(before, our.get(), their.get(), ours, theirs));
	}

	private static Optional<String> joined(Words base, Words our, Words their, String ours, String theirs) {
		if (our.sayTheSame(base)) {
			return Optional.of(theirs);
		} else if (their.sayTheSame(base)) {
			return Optional.of(ours);
		}
		Optional<List<String>> meaning = changedOnce(base.meaning(), our.meaning(), their.meaning());
		if (meaning.isEmpty()) {
			return Optional.empty();
		}
		return ThreeWay.of(base.all(), our.all(), their.all()).map(words -> String.join("", words))
				.filter(text -> Words.of(text).filter(words -> words.meaning().equals(meaning.get())
						&& agrees(base.said(), our.said(), their.said(), words.said())
						&& agrees(base.comments(), our.comments(), their.comments(), words.comments())).isPresent());
	}

	private static boolean agrees(List<String> base, List<String> ours, List<String> theirs, List<String> joined) {
		Optional<List<String>> once = changedOnce(base, ours, theirs);
		return once.isPresent() ? once.get().equals(joined) : ThreeWay.of(base, ours, theirs).filter(joined::equals).isPresent();
	}

	/** Returns what becomes of something that at most one has changed, or both alike; nothing otherwise. */
	static <T> Optional<T> changedOnce(T base, T ours, T theirs) {
		return Objects.equals(base, theirs) || Objects.equals(ours, theirs) ? Optional.of(ours)
				: Objects.equals(base, ours) ? Optional.of(theirs) : Optional.empty();
	}

	/** Returns lines without the blanks around them and without empty ones. */
	static List<String> lines(String text) {
		return new ArrayList<>(text.lines().map(String::strip).filter(line -> !line.isEmpty()).toList());
	}
}
