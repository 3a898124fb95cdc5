package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Changes of pieces. A place is the number of the child at each step down. */
final class Pieces {

	private Pieces() {
	}

	/** Returns what stands at a place; what is left out and what is filled in of it stand at the same numbers. */
	static Piece at(Piece piece, List<Integer> path) {
		Piece at = piece;
		for (int step : path) {
			at = at instanceof Piece.Maybe maybe && maybe.piece().isEmpty() ? Piece.blank(maybe.part()) : at.children().get(step);
		}
		return at;
	}

	/** Returns the same with another thing at a place; what was left out on the way there is there now. */
	static Piece with(Piece piece, List<Integer> path, UnaryOperator<Piece> change) {
		if (path.isEmpty()) {
			return change.apply(piece);
		}
		int step = path.get(0);
		List<Integer> rest = path.subList(1, path.size());
		if (piece instanceof Piece.Maybe maybe) {
			return new Piece.Maybe(maybe.part(), Optional.of(with(maybe.piece().orElseGet(() -> Piece.blank(maybe.part())), rest, change)));
		}
		if (piece instanceof Piece.Choice choice) {
			return new Piece.Choice(choice.shape(), choice.chosen(), choice.piece().map(option -> with(option, rest, change)));
		}
		List<Piece> children = new ArrayList<>(piece.children());
		children.set(step, with(children.get(step), rest, change));
		return of(piece, children);
	}

	private static Piece of(Piece like, List<Piece> children) {
		if (like instanceof Piece.Row) {
			return new Piece.Row(children);
		}
		return like instanceof Piece.Group group ? group.with(children) : new Piece.Many(((Piece.Many) like).shape(), children);
	}

	/** Fills a value in; the empty text takes it away. */
	static Piece fill(Piece piece, List<Integer> path, String written) {
		return with(piece, path, at -> new Piece.Value(((Piece.Value) at).shape(), written));
	}

	/** Takes an option of a choice; what fits of what was filled in is kept. */
	static Piece pick(Piece piece, List<Integer> path, int option) {
		return with(piece, path, at -> {
			Piece.Choice choice = (Piece.Choice) at;
			if (option < 0) {
				return new Piece.Choice(choice.shape(), -1, Optional.empty());
			}
			Piece blank = Piece.blank(choice.shape().options().get(option));
			return new Piece.Choice(choice.shape(), option, Optional.of(choice.piece().map(old -> keep(old, blank)).orElse(blank)));
		});
	}

	/** Fills what was filled in into another option, as far as both have a place for it. */
	private static Piece keep(Piece old, Piece blank) {
		List<Piece> parts = new ArrayList<>(blank instanceof Piece.Row row ? row.parts() : List.of(blank));
		List<Piece> left = new ArrayList<>(old instanceof Piece.Row row ? row.parts() : List.of(old));
		for (int i = 0; i < parts.size(); i++) {
			Piece part = parts.get(i);
			if (part instanceof Piece.Word) {
				continue;
			}
			Optional<Piece> same = left.stream().filter(other -> isSame(other, part)).findFirst();
			if (same.isPresent()) {
				parts.set(i, same.get());
				left.remove(same.get());
			}
		}
		return blank instanceof Piece.Row ? new Piece.Row(parts) : parts.get(0);
	}

	private static boolean isSame(Piece one, Piece other) {
		return one instanceof Piece.Value a && other instanceof Piece.Value b && a.shape().sort() == b.shape().sort()
				&& Objects.equals(a.shape().type(), b.shape().type())
				|| one instanceof Piece.Many m && other instanceof Piece.Many n && m.shape().equals(n.shape())
				|| one instanceof Piece.Maybe x && other instanceof Piece.Maybe y && x.part().equals(y.part());
	}

	/** Adds what may be left out, one more of a list, or one more row of a condition. */
	static Piece add(Piece piece, List<Integer> path) {
		return with(piece, path, at -> {
			if (at instanceof Piece.Maybe maybe) {
				return new Piece.Maybe(maybe.part(), Optional.of(first(Piece.blank(maybe.part()))));
			}
			List<Piece> items = new ArrayList<>(at.children());
			items.add(Piece.blank(at instanceof Piece.Group group ? group.shape().atom() : ((Piece.Many) at).shape().item()));
			return of(at, items);
		});
	}

	/** A list that is added has a first thing, so that there is something to fill in. */
	private static Piece first(Piece piece) {
		return piece instanceof Piece.Many many && many.items().isEmpty() ? add(many, List.of()) : piece;
	}

	/** Puts one more group into a condition: rows of which any, or all, must hold, other than those around it. */
	static Piece addGroup(Piece piece, List<Integer> path) {
		return with(piece, path, at -> {
			Piece.Group group = (Piece.Group) at;
			List<Piece> items = new ArrayList<>(group.items());
			Piece row = Piece.blank(group.shape().atom());
			items.add(new Piece.Group(group.shape(), !group.any(), false, true, List.of(row, row), List.of(group.any() ? "," : "or")));
			return group.with(items);
		});
	}

	/** Says of a group of conditions how many must hold. */
	static Piece group(Piece piece, List<Integer> path, boolean any, boolean not) {
		return with(piece, path, at -> {
			Piece.Group group = (Piece.Group) at;
			boolean enclosed = group.enclosed() || not;
			Piece.Group now = new Piece.Group(group.shape(), any, not, enclosed, group.items(), group.any() == any ? group.joins() : List.of());
			// groups within stand in parentheses from now on, so that each means what it meant
			return now.with(now.items().stream().map(item -> item instanceof Piece.Group inner && !inner.enclosed()
					? new Piece.Group(inner.shape(), inner.any(), inner.not(), true, inner.items(), inner.joins()) : item).toList());
		});
	}

	/** Takes one thing out of the list, or the group, in which it stands; or what may be left out. */
	static Piece remove(Piece piece, List<Integer> path) {
		if (at(piece, path) instanceof Piece.Maybe maybe && (path.isEmpty() || !isList(at(piece, path.subList(0, path.size() - 1))))) {
			return with(piece, path, at -> new Piece.Maybe(maybe.part(), Optional.empty()));
		}
		int last = path.get(path.size() - 1);
		return with(piece, path.subList(0, path.size() - 1), at -> {
			List<Piece> items = new ArrayList<>(at.children());
			items.remove(last);
			return of(at, items);
		});
	}

	static boolean isList(Piece piece) {
		return piece instanceof Piece.Many || piece instanceof Piece.Group;
	}

	/** Moves one thing of a list up (-1) or down (1). */
	static Piece move(Piece piece, List<Integer> path, int by) {
		int last = path.get(path.size() - 1);
		return with(piece, path.subList(0, path.size() - 1), at -> {
			List<Piece> items = new ArrayList<>(at.children());
			Collections.swap(items, last, last + by);
			return of(at, items);
		});
	}

	/** Leaves out whatever may be left out and of which nothing is filled in. */
	static Piece pruned(Piece piece) {
		if (piece instanceof Piece.Maybe maybe) {
			return new Piece.Maybe(maybe.part(), maybe.piece().filter(inner -> !inner.isBlank() || inner instanceof Piece.Word).map(Pieces::pruned));
		}
		if (piece instanceof Piece.Choice choice) {
			return new Piece.Choice(choice.shape(), choice.chosen(), choice.piece().map(Pieces::pruned));
		}
		if (piece.children().isEmpty()) {
			return piece;
		}
		List<Piece> children = new ArrayList<>();
		for (Piece child : piece.children()) {
			boolean gone = isList(piece) && child.isBlank() && !children.isEmpty();
			if (!gone) {
				children.add(pruned(child));
			}
		}
		if (isList(piece) && children.size() > 1 && children.get(0).isBlank()) {
			children.remove(0);
		}
		return of(piece, children);
	}
}
