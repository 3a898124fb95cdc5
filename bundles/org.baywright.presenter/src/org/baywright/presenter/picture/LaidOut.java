package org.baywright.presenter.picture;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A picture with a place for everything, in pixels from its upper left corner.
 *
 * @param picture what is drawn
 * @param width of the whole
 * @param height of the whole
 * @param boxes the nodes, in the order of the picture
 * @param routes the edges, in the order of the picture
 */
public record LaidOut(Picture picture, double width, double height, List<Box> boxes, List<Route> routes) {

	/** A rectangle. */
	public record Rect(double x, double y, double width, double height) {

		public boolean contains(double atX, double atY) {
			return atX >= x && atX <= x + width && atY >= y && atY <= y + height;
		}

		/** Returns whether the two have an area in common. */
		public boolean overlaps(Rect other) {
			return x < other.x + other.width && other.x < x + width && y < other.y + other.height && other.y < y + height;
		}

		public double centreX() {
			return x + width / 2;
		}

		public double centreY() {
			return y + height / 2;
		}
	}

	/** A point. */
	public record Point(double x, double y) {
	}

	/**
	 * A node at its place.
	 *
	 * @param title lines of its title
	 * @param detail lines of its second text
	 */
	public record Box(Node node, Rect bounds, List<String> title, List<String> detail) {
		public Box {
			title = List.copyOf(title);
			detail = List.copyOf(detail);
		}
	}

	/**
	 * An edge on its way.
	 *
	 * @param points from its beginning to its end, at least two
	 * @param label where its label stands; without an area if it has none
	 * @param lines lines of the label
	 */
	public record Route(Edge edge, List<Point> points, Rect label, List<String> lines) {
		public Route {
			points = List.copyOf(points);
			lines = List.copyOf(lines);
		}
	}

	/** Directions of the arrow keys. */
	public enum Direction {
		LEFT, RIGHT, UP, DOWN
	}

	public LaidOut {
		boxes = List.copyOf(boxes);
		routes = List.copyOf(routes);
	}

	/** Returns the node at a point. */
	public Optional<Box> at(double x, double y) {
		return boxes.stream().filter(box -> box.bounds().contains(x, y)).findFirst();
	}

	public Optional<Box> box(String id) {
		return boxes.stream().filter(box -> box.node().id().equals(id)).findFirst();
	}

	/** Returns the edges that begin or end at a node. */
	public List<Route> routesOf(String id) {
		return routes.stream().filter(route -> route.edge().from().equals(id) || route.edge().to().equals(id)).toList();
	}

	/**
	 * Returns where an arrow key leads: left and right follow the lines, then take what lies nearest; up and down take
	 * what lies nearest.
	 *
	 * @param from id of a node; an unknown one leads to the first node
	 */
	public Optional<Box> neighbour(String from, Direction direction) {
		Optional<Box> start = box(from);
		if (start.isEmpty()) {
			return boxes.stream().min(Comparator.comparingDouble((Box box) -> box.bounds().x())
					.thenComparingDouble(box -> box.bounds().y()));
		}
		Rect at = start.get().bounds();
		boolean along = direction == Direction.LEFT || direction == Direction.RIGHT;
		List<Box> linked = !along ? List.of() : routes.stream()
				.filter(route -> (direction == Direction.LEFT ? route.edge().to() : route.edge().from()).equals(from))
				.map(route -> box(direction == Direction.LEFT ? route.edge().from() : route.edge().to()).orElseThrow())
				.filter(box -> lies(box.bounds(), at, direction)).toList();
		List<Box> candidates = linked.isEmpty() ? boxes.stream().filter(box -> lies(box.bounds(), at, direction)).toList()
				: linked;
		return candidates.stream().min(Comparator.comparingDouble(box -> distance(box.bounds(), at, along)));
	}

	private static boolean lies(Rect box, Rect from, Direction direction) {
		return switch (direction) {
		case LEFT -> box.centreX() < from.centreX() - 1;
		case RIGHT -> box.centreX() > from.centreX() + 1;
		case UP -> box.centreY() < from.centreY() - 1;
		case DOWN -> box.centreY() > from.centreY() + 1;
		};
	}

	/** Going astray counts more than going far. */
	private static double distance(Rect box, Rect from, boolean along) {
		double across = Math.abs(box.centreX() - from.centreX());
		double down = Math.abs(box.centreY() - from.centreY());
		return along ? across + 2 * down : down + 2 * across;
	}
}
