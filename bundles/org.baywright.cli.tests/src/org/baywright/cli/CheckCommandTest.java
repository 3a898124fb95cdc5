package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;

import org.baywright.cli.CheckCommand.FailOn;
import org.baywright.cli.report.Project;
import org.baywright.cli.report.Sample;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest {

	@TempDir
	private Path folder;

	@BeforeEach
	void copyProjects() {
		TestFiles.copy(TestFiles.own("projects/van"), folder.resolve("van"));
		TestFiles.copy(TestFiles.own("projects/flawed"), folder.resolve("flawed"));
	}

	private Runs.Result run(String... args) {
		return new Runs(folder).run(args);
	}

	private static void assertHas(String text, String part) {
		assertTrue(text.contains(part), part + " is not in:\n" + text);
	}

	@Test
	void rulesThatAreNotThereAreNotPraised() throws IOException {
		Files.writeString(folder.resolve("empty.bay"), "// only a remark\n");
		assertEquals("empty: There is no rule to check; 0 rules, " + org.baywright.analysis.check.Checks.ids().size() + " checks.\n", run("check", "empty.bay").out());
	}

	@Test
	void saysThatNoProblemWasFound() {
		Runs.Result result = run("check", "van");
		assertEquals("", result.err());
		assertEquals("van: No problems found, 1 accepted; 2 rules, "
				+ org.baywright.analysis.check.Checks.ids().size() + " checks, 2 of 2 finished jobs brought to the known end.\n",
				result.out());
		assertEquals(ExitCode.FINE, result.code());
	}

	@Test
	void noFolderIsNamedByNothingAndNoneIsCheckedTwice() {
		Runs.Result nothing = run("check", "");
		assertEquals(ExitCode.USAGE, nothing.code());
		assertEquals("An empty name names no file and no folder. The folder where you are is named by a point.\n", nothing.err());
		assertEquals(run("check", "van").out(), run("check", "van", "van/", "./van").out());
	}

	@Test
	void takesThisFolderWhenNoneIsNamed() {
		Runs.Result result = new Runs(folder.resolve("van")).run("check");
		assertEquals(ExitCode.FINE, result.code());
		assertHas(new Runs(folder.resolve("flawed")).run("check").out(), "ERROR  flawed.bay:");
	}

	@Test
	void tellsErrorsWithTheirLinesAndAnExample() {
		Runs.Result result = run("check", "flawed");
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "ERROR  flawed/flawed.bay:24:3  contradiction\n");
		assertHas(result.out(), "\n   24 |   on below 12.4 V    : confirms battery.flat\n      |   ^^^^^^^^^^^^^^^");
		assertHas(result.out(), " |   on at_least 12.0 V : clears battery.flat\n");
		assertHas(result.out(), "For example:\n        - Invented van\n        - Engine does not crank\n");
	}

	@Test
	void tellsTheLinesThatTogetherCauseAFlaw() {
		String out = run("check", "flawed", "--only", "dead-rule").out();
		assertHas(out, "These lines together make it so; without any one of them it would not be:\n");
		assertHas(out, "|   for van where engine is diesel\n");
		assertHas(out, "|   given engine is petrol, no_crank\n");
		assertFalse(out.contains("contradiction"), out);
	}

	@Test
	void tellsHowToAcceptAWarning() {
		assertTrue(run("check", "flawed", "--only", "dead-rule").out()
				.matches("(?s).*To accept it with your reason: accept \"dead-rule:odd@[0-9a-f]{8}\" because \"\"\n.*"));
	}

	@Test
	void acceptedFlawsAreToldOnRequest() {
		assertFalse(run("check", "van").out().contains("unfound-fault"));
		assertHas(run("check", "van", "--accepted").out(),
				"Accepted: Noise alone is judged by ear; no test tells it apart. – A. Author, 2026-03-06");
	}

	@Test
	void anAcceptedWarningDoesNotFail() {
		assertEquals(ExitCode.FINE, run("check", "van", "--fail-on", "warning").code());
		assertEquals(ExitCode.FINE, run("check", "flawed", "--only", "dead-rule").code());
		assertHas(run("check", "flawed", "--only", "dead-rule").out(), "flawed: 1 warning of kind dead-rule; other kinds are not shown; ");
		assertHas(run("check", "flawed", "--only", "circle", "--only", "two-ends").out(),
				"flawed: No problems of kind circle or two-ends found; other kinds are not shown; ");
		assertEquals(ExitCode.FLAWS, run("check", "flawed", "--only", "dead-rule", "--fail-on", "warning").code());
	}

	@Test
	void refusesAKindThatThereIsNot() {
		Runs.Result result = run("check", "van", "--only", "gabs");
		assertEquals(ExitCode.USAGE, result.code());
		assertHas(result.err(), "There is no kind of flaw gabs. There are: text, author-agrees, band-gap,");
	}

	@Test
	void guessesAKindOrAFormatThatIsMisspelt() {
		assertHas(run("check", "van", "--only", "dead-rull").err(), "There is no kind of flaw dead-rull. Did you mean dead-rule?");
		assertHas(run("explain", "contradicton").err(), "Did you mean contradiction?");
		Runs.Result format = run("check", "van", "--format", "sarfi");
		assertEquals(ExitCode.USAGE, format.code());
		assertHas(format.err(), "--format cannot be 'sarfi'. Did you mean sarif?");
		assertHas(run("check", "van", "--format", "xyz").err(), "There are: text, line, json, sarif, junit.");
	}

	@Test
	void tellsWhatIsWrongInTheText() throws IOException {
		Files.writeString(folder.resolve("van/more.bay"), "rule half {\n\tgiven nobody_knows\n  then suspects battery.flat\n}\n");
		Runs.Result result = run("check", "van", "--only", "text");
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "ERROR  van/more.bay:2:8  unknown-name\n");
		assertHas(result.out(), "\n    2 |     given nobody_knows\n      |           ^^^^^^^^^^^^\n");
		assertHas(result.out(), "Left out because of errors: rule half.");
	}

	@Test
	void aFileIsAProjectOfItsOwn() {
		Runs.Result result = run("check", "flawed/flawed.bay");
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "ERROR  flawed/flawed.bay:24:3  contradiction\n");
	}

	@Test
	void advisesToCheckTheFolderWhenOneFileIsNotEnough() {
		Runs.Result result = run("check", "van/rules/starting.bay");
		assertEquals(ExitCode.FLAWS, result.code());
		assertTrue(result.out().endsWith("\nThe file van/rules/starting.bay was checked by itself."
				+ " Name its folder to check it together with the files beside it.\n"), result.out());
		assertFalse(run("check", "flawed/flawed.bay").out().contains("by itself"));
	}

	@Test
	void theExitCodeTellsWhatStands() {
		Project all = Sample.project("");
		Project read = new Project(all.folder(), all.prefix(), all.linked(), all.rules(), List.of(), all.sources(), all.dropped(), all.report(), all.beneath(), List.of());
		Project undecided = read.only(Set.of("undecided"));
		Project warnings = read.only(Set.of("gap", "undecided"));
		Project accepted = read.only(Set.of("band-gap"));
		assertEquals(ExitCode.FLAWS, CheckCommand.exitCode(List.of(all), FailOn.ERROR));
		assertEquals(ExitCode.UNDECIDED, CheckCommand.exitCode(List.of(undecided), FailOn.WARNING));
		assertEquals(ExitCode.UNDECIDED, CheckCommand.exitCode(List.of(accepted, warnings), FailOn.ERROR));
		assertEquals(ExitCode.FLAWS, CheckCommand.exitCode(List.of(accepted, warnings), FailOn.WARNING));
		assertEquals(ExitCode.FINE, CheckCommand.exitCode(List.of(accepted), FailOn.WARNING));
		assertEquals(ExitCode.FLAWS, CheckCommand.exitCode(List.of(all.only(Set.of(Project.TEXT))), FailOn.ERROR));
		assertEquals(ExitCode.FLAWS, CheckCommand.exitCode(List.of(all.only(Set.of("band-gap"))), FailOn.ERROR),
				"what an error of the text leaves out was not checked");
	}

	@Test
	void checksSeveralProjects() {
		Runs.Result result = run("check", "van", "flawed");
		assertHas(result.out(), "van: No problems found");
		assertHas(result.out(), "flawed: 2 errors");
		assertEquals(ExitCode.FLAWS, result.code());
	}

	@Test
	void saysWhenThereIsNothingToRead() throws IOException {
		Runs.Result missing = run("check", "nowhere");
		assertEquals(ExitCode.FILES, missing.code());
		assertEquals("There is no file or folder nowhere.\n", missing.err());
		Files.createDirectory(folder.resolve("empty"));
		Runs.Result empty = run("check", "empty");
		assertEquals(ExitCode.FILES, empty.code());
		assertEquals("There are no rule files (*.bay) in empty.\n", empty.err());
		try (RandomAccessFile large = new RandomAccessFile(folder.resolve("empty/large.bay").toFile(), "rw")) {
			large.setLength(300L << 20);
		}
		for (String given : List.of("empty", "empty/large.bay")) {
			Runs.Result tooLarge = run("check", given);
			assertEquals(ExitCode.FILES, tooLarge.code());
			assertEquals("empty/large.bay: The file has 300 MB; a rule file may have at most 256 MB. "
					+ "Split it into several files; if it holds no rules, take it out of the project.\n", tooLarge.err());
		}
	}

	@Test
	void writesAReportToAFile() throws IOException {
		Files.createDirectory(folder.resolve("out"));
		Runs.Result result = run("check", "flawed", "--format", "sarif", "-o", "out/flawed.sarif");
		assertEquals(ExitCode.FLAWS, result.code());
		assertTrue(result.out().startsWith("flawed: 2 errors"), result.out());
		assertHas(Files.readString(folder.resolve("out/flawed.sarif")), "\"ruleId\": \"contradiction\"");
		assertEquals(run("check", "flawed", "--format", "sarif").out(), Files.readString(folder.resolve("out/flawed.sarif")));
		run("check", "flawed", "-o", "flawed.txt");
		assertEquals(run("check", "flawed").out(), Files.readString(folder.resolve("flawed.txt")));
	}

	@Test
	void saysWhenTheReportCannotBeWritten() throws IOException {
		Files.createDirectories(folder.resolve("full/x"));
		Runs.Result result = run("check", "van", "--format", "junit", "-o", "full");
		assertEquals(ExitCode.FILES, result.code());
		assertHas(result.err(), "it is a folder");
	}

	@Test
	void isPlainWithoutATerminalAndColouredOnOne() {
		assertFalse(run("check", "flawed").out().contains("\u001B"));
		Runs.Result result = new Runs(folder).onTerminal().run("check", "flawed");
		assertHas(result.out(), "\u001B[1;31mERROR\u001B[0m");
		assertHas(result.err(), "Checking flawed");
		assertTrue(result.err().endsWith("\r\u001B[K"), "the progress line is taken away at the end");
	}

	@Test
	void showsProgressOnRequest() {
		String err = run("check", "van", "--progress").err();
		assertHas(err, "Reading van: 3 of 3\n");
		assertHas(err, "Checking van: ");
	}

	@Test
	void endsWhenCancelled() {
		Runs.Result result = new Runs(folder).cancelled().run("check", "van");
		assertEquals(ExitCode.CANCELLED, result.code());
		assertEquals("Cancelled.\n", result.err());
		assertEquals("", result.out());
	}
}
