package org.baywright.language.ide.fix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.names.Renaming;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.ide.text.Edits;
import org.baywright.language.workspace.RuleProject;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;
import org.baywright.model.ProblemKind;
import org.baywright.model.Span;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What an editor offers in a project that builds on another: it never changes the other. */
class BuildsOnFixesTest {

	private static final String FILE = "here.bay";

	@TempDir
	Path shop;

	@BeforeEach
	void others() throws IOException {
		Files.writeString(Files.createDirectories(shop.resolve("shared")).resolve("names.bay"), Cursor.COMMON);
		Files.createDirectories(shop.resolve("van"));
	}

	private RuleProject van(String text) {
		RuleProject project = RuleProject.unread(shop.resolve("van"));
		project.update(FILE, text);
		return project;
	}

	private static List<QuickFix> fixes(RuleProject project, int offset) {
		Snapshot snapshot = project.snapshot();
		Report report = new Analysis().check(snapshot.rules(), Listener.NONE);
		return new EditorServices(project, Cursor.CLOCK).fixes(FILE, offset, 0, snapshot, Optional.of(report));
	}

	@ParameterizedTest
	@CsvSource({ "BUILDS_ON_NOT_TAKEN, ''", "BUILDS_ON_CHANGED, ' meaning \"00000000\"'", "BUILDS_ON_CHANGED, ' meaning\n  \"0\"          \"tests lamp 0000, other 0000\"\n\"rules\"'" })
	void takesItOver(ProblemKind kind, String meaning) {
		RuleProject project = van("// first\nbuilds_on \"../shared\"" + meaning + "\nsign here // last\n");
		List<Problem> told = project.snapshot().problems();
		assertEquals(List.of(kind), told.stream().map(Problem::kind).toList());
		List<QuickFix> offered = fixes(project, told.get(0).span().offset());
		assertEquals(List.of("Take it over as it is now"), offered.stream().map(QuickFix::title).toList());
		project.update(FILE, Edits.apply(project.source(FILE).orElseThrow().text(), offered.get(0).edits().get(FILE)));
		assertEquals(List.of(), project.snapshot().problems());
		String text = project.source(FILE).orElseThrow().text();
		assertTrue(text.matches("(?s)// first\nbuilds_on \"../shared\"\n  meaning \"[0-9a-f]{8}\"\n          \"rules lamp_dark [0-9a-f]{4}\"\n"
				+ "          \"tests lamp [0-9a-f]{4}, rest_voltage [0-9a-f]{4}\"\n          \"repairs recharge [0-9a-f]{4}\"\nsign here // last\n"), text);
		assertEquals(List.of(), new EditorServices(project, Cursor.CLOCK).format(FILE).orElseThrow(), "it is well laid out");
	}

	/** Errors that only their author can put right: correcting the path does it. */
	@ParameterizedTest
	@CsvSource({ "BUILDS_ON_MISSING, ../shraed", "BUILDS_ON_ITSELF, ../van", "BUILDS_ON_UNREADABLE, ../bad.baypack", "BUILDS_ON_ERRORS, ../broken" })
	void theAdviceHelps(ProblemKind kind, String path) throws IOException {
		Files.writeString(shop.resolve("bad.baypack"), "");
		Files.writeString(Files.createDirectories(shop.resolve("broken")).resolve("b.bay"), "sign");
		RuleProject project = van("builds_on \"" + path + "\"\nmodule m on tarn\n");
		assertEquals(kind, project.snapshot().problems().get(0).kind());
		assertEquals(List.of(), fixes(project, 12));
		project.update(FILE, "builds_on \"../shared\"\nmodule m on tarn\n");
		assertEquals(List.of(ProblemKind.BUILDS_ON_NOT_TAKEN), project.snapshot().problems().stream().map(Problem::kind).toList());
	}

	@Test
	void noFixChangesTheOther() {
		RuleProject project = van("""
				builds_on "../shared"
				family plover "Plover" like tarn
				rule wrong { for plover given no_crank run lamp on dark : clears battery.flat on lit : confirms battery.flat
				  because "x" source practice by "R. Falk" on 2026-03-02 }
				rule lamp_missing { given no_crnk run lamp on dark : confirms battery.broken on lit : proves nothing }
				""");
		Snapshot snapshot = project.snapshot();
		Report report = new Analysis().check(snapshot.rules(), Listener.NONE);
		assertTrue(report.flaws().stream().noneMatch(flaw -> flaw.span().isElsewhere()));
		int fixes = 0;
		for (Span span : Stream.concat(snapshot.problems().stream().map(Problem::span), report.flaws().stream().map(Flaw::span)).toList()) {
			for (QuickFix fix : new EditorServices(project, Cursor.CLOCK).fixes(span.file(), span.offset(), 0, snapshot, Optional.of(report))) {
				assertEquals(List.of(FILE), List.copyOf(fix.edits().keySet()), fix.title());
				fixes++;
			}
		}
		assertTrue(fixes > 4);
	}

	@Test
	void aNameThatIsDeclaredThereIsRenamedThere() {
		String text = "builds_on \"../shared\"\nrule mine { given no_crank, lamp is dark then suspects battery.flat because \"x\" source practice by \"A\" on 2026-03-02 }\n";
		RuleProject project = van(text);
		EditorServices services = new EditorServices(project, Cursor.CLOCK);
		for (String name : List.of("no_crank", "lamp", "dark", "flat")) {
			Renaming.Result result = services.rename(FILE, text.indexOf(name), "other");
			assertEquals("`" + name + "` is declared in ../shared/names.bay, which this project only builds on. Rename it there.",
					assertInstanceOf(Renaming.Refused.class, result).message());
		}
		assertInstanceOf(Renaming.Changes.class, services.rename(FILE, text.indexOf("mine"), "yours"));
	}

	@Test
	void namesOfTheOtherAreOfferedExplainedAndFollowed() {
		String text = "builds_on \"../shared\"\nrule mine {\n  given no_crank\n  run \n}\n";
		RuleProject project = van(text);
		EditorServices services = new EditorServices(project, Cursor.CLOCK);
		assertTrue(services.complete(FILE, text.indexOf("run ") + 4).stream().anyMatch(proposal -> proposal.toString().contains("rest_voltage")));
		assertTrue(services.hover(FILE, text.indexOf("no_crank")).orElseThrow().toString().contains("Engine does not crank"));
		assertEquals("../shared/names.bay", services.definition(FILE, text.indexOf("no_crank")).get(0).file());
		assertEquals(3, services.references(FILE, text.indexOf("no_crank"), true).size());
	}
}
