package org.baywright.analysis.generate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.RuleBase;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Known anomalies are found, each and no others, however large the rule base; an edit changes what it must. */
class RuleBaseGeneratorTest {

	@Test
	void nothingIsFoundWhereNothingIsWrong() {
		GeneratedBase base = RuleBaseGenerator.generate(600, 0, 3);
		assertEquals(Set.of(), ids(new Analysis().check(base.rules(), Listener.NONE)));
	}

	@Test
	void findsWhatWasSeededAndNothingElse() {
		GeneratedBase base = RuleBaseGenerator.generate(2500, 5, 4);
		assertTrue(base.seeded().size() > 40, "enough anomalies");
		assertEquals(base.seeded(), ids(new Analysis().check(base.rules(), Listener.NONE)));
	}

	@Test
	void theSameSeedMakesTheSameRuleBase() {
		assertEquals(RuleBaseGenerator.generate(300, 5, 9).rules().rules(),
				RuleBaseGenerator.generate(300, 5, 9).rules().rules());
	}

	@Test
	void aRecheckFindsWhatAFreshCheckFinds() {
		GeneratedBase base = RuleBaseGenerator.generate(400, 5, 5);
		Analysis kept = new Analysis();
		kept.check(base.rules(), Listener.NONE);
		for (int rule = 0; rule < base.rules().rules().size(); rule += 7) {
			RuleBase edited = base.edited(rule);
			Report again = kept.check(edited, Listener.NONE);
			assertEquals(new Analysis().check(edited, Listener.NONE).flaws(), again.flaws(), "edit of rule " + rule);
			assertTrue(again.proved() <= 6, "an edit is proved where it reaches: " + again.proved());
		}
		assertEquals(new Analysis().check(base.rules(), Listener.NONE).flaws(),
				kept.check(base.rules(), Listener.NONE).flaws(), "after going back");
	}

	@Test
	void rulesMayMoveComeAndGo() {
		RuleBase base = RuleBaseGenerator.generate(200, 5, 8).rules();
		Analysis kept = new Analysis();
		kept.check(base, Listener.NONE);
		java.util.Random random = new java.util.Random(8);
		for (int step = 0; step < 30; step++) {
			RuleBase.Builder builder = new RuleBase.Builder(base.name()).add(base);
			int at = random.nextInt(builder.rules.size());
			switch (step % 3) {
			case 0 -> java.util.Collections.swap(builder.rules, at, random.nextInt(builder.rules.size()));
			case 1 -> builder.rules.remove(at);
			default -> builder.rules.add(at, RuleBaseGenerator.generate(200, 5, 8).rules().rules().get(step));
			}
			base = builder.build();
			assertEquals(new Analysis().check(base, Listener.NONE).flaws(), kept.check(base, Listener.NONE).flaws(),
					"step " + step);
		}
	}

	@Test
	void aCheckCanBeCancelledAndTakenUpAgain() {
		GeneratedBase base = RuleBaseGenerator.generate(400, 5, 6);
		Analysis analysis = new Analysis();
		Listener impatient = new Listener() {
			private int parts;

			@Override
			public synchronized void progress(int done, int total) {
				parts = done;
			}

			@Override
			public synchronized boolean isCancelled() {
				return parts >= 3;
			}
		};
		Assertions.assertThrows(CancellationException.class, () -> analysis.check(base.rules(), impatient));
		assertEquals(new Analysis().check(base.rules(), Listener.NONE).flaws(),
				analysis.check(base.rules(), Listener.NONE).flaws());
	}

	/** Stops an analysis each time a little later, whether many parts are to be proved or a single one. */
	@Test
	void aCheckCanBeCancelledAtAnyMoment() {
		for (int rules : new int[] { 5, 40 }) {
			RuleBase base = RuleBaseGenerator.generate(rules, 5, 6).rules();
			List<Flaw> fresh = new Analysis().check(base, Listener.NONE).flaws();
			for (int moment = 0; moment < 12; moment++) {
				Analysis analysis = new Analysis();
				AtomicInteger left = new AtomicInteger(moment);
				Listener impatient = new Listener() {
					@Override
					public boolean isCancelled() {
						return left.getAndDecrement() <= 0;
					}
				};
				Assertions.assertThrows(CancellationException.class, () -> analysis.check(base, impatient));
				assertEquals(fresh, analysis.check(base, Listener.NONE).flaws(), rules + " rules, stopped at " + moment);
			}
		}
	}

	/** A gap is named after its region, the seed after its sign alone. */
	private static Set<String> ids(Report report) {
		Set<String> ids = new TreeSet<>();
		for (Flaw flaw : report.flaws()) {
			int slash = flaw.id().indexOf('/');
			ids.add(flaw.check().equals("gap") && slash > 0 ? flaw.id().substring(0, slash) : flaw.id());
		}
		return ids;
	}
}
