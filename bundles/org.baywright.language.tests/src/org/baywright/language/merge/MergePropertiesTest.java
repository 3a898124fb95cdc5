package org.baywright.language.merge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;

import org.baywright.language.testing.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds of any merge, tried on random edits of an example project. */
class MergePropertiesTest {

	private static final int ROUNDS = 40;

	/** The beginnings of some files, so that two people meet at the same elements often enough. */
	private static SortedMap<String, String> van() {
		SortedMap<String, String> texts = new TreeMap<>();
		Samples.texts(Samples.flawed().resolveSibling("light-van")).entrySet().stream().limit(4).forEach(file -> {
			Pieces pieces = Pieces.of(file.getKey(), file.getValue()).orElseThrow();
			StringBuilder text = new StringBuilder();
			pieces.pieces().stream().limit(4).forEach(piece -> text.append(piece.gap().text()).append(piece.body()));
			texts.put(file.getKey(), text + pieces.end());
		});
		return texts;
	}

	/** Changes a few things anywhere: new, gone, moved, edited, laid out, commented, in another file. */
	private static SortedMap<String, String> edited(Map<String, String> base, Random random, String who) {
		SortedMap<String, String> texts = new TreeMap<>(base);
		int edits = random.nextInt(12);
		for (int i = 0; i < edits; i++) {
			String file = new ArrayList<>(texts.keySet()).get(random.nextInt(texts.size()));
			List<String> pieces = new ArrayList<>();
			Pieces cut = Pieces.of(file, Lines.plain(texts.get(file))).orElseThrow();
			cut.pieces().forEach(piece -> pieces.add(piece.gap().text() + piece.body()));
			int first = !pieces.isEmpty() && cut.pieces().get(0).key().kind().equals(Piece.COMMENT) ? 1 : 0;
			if (pieces.size() == first) {
				continue;
			}
			int at = first + random.nextInt(pieces.size() - first);
			String piece = pieces.get(at);
			switch (random.nextInt(9)) {
			case 0 -> pieces.add(at, "\n\nsign new_" + who + i + random.nextInt(1000) + " \"New\"\n");
			case 1 -> pieces.remove(at);
			case 2 -> pieces.add(first + random.nextInt(pieces.size() - first), pieces.remove(at).replaceFirst("^\\s*", "\n\n"));
			case 3 -> pieces.set(at, piece.replaceFirst("\"([A-Z])", "\"" + who + " $1"));
			case 4 -> pieces.set(at, piece.replaceFirst("([1-9])", "1$1"));
			case 5 -> pieces.set(at, piece.replaceFirst("\\{", "{ // " + who + "\n"));
			case 6 -> pieces.set(at, piece.replaceFirst("\n  ", "\n\n\t"));
			case 7 -> {
				String moved = pieces.remove(at);
				String target = random.nextBoolean() ? "split.bay" : texts.firstKey();
				if (target.equals(file)) {
					pieces.add(moved.replaceFirst("^\\s*", "\n\n"));
				} else {
					texts.merge(target, moved.strip() + "\n", (old, more) -> old + "\n" + more);
				}
			}
			default -> pieces.add("\n\nreview some_rule by \"" + who + i + "\" on 2026-03-04 agrees meaning \"1234abcd\"\n");
			}
			String text = String.join("", pieces) + cut.end();
			texts.put(file, Pieces.of(file, text).isPresent() ? text : texts.get(file));
		}
		return texts;
	}

	/** A comment at the end of a file stands in front of what somebody else adds there, so comments are left out. */
	private static Map<Piece.Key, String> places(Map<String, String> texts) {
		Map<Piece.Key, String> places = new TreeMap<>((one, other) -> one.toString().compareTo(other.toString()));
		Side.of(texts, Set.of()).places().forEach((key, place) -> {
			if (!key.kind().equals(Piece.COMMENT)) {
				places.put(key, place.piece().body().replaceFirst("^(//[^\n]*\n\\s*)+", ""));
			}
		});
		return places;
	}

	@ParameterizedTest
	@ValueSource(longs = { 1, 2, 3 })
	void mergingWithNothingChangesNothing(long seed) {
		SortedMap<String, String> base = van();
		Random random = new Random(seed);
		for (int i = 0; i < ROUNDS; i++) {
			SortedMap<String, String> x = edited(base, random, "x");
			assertMerges(x, base, x, base);
			assertMerges(x, base, base, x);
			assertMerges(x, base, x, x);
		}
	}

	private static void assertMerges(Map<String, String> expected, Map<String, String> base, Map<String, String> ours, Map<String, String> theirs) {
		Merged merged = ProjectMerge.of(base, ours, theirs);
		assertEquals(List.of(), merged.conflicts());
		assertEquals(expected, merged.texts());
	}

	@ParameterizedTest
	@ValueSource(longs = { 11, 12, 13 })
	void nothingIsLostOrDoubled(long seed) {
		SortedMap<String, String> base = van();
		Map<Piece.Key, String> was = places(base);
		Random random = new Random(seed);
		int conflicts = 0;
		for (int i = 0; i < ROUNDS; i++) {
			SortedMap<String, String> ours = edited(base, random, "ours");
			SortedMap<String, String> theirs = edited(base, random, "theirs");
			Merged merged = ProjectMerge.of(base, ours, theirs);
			conflicts += merged.conflicts().size();
			SortedMap<String, String> texts = merged.texts();
			assertEquals(texts, ProjectMerge.of(base, ours, theirs).texts());
			texts.values().forEach(text -> assertFalse(text.contains("<<<<<<<") || text.contains(">>>>>>>")));
			Map<Piece.Key, String> our = places(ours);
			Map<Piece.Key, String> their = places(theirs);
			Set<String> open = new HashSet<>(merged.conflicts().stream().map(Conflict::id).toList());
			Map<Piece.Key, String> expected = new TreeMap<>((one, other) -> one.toString().compareTo(other.toString()));
			Map<Piece.Key, String> joined = places(texts);
			Set<Piece.Key> all = new HashSet<>(our.keySet());
			all.addAll(their.keySet());
			all.forEach(key -> {
				Optional<String> before = Optional.ofNullable(was.get(key));
				Optional<String> here = Optional.ofNullable(our.get(key));
				Optional<String> there = Optional.ofNullable(their.get(key));
				Optional<String> now = open.contains(key.toString()) ? here : here.equals(before) ? there : there.equals(before) || here.equals(there) ? here
						: Optional.ofNullable(joined.get(key));
				now.ifPresent(text -> expected.put(key, text));
			});
			assertEquals(expected, joined);
			if (open.isEmpty()) {
				assertMerges(texts, base, texts, theirs);
				assertMerges(texts, base, texts, ours);
			}
		}
		assertTrue(conflicts > 0);
	}

	@Test
	void choosingTheirsEverywhereKeepsAllOfThem() {
		SortedMap<String, String> base = van();
		Random random = new Random(5);
		Set<String> chosen = new TreeSet<>();
		for (int i = 0; i < ROUNDS; i++) {
			SortedMap<String, String> ours = edited(base, random, "ours");
			SortedMap<String, String> theirs = edited(base, random, "theirs");
			Merged merged = ProjectMerge.of(base, ours, theirs);
			for (Conflict conflict : merged.conflicts()) {
				chosen.add(conflict.id());
				merged = merged.choose(conflict.id(), Conflict.Choice.THEIRS);
			}
			Map<Piece.Key, String> joined = places(merged.texts());
			merged.conflicts().stream().filter(conflict -> !conflict.kind().equals(Piece.COMMENT)).forEach(conflict -> assertEquals(conflict.theirs().map(text -> text.replaceFirst("^(//[^\n]*\n\\s*)+", "")),
					joined.entrySet().stream().filter(piece -> piece.getKey().toString().equals(conflict.id())).map(Map.Entry::getValue).findFirst()));
		}
		assertTrue(chosen.size() > 2, chosen.toString());
	}
}
