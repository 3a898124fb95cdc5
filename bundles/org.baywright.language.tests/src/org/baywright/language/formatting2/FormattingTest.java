package org.baywright.language.formatting2;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import org.baywright.language.testing.Meaning;
import org.baywright.language.testing.Samples;
import org.baywright.language.workspace.RuleProject;
import org.eclipse.xtext.nodemodel.ILeafNode;
import org.junit.jupiter.api.Test;

class FormattingTest {

	private static final long SEED = 20260302;
	private static final int RANDOM_LAYOUTS = 20;

	private static String format(RuleProject project, String file) {
		Formatting formatting = project.services().getInstance(Formatting.class);
		return formatting.format(project.resource(file).orElseThrow()).orElseThrow();
	}

	private static String format(String text) {
		RuleProject project = RuleProject.inMemory("one");
		project.update("a.bay", text);
		return format(project, "a.bay");
	}

	@Test
	void whatIsShownBeyondARangeStaysBesideIt() {
		assertEquals("""
				test ohms {
				  measures Ohm 0 .. 200 step 1 under minus over open_line "open line"
				  takes 1 min
				}
				""", format("test ohms{measures Ohm 0..200 step 1 under\nminus over  open_line\"open line\" takes 1 min}"));
	}

	@Test
	void aPictureIsALineOfItsOwn() {
		assertEquals("""
				part p "P" place "Left" {
				  picture "a.png" "A"
				  picture "b.png" "B"
				  fault f
				}
				test t {
				  results a, b
				  picture "a.png" "A"
				  picture "b.png" "B"
				}
				""", format("part p \"P\" place \"Left\"{picture \"a.png\" \"A\" picture \"b.png\"  \"B\"\nfault f}\ntest t{\nresults a,b picture \"a.png\" \"A\" picture \"b.png\" \"B\"}"));
	}

	@Test
	void oneClauseALine() {
		assertEquals("""
				rule r "R" {
				  for tarn where engine is not petrol
				  given a is lit, b < 9 V or (c is dark)
				  run b
				  expect 12.4 V .. 13 V
				  met       : clears battery.discharged
				  below     : suspects battery.discharged, battery.open
				  otherwise : refers "x"
				  because "y"
				  source practice
				  by "A" on 2026-03-02
				}
				""", format("""
				rule r "R"{for tarn where engine is not petrol given a is lit,b<9V or(c is dark)run b
				expect 12.4V..13 V met:clears battery.discharged
				below:suspects battery.discharged,battery.open otherwise:refers "x"
				because "y" source practice by "A"on 2026-03 - 02 }"""));
	}

	@Test
	void tablesStandInColumns() {
		assertEquals("""
				part battery "Battery" {
				  fault discharged "Low"           seen 3
				  fault open       "One cell open" seen 12
				  fault worn
				}
				family tarn {
				  trait engine : diesel, petrol
				  trait built  : year 2015 .. 2021
				  vin "WZZ"
				}
				""", format("""
				part battery "Battery" {
				fault discharged "Low" seen 3
				fault open "One cell open" seen 12
				fault worn }
				family tarn {
				trait engine:diesel,petrol
				trait built:year 2015..2021 vin "WZZ" }
				"""));
	}

	@Test
	void aBlockOnOneLineStaysThere() {
		String text = """
				test lamp "Lamp" { results lit, dark  in ignition on  takes 1 min }
				repair charge {
				  fixes battery.discharged
				  verify { clear bcm  cycle ignition  read bcm }
				}
				""";
		assertEquals(text, format(text));
	}

	@Test
	void breaksInListsStayAndNoOthersAreMade() {
		String text = """
				rule r {
				  given a_rather_long_name_of_a_sign, another_rather_long_name_of_a_sign, and_one_more_rather_long_name_of_a_sign,
				    the_last_one or
				    not this
				  then proves nothing
				}
				""";
		assertEquals(text, format(text));
	}

	@Test
	void commentsStayWhereTheyAre() {
		String text = """
				// at the head

				/* several
				     lines */
				sign a   // behind
				family tarn {
				  // above
				  trait engine : diesel, petrol   // behind, in a column
				  vin "WZZ"                       // behind, in a column

				  // below
				}
				// at the foot
				""";
		assertEquals(text, format(text));
	}

	@Test
	void emptyLinesAreKeptOneAtATime() {
		assertEquals("sign a\n\nsign b\nsign c\n", format("sign a\n\n\n\nsign b\nsign c\n\n\n"));
	}

	@Test
	void stringsStandBelowEachOtherWhereTheAuthorBrokeTheLine() {
		assertEquals("""
				repair charge {
				  fixes battery.discharged
				  steps "One." "Two."
				        "Three." // why four
				        // and five
				        "Four."
				  tell_customer "x"
				}
				""", format("""
				repair charge {
				fixes battery.discharged steps "One." "Two."
				"Three." // why four
				// and five
				  "Four."
				  tell_customer "x" }
				"""));
	}

	@Test
	void aLineBelowAWordOfTheLineAboveStaysThere() {
		String text = """
				job "Job 1" {
				  on tarn
				  found no_crank, rest_voltage 11.6 V,
				        slow_crank,
				    charge_lamp dark,
				                  lift_dead
				  was battery.discharged
				}
				law "x" : when rest_voltage < 9 V
				          then no_crank
				accept "gap@1f"
				  because "y"
				""";
		assertEquals(text, format(text));
		assertEquals(text, format(text.replace("  found no_crank", "    found no_crank").replace("        slow", "          slow")
				.replace("                  lift", "                    lift")));
	}

	@Test
	void verifyStepsStayTogether() {
		String text = """
				repair charge {
				  verify {
				    set ignition on  clear bcm  cycle ignition
				    read bcm  expect low_supply absent

				    repeat what confirmed
				  }
				}
				""";
		assertEquals(text, format(text));
		assertEquals(text, format(text.replace("  clear", " clear").replace("    ", "\t")));
	}

	@Test
	void titlesOfNeighbouringElementsKeepTheirColumn() {
		assertEquals("""
				code low  "Low" on bcm = dtc U3003
				code high "High" on bcm = dtc U3004 // behind
				code a    "A" on bcm = raw "1"

				code lower "Lower" on bcm = raw "2"
				sign b "B"
				sign ccc "C"
				""", format("""
				code low   "Low" on bcm = dtc U3003
				code high  "High" on bcm = dtc U3004 // behind
				code a "A" on bcm = raw "1"

				code lower   "Lower" on bcm = raw "2"
				sign b "B"
				sign ccc "C"
				"""));
	}

	@Test
	void conclusionsStandApartAndKeepTheirColumn() {
		assertEquals("""
				rule r {
				  on lit  : clears a.b  suspects c.d
				  on dark : confirms a.b  clears c.d, e.f
				}
				rule s {
				  on lit  : clears a.b    suspects c.d
				  on dark : confirms a.b  clears c.d
				}
				rule t {
				  on lit : clears a.b
				           suspects c.d
				}
				""", format("""
				rule r {
				  on lit : clears a.b suspects c.d
				  on dark : confirms a.b  clears c.d, e.f
				}
				rule s {
				  on lit  : clears a.b     suspects c.d
				  on dark : confirms a.b  clears c.d
				}
				rule t {
				  on lit : clears a.b
				           suspects c.d
				}
				"""));
	}

	@Test
	void anEmptyLineBesideACommentIsKept() {
		String text = """
				// the head of the file

				// ---- a section ----

				sign a

				// ---- another section ----

				/* several
				     lines */

				sign b
				// close to the next
				sign c
				rule r {
				  given a
				  // apart from what follows

				  then proves nothing
				}

				// at the foot
				""";
		assertEquals(text, format(text));
		assertEquals(text, format(text.replace("\n\n", "\n\n\n\n")));
	}

	@Test
	void aFileWithASyntaxErrorIsLeftAlone() {
		RuleProject project = RuleProject.inMemory("one");
		project.update("a.bay", "rule r { givven x }");
		Formatting formatting = project.services().getInstance(Formatting.class);
		assertEquals(Optional.empty(), formatting.format(project.resource("a.bay").orElseThrow()));
	}

	@Test
	void theSamplesAreWellLaidOut() {
		RuleProject project = Samples.tarnInMemory();
		for (String file : project.files()) {
			assertEquals(project.snapshot().sources().get(file), format(project, file), file);
		}
	}

	@Test
	void formattingTwiceChangesNothingAndNeverTheMeaning() {
		for (Path sample : Samples.all()) {
			Random random = new Random(SEED);
			SortedMap<String, String> texts = Samples.texts(sample);
			RuleProject project = RuleProject.inMemory("sample");
			texts.forEach(project::update);
			String meaning = Meaning.of(project.snapshot().rules());
			assertTrue(meaning.length() > 0);
			for (Map.Entry<String, String> entry : texts.entrySet()) {
				for (int i = 0; i < RANDOM_LAYOUTS; i++) {
					project.update(entry.getKey(), entry.getValue());
					if (i > 0) {
						project.update(entry.getKey(), shake(project, entry.getKey(), random, i % 2 == 0));
					}
					List<String> comments = comments(project, entry.getKey());
					String once = format(project, entry.getKey());
					project.update(entry.getKey(), once);
					assertEquals(once, format(project, entry.getKey()), entry.getKey());
					assertEquals(meaning, Meaning.of(project.snapshot().rules()), entry.getKey());
					assertEquals(comments, comments(project, entry.getKey()));
				}
			}
		}
	}

	private static List<String> comments(RuleProject project, String file) {
		List<String> comments = new ArrayList<>();
		for (ILeafNode leaf : leaves(project, file)) {
			if (leaf.isHidden() && !leaf.getText().isBlank()) {
				comments.add(leaf.getText());
			}
		}
		return comments;
	}

	private static Iterable<ILeafNode> leaves(RuleProject project, String file) {
		return project.resource(file).orElseThrow().getParseResult().getRootNode().getLeafNodes();
	}

	/** The same words and comments with other blanks between them, and perhaps with more comments. */
	private static String shake(RuleProject project, String file, Random random, boolean moreComments) {
		String[] blanks = { " ", "  ", "\n", "\t", "\n\n\n", " \n  ", " " };
		StringBuilder out = new StringBuilder();
		boolean lineComment = false;
		for (ILeafNode leaf : leaves(project, file)) {
			if (leaf.getText().isBlank()) {
				out.append(lineComment ? "\n" : "").append(blanks[random.nextInt(blanks.length)]);
				lineComment = false;
				if (moreComments && random.nextInt(12) == 0) {
					lineComment = random.nextBoolean();
					out.append(lineComment ? "// by chance" : "/* by chance */ ");
				}
			} else {
				if (lineComment) {
					out.append('\n');
				}
				out.append(leaf.getText());
				lineComment = leaf.getText().startsWith("//");
			}
		}
		return out.toString();
	}

	@Test
	void aWorkshopAndTimesOfStates() {
		assertEquals("""
				state net "Network" : awake, asleep "Asleep" takes 20 min, off
				workshop "Yard" {
				  hour 72
				  scan each takes 4 min cost 0 needs scan_tool, meter
				  scan all
				  lacks recorder, meter
				  skill trained
				}
				workshop { hour 72  scan all takes 6 min  skill basic }
				""", format("state net \"Network\":awake,asleep \"Asleep\"  takes 20min , off\nworkshop \"Yard\"{hour 72 scan each takes 4 min\n"
				+ "cost 0 needs scan_tool,meter scan all lacks recorder ,meter skill trained}\nworkshop{hour 72 scan all takes 6 min skill basic}"));
	}
}
