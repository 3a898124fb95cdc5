package org.baywright.language.merge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One of the three states of a project, cut into pieces.
 *
 * @param files the pieces of each file
 * @param places each piece with its file
 */
record Side(SortedMap<String, Pieces> files, Map<Piece.Key, Place> places) {

	/** A piece where it stands. */
	record Place(String file, Piece piece) {
	}

	/**
	 * Cuts the files of a project.
	 *
	 * @param texts the files by their path, lines ending in a line feed
	 * @param whole those that are one piece, as one of the three states cannot be read as rules
	 */
	static Side of(Map<String, String> texts, Set<String> whole) {
		Side side = new Side(new TreeMap<>(), new HashMap<>());
		Pieces.Numbers numbers = new Pieces.Numbers();
		new TreeMap<>(texts).forEach((file, text) -> {
			Pieces pieces = whole.contains(file) ? Pieces.whole(file, text) : Pieces.of(file, text, numbers).orElseThrow();
			side.files.put(file, pieces);
			pieces.pieces().forEach(piece -> side.places.put(piece.key(), new Place(file, piece)));
		});
		return side;
	}

	Optional<Place> place(Piece.Key key) {
		return Optional.ofNullable(places.get(key));
	}

	/** Returns the keys of a file in their order. */
	List<Piece.Key> order(String file) {
		Pieces pieces = files.get(file);
		return pieces == null ? new ArrayList<>() : new ArrayList<>(pieces.pieces().stream().map(Piece::key).toList());
	}

	Optional<String> end(String file) {
		return Optional.ofNullable(files.get(file)).map(Pieces::end);
	}
}
