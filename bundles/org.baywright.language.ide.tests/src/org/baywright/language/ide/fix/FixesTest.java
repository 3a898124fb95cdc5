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
import org.baywright.analysis.Analysis;
import org.baywright.analysis.Finding;
import org.baywright.analysis.Kinds;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.RuleCheck;
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
		// what cannot be read hides what else is wrong with its element
		assertEquals(List.of(), now.stream().filter(problem -> !answered.id().equals("syntax") || problem.id().equals("syntax"))
				.filter(problem -> !known.contains(problem.message())).map(Problem::message).toList());
	}

	@Test
	void slipsOfThePen() {
		fix("rule a { given no_cra@k }", "Write no_crank", "rule a { given no_crank }");
		fix("rule a { run lampp@ }", "Write lamp", "rule a { run lamp }");
		fix("rule a { then confirms battery.fla@ }", "Write battery.flat", "rule a { then confirms battery.flat }");
		fix("rulle@ a { }", "Write rule", "rule a { }");
		fix("law \"x\" : when lamp is drak@ then no_crank", "Write dark", "law \"x\" : when lamp is dark then no_crank");
		fix("law \"x\" : when lamp is purple@ then no_crank", "Write lit", "law \"x\" : when lamp is lit then no_crank");
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
		fix("sign a \u201CTi@tle\u201D\n".replace("Ti@tle", "Title").replace("\u201CT", "@\u201CT"), "Write straight quotes",
				"sign a \"Title\"\n");
		fix("law \"x\" : when rest_voltage < 9,@5 V then no_crank", "Write 9.5",
				"law \"x\" : when rest_voltage < 9.5 V then no_crank");
		fix("sign given@", "Write ^given", "sign ^given");
		fix("sign a;@\n", "Take it out", "sign a\n");
	}

	@Test
	void whereItComesFrom() {
		fix("rule a@ {\n  given no_crank\n  then suspects battery.flat\n}\n", "Say where it comes from",
				"rule a {\n  given no_crank\n  then suspects battery.flat\n  because \"\"\n  source practice\n  by \"\" on 2026-04-01\n}\n");
	}

	@Test
	void whatIsNotDeclaredYet() {
		fix("rule a { given smoke@ }\n", "Declare the sign smoke", "rule a { given smoke }\n\nsign smoke \"\"\n");
		fix("rule a { run smell@ }", "Declare the test smell",
				"rule a { run smell }\n\ntest smell \"\" {\n  results good, bad\n  takes 5 min\n}\n");
		fix("rule a { then confirms starter.worn@ }\n", "Declare the fault starter.worn",
				"rule a { then confirms starter.worn }\n\npart starter \"\" {\n  fault worn \"\"\n}\n");
		fix("part pump {\n}\nrule a { then confirms pump.worn@ }\n", "Declare the fault pump.worn",
				"part pump {\n  fault worn \"\"\n}\nrule a { then confirms pump.worn }\n");
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
					} else if (fix.title().equals("Add a repair")) {
						assertTrue(changed.snapshot().problems().stream().anyMatch(problem -> problem.id().equals("empty-step")), finding.id());
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
				.forEach(problem -> apply(project, new EditorServices(project, Cursor.CLOCK)
						.fixes(problem.span().file(), problem.span().offset(), 0, now, Optional.empty()).stream()
						.filter(fix -> fix.about().equals(problem.id())).findFirst().orElseThrow()));
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
