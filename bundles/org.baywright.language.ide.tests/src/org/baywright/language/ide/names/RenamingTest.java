package org.baywright.language.ide.names;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.testing.Samples;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Meaning;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.junit.jupiter.api.Test;

class RenamingTest {

	private static Renaming.Result rename(Cursor cursor, String name) {
		return cursor.services().rename(Cursor.FILE, cursor.offset(), name);
	}

	private static void renamed(String marked, String name, String expected) {
		Cursor cursor = Cursor.in(marked);
		Renaming.Changes changes = (Renaming.Changes) rename(cursor, name);
		assertEquals(expected, Edits.apply(cursor.text(), changes.edits().getOrDefault(Cursor.FILE, List.of())));
	}

	private static void refused(String marked, String name, String message) {
		assertEquals(new Renaming.Refused(message), rename(Cursor.in(marked), name));
	}

	@Test
	void aFaultKeepsItsPart() {
		renamed("rule a { then confirms battery.fl@at, battery.open_cell }", "empty",
				"rule a { then confirms battery.empty, battery.open_cell }");
		renamed("rule a { then confirms batt@ery.flat, battery.open_cell }", "accu",
				"rule a { then confirms accu.flat, accu.open_cell }");
	}

	@Test
	void wordsOfTheLanguageAreEscaped() {
		renamed("sign a@\nlaw \"x\" : when a then no_crank", "given", "sign ^given\nlaw \"x\" : when ^given then no_crank");
		renamed("sign ^giv@en\nlaw \"x\" : when ^given then no_crank", "b", "sign b\nlaw \"x\" : when b then no_crank");
		renamed("state s : a@, b\nrule r { in s a }", "on", "state s : on, b\nrule r { in s on }");
		renamed("part p@ { fault step }\nexclusive p.step, battery.flat", "tool",
				"part tool { fault step }\nexclusive tool.step, battery.flat");
	}

	@Test
	void whatCannotBe() {
		refused("sign a@", "two words", "`two words` is not a valid name. A name is made of letters, digits and _ and begins with a letter.");
		refused("sign a@", "1st", "`1st` is not a valid name. A name is made of letters, digits and _ and begins with a letter.");
		refused("sign a@", "", "`` is not a valid name. A name is made of letters, digits and _ and begins with a letter.");
		refused("sign a@", "lamp", "There is already a test `lamp` in names.bay.");
		refused("rule a { run lamp on li@t : proves nothing }", "dark", "`lamp` has a value `dark` already.");
		refused("rule a { then clears battery.fl@at }", "open_cell", "There is already a fault `battery.open_cell` in names.bay.");
		refused("rule a { beca@use \"x\" }", "b", "There is no name here that could be changed.");
	}

	/** Another name for the same thing makes no review stale; one that was stale stays so. */
	@Test
	void reviewsFollow() {
		String rule = "rule a { given smoke then suspects battery.flat }\nsign smoke@\n";
		RuleProject project = Cursor.in(rule).services().project();
		String meaning = Meaning.fingerprint(project.snapshot().rules().rule("a").orElseThrow());
		String reviews = "review a by \"M. Sund\" on 2026-03-09 agrees meaning \"%1$s\"\n"
				+ "review a by \"R. Falk\" on 2026-03-09 objects meaning \"00000000\"\n"
				+ "remark on a by \"R. Falk\" on 2026-03-09 \"How thick?\" meaning \"%1$s\"\n";
		Cursor cursor = Cursor.in(rule + String.format(reviews, meaning));
		SortedMap<String, String> before = cursor.services().project().snapshot().sources();
		Renaming.Changes changes = (Renaming.Changes) rename(cursor, "fumes");
		assertEquals(before, cursor.services().project().snapshot().sources());
		apply(cursor.services().project(), changes);
		String after = Meaning.fingerprint(cursor.services().project().snapshot().rules().rule("a").orElseThrow());
		assertEquals(rule.replace("smoke", "fumes").replace("@", "") + String.format(reviews, after),
				cursor.services().project().source(Cursor.FILE).orElseThrow().text());
	}

	/** Accepts every warning of the flawed examples; under another name each of them is still accepted, and nothing is stale. */
	@Test
	void acceptancesFollow() {
		int names = 0;
		for (Path sample : Samples.flawed()) {
			String file = sample.getFileName().toString();
			if (file.startsWith("stale-")) {
				continue;
			}
			RuleProject project = Samples.inMemory(new TreeMap<>(Map.of(file, Samples.read(sample))));
			List<String> accepted = check(project).stream().filter(flaw -> flaw.severity() == Severity.WARNING)
					.map(flaw -> "accept \"" + flaw.acceptanceKey() + "\" because \"It is known.\"\n").distinct().toList();
			project.update(file, Samples.read(sample) + "\n" + String.join("", accepted));
			List<String> before = judged(project);
			EditorServices services = new EditorServices(project);
			TreeSet<Target> done = new TreeSet<>();
			for (Usages.Named named : new Usages(project).all(file)) {
				if (!accepted.isEmpty() && done.add(named.target()) && done.size() % 3 == 0) {
					String text = project.source(file).orElseThrow().text();
					apply(project, (Renaming.Changes) services.rename(file, named.use().offset(), "qqq"));
					assertEquals(before, judged(project), () -> "after renaming " + named.target() + " in " + file);
					project.update(file, text);
					names++;
				}
			}
		}
		assertTrue(names >= 50, "names: " + names);
	}

	private static List<Flaw> check(RuleProject project) {
		return new Analysis().check(project.snapshot().rules(), Listener.NONE).flaws();
	}

	private static List<String> judged(RuleProject project) {
		return check(project).stream().map(flaw -> flaw.check() + " " + flaw.severity() + " accepted: " + flaw.accepted().isPresent())
				.sorted().toList();
	}

	/**
	 * Renames every third thing of each example project and back. In between the project has no new problem, and the rules mean
	 * the same but for the name.
	 */
	@Test
	void namesOfTheExamples() {
		for (Path sample : Samples.projects()) {
			SortedMap<String, String> texts = Samples.texts(sample);
			// each acceptance makes each renaming check all; those have a test of their own
			texts.replaceAll((file, text) -> text.replaceAll("(?m)^accept[^\n]*(\n[ \t]+[^\n]*)*", ""));
			RuleProject project = Samples.inMemory(texts);
			assertEquals(List.of(), project.snapshot().rules().acceptances());
			EditorServices services = new EditorServices(project);
			List<String> problems = say(project.snapshot().problems());
			List<String> meanings = meanings(project);
			Usages usages = new Usages(project);
			TreeSet<Target> done = new TreeSet<>();
			for (String file : texts.keySet()) {
				for (Usages.Named named : usages.all(file)) {
					if (done.add(named.target()) && done.size() % 3 == 0) {
						thereAndBack(project, services, file, named, problems, meanings);
					}
				}
			}
			assertTrue(done.size() > 10, () -> sample + ": " + done.size());
			assertEquals(texts, new TreeMap<>(project.snapshot().sources()));
		}
	}

	private static void thereAndBack(RuleProject project, EditorServices services, String file, Usages.Named named,
			List<String> problems, List<String> meanings) {
		String old = named.target().simpleName();
		int offset = named.use().offset();
		apply(project, (Renaming.Changes) services.rename(file, offset, "qqq"));
		assertEquals(problems, say(project.snapshot().problems()), () -> "after renaming " + named.target());
		assertEquals(meanings.size(), meanings(project).size());
		// other names on the same line may have moved this one
		Use moved = services.definition(file, offset).isEmpty() ? find(services, file, project)
				: services.references(file, offset, true).get(0);
		apply(project, (Renaming.Changes) services.rename(moved.file(), moved.offset(), old));
		assertEquals(meanings, meanings(project), () -> "after renaming " + named.target() + " back");
	}

	private static Use find(EditorServices services, String file, RuleProject project) {
		int offset = project.source(file).orElseThrow().text().indexOf("qqq");
		return services.prepareRename(file, offset).orElseThrow();
	}

	private static void apply(RuleProject project, Renaming.Changes changes) {
		assertTrue(!changes.edits().isEmpty());
		for (Map.Entry<String, List<TextEdit>> entry : changes.edits().entrySet()) {
			project.update(entry.getKey(), Edits.apply(project.source(entry.getKey()).orElseThrow().text(), entry.getValue()));
		}
	}

	private static List<String> say(List<Problem> problems) {
		return problems.stream().map(problem -> problem.span().file() + " " + problem.id()).toList();
	}

	private static List<String> meanings(RuleProject project) {
		List<String> meanings = new ArrayList<>();
		project.snapshot().rules().rules().forEach(rule -> meanings.add(Meaning.text(rule)));
		project.snapshot().rules().laws().forEach(law -> meanings.add(Meaning.text(law)));
		return meanings;
	}
}
