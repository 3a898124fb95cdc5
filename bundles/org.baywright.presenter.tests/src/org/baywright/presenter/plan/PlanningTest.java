package org.baywright.presenter.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;

import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.presenter.Examples;
import org.baywright.presenter.Left;
import org.baywright.presenter.ProjectState;
import org.junit.jupiter.api.Test;

/** {@link Planning}: a plan that is looked at while the rules change. */
class PlanningTest {

	private static final String LAMPS = """
			family tarn "Tarn"
			family bord "Bord"
			sign dead "Lamp is dark"
			sign hum "Humming" for bord
			part lamp "Lamp" { fault burnt "Burnt out" fault stuck "Stuck" }
			hazard glass "Hot glass" { caution "Let it cool." }
			test look "Look" { results black, clear takes 4 min caution glass }
			test turn "Turn" { results free, stuck takes 2 min }
			rule a { given dead run look on black : confirms lamp.burnt on clear : clears lamp.burnt }
			rule b { for bord given hum run turn on stuck : confirms lamp.stuck on free : clears lamp.stuck }
			""";

	private static RuleBase rules(String from, String to) {
		ProjectState state = Examples.text(LAMPS.replace(from, to).split("\n"));
		assertEquals(List.of(), state.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).map(Problem::message).toList());
		return state.rules();
	}

	private static Planning shown(Planning planning) {
		return planning.show(planning.plan(() -> false));
	}

	@Test
	void itBeginsWithTheFirstComplaintOfTheFirstFamily() {
		Planning planning = shown(Planning.of(rules("", "")));
		assertEquals("tarn", planning.family());
		assertEquals("dead", planning.complaint());
		assertEquals("Plan for “Lamp is dark” on Tarn", planning.shown().orElseThrow().title());
		assertEquals("Caution, Hot glass: Let it cool.", planning.told().get(0));
		assertTrue(planning.told().get(1).startsWith("Work: about 4 min"), planning.told().toString());
	}

	@Test
	void aComplaintStaysChosenWhereItCanBe() {
		Planning planning = Planning.of(rules("", "")).choose("bord").complain("hum");
		assertEquals("hum", planning.complaint());
		assertEquals("dead", planning.choose("tarn").complaint());
		assertEquals("dead", planning.complain("dead").choose("tarn").complaint());
	}

	@Test
	void whatChangesMoveIsToldUntilTheyAreTakenBack() {
		Planning before = shown(Planning.of(rules("", "")));
		// who types goes through rules that nobody means
		Planning changed = shown(shown(before.turn(rules("takes 4 min", "takes 33 min"))).turn(rules("takes 4 min", "takes 3 min")));
		assertEquals("Moved by changes of the rules: expected 4 → 3 min, worst 4 → 3 min, cost 4 → 3.", changed.told().get(0));
		Planning back = shown(changed.turn(rules("", "")));
		assertTrue(back.told().get(1).startsWith("Work: about 4 min"), back.told().toString());
		Planning held = shown(changed.hold().turn(rules("takes 4 min", "takes 2 min")));
		assertTrue(held.told().get(0).startsWith("Moved by changes of the rules: expected 3 → 2 min"), held.told().toString());
		// a choice is no change
		Planning chosen = shown(changed.choose("bord"));
		assertTrue(chosen.told().get(1).startsWith("Work: about 3 min"), chosen.told().toString());
	}

	@Test
	void eachProjectKeepsWhatWasChosenInIt() {
		Left<Planning> left = new Left<>(Planning::base, Planning::of, Planning::turn);
		Planning chosen = shown(Planning.of(rules("", "")).choose("bord").complain("hum"));
		RuleBase other = Examples.project("light-van").snapshot().rules();
		Planning there = left.turn(chosen, other);
		assertEquals("bord_s", there.family());
		Planning back = left.turn(there, rules("takes 4 min", "takes 3 min"));
		assertEquals("bord hum", back.family() + " " + back.complaint());
		assertEquals(chosen.shown(), back.before(), "what was changed meanwhile is told");
	}

	@Test
	void aChangeThatTakesTheComplaintAwayIsHeldAgainstNothing() {
		Planning before = shown(Planning.of(rules("", "")).choose("bord").complain("hum"));
		Planning after = before.turn(rules("given hum", "given dead"));
		assertEquals("dead", after.complaint());
		assertEquals("", shown(after).moved());
	}

	@Test
	void withoutVehiclesNothingCanBeChosen() {
		Planning planning = Planning.of(new RuleBase.Builder("").build());
		assertEquals("", planning.family());
		assertEquals(List.of(), planning.complaints());
		assertEquals("Choose a complaint to see the plan for it.", planning.plan(() -> false).trouble());
	}
}
