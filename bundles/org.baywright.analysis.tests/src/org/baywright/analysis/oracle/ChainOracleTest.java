package org.baywright.analysis.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.Consultation;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.run.Consultations;
import org.baywright.model.Chain;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.Fault;
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
import org.baywright.model.VerdictKind;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Chains against what a technician says of a line: in every state of knowledge of every line, worked out here without the
 * rules that the chain makes. Each point is not measured, right or wrong.
 */
class ChainOracleTest {

	private static final int OPEN = 0;
	private static final int RIGHT = 1;
	private static final int WRONG = 2;

	private static RuleBase line(int points, int double0) {
		RuleBase.Builder base = new RuleBase.Builder("line");
		base.families.add(new Family("van", "Van", Optional.empty(), false, List.of(), List.of(), Span.NONE));
		Domain volts = new Domain.Quantity("V", BigDecimal.ZERO, BigDecimal.TEN, BigDecimal.ONE);
		List<Fault> faults = new ArrayList<>();
		List<Chain.Point> all = new ArrayList<>();
		for (int i = 0; i < points; i++) {
			List<String> here = new ArrayList<>(List.of("line.f" + i));
			if (i == double0) {
				here.add("line.g" + i);
			}
			here.forEach(name -> faults.add(new Fault(name, name, "line", 0, Span.NONE)));
			base.tests.add(new Test("t" + i, "t" + i, volts, Optional.empty(), List.of(), List.of(), List.of(), BigDecimal.ONE,
					BigDecimal.ZERO, Skill.BASIC, List.of(), List.of(), List.of(), Span.NONE));
			all.add(new Chain.Point("t" + i, "t" + i, ValueSet.Band.atLeast(BigDecimal.valueOf(5)), here, Span.NONE));
		}
		faults.add(new Fault("line.end", "end", "line", 0, Span.NONE));
		base.parts.add(new Part("line", "Line", List.of(), faults, Span.NONE));
		Chain chain = new Chain("line", "Line", new Scope(List.of(), List.of(), Optional.empty(), Span.NONE), List.of(), all, List.of("line.end"),
				new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.PRACTICE, ""), Optional.empty()), Span.NONE);
		base.chains.add(chain);
		base.rules.addAll(chain.rules());
		base.laws.addAll(chain.laws());
		return base.build();
	}

	private static List<Reading> readings(int[] known) {
		List<Reading> readings = new ArrayList<>();
		for (int i = 0; i < known.length; i++) {
			if (known[i] != OPEN) {
				readings.add(new Reading.Measured("t" + i, BigDecimal.valueOf(known[i] == RIGHT ? 5 : 4), Span.NONE));
			}
		}
		return readings;
	}

	/** The first point that is wrong names the fault, once the one before is known to be right. */
	private static Set<String> expected(int[] known, int double0) {
		Set<String> said = new TreeSet<>();
		for (int i = 0; i < known.length; i++) {
			boolean rightBehind = false;
			boolean wrongBehind = false;
			for (int j = i; j < known.length; j++) {
				rightBehind |= known[j] == RIGHT;
				wrongBehind |= known[j] == WRONG;
			}
			for (String fault : i == double0 ? List.of("line.f" + i, "line.g" + i) : List.of("line.f" + i)) {
				if (rightBehind) {
					said.add(fault + " CLEARED");
				} else if (wrongBehind) {
					said.add(fault + " SUSPECTED");
				}
				if (i != double0 && known[i] == WRONG && (i == 0 || known[i - 1] == RIGHT)) {
					said.add(fault + " CONFIRMED");
				}
			}
		}
		if (known[known.length - 1] == RIGHT) {
			said.add("line.end SUSPECTED");
		}
		return said;
	}

	@ParameterizedTest
	@ValueSource(ints = { 2, 3, 4, 5 })
	void saysWhatATechnicianSaysInEveryStateOfKnowledge(int points) {
		for (int double0 : new int[] { -1, 0, points - 1 }) {
			RuleBase base = line(points, double0);
			Consultation consultation = Consultations.of(base, "van");
			int states = (int) Math.pow(3, points);
			int lawful = 0;
			for (int state = 0; state < states; state++) {
				int[] known = new int[points];
				for (int i = 0, rest = state; i < points; i++, rest /= 3) {
					known[i] = rest % 3;
				}
				Consultation.Advice advice = consultation.advise(readings(known), Listener.NONE);
				boolean possible = true;
				for (int i = 0; i < points; i++) {
					for (int j = i + 1; j < points; j++) {
						possible &= !(known[i] == WRONG && known[j] == RIGHT);
					}
				}
				String label = points + " points, " + java.util.Arrays.toString(known);
				assertEquals(possible, advice.clashes().isEmpty(), label);
				if (possible) {
					lawful++;
					Set<String> said = new TreeSet<>();
					advice.verdicts().forEach(derived -> said.add(derived.verdict().fault() + " " + derived.verdict().kind()));
					assertEquals(expected(known, double0), said, label);
				}
			}
			assertTrue(lawful > points, "lawful states: " + lawful);
		}
	}

	/** Whatever is measured, the true fault is never cleared, no other one is confirmed, and all points find it. */
	@ParameterizedTest
	@ValueSource(ints = { 2, 4, 6 })
	void neverClearsTheTrueFaultAndNeverConfirmsAnother(int points) {
		RuleBase base = line(points, -1);
		Consultation consultation = Consultations.of(base, "van");
		for (int fault = 0; fault < points; fault++) {
			for (int measured = 0; measured < 1 << points; measured++) {
				int[] known = new int[points];
				for (int i = 0; i < points; i++) {
					known[i] = (measured >> i & 1) == 0 ? OPEN : i < fault ? RIGHT : WRONG;
				}
				List<Verdict> verdicts = consultation.advise(readings(known), Listener.NONE).verdicts().stream()
						.map(derived -> derived.verdict()).toList();
				String truth = "line.f" + fault;
				assertTrue(verdicts.stream().noneMatch(verdict -> verdict.equals(new Verdict(truth, VerdictKind.CLEARED))));
				assertTrue(verdicts.stream().noneMatch(verdict -> verdict.kind() == VerdictKind.CONFIRMED && !verdict.fault().equals(truth)));
				boolean bracketed = known[fault] == WRONG && (fault == 0 || known[fault - 1] == RIGHT);
				assertEquals(bracketed, verdicts.contains(new Verdict(truth, VerdictKind.CONFIRMED)));
			}
		}
	}
}
