package org.baywright.presenter.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;

import org.baywright.analysis.generate.RuleBaseGenerator;
import org.baywright.model.RuleBase;
import org.baywright.presenter.Examples;
import org.baywright.presenter.RuleScope;
import org.baywright.presenter.picture.LaidOut.Box;
import org.baywright.presenter.picture.LaidOut.Direction;
import org.baywright.presenter.picture.LaidOut.Point;
import org.baywright.presenter.picture.LaidOut.Rect;
import org.baywright.presenter.picture.LaidOut.Route;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LayoutTest {

	private static final long SLOW = 20_000; // milliseconds; a few times what a busy machine needs

	private static LaidOut layout(Picture picture) {
		return Layout.of(picture, TextMetrics.FIXED, () -> false);
	}

	static Stream<Picture> pictures() {
		List<Picture> pictures = new ArrayList<>();
		for (String name : Examples.ALL) {
			RuleBase base = Examples.checked(name).rules();
			base.vehicleFamilies().forEach(family -> pictures.add(Picture.of(base, RuleScope.family(family.name()))));
			pictures.add(Picture.of(base, RuleScope.all().around(new RuleScope.Around.OneSign(base.signs().get(0).name()))));
		}
		return pictures.stream();
	}

	@ParameterizedTest
	@MethodSource("pictures")
	void nothingOverlapsAndEveryLineEndsAtItsNodes(Picture picture) {
		LaidOut laidOut = layout(picture);
		assertEquals(picture.nodes().size(), laidOut.boxes().size());
		Rect whole = new Rect(0, 0, laidOut.width(), laidOut.height());
		for (int i = 0; i < laidOut.boxes().size(); i++) {
			Rect box = laidOut.boxes().get(i).bounds();
			assertTrue(whole.contains(box.x(), box.y()) && whole.contains(box.x() + box.width(), box.y() + box.height()));
			for (int j = 0; j < i; j++) {
				assertFalse(box.overlaps(laidOut.boxes().get(j).bounds()),
						laidOut.boxes().get(i) + " and " + laidOut.boxes().get(j));
			}
		}
		for (Route route : laidOut.routes()) {
			List<Point> way = route.points();
			assertTrue(touches(laidOut.box(route.edge().from()).orElseThrow(), way.get(0)), route.toString());
			assertTrue(touches(laidOut.box(route.edge().to()).orElseThrow(), way.get(way.size() - 1)), route.toString());
			assertEquals(route.edge().label().isEmpty(), route.lines().isEmpty());
		}
	}

	@Test
	void aLongWordIsBrokenBehindASignOrElseWhereItMust() {
		double width = TextMetrics.FIXED.width("ten_letter", TextMetrics.Style.TITLE);
		String long1 = "a starter_relay_by_the_swap word";
		assertEquals(List.of("a", "starter_", "relay_by_", "the_swap", "word"), Wrap.lines(long1, width, TextMetrics.FIXED, TextMetrics.Style.TITLE));
		assertEquals(List.of("abcdefghij", "klmno pq"), Wrap.lines("abcdefghijklmno pq", width, TextMetrics.FIXED, TextMetrics.Style.TITLE));
		for (String text : List.of(long1, "\ud83d\ude97".repeat(30), "x".repeat(5000), "")) {
			List<String> lines = Wrap.lines(text, width, TextMetrics.FIXED, TextMetrics.Style.TITLE);
			assertEquals(text.replace(" ", ""), String.join("", lines).replace(" ", ""));
			lines.forEach(line -> assertTrue(TextMetrics.FIXED.width(line, TextMetrics.Style.TITLE) <= width, line));
		}
	}

	private static boolean touches(Box box, Point point) {
		Rect at = box.bounds();
		boolean inside = at.contains(point.x(), point.y());
		double toSide = Math.min(Math.abs(point.x() - at.x()), Math.abs(point.x() - at.x() - at.width()));
		double toTop = Math.min(Math.abs(point.y() - at.y()), Math.abs(point.y() - at.y() - at.height()));
		return inside && Math.min(toSide, toTop) < 0.5;
	}

	@Test
	void sameRulesSamePlaces() {
		Picture picture = Picture.of(Examples.checked("light-van").rules(), RuleScope.all());
		assertEquals(layout(picture), layout(picture));
	}

	@Test
	void fiveHundredNodesTakeSeconds() {
		Picture picture = Picture.of(RuleBaseGenerator.generate(200, 50, 7).rules(), RuleScope.all());
		assertTrue(picture.nodes().size() >= 500, picture.nodes().size() + " nodes");
		long start = System.nanoTime();
		LaidOut laidOut = layout(picture);
		long took = (System.nanoTime() - start) / 1_000_000;
		System.out.println(picture.nodes().size() + " nodes, " + picture.edges().size() + " edges: " + took + " ms");
		assertEquals(picture.nodes().size(), laidOut.boxes().size());
		assertTrue(took < SLOW, took + " ms");
	}

	@Test
	void stopsWhenAsked() {
		Picture picture = Picture.of(Examples.checked("light-van").rules(), RuleScope.all());
		assertThrows(CancellationException.class, () -> Layout.of(picture, TextMetrics.FIXED, () -> true));
	}

	@Test
	void anEmptyPictureHasNoBoxes() {
		LaidOut empty = layout(new Picture("No rules", "", List.of(), List.of(), 0));
		assertEquals(List.of(), empty.boxes());
		assertTrue(empty.neighbour("", Direction.LEFT).isEmpty());
	}

	@Test
	void arrowKeysReachEveryNodeOfAConnectedPicture() {
		Picture picture = Picture.of(Examples.checked("light-van").rules(), RuleScope.all());
		LaidOut laidOut = layout(picture);
		Set<String> reached = new HashSet<>();
		List<String> next = new ArrayList<>(List.of(laidOut.neighbour("", Direction.RIGHT).orElseThrow().node().id()));
		while (!next.isEmpty()) {
			String at = next.remove(next.size() - 1);
			if (reached.add(at)) {
				for (Direction direction : Direction.values()) {
					laidOut.neighbour(at, direction).ifPresent(box -> next.add(box.node().id()));
				}
			}
		}
		int all = laidOut.boxes().size();
		assertTrue(reached.size() >= all * 9 / 10, reached.size() + " of " + all);
	}

	@Test
	void aPointFindsItsBox() {
		LaidOut laidOut = layout(Picture.of(Examples.checked("farm-tractor").rules(), RuleScope.all()));
		for (Box box : laidOut.boxes()) {
			assertEquals(box, laidOut.at(box.bounds().centreX(), box.bounds().centreY()).orElseThrow());
		}
		assertTrue(laidOut.at(-1, -1).isEmpty());
	}
}
