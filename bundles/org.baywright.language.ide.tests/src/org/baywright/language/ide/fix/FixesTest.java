package org.baywright.language.ide.fix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.baywright.analysis.Analysis;
import org.baywright.analysis.Finding;
import org.baywright.analysis.Kinds;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.HelpPages;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
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

	/** Kinds of problems that a text alone cannot have. */
	private static final Set<String> OF_FILES = Set.of("changed-meanwhile", "not-utf8", "unreadable-file", "unreadable-folder");

	/** For each kind of problem of a text one that has it, and that text after somebody followed the advice. */
	private static final String FOLLOWED = """
			accepted-without-reason | accept "gap:x@00000000" because "" | accept "gap:x@00000000" because "Known."
			and-in-or | rule a { given no_crank or lamp is dark, rest_voltage below 9 V then suspects battery.flat } | rule a { given (no_crank or lamp is dark), rest_voltage below 9 V then suspects battery.flat }
			below-needs-number | rule a { run lamp expect lit below : suspects battery.flat } | rule a { run lamp expect lit on dark : suspects battery.flat }
			job-on-base | base family shared family x like shared job "J1" { on shared found no_crank was battery.flat } | base family shared family x like shared job "J1" { on x found no_crank was battery.flat }
			job-without-end | job "J1" { on tarn found no_crank } | job "J1" { on tarn found no_crank was battery.flat }
			job-without-family | job "J1" { found no_crank was battery.flat } | job "J1" { on tarn found no_crank was battery.flat }
			clause-twice | test t { results a, b takes 1 min takes 2 min } | test t { results a, b takes 1 min }
			code-form | code c on bcm = dtc P030 | code c on bcm = dtc P0300
			code-reserved | code c on bcm = j1939 spn 1 fmi 25 | code c on bcm = j1939 spn 1 fmi 2
			code-unread | rule a { given low_supply unread then suspects battery.flat } | rule a { given bcm silent then suspects battery.flat }
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
			met-without-expect | rule a { run lamp met : clears battery.flat } | rule a { run lamp expect lit met : clears battery.flat }
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
			wrong-date | accept "gap@1" because "Rare." by "A" on 2026-06-31 | accept "gap@1" because "Rare." by "A" on 2026-06-30
			wrong-predicate | law "x" : when no_crank unread then lamp is dark | law "x" : when no_crank present then lamp is dark
			wrong-subject | test t { results a, b disturbs battery.flat } | test t { results a, b disturbs lamp }
			""";

	static Stream<String> problems() {
		return HelpPages.problems().stream().filter(kind -> !OF_FILES.contains(kind));
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

	/** Every fix of every kind of finding, in the flawed examples, answers it, and nothing new is there. */
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
			for (Finding finding : report.findings()) {
				shown.add(finding.check());
				List<QuickFix> fixes = services.fixes(file, finding.span().offset(), 0, snapshot, Optional.of(report)).stream()
						.filter(fix -> fix.about().equals(finding.id())).toList();
				assertEquals(finding.fixes().size(), fixes.size(), () -> finding.id() + ": " + finding.fixes());
				for (QuickFix fix : fixes) {
					RuleProject changed = Samples.inMemory(texts);
					apply(changed, fix);
					if (fix.title().startsWith("Accept")) {
						giveReason(changed, fix, finding);
					} else if (fix.next().isPresent()) {
						assertTrue(changed.snapshot().problems().stream().anyMatch(problem -> problem.id().equals("empty-text")), finding.id());
						write(changed, fix, "Look at it.");
					}
					sayWhereItComesFrom(changed, snapshot);
					String left = judge(changed.snapshot(), finding, snapshot, report);
					if (left.isEmpty()) {
						fixed.add(finding.check() + ": " + fix.title());
					} else {
						wrong.add(finding.id() + " / " + fix.title() + ": " + left);
					}
				}
			}
		}
		assertEquals(List.of(), wrong);
		assertTrue(fixed.size() > 15, fixed::toString);
		assertEquals(Kinds.all().stream().map(RuleCheck::id).filter(kind -> !kind.equals("undecided")).toList(),
				List.copyOf(shown), "an example for each kind of finding");
	}

	/** Without a reason nothing is accepted, and that is said; then the author gives it where the cursor stands. */
	private static void giveReason(RuleProject project, QuickFix accept, Finding finding) {
		assertTrue(project.snapshot().problems().stream().anyMatch(problem -> problem.id().equals("accepted-without-reason")),
				finding.id());
		assertTrue(check(project.snapshot()).findings().stream()
				.anyMatch(other -> other.id().equals(finding.id()) && other.accepted().isEmpty()), finding.id());
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

	/** Says what is wrong after a fix; the empty text if the finding is answered and nothing is worse. */
	private static String judge(Snapshot now, Finding finding, Snapshot before, Report reportBefore) {
		List<String> known = before.problems().stream().map(Problem::message).toList();
		String errors = now.problems().stream().filter(problem -> !known.contains(problem.message()))
				.map(problem -> problem.id() + ": " + problem.message()).collect(Collectors.joining("; "));
		Report report = check(now);
		Set<String> old = reportBefore.findings().stream().map(Finding::id).collect(Collectors.toSet());
		String found = report.findings().stream().filter(other -> !old.contains(other.id())).map(Finding::id)
				.collect(Collectors.joining("; "));
		boolean still = report.findings().stream()
				.anyMatch(other -> other.id().equals(finding.id()) && other.accepted().isEmpty());
		return (errors + " " + found + (still ? " still found" : "")).strip();
	}

	private static Report check(Snapshot snapshot) {
		return new Analysis().check(snapshot.rules(), Listener.NONE);
	}

	@Test
	void anAcceptanceAsksForItsReason() {
		Path example = Samples.flawed().stream().filter(file -> file.endsWith("gap.bay")).findFirst().orElseThrow();
		RuleProject project = Samples.inMemory(new TreeMap<>(Map.of("gap.bay", Samples.read(example))));
		Report report = check(project.snapshot());
		Finding gap = report.findings().get(0);
		QuickFix accept = new EditorServices(project).fixes("gap.bay", gap.span().offset(), 1, project.snapshot(),
				Optional.of(report)).stream().filter(fix -> fix.title().startsWith("Accept")).findFirst().orElseThrow();
		apply(project, accept);
		QuickFix.Next next = accept.next().orElseThrow();
		String text = project.source("gap.bay").orElseThrow().text();
		assertTrue(text.substring(0, next.offset()).endsWith("because \""));
		assertFalse(accept.preview().isBlank());
	}
}
