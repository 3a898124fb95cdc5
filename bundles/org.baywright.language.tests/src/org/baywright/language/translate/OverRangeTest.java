package org.baywright.language.translate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Fix;
import org.baywright.analysis.check.BandGap;
import org.baywright.analysis.check.BandOverlap;
import org.baywright.analysis.check.Contradiction;
import org.baywright.analysis.check.FailingJob;
import org.baywright.analysis.check.Gap;
import org.baywright.analysis.check.UnusedResult;
import org.baywright.analysis.check.VerifyExpectsFault;
import org.baywright.language.testing.MarkedFlaws;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.IndexSet;
import org.baywright.model.ProblemKind;
import org.baywright.model.Rule;
import org.junit.jupiter.api.Test;

/** What an instrument shows beyond its range, in all checks that it concerns. */
class OverRangeTest {

	private static final String BASE = """
			family tarn
			sign dead
			part wire { fault broken fault corroded }
			test ohms "Resistance" { measures Ohm 0 .. 200 step 1 over open_line "open line" }
			""";

	@Test
	void aLastBandThatEndsWithTheRangeLeavesItOut() {
		MarkedFlaws.check(BandGap.class, BASE + """
				rule a {
				  given dead
				  run ohms
				//    ^^^^ warning band-gap: Rule a says nothing about open line, which lies beyond its bands; extend one of them.
				  on at_most 5 Ohm    : clears wire.broken
				  on 6 Ohm .. 200 Ohm : confirms wire.broken
				}
				rule b { given dead run ohms on at_most 5 Ohm : clears wire.broken on above 5 Ohm : confirms wire.broken }
				rule c { given dead run ohms on at_most 5 Ohm : clears wire.broken on 6 Ohm .. 200 Ohm, open_line : confirms wire.broken }
				rule d { given dead run ohms on at_most 5 Ohm : clears wire.broken on 6 Ohm .. 200 Ohm : confirms wire.broken on open_line : suspects wire.broken }
				rule e { given dead run ohms on at_most 5 Ohm : clears wire.broken otherwise : confirms wire.broken }
				rule f { given dead run ohms expect at_most 5 Ohm met : clears wire.broken above : confirms wire.broken }
				""");
	}

	@Test
	void belowTheRangeLikewise() {
		MarkedFlaws.check(BandGap.class, BASE.replace("over open_line \"open line\"", "under minus") + """
				rule a { given dead run ohms on 0 Ohm .. 5 Ohm : clears wire.broken on above 5 Ohm : confirms wire.broken }
				//                      ^^^^ warning band-gap: Rule a says nothing about minus, which lies beyond its bands; extend one of them.
				rule b { given dead run ohms on at_most 5 Ohm : clears wire.broken on above 5 Ohm : confirms wire.broken }
				rule c { given dead run ohms on below 0 Ohm : proves nothing on 0 Ohm .. 5 Ohm : clears wire.broken on above 5 Ohm : confirms wire.broken }
				""");
	}

	@Test
	void aBandThatTakesItAndItsNameOverlap() {
		MarkedFlaws.check(BandOverlap.class, BASE + """
				rule a {
				  given dead
				  run ohms
				  on above 100 Ohm : suspects wire.corroded
				  on open_line     : confirms wire.broken
				//^^^^^^^^^^^^ error band-overlap: In rule a, open line belongs to two outcomes: "on above 100 Ohm" and "on open_line"; leave it to one of them.
				//   also: line 8 (the other outcome)
				}
				""");
	}

	@Test
	void nobodyUsesIt() {
		MarkedFlaws.check(UnusedResult.class, BASE.replace("test ohms \"Resistance\"", "test ohms")
				.replace(" }\n", " }\n//   ^^^^ warning unused-result: No rule uses the result open line of test ohms; say what it proves, or that it proves nothing.\n")
				.replace("corroded }\n//   ^^^^ warning unused-result: No rule uses the result open line of test ohms; say what it proves, or that it proves nothing.", "corroded }")
				+ "rule a { given dead run ohms on 0 Ohm .. 200 Ohm : clears wire.broken }\n");
		MarkedFlaws.check(UnusedResult.class, BASE + "rule a { given dead run ohms on at_least 0 Ohm : clears wire.broken }\n");
		MarkedFlaws.check(UnusedResult.class, BASE + """
				rule a { given dead run ohms on 0 Ohm .. 200 Ohm : clears wire.broken }
				rule b { given dead, ohms is open_line then suspects wire.broken }
				""");
	}

	/** The smallest situation is the open line itself where nothing else is meant by both. */
	@Test
	void rulesThatSayOppositeThingsOfIt() {
		Flaw clash = MarkedFlaws.of(BASE + """
				rule a { given dead run ohms on above 100 Ohm : clears wire.broken }
				rule b { given dead run ohms on open_line : confirms wire.broken }
				""").only(Contradiction.class);
		assertTrue(clash.story().contains("Resistance: open line"), clash.story().toString());
		assertEquals(List.of(), MarkedFlaws.of(BASE + """
				rule a { given dead run ohms on 100 Ohm .. 200 Ohm : clears wire.broken }
				rule b { given dead run ohms on open_line : confirms wire.broken }
				""").of(Contradiction.class));
	}

	@Test
	void aSignThatNobodyAnswersWithIt() {
		String rule = "rule a { given dead run ohms on at_most 5 Ohm : refers \"the painter\" on 6 Ohm .. 200 Ohm : confirms wire.broken }\n";
		Flaw gap = MarkedFlaws.of(BASE + rule).only(Gap.class);
		assertTrue(gap.story().contains("Resistance: open line"), gap.story().toString());
		assertEquals(List.of(), MarkedFlaws.of(BASE + rule.replace("6 Ohm .. 200 Ohm", "above 5 Ohm")).of(Gap.class));
	}

	@Test
	void aJobThatFoundIt() {
		String rule = "rule a { given dead run ohms on above 100 Ohm : confirms wire.broken }\n";
		String job = "job \"1\" { on tarn found dead, ohms open_line was wire.broken }\n";
		assertEquals(List.of(), MarkedFlaws.of(BASE + rule + job).problems());
		assertEquals(List.of(), MarkedFlaws.of(BASE + rule + job).of(FailingJob.class));
		assertEquals(1, MarkedFlaws.of(BASE + rule.replace("above 100 Ohm", "101 Ohm .. 200 Ohm") + job).of(FailingJob.class).size());
	}

	@Test
	void aVerificationThatPassesWithIt() {
		Flaw flaw = MarkedFlaws.of(BASE + """
				rule a { given dead run ohms on open_line : confirms wire.broken }
				repair splice { fixes wire.broken verify { repeat ohms expect above 100 Ohm } }
				""").only(VerifyExpectsFault.class);
		assertTrue(flaw.message().contains("passes with \"open line\" in test ohms"), flaw.message());
		assertEquals("repeat ohms expect 101 Ohm .. 200 Ohm", ((Fix.RewriteText) flaw.fixes().get(0)).now());
	}

	@Test
	void belowAndAboveOfWhatIsExpected() {
		assertEquals(IndexSet.range(6, 201), outcome("expect at_most 5 Ohm met : proves nothing above", 1));
		assertEquals(IndexSet.range(0, 200), outcome("expect open_line met : proves nothing below", 1));
		assertEquals(IndexSet.range(0, 5), outcome("expect above 5 Ohm met : proves nothing below", 1));
		assertEquals(IndexSet.range(201, 201), outcome("expect 0 Ohm .. 5 Ohm, open_line met", 0).intersect(IndexSet.range(6, 201)));
		assertEquals(List.of(ProblemKind.NOTHING_BEYOND), problems("expect 0 Ohm .. 5 Ohm, open_line met : proves nothing above : proves nothing"));
		assertEquals(List.of(ProblemKind.NUMBER_NEEDED), problems("on broken : proves nothing"));
		assertEquals(List.of(ProblemKind.VALUE_TWICE), kinds(BASE.replace("over", "under open_line over")));
	}

	private static IndexSet outcome(String outcomes, int which) {
		Snapshot snapshot = read(BASE + "rule a { given dead run ohms " + outcomes + " : suspects wire.broken }\n");
		Rule rule = snapshot.rules().rule("a").orElseThrow(() -> new AssertionError(snapshot.problems().toString()));
		return rule.outcomes().get(which).values().orElseThrow().in(snapshot.rules().test("ohms").orElseThrow().domain());
	}

	private static List<ProblemKind> problems(String outcomes) {
		return kinds(BASE + "rule a { given dead run ohms " + outcomes + " because \"x\" source practice by \"R. Falk\" on 2026-03-02 }\n");
	}

	private static List<ProblemKind> kinds(String text) {
		return read(text).problems().stream().map(problem -> problem.kind()).toList();
	}

	private static Snapshot read(String text) {
		RuleProject project = RuleProject.inMemory("small");
		project.update("small.bay", text);
		return project.snapshot();
	}
}
