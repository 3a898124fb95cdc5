package org.baywright.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

import org.baywright.model.Chain;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Fault;
import org.baywright.model.NamedValue;
import org.baywright.model.Part;
import org.baywright.model.Provenance;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Skill;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.ValueSet;

/** Halving against binary search, which needs ceil(log2 n) questions for n places that are alike (common knowledge). */
class HalvingTest {

	private static RuleBase line(int[] seen) {
		RuleBase.Builder base = new RuleBase.Builder("line");
		base.families.add(new Family("van", "Van", Optional.empty(), false, List.of(), List.of(), Span.NONE));
		List<Fault> faults = new ArrayList<>();
		List<Chain.Point> points = new ArrayList<>();
		Domain domain = new Domain.Names(List.of(new NamedValue("good", "good", Span.NONE), new NamedValue("bad", "bad", Span.NONE)));
		for (int i = 0; i < seen.length; i++) {
			faults.add(new Fault("line.f" + i, "f" + i, "line", seen[i], Span.NONE));
			base.tests.add(new Test("t" + i, "t" + i, domain, Optional.empty(), List.of(), List.of(), List.of(), BigDecimal.ONE,
					BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), List.of(), Span.NONE));
			points.add(new Chain.Point("t" + i, "t" + i, new ValueSet.Choices(List.of("good")), List.of("line.f" + i), Span.NONE));
		}
		base.parts.add(new Part("line", "Line", List.of(), faults, Span.NONE));
		base.chains.add(new Chain("line", "Line", new Scope(List.of(), List.of(), Optional.empty(), Span.NONE), List.of(), points, List.of(),
				new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.PRACTICE, ""), Optional.empty()), Span.NONE));
		base.chains.forEach(chain -> base.rules.addAll(chain.rules()));
		return base.build();
	}

	/** Asks until one place is left; returns how many questions it took. */
	private static int search(RuleBase base, int points, int fault) {
		List<Reading> readings = new ArrayList<>(List.of(new Reading.Named("t" + (points - 1), "bad", Span.NONE)));
		for (int asked = 0;; asked++) {
			Halving halving = new Halving(base, "van", readings);
			int best = -1;
			for (int i = 0; i < points; i++) {
				Optional<Halving.Split> split = halving.of("t" + i);
				if (split.isPresent() && (best < 0 || split.get().left() < halving.of("t" + best).orElseThrow().left())) {
					best = i;
				}
			}
			if (best < 0) {
				return asked;
			}
			assertTrue(asked < points, "goes on for ever");
			readings.add(new Reading.Named("t" + best, best < fault ? "good" : "bad", Span.NONE));
		}
	}

	@org.junit.jupiter.api.Test
	void findsAPlaceAmongEqualsAsFastAsBinarySearch() {
		for (int points = 2; points <= 33; points++) {
			RuleBase base = line(new int[points]);
			int most = 0;
			for (int fault = 0; fault < points; fault++) {
				most = Math.max(most, search(base, points, fault));
			}
			assertEquals(32 - Integer.numberOfLeadingZeros(points - 1), most, points + " points");
		}
	}

	/** No order of questions needs less than the entropy on average (Shannon 1948); halving by weight needs less than two more (Horibe 1977, from memory). */
	@org.junit.jupiter.api.Test
	void asksLessWhereExperienceSaysMore() {
		Random random = new Random(5);
		for (int round = 0; round < 50; round++) {
			int[] seen = random.ints(2 + random.nextInt(12), 0, 60).toArray();
			RuleBase base = line(seen);
			double total = java.util.stream.IntStream.of(seen).sum() + seen.length;
			double asked = 0;
			double entropy = 0;
			for (int fault = 0; fault < seen.length; fault++) {
				double chance = (seen[fault] + 1) / total;
				asked += chance * search(base, seen.length, fault);
				entropy -= chance * Math.log(chance) / Math.log(2);
			}
			assertTrue(asked >= entropy - 1e-9 && asked < entropy + 2, asked + " questions for " + entropy + " bits");
		}
	}

	@org.junit.jupiter.api.Test
	void whatIsDecidedIsNotAskedForAgain() {
		RuleBase base = line(new int[] { 0, 9, 0, 0 });
		Halving open = new Halving(base, "van", List.of());
		assertEquals(Optional.of("Line"), open.of("t1").map(Halving.Split::chain));
		Halving narrowed = new Halving(base, "van", List.of(new Reading.Named("t1", "good", Span.NONE), new Reading.Named("t3", "bad", Span.NONE)));
		assertEquals(List.of(false, false, true, false), List.of("t0", "t1", "t2", "t3").stream().map(test -> narrowed.of(test).isPresent()).toList());
		assertEquals(List.of(true, false, false, false), List.of("t0", "t1", "t2", "t3").stream().map(narrowed::isDecided).toList());
		Halving wrong = new Halving(base, "van", List.of(new Reading.Named("t1", "bad", Span.NONE)));
		assertEquals(List.of(false, false, true, true), List.of("t0", "t1", "t2", "t3").stream().map(wrong::isDecided).toList());
		assertTrue(base.isOfChain("line_t2") && !base.isOfChain("line"));
		assertEquals(0.5, narrowed.of("t2").orElseThrow().left());
		assertEquals(Optional.empty(), new Halving(base, "lorry", List.of()).of("t1"));
	}
}
