package org.baywright.analysis.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Exclusive;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.Outcome;
import org.baywright.model.Part;
import org.baywright.model.Provenance;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Sign;
import org.baywright.model.Skill;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Decision tables of five measured columns, as in Calvanese, Dumas, Laurson, Maggi, Montali and Teinemaa, "Semantics and
 * analysis of DMN decision tables" (BPM 2016): overlapping rules are rules whose boxes share a point, a missing region
 * is a box that no rule covers. A box cut at random into boxes has neither; what is then shifted or taken out is known.
 */
class DecisionTableTest {

	private static final int COLUMNS = 5;
	private static final int SIZE = 40;

	private record Box(int[] low, int[] high) {
		boolean meets(Box other) {
			for (int i = 0; i < COLUMNS; i++) {
				if (low[i] > other.high[i] || other.low[i] > high[i]) {
					return false;
				}
			}
			return true;
		}
	}

	@ParameterizedTest(name = "{0} rules, seed {1}")
	@CsvSource({ "60, 1", "120, 2", "240, 3" })
	void overlapsAndMissingRegionsAreThoseOfTheBoxes(int rules, long seed) {
		Random random = new Random(seed);
		List<Box> boxes = cut(rules, random);
		assertEquals(Set.of(), clashes(check(boxes)), "a table cut from one box has no overlap");
		assertEquals(List.of(), gaps(check(boxes)), "and no missing region");

		Box missing = boxes.get(random.nextInt(rules));
		List<Box> incomplete = new ArrayList<>(boxes);
		incomplete.remove(missing);
		List<Situation> regions = gaps(check(incomplete));
		assertEquals(1, regions.size(), "one region, not one point after the other");
		assertCovers(missing, regions.get(0));

		List<Box> overlapping = new ArrayList<>(boxes);
		for (int i = 0; i < rules; i += 20) {
			overlapping.set(i, widened(boxes.get(i), random));
		}
		Set<String> expected = new TreeSet<>();
		for (int i = 0; i < rules; i++) {
			for (int j = 0; j < rules; j++) {
				if (i != j && overlapping.get(i).meets(overlapping.get(j)) && ("p.f" + i).compareTo("p.f" + j) < 0) {
					expected.add("p.f" + i + "+p.f" + j + "/r" + i + "/r" + j);
				}
			}
		}
		assertTrue(!expected.isEmpty());
		assertEquals(expected, clashes(check(overlapping)));
	}

	private static Report check(List<Box> boxes) {
		return new Analysis().check(table(boxes), Listener.NONE);
	}

	private static Set<String> clashes(Report report) {
		return OracleTest.subjects(report, "exclusive-faults");
	}

	private static List<Situation> gaps(Report report) {
		List<Situation> regions = new ArrayList<>();
		for (Flaw flaw : report.flaws()) {
			if (flaw.check().equals("gap") && flaw.evidence() instanceof Evidence.Region region) {
				regions.add(region.situation());
			}
		}
		return regions;
	}

	/** The region must be the box, column by column; a column that spans its whole range is not mentioned. */
	private static void assertCovers(Box box, Situation region) {
		for (int column = 0; column < COLUMNS; column++) {
			Variable test = new Variable(Variable.Kind.TEST, "t" + column);
			Optional<Situation.Fact> fact = region.facts().stream().filter(f -> f.variable().equals(test)).findFirst();
			assertEquals(box.low[column], fact.map(f -> f.values().first()).orElse(0), "column " + column);
			assertEquals(box.high[column], fact.map(f -> f.values().last()).orElse(SIZE - 1), "column " + column);
		}
	}

	private static List<Box> cut(int count, Random random) {
		int[] high = new int[COLUMNS];
		java.util.Arrays.fill(high, SIZE - 1);
		List<Box> boxes = new ArrayList<>(List.of(new Box(new int[COLUMNS], high)));
		while (boxes.size() < count) {
			int chosen = random.nextInt(boxes.size());
			int column = random.nextInt(COLUMNS);
			Box box = boxes.get(chosen);
			if (box.high[column] > box.low[column]) {
				int at = box.low[column] + random.nextInt(box.high[column] - box.low[column]);
				int[] leftHigh = box.high.clone();
				int[] rightLow = box.low.clone();
				leftHigh[column] = at;
				rightLow[column] = at + 1;
				boxes.set(chosen, new Box(box.low, leftHigh));
				boxes.add(new Box(rightLow, box.high));
			}
		}
		return boxes;
	}

	private static Box widened(Box box, Random random) {
		int[] low = box.low.clone();
		int[] high = box.high.clone();
		int column = random.nextInt(COLUMNS);
		low[column] = Math.max(0, low[column] - 3);
		high[column] = Math.min(SIZE - 1, high[column] + 3);
		return new Box(low, high);
	}

	private static RuleBase table(List<Box> boxes) {
		RuleBase.Builder base = new RuleBase.Builder("table");
		base.families.add(new Family("f", "Family", Optional.empty(), false, List.of(), List.of(), Span.NONE));
		base.signs.add(new Sign("s", "Sign", false, Span.NONE));
		for (int column = 0; column < COLUMNS; column++) {
			base.tests.add(new Test("t" + column, "Test", new Domain.Quantity("V", BigDecimal.ZERO,
					BigDecimal.valueOf(SIZE - 1), BigDecimal.ONE), Optional.empty(), List.of(), List.of(), List.of(),
					BigDecimal.ONE, BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), List.of(), Span.NONE));
		}
		List<Fault> faults = new ArrayList<>();
		for (int i = 0; i < boxes.size(); i++) {
			faults.add(new Fault("p.f" + i, "Fault", "p", 0, Span.NONE));
			List<Condition> given = new ArrayList<>(List.of(new Condition.SignIs("s", true, Span.NONE)));
			for (int column = 0; column < COLUMNS; column++) {
				given.add(new Condition.TestIs("t" + column, ValueSet.Band.closed(
						BigDecimal.valueOf(boxes.get(i).low[column]), BigDecimal.valueOf(boxes.get(i).high[column])), Span.NONE));
			}
			base.rules.add(new Rule("r" + i, "Rule", new Scope(List.of(), List.of(), Optional.empty(), Span.NONE), given,
					List.of(), Optional.empty(),
					List.of(new Outcome("then", Optional.empty(), true,
							List.of(new Conclusion.OnFault(VerdictKind.CONFIRMED, "p.f" + i, Span.NONE)), Span.NONE)),
					new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.NONE, ""), Optional.empty()),
					Span.NONE, Span.NONE));
		}
		base.parts.add(new Part("p", "Part", List.of(), faults, Span.NONE));
		base.exclusives.add(new Exclusive(faults.stream().map(Fault::name).toList(), Span.NONE));
		return base.build();
	}
}
