package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.baywright.analysis.Listener;
import org.baywright.cli.bench.Answers;
import org.baywright.cli.bench.Dialogue;
import org.baywright.cli.bench.Printer;
import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Progress;
import org.baywright.cli.work.Read;
import org.baywright.presenter.bench.Bench;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Questions and answers on the bench of the command line. */
class BenchCommandTest extends ProcessFixture {

	private static final String[] FLAT = { "no_crank", "11.6 V", "done", "done", "done", "done", "done", "done", "absent", "12.6" };

	private Runs.Result bench(List<String> answers, String... options) {
		String[] args = Stream.concat(Stream.of("bench", "van"), Stream.of(options)).toArray(String[]::new);
		return new Runs(folder).answering(answers.toArray(String[]::new)).run(args);
	}

	private static List<String> and(String[] first, String... more) {
		return Stream.concat(Stream.of(first), Stream.of(more)).toList();
	}

	private String jobs() throws IOException {
		return Files.readString(folder.resolve("van/jobs.bay"));
	}

	// ---- a whole job ------------------------------------------------------------------------------------------------

	@Test
	void aJobInAPipeIsLedToItsEndAndKept() throws IOException, InterruptedException {
		String before = jobs();
		Runs.Result result = new Command(folder).answering(String.join("\n", and(FLAT, "took 40 min", "spent 12", "keep Job 3")) + "\n", "bench", "van", "--sheet", "job.html");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertEquals("", result.err());
		assertFalse(result.out().contains("> "), "nobody is prompted in a pipe");
		assertHas(result.out(), """
				Battery voltage at rest
				Caution: Charging gas
				  No flame or spark near the battery.
				How
				""");
		assertHas(result.out(), "Answer (rest_voltage): a number from 0.0 V to 18.0 V\nNoted: Battery voltage at rest: 11.6 V\n");
		assertHas(result.out(), "\nRepeat: Battery voltage at rest.\nExpected: 12.4 V to 13.0 V\nCaution: Charging gas\n");
		assertHas(result.out(), "Noted: Battery voltage at rest: 12.6 V, as expected\n");
		assertHas(result.out(), "So far: 40 min, cost 12\n");
		assertTrue(result.out().endsWith("“Job 3” is kept in jobs.bay.\nWrote job.html\n"), result.out());
		assertEquals(before + """

				job "Job 3" {
				  on van
				  found no_crank, rest_voltage 11.6 V
				  was battery.flat
				  took 40 min
				  spent 12
				  afterwards low_supply absent, rest_voltage 12.6 V
				}
				""", jobs());
		assertHas(Files.readString(folder.resolve("job.html")), "<h1>Job sheet</h1>");
		Runs.Result check = new Runs(folder).run("check", "van");
		assertEquals(ExitCode.FINE, check.code(), check.out());
		assertHas(check.out(), "3 of 3");
	}

	@Test
	void aJobFromAFileIsHandedOn() throws IOException {
		Files.writeString(folder.resolve("answers.txt"), """
				# a lamp at the starter that stays dark
				no_crank
				12.6 V

				2
				sheet referral.html
				keep Job 3
				this is not read any more
				""");
		Runs.Result result = new Runs(folder).run("bench", "van", "--answers", "answers.txt");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertHas(result.out(), "Noted: Test lamp at the starter while cranking: dark\n");
		assertHas(result.out(), "\nRefer to an electrician.\nAnswer: keep, or keep NAME\nWrote referral.html.\n");
		assertHas(jobs(), "  found no_crank, rest_voltage 12.6 V, starter_feed dark\n  was referred\n");
		assertHas(Files.readString(folder.resolve("referral.html")), "<h1>Referral</h1>");
	}

	@Test
	void theSameAnswersAreAnsweredTheSame() {
		List<String> answers = and(FLAT, "why", "found", "instead", "quit");
		assertEquals(bench(answers), bench(answers));
	}

	@Test
	void whatIsKnownNeedNotBeAskedFor() {
		Runs.Result result = bench(List.of("12.6 V", "lit"), "--vehicle", "Invented van", "--with", "engine=diesel", "--with", "built=2018", "--complaint", "Engine does not crank");
		assertTrue(result.out().startsWith("""
				Write help for the words that can be used at any question.
				Noted: Vehicle: Invented van
				Noted: engine: diesel
				Noted: built: 2018
				Noted: Engine does not crank: present

				Battery voltage at rest
				"""), result.out());
		assertHas(result.out(), "Do the repair “Replace the starter”, then verify it.");
	}

	// ---- answers ----------------------------------------------------------------------------------------------------

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "12 furlong | There is no unit furlong. Write a number in V, such as 9.0 V.", "99 | 99.0 V is out of range: 0.0 V to 18.0 V.",
			"flat | Write a number in V, such as 9.0 V.", "11.64 | The instrument shows steps of 0.1 V, so 11.64 V counts as 11.6 V." })
	void aValueIsReadOrRefused(String answer, String told) {
		Runs.Result result = bench(List.of(answer), "--complaint", "no_crank");
		assertHas(result.out(), "Answer (rest_voltage): a number from 0.0 V to 18.0 V\n" + told + "\n");
		assertEquals(ExitCode.UNDECIDED, result.code());
	}

	@ParameterizedTest
	@ValueSource(strings = { "12.6 V", "12,6", "12600 mV", "  12.6  " })
	void aValueIsReadInAnyUnit(String answer) {
		assertHas(bench(List.of(answer), "--complaint", "no_crank").out(), "Noted: Battery voltage at rest: 12.6 V\n");
	}

	@ParameterizedTest
	@CsvSource({ "2, dark", "dark, dark", "LIT, lit", "1, lit" })
	void aChoiceIsNamedByItsNumberOrItsWords(String answer, String value) {
		assertHas(bench(List.of("12.6", answer), "--complaint", "no_crank").out(), "Noted: Test lamp at the starter while cranking: " + value + "\n");
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "0 | Write the number before one of them, or its words.", "3 | Write the number before one of them, or its words.",
			"litt | Did you mean lit?", "bcak | Did you mean back?" })
	void aWrongChoiceIsAskedForAgain(String answer, String advice) {
		String again = "Answer (starter_feed):\n  1 lit\n  2 dark\n";
		assertHas(bench(List.of("12.6", answer), "--complaint", "no_crank").out(), again + "“" + answer + "” is none of these. " + advice + "\nTest lamp at the starter while cranking\n" + again);
	}

	@Test
	void whatIsNotDoneIsAskedForAgain() {
		assertHas(bench(List.of("11.6", "well", "", "yes"), "--complaint", "no_crank").out(), """
				Charge it.
				Repair: Recharge the battery
				Answer: done or yes
				“well” is no answer here. Write help for what can be written.
				Charge it.
				Answer: done or yes
				Charge it.
				Answer: done or yes

				Set Ignition on.
				""");
	}

	// ---- words ------------------------------------------------------------------------------------------------------

	@Test
	void everyWordIsListed() {
		String out = bench(List.of("help")).out();
		for (String word : List.of("back", "redo", "instead", "enter", "vin", "why", "found", "sheet", "refer", "cause", "took", "spent", "keep", "draft", "help", "quit")) {
			assertTrue(out.matches("(?s).*\n  " + word + " .*"), word);
		}
	}

	@Test
	void anEntryIsTakenBackAndAnythingElseEntered() {
		Runs.Result result = bench(List.of("back", "back", "enter", "enter low 3", "enter Battery voltage at rest = 12.6 V", "enter starter_feed", "back", "enter starter_feed dark",
				"back", "back", "back", "found"));
		assertHas(result.out(), "There is nothing to take back.\n");
		assertHas(result.out(), "Say what: enter NAME VALUE.\n");
		assertHas(result.out(), "There is nothing to enter named “low 3”. Write its name or its title as the rules have it.\n");
		assertHas(result.out(), "\n\nTest lamp at the starter while cranking\nHow\n  Needs: Multimeter\n");
		assertTrue(result.out().endsWith("Nothing was entered yet.\nSo far: 0 min\nThe answers ended before the job did; it is not kept.\n"), result.out());
	}

	@Test
	void anotherStepIsTakenWithItsCautions() {
		// it waits for what its rule is given, so it is no next step
		Runs.Result result = bench(List.of("instead", "enter starter_feed", "lit", "found", "quit"), "--complaint", "no_crank");
		assertHas(result.out(), "There is no other step.\n");
		assertHas(result.out(), "\n\nTest lamp at the starter while cranking\nHow\n  Needs: Multimeter\n  In state: Ignition on\n");
		assertHas(result.out(), "Noted: Test lamp at the starter while cranking: lit\n");
		assertEquals(ExitCode.FINE, result.code());
	}

	@ParameterizedTest
	@ValueSource(strings = { "why all", "rules" })
	void theRulesAreTold(String word) {
		assertHas(bench(List.of("12.6", word), "--complaint", "no_crank").out(), """
				Rules that wait (1)
				  Starter does not turn
				    waits for: the result of “Test lamp at the starter while cranking”
				""");
	}

	@Test
	void whyIsToldInShort() {
		assertHas(bench(List.of("why", "12.6", "why"), "--complaint", "no_crank").out(), """
				Until the cause is found: about 5 min. No order of steps takes less.
				The rule “Battery too low to crank” applied:
				  12.4 V to 13.0 V: clears “12 V battery: Low state of charge”
				Write why all for what the other rules wait for or lack.
				Test lamp at the starter while cranking
				""");
	}

	@Test
	void whatWasTakenBackIsDoneAgain() {
		Runs.Result result = bench(List.of("redo", "12.6", "undo", "REDO", "found"), "--complaint", "no_crank");
		assertHas(result.out(), "There is nothing to go forward to.\n");
		assertTrue(result.out().endsWith("So far: 8 min\nThe answers ended before the job did; it is not kept.\n"), result.out());
	}

	@Test
	void theNumberOfTheVehicleIsRecorded() throws IOException {
		Runs.Result result = bench(and(FLAT, "vin", "vin ZZZ", "vin zzzt3aaaaj0000001", "keep Job 3"));
		assertHas(result.out(), "Say which: vin NUMBER.\n");
		assertHas(result.out(), "\nNoted: Identification number: ZZZT3AAAAJ0000001\n");
		assertEquals(ExitCode.FINE, result.code(), result.out());
		assertHas(jobs(), "  vin \"ZZZT3AAAAJ0000001\"\n");
	}

	@Test
	void theCauseIsNamedOnceWithItsRepair() {
		String out = bench(List.of("11.6"), "--complaint", "no_crank").out();
		String told = out.substring(out.indexOf("Noted: Battery voltage at rest"), out.indexOf("\n\nCharge it."));
		assertEquals(2, told.split("Low state of charge", -1).length, told);
	}

	@Test
	void aNumberIsNoStepToTakeInstead() throws IOException {
		Path file = folder.resolve("van/rules/starting.bay");
		Files.writeString(file, Files.readString(file).replace("given no_crank, battery.flat cleared", "given no_crank"));
		Runs.Result result = bench(List.of("instead", "instead 1", "instead a", "back", "instead battery voltage at REST", "11.6", "quit"), "--complaint", "no_crank");
		assertHas(result.out(), "Or instead\n  a Battery voltage at rest (9 min)\n");
		assertHas(result.out(), "There is no step “1”. Write instead with a letter or a title of these:\n  a Battery voltage at rest (9 min)\n");
		assertEquals(3, result.out().split("\n\nBattery voltage at rest\nCaution", -1).length, result.out());
		assertHas(result.out(), "The rules confirm “12 V battery: Low state of charge”.");
	}

	@Test
	void theCauseIsSaidAndTheJobHandedOn() throws IOException {
		Runs.Result result = bench(List.of("12.6", "cause noise", "cause Starter: Noisy", "cause", "refer", "refer a friend", "refer", "refer  the  maker's desk", "keep Noise"), "--complaint", "no_crank");
		assertHas(result.out(), "There is no fault “noise” in these rules.");
		assertHas(result.out(), "The cause is said to be “Starter: Noisy”.");
		assertHas(result.out(), "Say to whom the job goes: refer TO WHOM.\n");
		assertHas(result.out(), "\nRefer to a friend.\n");
		assertHas(result.out(), "\nRefer to the maker's desk.\n");
		assertEquals(ExitCode.FINE, result.code(), result.out());
		assertHas(jobs(), "job \"Noise\"");
	}

	@Test
	void aRuleIsDrafted() {
		String out = bench(List.of("draft", "12.6", "draft", "draft rest_voltage starter.noisy"), "--complaint", "no_crank").out();
		assertHas(out, "No test was done in this job, so no rule can rest on one.\n");
		assertHas(out, "draft TEST CAUSE to FILE. The tests that were done:\n  rest_voltage Battery voltage at rest\n");
		assertHas(out, "No rule can confirm “Starter: Noisy”.\n\nrule starter_noisy_by_rest_voltage ");
		assertHas(out, "It belongs into rules/starting.bay, with the reason written instead of");
	}

	@Test
	void aDraftIsWrittenOverNothingUntold() throws IOException {
		String draft = "draft rest_voltage starter.noisy";
		Runs.Result result = bench(List.of("12.6", draft + " to noisy.txt", draft + " to noisy.txt", draft + " to gone/noisy.txt", draft + " to van/van.bay"), "--complaint", "no_crank");
		assertHas(result.out(), "Wrote noisy.txt.\n");
		assertHas(result.out(), "There is already a file noisy.txt. Name another one, or write over in place of to, to replace it.\n");
		assertHas(result.out(), "There is no folder gone to write gone/noisy.txt into.");
		assertHas(result.out(), "There is already a file van/van.bay.");
		assertTrue(Files.readString(folder.resolve("noisy.txt")).startsWith("rule starter_noisy_by_rest_voltage "));
		Files.writeString(folder.resolve("noisy.txt"), "other");
		assertHas(bench(List.of("12.6", draft + " over noisy.txt"), "--complaint", "no_crank").out(), "Wrote noisy.txt.\n");
		assertTrue(Files.readString(folder.resolve("noisy.txt")).startsWith("rule starter_noisy_by_rest_voltage "));
	}

	@Test
	void aDraftMayBeANewRuleFile() throws IOException {
		Files.writeString(folder.resolve("old.bay"), "// mine\n");
		Runs.Result result = bench(List.of("12.6", "draft rest_voltage starter.noisy to new.bay", "draft rest_voltage starter.noisy over old.bay"), "--complaint", "no_crank");
		assertHas(result.out(), "Wrote new.bay.\n");
		assertTrue(Files.readString(folder.resolve("new.bay")).startsWith("rule starter_noisy_by_rest_voltage "));
		assertEquals("// mine\n", Files.readString(folder.resolve("old.bay")));
	}

	/** What must not be done was told when its sign was entered, which may be long ago for who is about to do it. */
	@Test
	void whatMustNotBeDoneIsToldAgain() throws IOException {
		Path file = folder.resolve("van/van.bay");
		Files.writeString(file, Files.readString(file).replace("\"Engine does not crank\"", "\"Engine does not crank\" do_not_start"));
		String told = "Before anything else\n  Do not start the vehicle.\n";
		String out = bench(List.of("no_crank", "12.6", "dark")).out();
		assertHas(out, "\nTest lamp at the starter while cranking\n" + told + "This step needs Ignition on. What must not be done still holds.\n");
		assertHas(out, "\n\n" + told + "\nSo far: ");
		assertHas(out, "\nWhere the job stands\n" + told);
		assertHas(bench(and(FLAT)).out(), "\nSet Ignition on.\nVerification\n" + told + "The repair is done; this is for its verification alone.\n");
	}

	/** Some editors begin a file with a mark that nobody sees, and end its lines in their own way. */
	@Test
	void answersAreReadAsEditorsWriteThem() throws IOException {
		Files.writeString(folder.resolve("answers.txt"), "\uFEFF12.6\r\nfound\r\n");
		Runs.Result result = bench(List.of(), "--complaint", "no_crank", "--answers", folder.resolve("answers.txt").toString());
		assertHas(result.out(), "Noted: Battery voltage at rest: 12.6 V\n");
		Files.writeString(folder.resolve("answers.txt"), "found\r\n" + "x".repeat(200_000));
		assertHas(bench(List.of(), "--complaint", "no_crank", "--answers", folder.resolve("answers.txt").toString()).out(), "The answer in line 2 is longer than 100000 characters.");
	}

	@Test
	void whatIsNoTimeAndNoSumIsTold() {
		String out = bench(List.of("took ages", "took 1.5 h", "spent 4 EUR"), "--complaint", "no_crank").out();
		assertHas(out, "Write a time, such as 90 or 1.5 h.\n");
		assertHas(out, "So far: 1.5 h\n");
		assertHas(out, "Write a sum as a number, such as 140.\n");
	}

	// ---- where it is kept ---------------------------------------------------------------------------------------------

	@Test
	void noTwoJobsHaveOneName() throws IOException {
		assertEquals(ExitCode.FINE, bench(and(FLAT, "keep Job 3")).code());
		String once = jobs();
		Runs.Result result = bench(and(FLAT, "keep Job 3"));
		assertHas(result.out(), "There is already a job named Job 3.\nThe repair is verified. Keep the job.\nAnswer: keep, or keep NAME\n");
		assertEquals(ExitCode.UNDECIDED, result.code());
		assertEquals(once, jobs());
		assertEquals(ExitCode.FINE, bench(and(FLAT, "keep Job 3", "keep")).code());
		assertHas(jobs(), ": Engine does not crank\" {");
	}

	@Test
	void aRepairThatIsNotVerifiedIsToldWhenItIsKept() {
		assertHas(bench(List.of("11.6", "keep Job 3"), "--complaint", "no_crank").out(), "The repair is not verified; the job is kept without that, and without time and money that nobody has told.\n“Job 3” is kept in jobs.bay.\n");
	}

	@Test
	void aJobWithoutACauseIsNotKept() {
		Runs.Result result = bench(List.of("keep Job 3"), "--complaint", "no_crank");
		assertHas(result.out(), "The cause is not known yet: say what it was, or to whom the job was referred.\n");
		assertEquals(ExitCode.UNDECIDED, result.code());
	}

	@Test
	void toWhomAJobIsHandedOnIsKeptBesideItsCause() throws IOException {
		assertEquals(ExitCode.FINE, bench(List.of("cause Starter: Noisy", "refer B shop", "keep C"), "--complaint", "no_crank").code());
		assertHas(jobs(), "  // handed on to: B shop\n}\n");
		assertHas(bench(List.of("refer a\u202eb"), "--complaint", "no_crank").out(), "Write to whom in letters that show.\n");
	}

	@Test
	void aLetterThatDidNotArriveIsTypedAgain() throws IOException {
		String told = "A letter of that answer did not arrive, as it is not written in UTF-8. Type it again.\n";
		for (byte[] line : List.of("11.6 \u00B5V", "refer M\u00FCller", "cause \u00FC", "keep Z\u00FCrich", "sheet \u00FC.html").stream().map(text -> text.getBytes(StandardCharsets.ISO_8859_1)).toList()) {
			Files.write(folder.resolve("answers.txt"), line);
			Runs.Result result = bench(List.of(), "--complaint", "no_crank", "--answers", folder.resolve("answers.txt").toString());
			assertHas(result.out(), told + "Battery voltage at rest\nAnswer (rest_voltage)");
			assertFalse(result.out().contains("\uFFFD"), result.out());
		}
	}

	@Test
	void nothingButAPageIsReplacedByAPage() throws IOException {
		Files.writeString(folder.resolve("note.txt"), "my own");
		assertHas(bench(List.of("11.6", "sheet note.txt"), "--complaint", "no_crank").out(), "There is already a file note.txt, and it is something else. Name another one; nothing was written.\n");
		assertEquals(ExitCode.FILES, bench(List.of("11.6"), "--complaint", "no_crank", "--sheet", "note.txt").code());
		assertEquals("my own", Files.readString(folder.resolve("note.txt")));
		bench(List.of("sheet job.html"), "--complaint", "no_crank");
		assertHas(bench(List.of("11.6", "sheet job.html"), "--complaint", "no_crank").out(), "Wrote job.html.\n");
		assertHas(Files.readString(folder.resolve("job.html")), "11.6");
	}

	@Test
	void aTraitIsGivenOnce() {
		Runs.Result result = bench(List.of("quit"), "--with", "engine=diesel", "--with", "engine=petrol");
		assertEquals(ExitCode.USAGE, result.code());
		assertHas(result.err(), "The trait engine is given twice.");
	}

	@Test
	void anAnswerThatIsTooLongIsTold() throws IOException {
		Runs.Result result = bench(List.of("# " + "a".repeat(200_000), "a".repeat(200_001), "11.6"), "--complaint", "no_crank", "--sheet", "job.html");
		assertEquals(ExitCode.UNDECIDED, result.code());
		assertEquals("", result.err());
		assertHas(result.out(), "The answer in line 2 is longer than 100000 characters. Write a shorter one.\nBattery voltage at rest\nAnswer (rest_voltage)");
		assertHas(result.out(), "\nWhere the job stands\n");
		assertHas(Files.readString(folder.resolve("job.html")), "11.6");
		assertHas(new Runs(folder).onTerminal().answering("a".repeat(100_001)).run("bench", "van").out(), "That answer is longer than 100000 characters. Write a shorter one.\n");
		assertHas(bench(List.of("a".repeat(100_000))).out(), "aaa” is none of these. ");
	}

	@Test
	void nothingIsAddedToAFileThatIsNotWhole() throws IOException {
		String broken = jobs() + "job \"Begun\" {\n";
		Files.writeString(folder.resolve("van/jobs.bay"), broken);
		Runs.Result result = bench(and(FLAT, "keep Job 3"));
		assertHas(result.out(), "A brace, a quotation mark or a comment in jobs.bay is not closed. Close it first; nothing was written.\n");
		assertEquals(ExitCode.UNDECIDED, result.code());
		assertEquals(broken, jobs());
		Files.writeString(folder.resolve("van/jobs.bay"), broken + "}\n");
		assertEquals(ExitCode.FINE, bench(and(FLAT, "keep Job 3")).code(), "as it was told to do");
		assertHas(jobs(), "job \"Job 3\" {");
	}

	@Test
	void aFileKeepsItsLineEndsAndAllThatItHolds() throws IOException {
		Path file = folder.resolve("van/jobs.bay");
		String before = "\uFEFF" + jobs().stripTrailing().replace("\n", "\r\n");
		Files.writeString(file, before);
		assertEquals(ExitCode.FINE, bench(and(FLAT, "keep Job 3")).code());
		assertTrue(jobs().startsWith(before + "\r\n\r\njob \"Job 3\" {\r\n  on van\r\n"), jobs());
		assertTrue(jobs().endsWith("}\r\n"));
		assertFalse(jobs().replace("\r\n", "").contains("\n"));
	}

	@Test
	void theFirstJobMakesItsFile() throws IOException {
		Files.delete(folder.resolve("van/jobs.bay"));
		assertEquals(ExitCode.FINE, bench(and(FLAT, "keep Job 1")).code());
		assertTrue(jobs().startsWith("job \"Job 1\" {\n"));
	}

	/** The jobs are read when the bench begins, and somebody may take their file away before it ends. */
	@Test
	void aFileThatIsGoneMeanwhileIsMadeAnewAndThatIsTold() throws IOException, InterruptedException {
		TestFiles.copy(folder.resolve("van"), folder.resolve("other"));
		Files.createDirectories(folder.resolve("other/done/old"));
		Files.move(folder.resolve("other/jobs.bay"), folder.resolve("other/done/old/jobs.bay"));
		Process process = new Command(folder).start("bench", "other");
		CompletableFuture<String> out = CompletableFuture.supplyAsync(() -> process.inputReader(StandardCharsets.UTF_8).lines().collect(Collectors.joining("\n")));
		try (var to = process.outputWriter(StandardCharsets.UTF_8)) {
			// the project is read when the first answer is taken
			to.write(String.join("\n", FLAT) + "\nsheet begun.html\n");
			to.flush();
			for (int i = 0; i < 600 && !Files.exists(folder.resolve("begun.html")); i++) {
				Thread.sleep(100);
			}
			Files.delete(folder.resolve("other/done/old/jobs.bay"));
			Files.delete(folder.resolve("other/done/old"));
			to.write("keep Job 3\n");
		}
		assertHas(out.join(), "“Job 3” is kept in done/old/jobs.bay, which was not there any more and was made anew.");
		assertEquals(ExitCode.FINE, process.waitFor());
		assertTrue(Files.readString(folder.resolve("other/done/old/jobs.bay")).startsWith("job \"Job 3\" {\n"));
	}

	@Test
	void aFolderInThePlaceOfAFileIsTold() throws IOException {
		Runs.Result answers = bench(List.of(), "--answers", "van");
		assertEquals("van is a folder. Name a file with one answer in a line.\n", answers.err());
		assertEquals(ExitCode.FILES, answers.code());
		Files.delete(folder.resolve("van/jobs.bay"));
		Files.createDirectory(folder.resolve("van/jobs.bay"));
		assertHas(bench(and(FLAT, "keep Job 3")).out(), "/van/jobs.bay is a folder, and a rule file is wanted. Give it another name; nothing was written.\n");
	}

	@Test
	void aMessageNamesNoFileThatIsWrittenAside() throws IOException, InterruptedException {
		Runs.Result result = new Command(folder).answering(String.join("\n", and(FLAT, "sheet /proc/self/net/job.html", "draft rest_voltage battery.flat to /proc/self/net/a.bay")) + "\n", "bench", "van");
		assertFalse(result.out().contains(".part"), result.out());
		assertHas(result.out(), "/proc/self/net/a.bay");
	}

	@Test
	void aProjectOfOneFileKeepsItsJobsThere() throws IOException {
		Path file = Files.writeString(folder.resolve("all.bay"), Files.readString(folder.resolve("van/van.bay")) + Files.readString(folder.resolve("van/rules/starting.bay")));
		Runs.Result result = new Runs(folder).answering(and(FLAT, "keep Job 1").toArray(String[]::new)).run("bench", "all.bay");
		assertHas(result.out(), "“Job 1” is kept in all.bay.\n");
		assertHas(Files.readString(file), "\njob \"Job 1\" {\n");
	}

	@Test
	void aFileThatMayNotBeWrittenIsTold() throws IOException {
		assertTrue(folder.resolve("van/jobs.bay").toFile().setReadOnly());
		Runs.Result result = bench(and(FLAT, "keep Job 3"));
		assertHas(result.out(), "You may not read or write ");
		assertEquals(ExitCode.UNDECIDED, result.code());
	}

	@Test
	void aSheetGoesOnlyWhereItMay() {
		Runs.Result result = bench(List.of("sheet", "sheet gone/x.html", "sheet van/van.bay"), "--complaint", "no_crank");
		assertHas(result.out(), "Say where to: sheet FILE.\n");
		assertHas(result.out(), "There is no folder gone to write gone/x.html into.");
		assertHas(result.out(), "it is a rule file, which only its author replaces");
		assertEquals(ExitCode.FILES, bench(List.of(), "--sheet", "gone/x.html").code());
	}

	// ---- ends -------------------------------------------------------------------------------------------------------

	@Test
	void answersMayEndAnywhere() {
		List<String> answers = and(FLAT);
		for (int some = 0; some < answers.size(); some++) {
			Runs.Result result = bench(answers.subList(0, some));
			assertEquals(ExitCode.UNDECIDED, result.code(), result.out());
			assertHas(result.out(), "\nWhere the job stands\nInvented van\n");
			assertTrue(result.out().endsWith("The answers ended before the job did; it is not kept.\n"), result.out());
		}
		Runs.Result over = bench(answers);
		assertEquals(ExitCode.FINE, over.code());
		assertHas(over.out(), "\nWhere the job stands\nInvented van\n");
		assertTrue(over.out().endsWith("The job is not kept.\n"), over.out());
	}

	@Test
	void whoQuitsKeepsNothing() throws IOException {
		String before = jobs();
		Runs.Result result = bench(List.of("QUIT"), "--complaint", "no_crank", "--sheet", "-");
		assertEquals(ExitCode.FINE, result.code());
		assertHas(result.out(), "The job is not kept.\n<!DOCTYPE html>");
		assertEquals("Wrote -\n", result.err());
		assertEquals(before, jobs());
	}

	@Test
	void aTerminalIsPrompted() {
		Runs.Result result = new Runs(folder).onTerminal().answering("quit").run("bench", "van");
		assertHas(result.out(), "Answer:\n  1 Engine does not crank\n> ");
		assertTrue(new Runs(folder).onTerminal().answering().run("bench", "van").out().contains("\n> \n"), "the line of the prompt is ended");
	}

	private static void untilPrompted(Process process) throws IOException {
		StringBuilder told = new StringBuilder();
		while (!told.toString().endsWith("\n> ")) {
			told.append((char) process.getInputStream().read());
		}
	}

	@ParameterizedTest
	@CsvSource({ "INT, 130", "TERM, 143" })
	void aSignalEndsItQuietlyAndThePageIsWritten(String signal, int code) throws IOException, InterruptedException {
		Process process = new Command(folder).prompted().start("bench", "van", "--complaint", "no_crank", "--sheet", "job.html");
		untilPrompted(process);
		process.getOutputStream().write("11.7 V\n".getBytes(StandardCharsets.UTF_8));
		process.getOutputStream().flush();
		untilPrompted(process);
		new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid())).start().waitFor();
		assertTrue(process.waitFor(4, TimeUnit.SECONDS), "it waits for an answer");
		assertEquals(code, process.exitValue());
		assertEquals("Wrote job.html\n", new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8));
		assertEquals("Cancelled.\n", new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8));
		assertHas(Files.readString(folder.resolve("job.html")), "11.7 V");
	}

	/** Who answers beforehand and thinks better of it while the rules are read has no job yet. */
	@Test
	void whatEndsBeforeTheJobBeginsIsToldToWriteNoPage() {
		Runs.Result result = new Runs(folder).answering("no_crank").cancelled().run("bench", "van", "--sheet", "job.html");
		assertEquals(ExitCode.CANCELLED, result.code());
		assertEquals("The rules were still being read, so that no job had begun and job.html is not written.\nCancelled.\n", result.err());
		assertFalse(Files.exists(folder.resolve("job.html")));
	}

	/** What was answered last is what the job is stopped at. */
	@Test
	void whatIsStoppedWhileItIsWorkedOutIsOnThePage() throws IOException {
		AtomicBoolean cancelled = new AtomicBoolean();
		Listener listener = new Listener() {
			@Override
			public boolean isCancelled() {
				return cancelled.get();
			}
		};
		Bench bench = Bench.of(Read.of(folder.resolve("van"), "van", Progress.silent(cancelled)).rules());
		Output out = new Output(new StringWriter());
		Reader answers = new StringReader("no_crank\n") {
			@Override
			public int read(char[] to, int from, int length) throws IOException {
				int read = super.read(to, from, length);
				cancelled.set(true);
				return read;
			}
		};
		Dialogue dialogue = new Dialogue(bench, new Answers(answers, out, false, () -> false), new Printer(out, Style.PLAIN), null, listener);
		assertThrows(CancellationException.class, dialogue::run);
		assertHas(dialogue.sheet(), "Engine does not crank");
	}

	@Test
	void itEndsWhenNobodyHearsIt() throws IOException, InterruptedException {
		Process process = new Command(folder).shell("| true; exit ${PIPESTATUS[0]}").start("bench", "van");
		try (var to = process.outputWriter(StandardCharsets.UTF_8)) {
			to.write("no_crank\n".repeat(3));
			to.flush();
			assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it waits for an answer to what nobody has heard");
		}
		assertEquals(ExitCode.FILES, process.exitValue());
		assertEquals(1, new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8).lines().count());
	}

	@Test
	void whatWasWrittenIsToldWhereTheDiskIsFull() throws IOException, InterruptedException {
		Runs.Result result = new Command(folder).shell("> /dev/full").answering(String.join("\n", and(FLAT, "keep Job 3")) + "\n", "bench", "-q", "van", "--sheet", "job.html");
		assertEquals(ExitCode.FILES, result.code());
		assertHas(result.err(), ". “Job 3” is kept in jobs.bay. Wrote job.html.\n");
		assertHas(jobs(), "job \"Job 3\" {");
	}

	/** What was answered beforehand still counts. */
	@Test
	void aJobThatNobodyHearsIsStillKept() throws IOException, InterruptedException {
		Files.writeString(folder.resolve("answers.txt"), String.join("\n", and(FLAT, "keep Job 3")));
		Process process = new Command(folder).shell("| true; exit ${PIPESTATUS[0]}").start("bench", "van", "--answers", "answers.txt", "--sheet", "job.html");
		assertTrue(process.waitFor(60, TimeUnit.SECONDS));
		assertEquals(ExitCode.FILES, process.exitValue());
		String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
		assertTrue(err.matches("Standard output cannot be written: .*[.] “Job 3” is kept in jobs.bay[.] Wrote job.html[.]\n"), err);
		assertHas(jobs(), "job \"Job 3\" {");
		assertHas(Files.readString(folder.resolve("job.html")), "12.6 V");
	}

	@Test
	void rulesThatKnowNoComplaintSayWhatToDo() throws IOException {
		Files.writeString(folder.resolve("bare.bay"), "family van \"Invented van\"\n");
		Runs.Result result = new Runs(folder).answering("quit").run("bench", "bare.bay");
		assertHas(result.out(), "These rules know no complaint of such a vehicle. Write a sign first, and a rule that asks for it.\nAnswer: quit\n");
		assertEquals(ExitCode.FINE, result.code());
	}

	// ---- what is wrong before it begins -----------------------------------------------------------------------------

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "--vehicle vam | There is no vehicle family vam. Did you mean van?", "--vehicle tarn | There is no vehicle family tarn. There are: van.",
			"--complaint no_krank | Invented van has no sign no_krank. Did you mean no_crank?", "--complaint hum | Invented van has no sign hum. There are: no_crank.",
			"--with engine | Write --with engine=VALUE to say what the vehicle is like.", "--with doors=5 | Invented van has no trait doors. There are: built, engine.",
			"--with engine=steam | engine steam: Choose one of: diesel, petrol.", "--with built=1970 | built 1970: 1970 is out of range: 2015 to 2021." })
	void whatIsNotInTheRulesIsTold(String options, String told) {
		Runs.Result result = bench(List.of(), options.split(" "));
		assertEquals(ExitCode.USAGE, result.code());
		assertEquals(told + "\n", result.err());
		assertEquals("", result.out());
	}

	@Test
	void theVehicleIsNamedWhereThereAreSeveral() throws IOException {
		Files.writeString(folder.resolve("van/bus.bay"), "family bus \"Invented bus\"\n");
		assertEquals("Name the vehicle too, with --vehicle. There are: bus, van.\n", bench(List.of(), "--complaint", "no_crank").err());
		String out = bench(List.of("Invented tram", "invented BUS", "back", "2", "1")).out();
		assertHas(out, "Choose the vehicle.\nAnswer:\n  1 Invented bus\n  2 Invented van\n“Invented tram” is none of these.");
		assertHas(out, "Noted: Vehicle: Invented bus\n");
		assertHas(out, "Noted: Vehicle: Invented van\n\nWhat is wrong with the vehicle?\nAnswer:\n  1 Engine does not crank\nNoted: Complaint: Engine does not crank\n");
	}

	@Test
	void aProjectThatCannotBeReadIsTold() throws IOException {
		Files.createDirectory(folder.resolve("empty"));
		for (String[] row : new String[][] { { "gone", "There is no file or folder gone.\n" }, { "empty", "There are no rule files (*.bay) in empty.\n" } }) {
			Runs.Result result = new Runs(folder).run("bench", row[0]);
			assertEquals(ExitCode.FILES, result.code());
			assertEquals(row[1], result.err());
		}
		assertEquals(ExitCode.FILES, bench(List.of(), "--answers", "gone.txt").code());
		Files.writeString(folder.resolve("empty/signs.bay"), "sign hum \"Hum\"\n");
		Runs.Result result = new Runs(folder).run("bench", "empty");
		assertEquals(ExitCode.USAGE, result.code());
		assertEquals("These rules are for no vehicle. Write a vehicle family first.\n", result.err());
	}

	@Test
	void rulesWithErrorsAreUsedAsFarAsTheyAreWhole() throws IOException {
		Files.writeString(folder.resolve("van/half.bay"), "sign hum \"Hum\"\nrule half {  given hmu\n");
		Runs.Result result = bench(List.of("11.6"), "--complaint", "no_crank");
		assertHas(result.err(), "in the text of the rules, and the bench does not know what is left out because of ");
		assertHas(result.err(), ": baywright check van\n");
		assertHas(result.out(), "The rules confirm “12 V battery: Low state of charge”.");
	}

	@Test
	void rulesThatGoRoundInACircleDeriveNothing() throws IOException {
		Files.copy(TestFiles.root().resolve("rules-examples/flawed/circle.bay"), folder.resolve("circle.bay"));
		Runs.Result result = new Runs(folder).answering("stops", "enter wet_belt stops", "quit").run("bench", "circle.bay", "--complaint", "squeal");
		assertHas(result.out(), "\nThe rules go round in a circle, so nothing can be derived.\nAnswer: back, or enter NAME VALUE\n“stops” is no answer here.");
		assertEquals(ExitCode.FINE, result.code());
	}

	@Test
	void findingsThatCannotBeAreTold() throws IOException {
		Files.writeString(folder.resolve("van/laws.bay"), "law \"A flat battery does not light the lamp\" : when rest_voltage below 9 V then starter_feed is dark\n");
		Runs.Result result = bench(List.of("8", "back", "enter starter_feed lit", "enter rest_voltage 8", "back"), "--complaint", "no_crank");
		assertHas(result.out(), "\nTake care\n");
		assertHas(result.out(), "\nTake something back, or enter it anew.\nAnswer: back, or enter NAME VALUE\n");
	}

	@Test
	void whatComesFromRulesCannotDeceive() throws IOException {
		Path file = folder.resolve("van/van.bay");
		Files.writeString(file, Files.readString(file).replace("\"Engine does not crank\"", "\"Engine \u001B[31m\u202Edoes\""));
		Runs.Result result = bench(List.of("no_crank", "12.6", "x\u001B[31m", "found"));
		assertFalse((result.out() + result.err()).contains("\u001B") || result.out().contains("\u202E"), result.out());
	}
}
