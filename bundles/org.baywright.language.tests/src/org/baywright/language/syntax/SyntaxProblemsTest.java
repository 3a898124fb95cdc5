package org.baywright.language.syntax;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.baywright.language.testing.MarkedText;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Problem;
import org.junit.jupiter.api.Test;

class SyntaxProblemsTest {

	@Test
	void aMissingValueIsNamed() {
		MarkedText.check("""
				rule r1 {
				  run rest_voltage
				  expect
				  met : clears battery.discharged
				  ^^^ error syntax: `met` does not fit here. > After `expect` comes a value with its unit, such as 12.4 V, the name of a value, `below`, `at_most`, `above` or `at_least`.
				}
				""");
	}

	@Test
	void aMisspeltWordIsRecognised() {
		MarkedText.check("""
				rule r1 { givven no_crank then proves nothing }
				          ^^^^^^ error syntax: `givven` does not fit here. > Did you mean `given`?
				ruel r2 { given no_crank then proves nothing }
				sign s1
				test t1 { measures V 0 .. 18 stpe 0.1 }
				                             ^^^^ error syntax: `stpe` does not fit here. > Did you mean `step`?
				repair p1 { fixes battery.discharged verify { clear bcm cycle ignition raed bcm } }
				                                                                       ^^^^ error syntax: `raed` does not fit here. > Did you mean `read`?
				sign s2
				""");
	}

	@Test
	void aWordOfTheLanguageIsNoName() {
		MarkedText.check("""
				sign present "Present"
				     ^^^^^^^ error syntax: `present` is a word of the language, so it cannot be a name as it stands. > Write `^present`, or choose another name.
				sign ^absent "Absent"
				rule r1 { given ^absent then proves nothing }
				""");
	}

	@Test
	void aMissingBraceIsNoticed() {
		MarkedText.check("""
				rule r1 { given no_crank then proves nothing
				                                           ^ error syntax: The text ends before the rule `r1` is complete. > Add `}` at its end, or what is missing in it.
				""");
	}

	@Test
	void aTextEndsOnItsLine() {
		MarkedText.check("""
				sign s1 "Lamp flickers
				        ^^^^^^^^^^^^^^ error syntax: This text has no quote at its end. > Write " at its end, on the same line.
				sign s2 "Lamp is dark"
				""");
	}

	@Test
	void aSignHoldsNoCode() {
		MarkedText.check("""
				sign s1 "Does not start" code "B1207"
				                         ^^^^^^^^^^^^ error syntax: A sign holds no trouble code. > Define the code in a line of its own, with the module that stores it, such as `code b1207 on body = dtc B1207`. In a rule name both: `given s1, b1207 present`.
				sign s2 intermittent code U3003 // seen twice
				                     ^^^^^^^^^^ error syntax: A sign holds no trouble code. > Define the code in a line of its own, with the module that stores it, such as `code u3003 on body = dtc U3003`. In a rule name both: `given s2, u3003 present`.
				sign s3 "Smells" dtc P0562
				                 ^^^^^^^^^ error syntax: A sign holds no trouble code. > Define the code in a line of its own, with the module that stores it, such as `code p0562 on body = dtc P0562`. In a rule name both: `given s3, p0562 present`.
				sign s4 "Hums" code c4 on bcm = dtc P0562
				// sign s6 "Hums" code B1207
				sign s7 "sign x code B1207" code c7
				  on bcm = dtc P0563
				sign s5 code "12"
				        ^^^^^^^^^ error syntax: A sign holds no trouble code. > Define the code in a line of its own, with the module that stores it, such as `code b1207 on body = dtc B1207`. In a rule name both: `given s5, b1207 present`.
				tool lamp "Lamp"
				part pump { fault worn }
				rule r1 { given s5 then suspects pump.worn }
				""");
	}

	@Test
	void aWholeTextHasItsQuote() {
		MarkedText.check("""
				sign s1 "Does not start" "It does not"
				                         ^^^^^^^^^^^^^ error syntax: `"It does not"` does not fit here. > After `"Does not start"` comes `intermittent`, `for`, `do_not_drive`, `do_not_start`, `make_safe`, `base`, `family`, `system` and so on.
				""");
	}

	@Test
	void aCommentEnds() {
		MarkedText.check("""
				sign s1
				/* The rest was
				^^ error syntax: This comment has no end. > Write */ at its end.
				sign s2
				""");
	}

	@Test
	void quotesAreStraight() {
		MarkedText.check("""
				sign s1 “Lamp flickers”
				        ^ error syntax: Quotes are written straight here, as ". > Replace the typographic quotes by ".
				sign s2
				""");
	}

	@Test
	void linesEndWithoutSemicolon() {
		MarkedText.check("""
				sign s1;
				       ^ error syntax: Lines end without `;` here. > Take it out.
				sign s2;
				       ^ error syntax: Lines end without `;` here. > Take it out.
				""");
	}

	@Test
	void numbersHaveAPoint() {
		MarkedText.check("""
				rule r1 { run rest_voltage expect 12,4 V .. 13,0 V met : proves nothing }
				                                  ^^^^ error syntax: `12,4` is written with a comma. > Write `12.4`, with a point.
				                                            ^^^^ error syntax: `13,0` is written with a comma. > Write `13.0`, with a point.
				rule r2 { run rest_voltage expect 12,4 V met : proves nothing }
				                                  ^^^^ error syntax: `12,4` is written with a comma. > Write `12.4`, with a point.
				rule r3 { given rest_voltage < 9,5 V then proves nothing }
				                               ^^^ error syntax: `9,5` is written with a comma. > Write `9.5`, with a point.
				""");
	}

	@Test
	void outcomesHaveAColon() {
		MarkedText.check("""
				rule r1 { run rest_voltage expect 12.4 V met clears battery.discharged }
				                                             ^^^^^^ error syntax: `clears` does not fit here. > After `met` comes `:`.
				""");
	}

	@Test
	void conclusionsNameFaults() {
		MarkedText.check("""
				rule r1 { given no_crank then confirms }
				                                       ^ error syntax: `}` does not fit here. > After `confirms` comes a fault, such as battery.discharged.
				""");
	}

	@Test
	void textBetweenElementsHidesNothing() {
		MarkedText.check("""
				sign s1
				12 V and more
				^^ error syntax: `12` does not fit here. > After `s1` comes a text in quotes, `intermittent`, `for`, `do_not_drive`, `do_not_start`, `make_safe`, `base`, `family` and so on.
				sign s2
				} sign s3
				rule r1 { given s1, s2, s3 then proves nothing }
				""");
	}

	@Test
	void codesSayTheirForm() {
		MarkedText.check("""
				code c1 on bcm = U3003
				                 ^^^^^ error syntax: `U3003` does not fit here. > After `=` comes `dtc`, `j1939` or `raw`.
				code c2 on bcm = dtc
				sign s1
				^^^^ error syntax: `sign` does not fit here. > After `dtc` comes the code as the scan tool shows it, such as U3003.
				""");
	}

	@Test
	void datesOfOtherFormsAreToldHowToBeWritten() {
		MarkedText.check("""
				accept "gap:x@00000001" because "Known." by "A" on 29.11.2026
				                                                   ^^^^^^^^^^ error syntax: `29.11.2026` is no date as it is written here. > Write `2026-11-29`.
				accept "gap:x@00000002" because "Known." by "A" on 11/29/2026
				                                                   ^^^^^^^^^^ error syntax: `11/29/2026` is no date as it is written here. > Write `2026-11-29`.
				accept "gap:x@00000003" because "Known." by "A" on 3.4.2026
				                                                   ^^^^^^^^ error syntax: `3.4.2026` is no date as it is written here. > Write the date as year-month-day, such as 2026-03-02.
				accept "gap:x@00000004" because "Known." by "A" on 29-11-2026
				                                                   ^^^^^^^^^^ error wrong-date: There is no date 29-11-2026. > Write `2026-11-29`.
				accept "gap:x@00000005" because "Known." by "A" on 31-02-2026
				                                                   ^^^^^^^^^^ error wrong-date: There is no date 31-02-2026. > Write the date as year-month-day, such as 2026-03-02.
				""");
	}

	@Test
	void aJobThatDoesNotEndIsCalledAJob() {
		MarkedText.check("""
				job "Job 1" {
				job "Job 2" {
				^^^ error syntax: `job` begins before the job `Job 1` ends. > Add `}` before it, or what is missing there.
				}
				""");
	}

	@Test
	void theTextMayEndAnywhere() {
		MarkedText.check("""
				law "x" : when no_crank then
				                           ^ error syntax: The text ends before the law is complete. > After `then` comes a condition, such as no_crank.
				""");
	}

	@Test
	void whatNobodyCanReadIsTold() {
		MarkedText.check("""
				sign s1 "A\u202Eb"
				          ^ error hidden-character: A character that does not show stands here: U+202E. > Take it out.
				sign s2 "x\uFFFD"
				          ^ error lost-letter: A letter was lost here; in its place stands U+FFFD. > Write the letter again.
				// in a comment \u0007
				                ^ error hidden-character: A character that does not show stands here: U+0007. > Take it out.
				tool t1 cost 1234567890123456
				             ^^^^^^^^^^^^^^^^ error number-too-long: A number with 16 digits is not read. > Write at most 15 digits before and after the point.
				sign s3 "\u05E9\u200F, \u00E9, \uD83D\uDE97 and 123456789012345678"
				tool t2 cost 123456789012345.123456789012345
				""");
	}

	/** The properties are those of the Unicode Standard; see {@code Invisible}. */
	@Test
	void whatDoesNotShowIsToldInNamesAndTexts() {
		for (int c : new int[] { 0x61C, 0x180E, 0x34F, 0x3164, 0x115F, 0x1160, 0xFFA0, 0xAD, 0x200B, 0x200D, 0x200F, 0xFE0F, 0xFEFF,
				0xA0, 0x1680, 0x3000, 0x2028, 0xE0041, 0xE000 }) {
			assertHidden("sign no" + Character.toString(c) + "crank \"A\"\n", c);
			assertHidden("sign a" + Character.toString(c) + " \"A\"\n", c);
		}
		for (int c : new int[] { 0xAD, 0x2028, 0x2029, 0xFFF9, 0xFFFB, 0xE0001, 0xE007F, 0xFFFF, 0x1FFFE, 0xFDD0, 0xFFFD, 0x202E, 7,
				0xD800, 0x3164 }) {
			assertHidden("sign a \"x" + Character.toString(c) + "y\"\n", c);
			assertHidden("// x" + Character.toString(c) + "y\n", c);
		}
		for (String shown : new String[] { "\u26A0\uFE0F", "\u26A0\uFE0E", "\uD83D\uDC68\u200D\uD83D\uDD27", "\u0646\u200C\u0646", "5\u00A0V",
				"\u00E4\u0308", "\uD83D\uDE97" }) {
			assertEquals(List.of(), problems("sign a \"" + shown + "\" // " + shown + "\n"), shown);
		}
	}

	private static void assertHidden(String text, int c) {
		List<Problem> problems = problems(text);
		String kind = c == 0xFFFD ? "lost-letter" : "hidden-character";
		assertEquals(List.of(kind), problems.stream().map(Problem::id).toList(), () -> problems + " U+" + Integer.toHexString(c));
		assertTrue(problems.get(0).message().contains(String.format("U+%04X.", c)), problems::toString);
		assertEquals(text.indexOf(Character.toString(c)), problems.get(0).span().offset());
	}

	@Test
	void aTextWithoutMeasureIsRefused() {
		List<Problem> problems = problems("sign s \"" + "a".repeat(5_000) + "\"\n");
		assertEquals(List.of("text-too-long"), problems.stream().map(Problem::id).toList());
	}

	/** It took more than a quarter of a minute for 5,000 lines, and never ended for 20,000. */
	@Test
	void whatIsNoTextOfRulesIsNotToldLineByLine() {
		List<Problem> problems = problems("family a \"A\" {\n".repeat(20_000));
		assertEquals(51, problems.stream().filter(problem -> problem.id().equals("syntax")).count());
	}

	private static List<Problem> problems(String text) {
		RuleProject project = RuleProject.inMemory("x");
		project.update("x.bay", text);
		return project.snapshot().problems();
	}
}
