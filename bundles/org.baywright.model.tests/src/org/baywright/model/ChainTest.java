package org.baywright.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.junit.jupiter.api.Test;

/** What follows from a chain is worked out here by hand, as a technician would: for each state of the line. */
class ChainTest {

	private static final Span AT = Span.NONE;

	private static Chain chain(List<List<String>> faults, List<String> beyond) {
		List<Chain.Point> points = new ArrayList<>();
		for (int i = 0; i < faults.size(); i++) {
			points.add(new Chain.Point("t" + i, "T" + i, new ValueSet.Choices(List.of("good")), faults.get(i), AT));
		}
		return new Chain("feed", "Feed", new Scope(List.of("van"), List.of(), Optional.empty(), AT),
				List.of(new Condition.SignIs("dead", true, AT)), points, beyond,
				new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.PRACTICE, ""), Optional.empty()), AT);
	}

	@Test
	void threePointsInARow() {
		Chain chain = chain(List.of(List.of("p.a"), List.of("p.b"), List.of("p.c")), List.of("p.end"));
		assertEquals(List.of("feed_t0", "feed_before_t0", "feed_t1", "feed_first_t1", "feed_before_t1", "feed_t2", "feed_first_t2",
				"feed_before_t2"), chain.rules().stream().map(Rule::name).toList());
		assertEquals(List.of("met clears p.a", "otherwise confirms p.a"), says(chain, "feed_t0"));
		assertEquals(List.of("met clears p.a, clears p.b", "otherwise nothing"), says(chain, "feed_t1"));
		assertEquals(List.of("met nothing", "otherwise confirms p.b"), says(chain, "feed_first_t1"));
		assertEquals(List.of("met clears p.a, clears p.b, clears p.c, suspects p.end", "otherwise nothing"), says(chain, "feed_t2"));
		assertEquals(List.of("then suspects p.a"), says(chain, "feed_before_t0"));
		assertEquals("[(sign dead true), (or (test t0 (except (any good))) (test t1 (except (any good))) (test t2 (except (any good)))),"
				+ " (verdict p.a CLEARED false)]", given(chain, "feed_before_t0"));
		assertEquals("[(sign dead true), (test t2 (except (any good))), (verdict p.c CLEARED false)]", given(chain, "feed_before_t2"));
		assertEquals("[(sign dead true), (test t1 (any good))]", given(chain, "feed_first_t2"));
		assertEquals(List.of("(law (for van) (and (sign dead true) (test t1 (any good))) (test t0 (any good)))",
				"(law (for van) (and (sign dead true) (test t2 (any good))) (test t1 (any good)))"),
				chain.laws().stream().map(Meaning::text).toList());
	}

	@Test
	void severalFaultsBetweenTwoPointsAreSuspectedAndNeverConfirmed() {
		Chain chain = chain(List.of(List.of("p.a", "p.b"), List.of(), List.of("p.c")), List.of());
		assertEquals(List.of("met clears p.a, clears p.b", "otherwise nothing"), says(chain, "feed_t0"));
		assertEquals(List.of("then suspects p.a"), says(chain, "feed_before_t0"));
		assertEquals(List.of("then suspects p.b"), says(chain, "feed_before_t0_2"));
		assertEquals(List.of("feed_t0", "feed_before_t0", "feed_before_t0_2", "feed_t1", "feed_t2", "feed_first_t2", "feed_before_t2"),
				chain.rules().stream().map(Rule::name).toList());
	}

	private static List<String> says(Chain chain, String rule) {
		return rule(chain, rule).outcomes().stream().map(outcome -> outcome.label() + " " + String.join(", ", outcome.conclusions().stream()
				.map(said -> said instanceof Conclusion.OnFault on ? on.verdict().verb() + " " + on.fault() : "nothing").toList())).toList();
	}

	private static String given(Chain chain, String rule) {
		return rule(chain, rule).given().stream().map(Meaning::text).toList().toString();
	}

	private static Rule rule(Chain chain, String name) {
		return chain.rules().stream().filter(rule -> rule.name().equals(name)).findFirst().orElseThrow();
	}
}
