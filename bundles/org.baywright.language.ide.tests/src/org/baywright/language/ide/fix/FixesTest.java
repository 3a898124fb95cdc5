package org.baywright.language.ide.fix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.Kinds;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FixesTest {

	private static void apply(RuleProject project, QuickFix fix) {
		for (Map.Entry<String, List<TextEdit>> entry : fix.edits().entrySet()) {
			project.update(entry.getKey(), Edits.apply(project.source(entry.getKey()).orElseThrow().text(), entry.getValue()));
		}
	}

	/** Applies the fix with a title at the cursor: the text is as told, its problem is gone, and there is no new one. */
	private static void fix(String marked, String title, String after) {
		Cursor cursor = Cursor.in(marked);
		RuleProject project = cursor.services().project();
		List<QuickFix> fixes = cursor.services().fixes(Cursor.FILE, cursor.offset(), 0, project.snapshot(), Optional.empty());
		QuickFix chosen = fixes.stream().filter(found -> found.title().equals(title)).findFirst().orElseThrow(
				() -> new AssertionError(fixes.stream().map(QuickFix::title).toList() + " " + project.snapshot().problems()));
		List<Problem> before = project.snapshot().problems();
		Problem answered = before.stream().filter(problem -> problem.id().equals(chosen.about())
				&& problem.span().offset() <= cursor.offset() && cursor.offset() <= problem.span().offset() + problem.span().length())
				.findFirst().orElseThrow();
		apply(project, chosen);
		assertEquals(after, project.source(Cursor.FILE).orElseThrow().text());
		List<Problem> now = project.snapshot().problems();
		List<String> known = before.stream().map(Problem::message).toList();
		assertTrue(now.stream().noneMatch(problem -> problem.message().equals(answered.message())), answered::message);
		// what cannot be read hides what else is wrong with its element; where the cursor then stands, the author writes
		assertEquals(List.of(), now.stream().filter(problem -> !answered.id().equals("syntax") || problem.id().equals("syntax"))
				.filter(problem -> chosen.next().isEmpty() || !problem.id().equals("empty-text"))
				.filter(problem -> !known.contains(problem.message())).map(Problem::message).toList());
	}

	@Test
	void slipsOfThePen() {
		fix("rule a { given no_cra@k }", "Write no_crank", "rule a { given no_crank }");
		fix("rule a { run lampp@ }", "Write lamp", "rule a { run lamp }");
		fix("rule a { then confirms battery.fla@ }", "Write battery.flat", "rule a { then confirms battery.flat }");
		fix("rulle@ a { }", "Write rule", "rule a { }");
		fix("sign smoke\ntest t { results a, b }@}}\n}\n// the end\n", "Take it out", "sign smoke\ntest t { results a, b }\n// the end\n");
		fix("law \"x\" : when lamp is drak@ then no_crank", "Write dark", "law \"x\" : when lamp is dark then no_crank");
		assertEquals(List.of(), titles("law \"x\" : when lamp is purple@ then no_crank"), "what is not near was not meant");
		// of two that are equally near either may be meant
		assertEquals(List.of("Write dim", "Write dip"), titles("test beam { results dim, dip }\nrule a { run beam on dix@ : }"));
	}

	private static List<String> titles(String marked) {
		Cursor cursor = Cursor.in(marked);
		return cursor.services().fixes(Cursor.FILE, cursor.offset(), 0, cursor.services().project().snapshot(), Optional.empty())
				.stream().filter(fix -> fix.about().startsWith("unknown-")).map(QuickFix::title).toList();
	}

	@Test
	void units() {
		fix("law \"x\" : when rest_voltage < 9@ then no_crank", "Write 9 V", "law \"x\" : when rest_voltage < 9 V then no_crank");
		fix("test t { results a, b takes 5@ }", "Write 5 min", "test t { results a, b takes 5 min }");
		fix("law \"x\" : when rest_voltage < 9 volt@ then no_crank", "Write V", "law \"x\" : when rest_voltage < 9 V then no_crank");
		fix("law \"x\" : when rest_voltage < 9.05 V@ then no_crank", "Write 9.0 V",
				"law \"x\" : when rest_voltage < 9.0 V then no_crank");
	}

	@Test
	void signsOfTheKeyboard() {
		fix("rule a { because \"x@\n}", "Close the text", "rule a { because \"x\"\n}");
		fix("part a {\n  fault dead\n\n@sign b\n", "Close the element above", "part a {\n  fault dead\n}\n\nsign b\n");
		fix("part a \"Oil sensor@ {\n  fault dead\n}", "Close the text", "part a \"Oil sensor\" {\n  fault dead\n}");
		fix("sign a \u201CTi@tle\u201D\n".replace("Ti@tle", "Title").replace("\u201CT", "@\u201CT"), "Write straight quotes",
				"sign a \"Title\"\n");
		fix("law \"x\" : when rest_voltage < 9,@5 V then no_crank", "Write 9.5",
				"law \"x\" : when rest_voltage < 9.5 V then no_crank");
		fix("sign given@", "Write ^given", "sign ^given");
		fix("sign\u00A0\u00A0@a\n", "Write a plain space", "sign a\n");
		fix("sign no\u00AD@crank\n".replace("crank", "_go"), "Take it out", "sign no_go\n");
		fix("sign a;@\n", "Take it out", "sign a\n");
	}

	@Test
	void whatIsSeenWithAnotherTest() {
		fix("test t {\n  seen_with lamp\n  results a, b\n  takes@ 5 min // long\n}", "Take it out", "test t {\n  seen_with lamp\n  results a, b\n  takes@ 5 min // long\n}".replace("takes@ 5 min ", ""));
		fix("test t {\n  seen_with lamp\n  takes@ 5 min\n  results a, b\n}", "Take it out", "test t {\n  seen_with lamp\n  results a, b\n}");
		fix("test t { seen_with lamp wait@ 5 min results a, b }", "Take it out", "test t { seen_with lamp results a, b }");
		fix("test s { seen_with lamp results a, b }\ntest t { seen_with s@ results a, b }", "Write lamp",
				"test s { seen_with lamp results a, b }\ntest t { seen_with lamp results a, b }");
	}

	/** What is written ends its lines as the file does. */
	@Test
	void theLinesOfTheFileEndAsBefore() {
		fix("rule a@ {\r\n  given no_crank\r\n  then suspects battery.flat\r\n}\r\n", "Say where it comes from",
				"rule a {\r\n  given no_crank\r\n  then suspects battery.flat\r\n  because \"\"\r\n  source practice\r\n  by \"\" on 2026-04-01\r\n}\r\n");
	}

	@Test
	void whereItComesFrom() {
		fix("rule a@ {\n  given no_crank\n  then suspects battery.flat\n}\n", "Say where it comes from",
				"rule a {\n  given no_crank\n  then suspects battery.flat\n  because \"\"\n  source practice\n  by \"\" on 2026-04-01\n}\n");
	}

	@Test
	void whatIsNotDeclaredYet() {
		fix("rule a { given smoke@ }\n", "Define the sign smoke", "rule a { given smoke }\n\nsign smoke \"\"\n");
		fix("rule a { run smell@ }", "Define the test smell",
				"rule a { run smell }\n\ntest smell \"\" {\n  results good, bad\n  takes 5 min\n}\n");
		fix("rule a { then confirms starter.worn@ }\n", "Define the fault starter.worn",
				"rule a { then confirms starter.worn }\n\npart starter \"\" {\n  fault worn \"\"\n}\n");
		fix("part pump {\n}\nrule a { then confirms pump.worn@ }\n", "Define the fault pump.worn",
				"part pump {\n  fault worn \"\"\n}\nrule a { then confirms pump.worn }\n");
	}

	/** Kinds of problems that a text alone cannot have; those of what is built on are in {@link BuildsOnFixesTest}. */
	private static final Set<ProblemKind> OF_FILES = EnumSet.of(ProblemKind.BUILDS_ON_CHANGED, ProblemKind.BUILDS_ON_ERRORS,
			ProblemKind.BUILDS_ON_ITSELF, ProblemKind.BUILDS_ON_MISSING, ProblemKind.BUILDS_ON_NOT_TAKEN, ProblemKind.BUILDS_ON_UNREADABLE, ProblemKind.CHANGED_MEANWHILE, ProblemKind.FILE_PASSED_OVER,
			ProblemKind.NOT_UTF8, ProblemKind.PICTURE_MISSING, ProblemKind.PICTURE_TOO_LARGE, ProblemKind.UNREADABLE_FILE, ProblemKind.UNREADABLE_FOLDER);

	/** For each kind of problem of a text one that has it, and that text after somebody followed the advice. */
	private static final String FOLLOWED = """
			accepted-without-reason | accept "gap:x@00000000" because "" | accept "gap:x@00000000" because "Known."
			and-in-or | rule a { given no_crank or lamp is dark, rest_voltage below 9 V then suspects battery.flat } | rule a { given (no_crank or lamp is dark), rest_voltage below 9 V then suspects battery.flat }
			below-needs-number | rule a { run lamp expect lit below : suspects battery.flat } | rule a { run lamp expect lit on dark : suspects battery.flat }
			job-on-base | base family shared family x like shared job "J1" { on shared found no_crank was battery.flat } | base family shared family x like shared job "J1" { on x found no_crank was battery.flat }
			job-without-end | job "J1" { on tarn found no_crank } | job "J1" { on tarn found no_crank was battery.flat }
			job-without-family | job "J1" { found no_crank was battery.flat } | job "J1" { on tarn found no_crank was battery.flat }
			chain-fault-twice | chain feed { point lamp expect lit : battery.flat point rest_voltage expect at_least 12 V : battery.flat } | chain feed { point lamp expect lit : battery.flat point rest_voltage expect at_least 12 V : battery.open_cell }
			cycle-unlike | system one { cycle ignition : off, on } system two { cycle ignition : on, off } family x has one, two | system one { cycle ignition : off, on } system two { cycle ignition : on, off } family x has one, two { cycle ignition : off, on }
			chain-limits-fall | test t { measures V 0 .. 18 step 0.1 } chain feed { point rest_voltage expect at_least 12 V : battery.flat point t expect at_least 11 V : battery.open_cell } | test t { measures V 0 .. 18 step 0.1 } chain feed { point rest_voltage expect at_least 12 V : battery.flat point t expect at_least 12 V : battery.open_cell }
			chain-rule-taken | rule feed_first_lamp { given no_crank then suspects battery.flat } chain feed { point rest_voltage expect at_least 12 V : battery.flat point lamp expect lit : battery.open_cell } | rule other { given no_crank then suspects battery.flat } chain feed { point rest_voltage expect at_least 12 V : battery.flat point lamp expect lit : battery.open_cell }
			chain-short | chain feed { point lamp expect lit : battery.flat } | chain feed { point lamp expect lit : battery.flat point rest_voltage expect at_least 12 V : battery.open_cell }
			cycle-short | family x { cycle ignition : off, wait 30 s, off } | family x { cycle ignition : off, wait 30 s, on }
			cycle-twice | family x { cycle ignition : off, on cycle ignition : on, off } | family x { cycle ignition : off, on }
			like-or-has | system bus family x like bus | system bus family x has bus
			make-safe-how | sign s make_safe | sign s make_safe "Take the battery off."
			picture-outside | part p { picture "../a.png" "A" fault f } | part p { picture "a.png" "A" fault f }
			picture-type | part p { picture "a.svg" "A" fault f } | part p { picture "a.png" "A" fault f }
			point-twice | chain feed { point lamp expect lit : battery.flat point lamp expect lit : battery.open_cell } | chain feed { point lamp expect lit : battery.flat point rest_voltage expect at_least 12 V : battery.open_cell }
			system-twice | system bus family x has bus, bus | system bus family x has bus
			tool-twice | module m takes 1 min needs multimeter, multimeter | module m takes 1 min needs multimeter
			workshop-twice | workshop { hour 70 } workshop { hour 80 } | workshop { hour 70 }
			trait-unlike | system one { trait t : a } system two { trait t : a, b } family x has one, two | system one { trait t : a } system two { trait t : a, b } family x has one, two { trait t : a, b }
			tried-code | repair p { fixes battery.flat verify { expect low_supply absent tried 2 times } } | repair p { fixes battery.flat verify { expect low_supply absent } }
			tried-missing | sign s intermittent repair p { fixes battery.flat verify { expect s absent } } | sign s intermittent repair p { fixes battery.flat verify { expect s absent tried 10 times } }
			vin-of-system | system bus { vin "ZZZ" } | system bus family x has bus { vin "ZZZ" }
			status-byte | job "J1" { on tarn found low_supply status 2G was battery.flat } | job "J1" { on tarn found low_supply status 2F was battery.flat }
			clause-twice | test t { results a, b takes 1 min takes 2 min } | test t { results a, b takes 1 min }
			code-form | code c on bcm = dtc P030 | code c on bcm = dtc P0300
			code-reserved | code c on bcm = j1939 spn 1 fmi 25 | code c on bcm = j1939 spn 1 fmi 2
			code-unread | rule a { given low_supply unread then suspects battery.flat } | rule a { given bcm silent then suspects battery.flat }
			comma-for-or | module m answers in ignition on, ignition off | module m answers in ignition on or ignition off
			duplicate-name | sign no_crank | sign no_start
			empty-rule | rule a { given no_crank } | rule a { given no_crank then suspects battery.flat }
			empty-text | repair p { fixes battery.flat steps " " } | repair p { fixes battery.flat steps "Charge it." }
			expect-without-test | rule a { given no_crank expect lit then suspects battery.flat } | rule a { given no_crank then suspects battery.flat }
			family-circle | family a like b { } family b like a { } | family a { } family b like a { }
			fault-twice | exclusive battery.flat, battery.flat, battery.open_cell | exclusive battery.flat, battery.open_cell
			hidden-character | sign a "x\u202Ey" | sign a "xy"
			law-verdict | law "x" : when battery.flat confirmed then no_crank | law "x" : when lamp is dark then no_crank
			limit-off-step | law "x" : when rest_voltage < 12.45 V then no_crank | law "x" : when rest_voltage < 12.4 V then no_crank
			limit-out-of-range | law "x" : when rest_voltage above 19 V then no_crank | law "x" : when rest_voltage above 17 V then no_crank
			lost-letter | sign a "x\uFFFDy" | sign a "xzy"
			met-without-expect | rule a { run lamp met : clears battery.flat } | rule a { run lamp expect lit met : clears battery.flat }
			module-not-on-vehicle | family x module m on x job "J1" { on tarn found m silent was battery.flat } | family x module m on x job "J1" { on x found m silent was battery.flat }
			name-needed | law "x" : when lamp < 9 V then no_crank | law "x" : when lamp is dark then no_crank
			negative-duration | test t { results a, b takes -8 min } | test t { results a, b takes 8 min }
			no-provenance | rule a { given no_crank then suspects battery.flat } | rule a { given no_crank then suspects battery.flat because "It is so." source practice by "R. Falk" on 2026-03-02 }
			not-fitted | family x module m on x code c on m = dtc P0300 rule a { for tarn given c present then suspects battery.flat } | family x module m on x, tarn code c on m = dtc P0300 rule a { for tarn given c present then suspects battery.flat }
			nothing-beyond | rule a { run rest_voltage expect at_least 12 V above : suspects battery.flat } | rule a { run rest_voltage expect at_least 12 V below : suspects battery.flat }
			number-needed | law "x" : when rest_voltage is lit then no_crank | law "x" : when rest_voltage is 9 V then no_crank
			number-too-long | tool t cost 1234567890123456 | tool t cost 12
			otherwise-takes-expected | rule a { run lamp expect lit otherwise : suspects battery.flat } | rule a { run lamp expect lit met : proves nothing otherwise : suspects battery.flat }
			outcome-twice | rule a { run lamp expect lit met : clears battery.flat met : clears battery.open_cell } | rule a { run lamp expect lit met : clears battery.flat, battery.open_cell }
			outcome-without-test | rule a { given no_crank on lit : suspects battery.flat } | rule a { given no_crank then suspects battery.flat }
			range-reversed | law "x" : when rest_voltage is 13 V .. 12 V then no_crank | law "x" : when rest_voltage is 12 V .. 13 V then no_crank
			reading-off-step | job "J1" { on tarn found rest_voltage 11.63 V was battery.flat } | job "J1" { on tarn found rest_voltage 11.6 V was battery.flat }
			reading-out-of-range | job "J1" { on tarn found rest_voltage 40 V was battery.flat } | job "J1" { on tarn found rest_voltage 4 V was battery.flat }
			reading-twice | job "J1" { on tarn found no_crank, no_crank was battery.flat } | job "J1" { on tarn found no_crank was battery.flat }
			repair-fixes-nothing | repair p { steps "Look." } | repair p { fixes battery.flat steps "Look." }
			seen-with-effort | test t { seen_with lamp results a, b takes 1 min } | test t { seen_with lamp results a, b }
			seen-with-seen | test s { seen_with lamp results a, b } test t { seen_with s results a, b } | test s { seen_with lamp results a, b } test t { seen_with lamp results a, b }
			states-disagree | rule a { in ignition on run rest_voltage on below 9 V : suspects battery.flat } | rule a { run rest_voltage on below 9 V : suspects battery.flat }
			step-zero | test t { measures V 0 .. 1 step 0 } | test t { measures V 0 .. 1 step 0.1 }
			syntax | rulle a { then suspects battery.flat } | rule a { then suspects battery.flat }
			test-both | test t { measures V 0 .. 1 step 0.1 results good, bad } | test t { measures V 0 .. 1 step 0.1 }
			test-neither | test t { takes 1 min } | test t { results a, b takes 1 min }
			text-too-long | sign a "LONG" | sign a "short"
			then-with-test | rule a { run lamp then suspects battery.flat } | rule a { run lamp on dark : suspects battery.flat }
			too-deep | law "x" : when DEEP then no_crank | law "x" : when lamp is dark then no_crank
			too-many-steps | test t { measures V 0 .. 1000 step 0.00001 } | test t { measures V 0 .. 1000 step 0.1 }
			trait-missing | rule a { for tarn, heron where doors is two then suspects battery.flat } | rule a { for heron where doors is two then suspects battery.flat }
			trait-not-in-family | rule a { for tarn where doors is two then suspects battery.flat } | rule a { for heron where doors is two then suspects battery.flat }
			unit-mismatch | law "x" : when rest_voltage < 9 Ohm then no_crank | law "x" : when rest_voltage < 9 V then no_crank
			unit-missing | law "x" : when rest_voltage < 9 then no_crank | law "x" : when rest_voltage < 9 V then no_crank
			unknown-name | law "x" : when no_cranc then lamp is dark | law "x" : when no_crank then lamp is dark
			unknown-unit | test t { measures Volts 0 .. 1 step 0.1 } | test t { measures V 0 .. 1 step 0.1 }
			unknown-value | law "x" : when lamp is purple then no_crank | law "x" : when lamp is dark then no_crank
			value-twice | test t { results good, bad, good } | test t { results good, bad }
			vin-check-digit | family x { vin "WZZHA" check_digit } job "J1" { on x vin "WZZHA2AA5J0000001" found no_crank was referred } | family x { vin "WZZHA" check_digit } job "J1" { on x vin "WZZHA2AA7J0000001" found no_crank was referred }
			vin-form | family x { vin "WOZ" } | family x { vin "WZZ" }
			vin-not-of-family | family x { vin "WZZT" } job "J1" { on x vin "WZZX3AAAAJ0000001" found no_crank was referred } | family x { vin "WZZX" } job "J1" { on x vin "WZZX3AAAAJ0000001" found no_crank was referred }
			where-not-trait | rule a { for tarn where no_crank then suspects battery.flat } | rule a { for tarn given no_crank then suspects battery.flat }
			whole-number-needed | part relay { fault stuck seen 2.5 } | part relay { fault stuck seen 2 }
			agree-number | sign_off { agree 0 } | sign_off { agree 1 }
			sign-off-twice | sign_off { agree 2 } sign_off { agree 1 } | sign_off { agree 1 }
			wrong-date | accept "gap@1" because "Rare." by "A" on 2026-06-31 | accept "gap@1" because "Rare." by "A" on 2026-06-30
			wrong-predicate | law "x" : when no_crank unread then lamp is dark | law "x" : when no_crank present then lamp is dark
			wrong-subject | test t { results a, b disturbs battery.flat } | test t { results a, b disturbs lamp }
			""";

	static Stream<String> problems() {
		return Arrays.stream(ProblemKind.values()).filter(kind -> !OF_FILES.contains(kind)).map(ProblemKind::id);
	}

	/** Whoever follows the advice, by a fix or by its words, is rid of the problem and has no new one. */
	@ParameterizedTest
	@MethodSource("problems")
	void everyAdviceOnATextHelps(String kind) {
		String[] row = FOLLOWED.lines().filter(line -> line.startsWith(kind + " | ")).findFirst()
				.orElseThrow(() -> new AssertionError("no example")).replace("LONG", "x".repeat(5001))
				.replace("DEEP", "(".repeat(101) + "lamp is dark" + ")".repeat(101)).split(" \\| ");
		RuleProject project = Cursor.in(row[1] + "\n@").services().project();
		List<Problem> before = project.snapshot().problems();
		List<Problem> told = before.stream().filter(problem -> problem.id().equals(kind)).toList();
		assertFalse(told.isEmpty(), before::toString);
		List<String> wrong = new ArrayList<>();
		project.update(Cursor.FILE, row[2] + "\n");
		worse(kind, before, told.size(), project, true).forEach(left -> wrong.add("by words: " + left));
		for (Problem problem : told) {
			RuleProject again = Cursor.in(row[1] + "\n@").services().project();
			for (QuickFix fix : new EditorServices(again, Cursor.CLOCK).fixes(Cursor.FILE, problem.span().offset(), 0,
					again.snapshot(), Optional.empty()).stream().filter(fix -> fix.about().equals(kind)).toList()) {
				RuleProject changed = Cursor.in(row[1] + "\n@").services().project();
				apply(changed, fix);
				worse(kind, before, told.size(), changed, false).forEach(left -> wrong.add(fix.title() + ": " + left));
			}
		}
		assertEquals(List.of(), wrong);
	}

	/** What is there after an advice was followed though it should not be: the problem, or a new one. */
	private static List<String> worse(String kind, List<Problem> before, int told, RuleProject project, boolean all) {
		List<Problem> now = project.snapshot().problems();
		List<String> known = before.stream().map(Problem::message).toList();
		// what cannot be read, or is no rule yet, hides that its author must still say where it comes from
		List<String> worse = new ArrayList<>(now.stream().filter(problem -> !known.contains(problem.message()))
				.filter(problem -> !problem.id().equals("no-provenance") && (all || !problem.id().equals("empty-text")))
				.map(Problem::message).toList());
		long left = now.stream().filter(problem -> problem.id().equals(kind)).count();
		if (all ? left > 0 : left >= told) {
			worse.add("still " + kind);
		}
		return worse;
	}

	/** Texts with a problem, and the titles of all that is offered for it. */
	private static final String OFFERED = """
			code-unread | rule a { given low_supply unread then suspects battery.flat } | Write bcm silent
			comma-for-or | module m answers in ignition on, ignition off | Write or
			code-unread | rule a { given low_supply not unread then suspects battery.flat } | Write bcm answers
			code-unread | module ^rule code c on ^rule = dtc P0300 rule a { given c unread then suspects battery.flat } | Write ^rule silent
			hidden-character | sign a "x\u202Ey" | Take it out
			hidden-character | sign\u00A0a | Write a plain space
			law-verdict | law "x" : when no_crank unexplained then lamp is dark | Write present; Write absent
			law-verdict | law "x" : when no_crank not unexplained, low_supply present then lamp is dark | Write present; Write absent
			limit-off-step | law "x" : when rest_voltage < 12.45 V then no_crank | Write 12.4 V; Write 12.5 V
			limit-off-step | law "x" : when rest_voltage is 9000 .. 12450 mV then no_crank | Write 12400 mV; Write 12500 mV
			limit-off-step | law "x" : when rest_voltage is 9.05 .. 12 V then no_crank | Write 9.0; Write 9.1
			limit-off-step | law "x" : when rest_voltage is 9050 .. 12000 mV then no_crank | Write 9000; Write 9100
			limit-off-step | test t { measures V 0 .. 1 step 0.3 } law "x" : when t < 0.95 V then no_crank | Write 0.9 V
			no-provenance | chain feed { point lamp expect lit : battery.flat point rest_voltage expect at_least 12 V : battery.open_cell } | Say where it comes from
			no-provenance | rule a { given no_crank then suspects battery.flat } | Say where it comes from
			no-provenance | rule ^in { given no_crank then suspects battery.flat because "x" by "R" on 2026-03-02 } | Say where it comes from
			reading-off-step | job "J1" { on tarn found rest_voltage 11.63 V was battery.flat } | Write 11.6 V
			reading-off-step | job "J1" { on tarn found rest_voltage 11630 mV was battery.flat } | Write 11600 mV
			seen-with-effort | test t { seen_with lamp results a, b takes 1 min } | Take it out
			seen-with-seen | test s { seen_with lamp results a, b } test t { seen_with s results a, b } | Write lamp
			seen-with-seen | test s { seen_with s results a, b } | none
			syntax | rulle a { then suspects battery.flat } | Write rule
			syntax | sign given | Write ^given
			syntax | sign a; | Take it out
			syntax | part a { fault b NL sign c | Close the element above
			syntax | part a { fault b | Close the element
			syntax | repair p { fixes battery.flat steps "x" verify { repeat what confirmed | Close the element
			syntax | repair p { fixes battery.flat steps "x" verify { repeat what confirmed // there NL sign c | Close the element above
			syntax | part a "Oil sensor { NL fault dead NL } | Close the text
			syntax | rule a { then suspects battery.flat because "x NL } | Close the text
			syntax | rule a { because "x } NL } | none
			syntax | sign a /* there | Close the comment
			syntax | sign a \u201CTitle\u201D | Write straight quotes
			syntax | law "x" : when rest_voltage < 9,5 V then no_crank | Write 9.5
			syntax | accept "gap@1" because "Rare." by "A" on 31.05.2026 | Write 2026-05-31
			syntax | accept "gap@1" because "Rare." by "A" on 05.06.2026 | none
			unit-mismatch | test t { measures degC 0 .. 90 step 1 } law "x" : when t > 80 C then no_crank | Write 80 degC
			unit-mismatch | law "x" for tarn : when built is 2015 V then no_crank | Write 2015
			unit-missing | law "x" : when rest_voltage < 9 then no_crank | Write 9 V
			unit-missing | law "x" : when rest_voltage < 9000 then no_crank | none
			unit-missing | law "x" : when rest_voltage is 9 V .. 10 then no_crank | Write 10 V
			unit-missing | test t { results a, b takes 5 } | Write 5 min
			unknown-name | law "x" : when no_cranc then lamp is dark | Write no_crank; Define the sign no_cranc
			unknown-name | law "x" : when lampp is dark then no_crank | Write lamp
			unknown-name | law "x" : when lampp then no_crank | Define the sign lampp
			unknown-name | law "x" : when lampp silent then no_crank | Define the module lampp
			unknown-name | law "x" : when buzz is loud then no_crank | none
			unknown-name | sign ^given law "x" : when givenn then no_crank | Write ^given; Define the sign givenn
			unknown-name | rule a { for heron where dors is two then suspects battery.flat } | Write doors
			unknown-name | rule a { for tarn where dors is two then suspects battery.flat } | none
			unknown-name | rule a { given battery cleared then suspects battery.flat } | Write battery.flat; Write battery.open_cell
			unknown-name | rule a { given battery then suspects battery.flat } | none
			unknown-name | rule a { given battery.flaat cleared then suspects battery.open_cell } | Write battery.flat; Define the fault battery.flaat
			unknown-name | rule a { given battery.flaat then suspects battery.open_cell } | none
			unknown-name | rule a { then confirms battery } | Write battery.flat; Write battery.open_cell
			unknown-name | rule a { then confirms starter.^in } | Define the fault starter.in
			unknown-name | rule a { then confirms ^in.worn } | Define the fault in.worn
			unknown-name | rule a { run smell on foul, burnt : suspects battery.flat } | Define the test smell
			unknown-name | rule a { run smell expect none met : clears battery.flat otherwise : suspects battery.flat } | Define the test smell
			unknown-name | rule a { run smell below 9 V : suspects battery.flat } | none
			unknown-name | rule a { run smell on below 9 V : suspects battery.flat } | none
			unknown-name | rule a { run smell then suspects battery.flat } | none
			unknown-name | rule a { in door open then suspects battery.flat } | Define the state door
			unknown-name | rule a { in ^met ^then then suspects battery.flat } | Define the state met
			unknown-name | rule a { for volan then suspects battery.flat } | Define the family volan
			unknown-name | rule a { for volan where doors is two then suspects battery.flat } | none
			unknown-name | family x like volan | Define the family volan
			unknown-name | module m on volan | Define the family volan
			unknown-name | code c on gauge = dtc P0300 | Define the module gauge
			unknown-name | part p hazards heat { } | Define the hazard heat
			unknown-name | test t { results a, b at starter needs clamp } | Define the part starter
			unknown-name | test t { results a, b needs clamp } | Define the tool clamp
			unknown-name | test t { results a, b disturbs noise } | Define the sign noise
			unknown-name | repair p { fixes battery.flat steps "x" verify { cycle door clear bcm } } | Define the state door
			unknown-name | repair p { fixes battery.flat steps "x" verify { repeat smell expect none } } | Define the test smell
			unknown-name | repair p { fixes battery.flat steps "x" verify { repeat smell expect 3 V } } | none
			unknown-name | job "J1" { on tarn found noise was battery.flat } | Define the sign noise
			unknown-name | job "J1" { on tarn found noise silent was battery.flat } | none
			unknown-name | job "J1" { on tarn found no_crank, no_cranc was battery.flat } | Define the sign no_cranc
			unknown-name | job "J1" { on tarn found lampp lit was battery.flat } | Write lamp
			unknown-name | job "J1" { on tarn found lampp was battery.flat } | Define the sign lampp
			unknown-name | job "J1" { on volan found no_crank was battery.flat } | Define the family volan
			unknown-name | job "J1" { on volan with engine diesel found no_crank was battery.flat } | none
			unknown-name | job "J1" { on tarn with enginne diesel found no_crank was battery.flat } | Write engine
			unknown-name | review lamp_darkk by "A" on 2026-03-02 agrees meaning "00000000" | Write lamp_dark
			unknown-unit | test t { measures Volts 0 .. 1 step 0.1 } | Write V
			unknown-unit | law "x" : when rest_voltage is 9 .. 10 volt then no_crank | Write V
			unknown-value | law "x" : when lamp is drak then no_crank | Write dark
			unknown-value | test t { results ^met, other } law "x" : when t is mett then no_crank | Write ^met
			unknown-value | test t { results on, other } law "x" : when t is onn then no_crank | Write on
			unknown-value | rule a { in ignition offf then suspects battery.flat } | Write off
			""";

	/** Kinds for which nothing is offered, and why: only the author knows what is right. */
	private static final Map<ProblemKind, String> ONLY_THE_AUTHOR_KNOWS = new EnumMap<>(Map.ofEntries(
			Map.entry(ProblemKind.ACCEPTED_WITHOUT_REASON, "why it may stand"),
			Map.entry(ProblemKind.AND_IN_OR, "what belongs together"),
			Map.entry(ProblemKind.BELOW_NEEDS_NUMBER, "which results are meant"),
			Map.entry(ProblemKind.AGREE_NUMBER, "how many must agree"),
			Map.entry(ProblemKind.SIGN_OFF_TWICE, "which of the two is right"),
			Map.entry(ProblemKind.CLAUSE_TWICE, "which of the two is right"),
			Map.entry(ProblemKind.CODE_FORM, "what the scan tool shows"),
			Map.entry(ProblemKind.CODE_RESERVED, "what the scan tool shows"),
			Map.entry(ProblemKind.CHAIN_FAULT_TWICE, "where the fault lies"),
			Map.entry(ProblemKind.CYCLE_UNLIKE, "what a cycle is"),
			Map.entry(ProblemKind.CHAIN_LIMITS_FALL, "which limit is right"),
			Map.entry(ProblemKind.CHAIN_RULE_TAKEN, "what else the rule is called"),
			Map.entry(ProblemKind.CHAIN_SHORT, "what lies along the line"),
			Map.entry(ProblemKind.CYCLE_SHORT, "what a cycle is"),
			Map.entry(ProblemKind.CYCLE_TWICE, "which of the two is right"),
			Map.entry(ProblemKind.LIKE_OR_HAS, "whether it is a family or a system"),
			Map.entry(ProblemKind.MAKE_SAFE_HOW, "what must be done first"),
			Map.entry(ProblemKind.POINT_TWICE, "which test is meant"),
			Map.entry(ProblemKind.SYSTEM_TWICE, "whether another system was meant"),
			Map.entry(ProblemKind.TOOL_TWICE, "whether another tool was meant"),
			Map.entry(ProblemKind.WORKSHOP_TWICE, "which of the two is right"),
			Map.entry(ProblemKind.TRAIT_UNLIKE, "which values the family has"),
			Map.entry(ProblemKind.TRIED_CODE, "whether a sign was meant"),
			Map.entry(ProblemKind.TRIED_MISSING, "how often it was tried"),
			Map.entry(ProblemKind.VIN_OF_SYSTEM, "which families have the numbers"),
			Map.entry(ProblemKind.DUPLICATE_NAME, "what else it is called"),
			Map.entry(ProblemKind.EMPTY_RULE, "what it proves"),
			Map.entry(ProblemKind.EMPTY_TEXT, "what is to be said"),
			Map.entry(ProblemKind.EXPECT_WITHOUT_TEST, "which test is run"),
			Map.entry(ProblemKind.FAMILY_CIRCLE, "which family builds on which"),
			Map.entry(ProblemKind.FAULT_TWICE, "whether another fault was meant"),
			Map.entry(ProblemKind.JOB_ON_BASE, "the vehicle"),
			Map.entry(ProblemKind.JOB_WITHOUT_END, "how the job ended"),
			Map.entry(ProblemKind.JOB_WITHOUT_FAMILY, "the vehicle"),
			Map.entry(ProblemKind.LIMIT_OUT_OF_RANGE, "whether the limit or the range is wrong"),
			Map.entry(ProblemKind.LOST_LETTER, "which letter it was"),
			Map.entry(ProblemKind.MET_WITHOUT_EXPECT, "the right result"),
			Map.entry(ProblemKind.MODULE_NOT_ON_VEHICLE, "the vehicle, or what was read"),
			Map.entry(ProblemKind.NAME_NEEDED, "which value is meant"),
			Map.entry(ProblemKind.NEGATIVE_DURATION, "how long the work takes"),
			Map.entry(ProblemKind.PICTURE_OUTSIDE, "where the picture is copied to"), Map.entry(ProblemKind.PICTURE_TYPE, "as what the picture is saved"),
			Map.entry(ProblemKind.NOTHING_BEYOND, "which limit the expected result has"),
			Map.entry(ProblemKind.NOT_FITTED, "in which families the module is fitted"),
			Map.entry(ProblemKind.NUMBER_NEEDED, "which value is meant"),
			Map.entry(ProblemKind.NUMBER_TOO_LONG, "which digits are meant"),
			Map.entry(ProblemKind.OTHERWISE_TAKES_EXPECTED, "what the expected result proves"),
			Map.entry(ProblemKind.OUTCOME_TWICE, "whether another result was meant"),
			Map.entry(ProblemKind.OUTCOME_WITHOUT_TEST, "which test is run"),
			Map.entry(ProblemKind.RANGE_REVERSED, "whether the ends or a digit of one is wrong"),
			Map.entry(ProblemKind.READING_OUT_OF_RANGE, "what was read"),
			Map.entry(ProblemKind.READING_TWICE, "which of the two is right"),
			Map.entry(ProblemKind.REPAIR_FIXES_NOTHING, "which fault it puts right"),
			Map.entry(ProblemKind.STATES_DISAGREE, "which state is right"),
			Map.entry(ProblemKind.STATUS_BYTE, "what the scan tool shows"),
			Map.entry(ProblemKind.STEP_ZERO, "what the instrument shows"),
			Map.entry(ProblemKind.TEST_BOTH, "what the test gives"),
			Map.entry(ProblemKind.TEST_NEITHER, "what the test gives"),
			Map.entry(ProblemKind.TEXT_TOO_LONG, "what may be left out"),
			Map.entry(ProblemKind.THEN_WITH_TEST, "which result leads there"),
			Map.entry(ProblemKind.TOO_DEEP, "what the condition says"),
			Map.entry(ProblemKind.TOO_MANY_STEPS, "what the instrument shows"),
			Map.entry(ProblemKind.TRAIT_MISSING, "which vehicles have the trait"),
			Map.entry(ProblemKind.TRAIT_NOT_IN_FAMILY, "which vehicles have the trait"),
			Map.entry(ProblemKind.VALUE_TWICE, "whether another value was meant"),
			Map.entry(ProblemKind.VIN_CHECK_DIGIT, "what stands on the vehicle"),
			Map.entry(ProblemKind.VIN_FORM, "what stands on the vehicle"),
			Map.entry(ProblemKind.VIN_NOT_OF_FAMILY, "what stands on the vehicle"),
			Map.entry(ProblemKind.WHERE_NOT_TRAIT, "which vehicles are meant"),
			Map.entry(ProblemKind.WHOLE_NUMBER_NEEDED, "how many"),
			Map.entry(ProblemKind.WRONG_DATE, "the day"),
			Map.entry(ProblemKind.WRONG_PREDICATE, "what is to be said of it"),
			Map.entry(ProblemKind.WRONG_SUBJECT, "what the test disturbs")));

	static Stream<String> offered() {
		return OFFERED.lines();
	}

	/** Whatever is offered is offered in these words; applied, it answers the problem, and nothing new is there. */
	@ParameterizedTest
	@MethodSource("offered")
	void everyFixAnswersItsProblem(String row) {
		String[] cells = row.split(" \\| ");
		String text = cells[1].replace(" NL ", "\n") + "\n";
		Snapshot before = Cursor.in(text + "@").services().project().snapshot();
		Problem problem = before.problems().stream().filter(each -> each.id().equals(cells[0])).findFirst()
				.orElseThrow(() -> new AssertionError(before.problems().toString()));
		RuleProject offering = Cursor.in(text + "@").services().project();
		List<QuickFix> fixes = new EditorServices(offering, Cursor.CLOCK)
				.fixes(Cursor.FILE, problem.span().offset(), problem.span().length(), offering.snapshot(), Optional.empty()).stream()
				.filter(fix -> fix.mend().filter(problem.mends()::contains).isPresent()).toList();
		assertEquals(cells[2], fixes.isEmpty() ? "none" : fixes.stream().map(QuickFix::title).collect(Collectors.joining("; ")),
				problem::advice);
		assertEquals(problem.mends().size(), fixes.size());
		Set<String> known = before.problems().stream().map(each -> each.kind() + each.message()).collect(Collectors.toSet());
		long same = before.problems().stream().filter(each -> each.message().equals(problem.message())).count();
		for (QuickFix fix : fixes) {
			RuleProject changed = Cursor.in(text + "@").services().project();
			apply(changed, fix);
			boolean open = false; // what the author fills in stands as empty quotes
			for (String file : fix.edits().keySet()) {
				String written = changed.source(file).orElseThrow().text();
				open |= written.contains("\"\"");
				changed.update(file, written.replace("\"\"", "\"So it is.\""));
			}
			assertEquals(open, fix.next().isPresent(), fix.title());
			List<Problem> now = changed.snapshot().problems();
			String all = fix.title() + "\n" + changed.source(Cursor.FILE).orElseThrow().text();
			assertTrue(now.stream().filter(each -> each.message().equals(problem.message())).count() < same, all);
			// a text that could not be read hid that nobody says where its rule comes from
			assertEquals(List.of(), now.stream().filter(each -> !known.contains(each.kind() + each.message()))
					.filter(each -> problem.kind() == ProblemKind.NO_PROVENANCE || each.kind() != ProblemKind.NO_PROVENANCE).toList(), all);
		}
	}

	@Test
	void everyKindHasAFixOrAReasonWhyNot() {
		Set<ProblemKind> fixed = EnumSet.noneOf(ProblemKind.class);
		offered().filter(row -> !row.endsWith("| none"))
				.forEach(row -> fixed.add(ProblemKind.of(row.substring(0, row.indexOf(' '))).orElseThrow()));
		Set<ProblemKind> all = EnumSet.copyOf(fixed);
		all.addAll(OF_FILES);
		for (ProblemKind kind : ONLY_THE_AUTHOR_KNOWS.keySet()) {
			assertTrue(all.add(kind), kind::id);
		}
		assertEquals(EnumSet.allOf(ProblemKind.class), all);
	}

	/** Every fix of every kind of flaw, in the flawed examples, answers it, and nothing new is there. */
	@Test
	void theFlawedExamples() {
		Set<String> fixed = new TreeSet<>();
		Set<String> shown = new TreeSet<>();
		List<String> wrong = new ArrayList<>();
		for (Path example : Samples.flawed()) {
			String file = example.getFileName().toString();
			TreeMap<String, String> texts = new TreeMap<>(Map.of(file, Samples.read(example)));
			RuleProject project = Samples.inMemory(texts);
			Snapshot snapshot = project.snapshot();
			Report report = check(snapshot);
			EditorServices services = new EditorServices(project, Cursor.CLOCK);
			for (Flaw flaw : report.flaws()) {
				shown.add(flaw.check());
				List<QuickFix> fixes = services.fixes(file, flaw.span().offset(), 0, snapshot, Optional.of(report)).stream()
						.filter(fix -> fix.about().equals(flaw.id())).toList();
				assertEquals(flaw.fixes().size(), fixes.size(), () -> flaw.id() + ": " + flaw.fixes());
				for (QuickFix fix : fixes) {
					RuleProject changed = Samples.inMemory(texts);
					apply(changed, fix);
					if (fix.title().startsWith("Accept")) {
						giveReason(changed, fix, flaw);
					} else if (fix.next().isPresent()) {
						assertTrue(changed.snapshot().problems().stream().anyMatch(problem -> problem.id().equals("empty-text")), flaw.id());
						write(changed, fix, "Look at it.");
					}
					sayWhereItComesFrom(changed, snapshot);
					String left = judge(changed.snapshot(), flaw, snapshot, report);
					if (left.isEmpty()) {
						fixed.add(flaw.check() + ": " + fix.title());
					} else {
						wrong.add(flaw.id() + " / " + fix.title() + ": " + left);
					}
				}
			}
		}
		assertEquals(List.of(), wrong);
		assertTrue(fixed.size() > 15, fixed::toString);
		assertEquals(Kinds.all().stream().map(RuleCheck::id).filter(kind -> !kind.equals("undecided")).toList(),
				List.copyOf(shown), "an example for each kind of flaw");
	}

	@Test
	void aSignForWhichNoRuleAsks() {
		TreeMap<String, String> texts = new TreeMap<>(Map.of("a.bay", """
				family tarn "Tarn"
				sign dead "Dead"
				sign ^rule "Hums"
				part lamp "Lamp" { fault burnt "Burnt" }
				test look "Look" { results torn, whole }
				rule a "A" {
				  given dead
				  run look
				  on torn  : confirms lamp.burnt
				  on whole : refers "a specialist"
				  because "So it is."
				  source practice
				  by "R" on 2026-03-02
				}
				repair r "R" { fixes lamp.burnt steps "Replace it." verify { repeat look expect whole } }
				"""));
		RuleProject project = Samples.inMemory(texts);
		Report report = check(project.snapshot());
		Flaw flaw = report.flaws().stream().filter(each -> each.message().contains("No rule asks for")).findFirst().orElseThrow();
		QuickFix fix = new EditorServices(project, Cursor.CLOCK).fixes("a.bay", flaw.span().offset(), 0, project.snapshot(), Optional.of(report)).stream()
				.filter(each -> each.title().equals("Add a rule that refers")).findFirst().orElseThrow();
		RuleProject changed = Samples.inMemory(texts);
		apply(changed, fix);
		assertTrue(changed.source("a.bay").orElseThrow().text().contains("rule rule_to_specialist \"Hums\" {\n  given ^rule\n"),
				() -> changed.source("a.bay").orElseThrow().text());
		sayWhereItComesFrom(changed, project.snapshot());
		assertEquals("", judge(changed.snapshot(), flaw, project.snapshot(), report));
	}

	@Test
	void whatPeersSaidOfARuleGoesWithIt() {
		String rule = "rule %s { given dead then suspects lamp.burnt source practice because \"x\" by \"R\" on 2026-03-02 }\n";
		TreeMap<String, String> texts = new TreeMap<>(Map.of("a.bay", "family tarn\nsign dead\npart lamp { fault burnt }\n" + String.format(rule, "a")
				+ String.format(rule, "b") + "review b by \"A\" on 2026-03-03 objects meaning \"00000000\" {\n  settled by \"A\" on 2026-03-04\n}\n"
				+ "remark on b by \"A\" on 2026-03-03 \"So?\"\nremark on a by \"A\" on 2026-03-03 \"This stays.\"\n"));
		RuleProject project = Samples.inMemory(texts);
		Report report = check(project.snapshot());
		QuickFix fix = report.flaws().stream().filter(flaw -> flaw.check().equals("duplicate-rule"))
				.flatMap(flaw -> new EditorServices(project, Cursor.CLOCK).fixes("a.bay", flaw.span().offset(), 0, project.snapshot(), Optional.of(report)).stream())
				.filter(each -> each.edits().get("a.bay").size() == 3).findFirst().orElseThrow();
		apply(project, fix);
		assertEquals(List.of(), project.snapshot().problems());
		assertEquals(List.of("a"), project.snapshot().rules().remarks().stream().flatMap(remark -> remark.rule().stream()).toList());
		assertEquals(List.of(), project.snapshot().rules().reviews());
	}

	/** Without a reason nothing is accepted, and that is said; then the author gives it where the cursor stands. */
	private static void giveReason(RuleProject project, QuickFix accept, Flaw flaw) {
		assertTrue(project.snapshot().problems().stream().anyMatch(problem -> problem.id().equals("accepted-without-reason")),
				flaw.id());
		assertTrue(check(project.snapshot()).flaws().stream()
				.anyMatch(other -> other.id().equals(flaw.id()) && other.accepted().isEmpty()), flaw.id());
		write(project, accept, "It is known.");
	}

	/** A rule that a fix writes has an author, who follows what is then advised. */
	private static void sayWhereItComesFrom(RuleProject project, Snapshot before) {
		List<String> known = before.problems().stream().map(Problem::message).toList();
		Snapshot now = project.snapshot();
		now.problems().stream().filter(problem -> problem.id().equals("no-provenance") && !known.contains(problem.message()))
				.forEach(problem -> {
					QuickFix fix = new EditorServices(project, Cursor.CLOCK)
							.fixes(problem.span().file(), problem.span().offset(), 0, now, Optional.empty()).stream()
							.filter(one -> one.about().equals(problem.id())).findFirst().orElseThrow();
					apply(project, fix);
					if (fix.next().isPresent()) {
						write(project, fix, "It is so.");
					}
				});
	}

	/** Writes where the cursor stands after a fix. */
	private static void write(RuleProject project, QuickFix after, String words) {
		QuickFix.Next next = after.next().orElseThrow();
		String text = project.source(next.file()).orElseThrow().text();
		project.update(next.file(), text.substring(0, next.offset()) + words + text.substring(next.offset()));
	}

	/** Says what is wrong after a fix; the empty text if the flaw is answered and nothing is worse. */
	private static String judge(Snapshot now, Flaw flaw, Snapshot before, Report reportBefore) {
		List<String> known = before.problems().stream().map(Problem::message).toList();
		String errors = now.problems().stream().filter(problem -> !known.contains(problem.message()))
				.map(problem -> problem.id() + ": " + problem.message()).collect(Collectors.joining("; "));
		Report report = check(now);
		Set<String> old = reportBefore.flaws().stream().map(Flaw::id).collect(Collectors.toSet());
		String found = report.flaws().stream().filter(other -> !old.contains(other.id())).map(Flaw::id)
				.collect(Collectors.joining("; "));
		boolean still = report.flaws().stream()
				.anyMatch(other -> other.id().equals(flaw.id()) && other.accepted().isEmpty());
		return (errors + " " + found + (still ? " still found" : "")).strip();
	}

	private static Report check(Snapshot snapshot) {
		return new Analysis().check(snapshot.rules(), Listener.NONE);
	}

	/** A sign, a family, a fault, a hazard and a test whose names are words of the language. */
	@Test
	void whatFixesOfFlawsNameIsWrittenAsAName() {
		TreeMap<String, String> texts = new TreeMap<>(Map.of("words.bay", """
				family ^test "T \\"x\\"\\n"
				base family all
				family ^law like all
				family ^run like all
				hazard ^caution "Gas" { caution "Air." }
				sign ^given "It \\"smells\\"\\nof gas"
				sign no_crank
				part battery hazards ^caution { fault ^seen "Flat" fault ^met "Open" }
				test ^takes { measures V 0 .. 10 step 1 at battery takes 1 min }
				rule a { for ^law given ^given run ^takes expect 5 V .. 6 V met : clears battery.^seen below : confirms battery.^seen
				  above : confirms battery.^met because "x" source practice by "R" on 2026-03-02 }
				rule ^given_elsewhere { for ^run given no_crank then refers "x" because "x" source practice by "R" on 2026-03-02 }
				repair ^repeat { fixes battery.^seen steps "x" caution ^caution verify { repeat ^takes expect 0 V .. 6 V } }
				""".replace("^given_elsewhere", "given_elsewhere")));
		RuleProject project = Samples.inMemory(texts);
		Snapshot snapshot = project.snapshot();
		assertEquals(List.of(), snapshot.problems());
		Report report = check(snapshot);
		EditorServices services = new EditorServices(project, Cursor.CLOCK);
		Set<String> applied = new TreeSet<>();
		List<String> wrong = new ArrayList<>();
		for (Flaw flaw : report.flaws()) {
			for (QuickFix fix : services.fixes("words.bay", flaw.span().offset(), 0, snapshot, Optional.of(report))) {
				if (fix.about().equals(flaw.id())) {
					RuleProject changed = Samples.inMemory(texts);
					apply(changed, fix);
					if (fix.next().isPresent()) {
						write(changed, fix, "Look at it.");
					}
					applied.add(fix.title());
					changed.snapshot().problems().stream().filter(problem -> problem.kind() != ProblemKind.NO_PROVENANCE)
							.forEach(problem -> wrong.add(flaw.id() + " / " + fix.title() + ": " + problem.message()));
				}
			}
		}
		assertEquals(List.of(), wrong);
		assertTrue(applied.containsAll(Set.of("Add a repair", "Add a rule that refers", "Add a rule that refers when nothing explains it",
				"Warn of it", "Expect what the rule expects", "Accept this with a reason")), applied::toString);
	}

	@Test
	void anAcceptanceAsksForItsReason() {
		Path example = Samples.flawed().stream().filter(file -> file.endsWith("gap.bay")).findFirst().orElseThrow();
		RuleProject project = Samples.inMemory(new TreeMap<>(Map.of("gap.bay", Samples.read(example))));
		Report report = check(project.snapshot());
		Flaw gap = report.flaws().get(0);
		QuickFix accept = new EditorServices(project).fixes("gap.bay", gap.span().offset(), 1, project.snapshot(),
				Optional.of(report)).stream().filter(fix -> fix.title().startsWith("Accept")).findFirst().orElseThrow();
		apply(project, accept);
		QuickFix.Next next = accept.next().orElseThrow();
		String text = project.source("gap.bay").orElseThrow().text();
		assertTrue(text.substring(0, next.offset()).endsWith("because \""));
		assertFalse(accept.preview().isBlank());
	}
}
