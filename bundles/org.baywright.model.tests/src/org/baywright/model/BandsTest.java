package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.baywright.model.words.Limits;
import org.junit.jupiter.api.Test;

class BandsTest {

	private static final Domain.Quantity VOLTS = new Domain.Quantity("V", BigDecimal.ZERO, new BigDecimal("18"),
			new BigDecimal("0.1"));

	private static String bands(ValueSet values) {
		StringBuilder text = new StringBuilder();
		for (Bands.Band band : Bands.of(values, VOLTS).bands()) {
			text.append(band.lowOpen() ? "(" : "[").append(band.low()).append(" ").append(band.high())
					.append(band.highOpen() ? ")" : "]");
		}
		return text.toString();
	}

	private static ValueSet.Band band(String low, boolean lowOpen, String high, boolean highOpen) {
		return new ValueSet.Band(Optional.of(new BigDecimal(low)), lowOpen, Optional.of(new BigDecimal(high)), highOpen);
	}

	@Test
	void keepsLimitsAsWritten() {
		assertEquals("[12.45 13)", bands(band("12.45", false, "13", true)));
		assertEquals("[0 9.6)", bands(ValueSet.Band.below(new BigDecimal("9.6"))));
		assertEquals("(13 18]", bands(ValueSet.Band.above(new BigDecimal("13"))));
	}

	@Test
	void cutsAtTheRange() {
		assertEquals("[0 5]", bands(band("-3", true, "5", false)));
		assertEquals("", bands(band("19", false, "20", false)));
		assertEquals("(0 18]", bands(band("0", true, "20", true)));
	}

	@Test
	void joinsWhatTouchesAndSplitsWhatDoesNot() {
		assertEquals("[1 3]", bands(new ValueSet.Union(List.of(band("2", true, "3", false), band("1", false, "2", false)))));
		assertEquals("[1 2)(2 3]",
				bands(new ValueSet.Union(List.of(band("2", true, "3", false), band("1", false, "2", true)))));
		assertEquals("[0 1)(3 18]", bands(new ValueSet.Except(band("1", false, "3", false))));
		assertEquals("[0 18]", bands(new ValueSet.Except(new ValueSet.Union(List.of()))));
		assertEquals("", bands(new ValueSet.Except(new ValueSet.Except(new ValueSet.Union(List.of())))));
	}

	@Test
	void holdsTheSameValuesAsTheModelFinds() {
		Random random = new Random(8785);
		for (int i = 0; i < 20_000; i++) {
			ValueSet values = values(random, 3);
			IndexSet expected = values.in(VOLTS);
			Bands bands = Bands.of(values, VOLTS);
			for (int index = 0; index < VOLTS.size(); index++) {
				assertEquals(expected.contains(index), contains(bands, VOLTS.value(index)), values + " at " + index);
			}
			for (int b = 1; b < bands.bands().size(); b++) {
				assertTrue(bands.bands().get(b - 1).high().compareTo(bands.bands().get(b).low()) <= 0, values.toString());
			}
		}
	}

	private static final Domain.Quantity BEYOND = new Domain.Quantity("V", VOLTS.low(), VOLTS.high(), VOLTS.step(),
			Optional.of(new NamedValue("lo", "too low", Span.NONE)), Optional.of(new NamedValue("ol", "open line", Span.NONE)));

	/** With what is shown beyond the range the numbers are what they were, and it is itself one value at each end. */
	@Test
	void whatIsShownBeyondTheRangeIsOneMoreValueAtEachEnd() {
		assertEquals(VOLTS.size() + 2, BEYOND.size());
		Random random = new Random(4711);
		int both = 0;
		for (int i = 0; i < 2_000; i++) {
			ValueSet values = random.nextInt(3) == 0 ? new ValueSet.Union(List.of(values(random, 3), new ValueSet.Choices(List.of(random.nextBoolean() ? "ol" : "lo"))))
					: values(random, 3);
			assertEquals(VOLTS.value(i % VOLTS.size()), BEYOND.value(i % VOLTS.size() + 1));
			IndexSet plain = values.in(VOLTS);
			IndexSet beyond = values.in(BEYOND);
			for (int index = 0; index < VOLTS.size(); index++) {
				assertEquals(plain.contains(index), beyond.contains(index + 1), () -> values.toString());
			}
			assertEquals(isIn(values, false), beyond.contains(0), values + " under");
			assertEquals(isIn(values, true), beyond.contains(BEYOND.size() - 1), values + " over");
			both += beyond.contains(0) && beyond.contains(BEYOND.size() - 1) ? 1 : 0;
			String said = Limits.say(values, BEYOND);
			boolean all = beyond.equals(IndexSet.all(BEYOND));
			assertTrue(all || !said.contains("any value"), values + ": " + said);
			assertTrue(!said.contains("open line") || beyond.contains(BEYOND.size() - 1), said);
			assertTrue(!said.contains("too low") || beyond.contains(0), said);
		}
		assertTrue(both > 100, "both ends were tried");
	}

	/** Whether what is shown over or under the range belongs to the values, worked out without numbering them. */
	private static boolean isIn(ValueSet values, boolean over) {
		if (values instanceof ValueSet.Union union) {
			return union.parts().stream().anyMatch(part -> isIn(part, over));
		} else if (values instanceof ValueSet.Except except) {
			return !isIn(except.part(), over);
		} else if (values instanceof ValueSet.Choices choices) {
			return choices.names().contains(over ? "ol" : "lo");
		}
		ValueSet.Band band = (ValueSet.Band) values;
		return over ? band.high().isEmpty() && band.low().filter(limit -> limit.compareTo(VOLTS.high()) > 0).isEmpty()
				: band.low().isEmpty() && band.high().filter(limit -> limit.compareTo(VOLTS.low()) < 0).isEmpty();
	}

	@Test
	void saysWhatIsShownBeyondTheRangeWhereTheWordsDoNotTakeItIn() {
		assertEquals("above 13 V", Limits.say(ValueSet.Band.above(new BigDecimal("13")), BEYOND).replace(".0", ""));
		assertEquals("13.0 V to 18.0 V", Limits.say(ValueSet.Band.closed(new BigDecimal("13"), new BigDecimal("18")), BEYOND));
		assertEquals("13.0 V or more", Limits.say(ValueSet.Band.closed(new BigDecimal("13"), new BigDecimal("18")), VOLTS));
		assertEquals("open line", Limits.say(new ValueSet.Choices(List.of("ol")), BEYOND));
		assertEquals("open line", Limits.say(ValueSet.Band.above(new BigDecimal("18")), BEYOND));
		assertEquals("too low or 1.0 V to 2.0 V", Limits.say(
				new ValueSet.Union(List.of(ValueSet.Band.closed(BigDecimal.ONE, BigDecimal.valueOf(2)), new ValueSet.Choices(List.of("lo")))), BEYOND));
	}

	private static boolean contains(Bands bands, BigDecimal value) {
		return bands.bands().stream().anyMatch(band -> {
			int low = value.compareTo(band.low());
			int high = value.compareTo(band.high());
			return (low > 0 || low == 0 && !band.lowOpen()) && (high < 0 || high == 0 && !band.highOpen());
		});
	}

	static ValueSet values(Random random, int depth) {
		switch (depth == 0 ? 0 : random.nextInt(4)) {
		case 1:
			return new ValueSet.Except(values(random, depth - 1));
		case 2:
			List<ValueSet> parts = new ArrayList<>();
			for (int i = random.nextInt(4); i > 0; i--) {
				parts.add(values(random, depth - 1));
			}
			return new ValueSet.Union(parts);
		default:
			return new ValueSet.Band(limit(random), random.nextBoolean(), limit(random), random.nextBoolean());
		}
	}

	/** Some limits lie outside of the range, some between two steps. */
	private static Optional<BigDecimal> limit(Random random) {
		return random.nextInt(4) == 0 ? Optional.empty() : Optional.of(BigDecimal.valueOf(random.nextInt(460) - 50, 1 + random.nextInt(2)));
	}
}
