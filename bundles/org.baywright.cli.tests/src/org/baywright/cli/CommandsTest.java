package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.model.ProblemKind;
import org.baywright.pack.PackReader;
import org.baywright.pack.Schemas;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

class CommandsTest {

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

	// ---- pack, show, verify ------------------------------------------------------------------------------------

	@Test
	void packWritesAPackThatIsRight() throws IOException, PackException {
		Runs.Result result = run("pack", "van");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		String fingerprint = PackReader.read(folder.resolve("van.baypack")).manifest().fingerprint();
		assertHas(result.out(), "Wrote van.baypack, fingerprint " + fingerprint + "\n");
		Runs.Result verified = run("verify", "--prove", "van.baypack");
		assertEquals(ExitCode.FINE, verified.code(), verified.out());
		assertHas(verified.out(), "  right  proofs          All ");
		assertHas(verified.out(), "  fingerprint " + fingerprint + "\n");
	}

	@Test
	void packWritesTheSameBytesAgain() throws IOException {
		run("pack", "van", "-o", "one.baypack");
		Files.createDirectory(folder.resolve("packs"));
		run("pack", folder.resolve("van").toString(), "--output", "packs/two.baypack", "--sheet", "packs/van.html");
		assertArrayEquals(Files.readAllBytes(folder.resolve("one.baypack")),
				Files.readAllBytes(folder.resolve("packs/two.baypack")));
		assertEquals(Files.readString(folder.resolve("packs/van.html")),
				run("show", "one.baypack", "--entry", "rules.html").out());
	}

	@Test
	void packRefusesAndSaysWhy() {
		Runs.Result result = run("pack", "flawed");
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "ERROR  flawed/flawed.bay:24:3  contradiction\n");
		assertHas(result.out(), "No pack was made, since 2 errors stand.\n");
		assertFalse(result.out().contains("WARNING"), "only what stands in the way is told");
		assertFalse(Files.exists(folder.resolve("flawed.baypack")));
	}

	@Test
	void packAndCheckAskForTheSignOff() throws IOException {
		assertEquals(ExitCode.FINE, run("check", "--sign-off", "van").code(), "the project asks for nothing");
		Files.writeString(folder.resolve("van/sign-off.bay"), "sign_off {\n  agree 1\n}\n");
		Runs.Result refused = run("pack", "van");
		assertEquals(ExitCode.FLAWS, refused.code());
		assertHas(refused.out(), "WARNING  van/sign-off.bay:1:1  not-agreed\n");
		assertHas(refused.out(), "Nobody can accept this, as the project asks for it before its rules count as agreed.\n");
		assertHas(refused.out(), "No pack was made, since the sign-off is not met: one breach. With --draft a draft is written all the same.\n");
		assertFalse(refused.out().contains("To accept it"), refused.out());
		assertFalse(Files.exists(folder.resolve("van.baypack")));
		Runs.Result draft = run("pack", "van", "--draft");
		assertEquals(ExitCode.FINE, draft.code());
		assertHas(draft.out(), "Wrote van.baypack, a draft, as the sign-off is not met, fingerprint ");
		assertHas(run("show", "van.baypack").out(), "Draft: the rules are not signed off.\n");
		assertEquals(ExitCode.FINE, run("verify", "--prove", "van.baypack").code());
		assertEquals(ExitCode.FINE, run("check", "van").code());
		assertEquals(ExitCode.FLAWS, run("check", "--sign-off", "van").code());
		assertEquals(ExitCode.FINE, run("check", "--sign-off", "--only", "gap", "van").code());
		assertHas(run("check", "--format", "json", "van").out(), "\"breach\": true");
	}

	@Test
	void showTellsWhatAPackHolds() {
		run("pack", "van");
		String out = run("show", "van.baypack", "--rules").out();
		assertHas(out, "van\nFormat version 2.0, made by Baywright 0.1.0\nFingerprint ");
		assertHas(out, "     2 rules\n");
		assertHas(out, "the rules bring 2 of 2 finished jobs to the known end.\n");
		assertHas(out, "Accepted (1)\n");
		assertHas(out, "Rules (2)\n  flat     Battery too low to crank  rules/starting.bay:1\n");
	}

	@Test
	void showWritesOutEntriesAndSchemas() {
		run("pack", "van");
		assertTrue(run("show", "van.baypack", "--entry", "rules.json").out().startsWith("{\"acceptances\":[{\"at\":"));
		assertEquals(Schemas.rules(), run("show", "--schema", "rules").out());
		assertEquals(Schemas.manifest(), run("show", "--schema", "manifest").out());
		assertEquals(ExitCode.USAGE, run("show", "van.baypack", "--entry", "../x").code());
		assertEquals(ExitCode.USAGE, run("show").code());
		assertEquals(ExitCode.USAGE, run("show", "van.baypack", "--rules", "--schema", "rules").code());
	}

	@Test
	void verifyFindsADamagedPack() throws IOException {
		run("pack", "van");
		byte[] pack = Files.readAllBytes(folder.resolve("van.baypack"));
		pack[pack.length / 2] ^= 4;
		Files.write(folder.resolve("bad.baypack"), pack);
		Runs.Result result = run("verify", "bad.baypack", "van.baypack");
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "  wrong  ");
		Files.writeString(folder.resolve("text.baypack"), "no pack\u001B[31m");
		assertHas(run("verify", "text.baypack").out(), "wrong  archive         The file is not a rule pack");
		Runs.Result text = run("show", "text.baypack");
		assertEquals(ExitCode.FILES, text.code());
		assertEquals("text.baypack: The file is not a rule pack: a pack is a zip archive.\n", text.err());
		assertEquals(ExitCode.FILES, run("verify", "none.baypack").code());
		Runs.Result some = run("verify", "van.baypack", "none.baypack", "bad.baypack");
		assertEquals(ExitCode.FLAWS, some.code());
		assertHas(some.err(), "There is no file or folder");
		assertHas(some.out(), "bad.baypack");
		if (Files.exists(Path.of("/dev/zero"))) {
			assertHas(run("verify", "/dev/zero").out(), "larger than any rule pack");
		}
	}

	// ---- tidy --------------------------------------------------------------------------------------------------

	@Test
	void tidyLaysOutFiles() throws IOException {
		Path file = folder.resolve("van/van.bay");
		String tidy = Files.readString(file);
		assertEquals(ExitCode.FINE, run("tidy", "--check", "van").code());
		Files.writeString(file, tidy.replace("  tool", "tool").replace("\n  trait", "\n\t\ttrait  "));
		Runs.Result check = run("tidy", "--check", "van");
		assertEquals(ExitCode.FLAWS, check.code());
		assertEquals("van/van.bay\n3 files: 1 not well laid out.\n", check.out());
		assertFalse(Files.readString(file).equals(tidy));
		Runs.Result result = run("tidy", "van");
		assertEquals(ExitCode.FINE, result.code());
		assertEquals(tidy, Files.readString(file));
		assertEquals("van/van.bay\n3 files: 1 laid out anew.\n", result.out());
		assertEquals("3 files: well laid out.\n", run("tidy", "van").out());
	}

	@Test
	void tidyLeavesFilesWithErrorsAsTheyAre() throws IOException {
		byte[] notText = { 's', 'i', 'g', 'n', ' ', ' ', 'x', ' ', '"', (byte) 0xFF, '"' };
		Files.write(folder.resolve("van/bytes.bay"), notText);
		Files.writeString(folder.resolve("van/half.bay"), "sign   a \"A\"\nrule half {  given");
		Runs.Result result = run("tidy", "van");
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "ERROR  van/bytes.bay:1:10  not-utf8\n");
		assertHas(result.out(), "ERROR  van/half.bay:2:");
		assertHas(result.out(), "5 files: 0 laid out anew, 2 left as they were; see above.\n");
		assertArrayEquals(notText, Files.readAllBytes(folder.resolve("van/bytes.bay")));
		assertEquals("sign   a \"A\"\nrule half {  given", Files.readString(folder.resolve("van/half.bay")));
	}

	// ---- explain -----------------------------------------------------------------------------------------------

	@Test
	void explainListsAllChecksAndKindsOfProblems() {
		Runs.Result result = run("explain");
		assertEquals(ExitCode.FINE, result.code());
		for (String id : org.baywright.analysis.check.Checks.ids()) {
			assertHas(result.out(), " " + id + " ");
			assertEquals(ExitCode.FINE, run("explain", id).code(), id);
			assertFalse(run("explain", id).out().isBlank(), id);
		}
		for (ProblemKind kind : ProblemKind.values()) {
			assertHas(result.out(), " " + kind.id() + " ");
			assertHas(run("explain", kind.id()).out(), "What to do: ");
			JsonObject json = JsonParser.parseString(run("explain", kind.id(), "--format", "json").out()).getAsJsonObject();
			assertEquals(kind.title(), json.getAsJsonArray("problems").get(0).getAsJsonObject().get("summary").getAsString());
			assertEquals(0, json.getAsJsonArray("kinds").size());
		}
	}

	@Test
	void explainSaysWhatItDoesNotKnow() {
		Runs.Result result = run("explain", "../gap");
		assertEquals(ExitCode.USAGE, result.code());
		assertHas(result.err(), "There is no help on ../gap. The checks are: author-agrees, band-gap,");
	}

	// ---- tour --------------------------------------------------------------------------------------------------

	@Test
	void tourChecksAndPacksTheExamples() throws IOException {
		Path examples = folder.resolve("home/rules-examples");
		Files.createDirectories(examples.resolve("flawed"));
		Files.createDirectories(examples.resolve(".hidden"));
		TestFiles.copy(folder.resolve("van"), examples.resolve("van"));
		TestFiles.copy(folder.resolve("van"), examples.resolve("wagon"));
		Runs.Result result = run("tour");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertHas(result.out(), "1 of 2: van\n");
		assertHas(result.out(), "Wrote packs/wagon.baypack\n");
		assertHas(result.out(), "\nProject  Rules  Tests  Faults  Jobs  Warnings  Accepted  Pack\nvan          2      2       3   2/2         0         1  ");
		for (String file : new String[] { "van.baypack", "van.html", "wagon.baypack", "wagon.html" }) {
			assertTrue(Files.isRegularFile(folder.resolve("packs").resolve(file)), file);
		}
		assertEquals(ExitCode.FINE, run("verify", "packs/van.baypack", "packs/wagon.baypack").code());
	}

	@Test
	void tourGoesOnAfterAnExampleWithErrors() throws IOException {
		Path examples = folder.resolve("examples");
		Files.createDirectories(examples);
		TestFiles.copy(folder.resolve("flawed"), examples.resolve("bad"));
		TestFiles.copy(folder.resolve("van"), examples.resolve("van"));
		Runs.Result result = run("tour", "--examples", "examples", "out");
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "No pack was made, since 2 errors stand.\n");
		assertTrue(Files.isRegularFile(folder.resolve("out/van.baypack")));
		assertFalse(Files.exists(folder.resolve("out/bad.baypack")));
	}

	@Test
	void tourSaysWhereItLookedForExamples() {
		Runs.Result result = run("tour");
		assertEquals(ExitCode.FILES, result.code());
		assertEquals("There are no examples in " + Path.of("home", "rules-examples")
				+ ". Name the folder that holds them with --examples.\n", result.err());
	}

	// ---- use ---------------------------------------------------------------------------------------------------

	@ParameterizedTest
	@ValueSource(strings = { "check", "bench", "plan", "pack", "show", "verify", "tidy", "explain", "tour", "share", "join", "offer", "offers", "take-over", "withdraw",
			"catch-up", "news", "undo", "history", "merge-driver", "serve", "workbench", "help", "completion" })
	void everyCommandHasHelp(String command) {
		Runs.Result result = run(command, "--help");
		assertEquals(ExitCode.FINE, result.code());
		assertHas(result.out(), "Usage: baywright " + command);
		assertHas(result.out(), "Exit codes:\n  0 ");
		assertTrue(result.out().matches("(?s).*Examples:\n  (source <\\()?baywright .*"), result.out());
		assertEquals(result.out(), run("help", command).out());
		assertHas(run("--help").out(), "\n  " + command + " ");
		for (String line : result.out().split("\n")) {
			assertTrue(line.length() <= 100, line);
			assertFalse(line.contains("null"), line);
		}
	}

	@ParameterizedTest
	@ValueSource(strings = { "bench", "plan" })
	void theVehiclesOfTheHelpAreThoseOfAnExampleProject(String command) {
		TestFiles.copy(TestFiles.root().resolve("rules-examples/light-van"), folder.resolve("light-van"));
		TestFiles.copy(TestFiles.root().resolve("rules-examples/light-van"), folder.resolve("light-van-before"));
		List<String> examples = run(command, "--help").out().lines().filter(line -> line.startsWith("  baywright " + command + " light-van --vehicle")).toList();
		assertFalse(examples.isEmpty());
		for (String example : examples) {
			Runs.Result result = new Runs(folder).answering("quit").run(example.strip().substring("baywright ".length()).split(" "));
			assertEquals(ExitCode.FINE, result.code(), example + "\n" + result.err());
		}
	}

	@Test
	void theMainHelpGivesAllExitCodes() {
		String help = run("--help").out();
		for (int code : new int[] { ExitCode.FINE, ExitCode.FLAWS, ExitCode.USAGE, ExitCode.FILES, ExitCode.UNDECIDED,
				ExitCode.INTERNAL, ExitCode.CANCELLED }) {
			assertTrue(help.matches("(?s).*\n  " + code + " +[a-zB].*"), "exit code " + code);
		}
	}

	@Test
	void wrongUseIsTold() {
		assertEquals(ExitCode.USAGE, run().code());
		assertHas(run().err(), "Usage: baywright");
		Runs.Result unknown = run("chek", "van");
		assertEquals(ExitCode.USAGE, unknown.code());
		assertEquals("Baywright does not know 'chek'.\nDid you mean check?\nHelp: baywright --help\n", unknown.err());
		Runs.Result option = run("check", "--fail-on", "notes");
		assertEquals(ExitCode.USAGE, option.code());
		assertHas(option.err(), "--fail-on");
		assertHas(option.err(), "Help: baywright check --help\n");
		assertEquals(ExitCode.USAGE, run("verify").code());
	}

	@Test
	void failuresOfBaywrightAreToldApartFromFlaws() {
		StringWriter err = new StringWriter();
		Writer broken = new Writer() {
			@Override
			public void write(char[] text, int from, int length) {
				throw new StackOverflowError("of the test");
			}

			@Override
			public void flush() {
				// nothing was written
			}

			@Override
			public void close() {
				// nothing is open
			}
		};
		int code = CommandLineRun.run(new Session(new Session.Input(Reader.nullReader(), false), new Output(broken), new Output(err), Style.PLAIN, folder, folder, false,
				new AtomicBoolean()), "--version");
		assertEquals(ExitCode.INTERNAL, code);
		assertHas(err.toString(), "Baywright itself failed; please report this");
	}

	@Test
	void theVersionIsTold() {
		assertEquals("Baywright 0.1.0\n", run("--version").out());
	}
}
