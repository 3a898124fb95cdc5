package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

import org.baywright.pack.PackReader;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole commands as processes, under conditions that are not fair. */
class ProcessTest extends ProcessFixture {

	private static final int NOBODY = 65534;

	private static void assertNoTrace(Runs.Result result) {
		assertFalse(result.err().contains("\tat ") || result.err().contains("Baywright itself failed"), result.err());
	}

	private void shell(String line) throws IOException, InterruptedException {
		Process process = new ProcessBuilder("bash", "-c", line).directory(folder.toFile()).start();
		assertTrue(process.waitFor(20, TimeUnit.SECONDS), line);
		assumeTrue(process.exitValue() == 0, "this machine cannot: " + line);
	}

	private static boolean isRoot() {
		return "root".equals(System.getProperty("user.name"));
	}

	/** Runs without root's right to pass over permissions; where that cannot be had the test is skipped and says so. */
	private Command withoutRights() throws IOException, InterruptedException {
		if (!isRoot()) {
			return new Command(folder);
		}
		String[] words = { "setpriv", "--bounding-set", "-dac_override,-dac_read_search", "--inh-caps", "-dac_override,-dac_read_search" };
		shell(String.join(" ", words) + " true");
		return new Command(folder).under(words);
	}

	// ---- what was left out ------------------------------------------------------------------------------------------

	@Test
	void whatNamesAFaultOfAPartThatIsThereAlreadyIsLeftOut() throws IOException, InterruptedException {
		Files.writeString(folder.resolve("van/zz.bay"),
				"part battery \"Second\" {\n  fault other \"Other\"\n}\nrule second {\n  given no_crank\n  then suspects battery.other\n"
						+ "  because \"x\"\n  source practice\n}\nrepair fit_other \"Fit it\" {\n  fixes battery.other\n}\n");
		Runs.Result result = run("check", "van");
		assertNoTrace(result);
		assertEquals(ExitCode.FLAWS, result.code(), result.out());
		assertHas(result.out(), "duplicate-name");
		assertHas(result.out(), "rule second");
	}

	@Test
	void theFlawedExamplesTogetherAreChecked() throws IOException, InterruptedException {
		Runs.Result result = run("check", TestFiles.root().resolve("rules-examples/flawed").toString());
		assertNoTrace(result);
		assertEquals(ExitCode.FLAWS, result.code(), result.err());
	}

	// ---- what is given as output ------------------------------------------------------------------------------------

	@Test
	void noRuleFileIsOverwritten() throws IOException, InterruptedException {
		String before = Files.readString(folder.resolve("van/van.bay"));
		for (String[] args : new String[][] { { "pack", "van", "-o", "van/van.bay" }, { "pack", "van", "--sheet", "van/van.bay" },
				{ "check", "van", "-o", "van/van.bay" }, { "check", "van", "-f", "json", "-o", "van/new.bay" } }) {
			Runs.Result result = run(args);
			assertEquals(ExitCode.FILES, result.code(), String.join(" ", args));
			assertHas(result.err(), "it is a rule file");
			assertEquals("", result.out(), "it is refused before the work");
		}
		assertEquals(before, Files.readString(folder.resolve("van/van.bay")));
		assertFalse(Files.exists(folder.resolve("van.baypack")));
		assertFalse(Files.exists(folder.resolve("van/new.bay")));
	}

	@Test
	void packAndSheetAreTwoFiles() throws IOException, InterruptedException {
		shell("ln -s one.out other.out; mkdir shut; ln -s gone/x.html away.html");
		for (String sheet : List.of("one.out", "./one.out", "other.out")) {
			Runs.Result result = run("pack", "van", "-o", "one.out", "--sheet", sheet);
			assertEquals(ExitCode.USAGE, result.code());
			assertHas(result.err(), "cannot both be written");
			assertFalse(Files.exists(folder.resolve("one.out")));
		}
		Runs.Result result = run("pack", "van", "-o", "one.out", "--sheet", "away.html");
		assertEquals(ExitCode.FILES, result.code());
		assertHas(result.err(), "which is not there");
		assertFalse(Files.exists(folder.resolve("gone")));
		assertFalse(Files.exists(folder.resolve("one.out")));
		result = run("pack", "van", "-o", "one.out", "--sheet", "/dev/full");
		assertEquals(ExitCode.FILES, result.code());
		assertHas(result.err(), "The pack one.out was written, but not its sheet.\n");
		assertEquals(ExitCode.FINE, run("verify", "one.out").code());
	}

	// ---- odd editors ------------------------------------------------------------------------------------------------

	private static String frame(String body) {
		return "Content-Length: " + body.getBytes(StandardCharsets.UTF_8).length + "\r\n\r\n" + body;
	}

	private static final String INITIALIZE = "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}";

	/** Codes of errors: JSON-RPC 2.0, section 5.1. */
	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "{oops | -32700 | null | The message is no JSON text.",
			"[] | -32600 | null | A message is one JSON object.", "42 | -32600 | null | A message is one JSON object.",
			"null | -32600 | null | A message is one JSON object.",
			"{\"jsonrpc\":\"2.0\",\"id\":{\"a\":1},\"method\":\"shutdown\"} | -32600 | null | The id of a request is",
			"{\"jsonrpc\":\"2.0\",\"id\":1.5,\"method\":\"shutdown\"} | -32600 | null | The id of a request is",
			"{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":5} | -32600 | 7 | The message names no method.",
			"{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"foo/bar\"} | -32601 | 7 | foo/bar",
			"{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"workspace/executeCommand\",\"params\":{\"command\":\"x\"}} | -32601 | 7 | Baywright does not offer this.",
			"{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"textDocument/hover\",\"params\":null} | -32602 | 7 | The request lacks something, or holds something of a wrong form.",
			"{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"textDocument/hover\",\"params\":{\"position\":\"x\"}} | -32602 | 7 | textDocument/hover holds something of a wrong form.",
			"{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}} | -32600 | 7 | The client has said initialize already.",
			"{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{}} | | | " })
	void anOddMessageGetsAnErrorAndTheServerGoesOn(String odd, Integer code, String id, String said)
			throws IOException, InterruptedException {
		Process process = new Command(folder).start("serve");
		try (var to = process.outputWriter(StandardCharsets.UTF_8)) {
			to.write(frame(INITIALIZE) + frame(odd) + frame("{\"jsonrpc\":\"2.0\",\"id\":99,\"method\":\"shutdown\"}")
					+ frame("{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}"));
		}
		assertTrue(process.waitFor(30, TimeUnit.SECONDS));
		String told = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
		assertHas(told, "{\"jsonrpc\":\"2.0\",\"id\":99,\"result\":null}");
		assertFalse(err.contains("\tat "), err);
		assertTrue(err.lines().count() <= 1, err);
		if (code != null) {
			assertHas(told, "{\"jsonrpc\":\"2.0\",\"id\":" + id + ",\"error\":{\"code\":" + code + ",\"message\":\"");
			assertHas(told, said);
			assertFalse(told.contains("java.") || told.contains("org.eclipse"), told);
		}
		assertEquals(0, process.exitValue());
	}

	@ParameterizedTest
	@ValueSource(strings = { "Foo: bar\r\n\r\n{}", "Content-Length: abc\r\n\r\n{}", "Content-Length: 9999999999\r\n\r\n" })
	void aWrongHeaderIsTold(String header) throws IOException, InterruptedException {
		Process process = new Command(folder).start("serve");
		try (var to = process.outputWriter(StandardCharsets.UTF_8)) {
			to.write(header);
		}
		assertTrue(process.waitFor(30, TimeUnit.SECONDS));
		String err = new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8);
		assertTrue(err.contains("Content-Length"), err);
		assertTrue(err.lines().allMatch(line -> line.startsWith("From the editor: ")) && err.lines().count() <= 2, err);
	}

	// ---- depth ------------------------------------------------------------------------------------------------------

	@ParameterizedTest
	@ValueSource(strings = { "(", "not ", "not (" })
	void deepConditionsAreRefused(String opening) throws IOException, InterruptedException {
		int depth = 10_000;
		Files.writeString(folder.resolve("van/deep.bay"), "sign deep_sign \"D\"\nrule deep {\n  given " + opening.repeat(depth)
				+ "deep_sign" + ")".repeat(opening.contains("(") ? depth : 0) + "\n  then suspects battery.flat\n  source practice\n}\n");
		Runs.Result result = run("check", "van");
		assertNoTrace(result);
		assertEquals(ExitCode.FLAWS, result.code(), result.out());
		assertHas(result.out(), "van/deep.bay:3:");
		assertHas(result.out(), "too-deep");
		String before = Files.readString(folder.resolve("van/deep.bay"));
		assertEquals(ExitCode.FLAWS, run("tidy", "van").code());
		assertEquals(before, Files.readString(folder.resolve("van/deep.bay")));
	}

	@Test
	void aDeepJsonTextInAPackIsRefused() throws IOException, InterruptedException, PackException {
		run("pack", "van");
		Map<String, byte[]> entries = new TreeMap<>(PackReader.entries(folder.resolve("van.baypack")));
		entries.put("rules.json", ("[".repeat(100_000) + "]".repeat(100_000)).getBytes(StandardCharsets.UTF_8));
		Files.write(folder.resolve("deep.baypack"), zip(entries));
		Runs.Result result = run("verify", "deep.baypack");
		assertNoTrace(result);
		assertEquals(ExitCode.FLAWS, result.code(), result.out());
		assertNoTrace(run("show", "deep.baypack"));
	}

	@Test
	void aPackWithOneStateTwiceIsRefused() throws IOException, InterruptedException, PackException {
		run("pack", "van");
		Map<String, byte[]> entries = new TreeMap<>(PackReader.entries(folder.resolve("van.baypack")));
		String rules = new String(entries.get("rules.json"), StandardCharsets.UTF_8);
		int from = rules.indexOf("\"states\":[", rules.indexOf("\"signs\":[")) + "\"states\":[".length();
		int to = from;
		int depth = 0;
		do {
			char c = rules.charAt(to++);
			depth += c == '{' ? 1 : c == '}' ? -1 : 0;
		} while (depth > 0);
		String twice = rules.substring(0, to) + "," + rules.substring(from, to) + rules.substring(to);
		byte[] bytes = twice.getBytes(StandardCharsets.UTF_8);
		entries.put("rules.json", bytes);
		Files.write(folder.resolve("twice.baypack"), zip(entries));
		Runs.Result result = run("verify", "twice.baypack");
		assertNoTrace(result);
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "wrong  references      The rules define state ");
	}

	@Test
	void anEntryThatWasChangedIsNotShown() throws IOException, InterruptedException, PackException {
		run("pack", "van");
		Map<String, byte[]> entries = new TreeMap<>(PackReader.entries(folder.resolve("van.baypack")));
		entries.put("rules.html", "<html/>".getBytes(StandardCharsets.UTF_8));
		Files.write(folder.resolve("changed.baypack"), zip(entries));
		Runs.Result result = run("show", "changed.baypack", "--entry", "rules.html");
		assertEquals(ExitCode.FILES, result.code());
		assertEquals("", result.out());
	}

	private static byte[] zip(Map<String, byte[]> entries) throws IOException {
		ByteArrayOutputStream bytes = new ByteArrayOutputStream();
		try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
			for (Map.Entry<String, byte[]> entry : entries.entrySet()) {
				ZipEntry made = new ZipEntry(entry.getKey());
				CRC32 sum = new CRC32();
				sum.update(entry.getValue());
				made.setMethod(ZipEntry.STORED);
				made.setSize(entry.getValue().length);
				made.setCrc(sum.getValue());
				zip.putNextEntry(made);
				zip.write(entry.getValue());
			}
		}
		return bytes.toByteArray();
	}

	// ---- where results go -------------------------------------------------------------------------------------------

	@ParameterizedTest
	@ValueSource(strings = { "check van", "check --format json van", "check --format line flawed", "pack van", "show van.baypack",
			"show --schema rules", "verify van.baypack", "tidy van", "bench van", "explain", "explain gap", "tour --examples . packs", "--help",
			"help check", "completion" })
	void whatCannotBeWrittenIsAnError(String line) throws IOException, InterruptedException {
		new Runs(folder).run("pack", "van");
		Runs.Result result = new Command(folder).shell("> /dev/full").run(line.split(" "));
		assertEquals(ExitCode.FILES, result.code(), result.err());
		assertHas(result.err(), "Standard output cannot be written: ");
		assertNoTrace(result);
	}

	@Test
	void aClosedPipeIsAnError() throws IOException, InterruptedException {
		Runs.Result result = new Command(folder).shell("| true; exit ${PIPESTATUS[0]}").run("explain", "--format", "json");
		assertEquals(ExitCode.FILES, result.code(), result.err());
	}

	@Test
	void noSpaceLeftNamesTheFile() throws IOException, InterruptedException {
		Runs.Result result = run("pack", "van", "-o", "/dev/full");
		assertEquals(ExitCode.FILES, result.code());
		assertHas(result.err(), "/dev/full");
		assertHas(result.err(), "No space left");
	}

	/** Runs on a disk with so much room left, which holds the project; what it holds in the end lies in the folder "after". */
	private Runs.Result onFullDisk(int roomKilobytes, String[] under, String prepare, String... args) throws IOException, InterruptedException {
		String[] words = { "unshare", isRoot() ? "-m" : "-rm", "bash", "-c", "mount -t tmpfs -o size=256k tmpfs disk && cp -r van disk && cd disk && "
				+ prepare + " && { dd if=/dev/zero of=filler bs=1k 2>/dev/null; truncate -s -" + roomKilobytes
				+ "k filler; \"$@\"; status=$?; rm filler; cp -a . ../after; exit $status; }", "bash" };
		shell("mkdir disk after && " + words[0] + " " + words[1] + " mount -t tmpfs tmpfs disk");
		return new Command(folder).under(words).under(under).run(args);
	}

	@ParameterizedTest
	@CsvSource({ "0, pack van --sheet van.html, van.baypack", "24, pack van --sheet van.html, van.html", "0, tidy van, van/van.bay" })
	void aFullDiskLeavesWhatWasThere(int room, String line, String file) throws IOException, InterruptedException {
		Path rules = folder.resolve("van/van.bay");
		Files.writeString(rules, Files.readString(rules) + "\n\n\n");
		Runs.Result result = onFullDisk(room, new String[0], "cp van/van.bay van.baypack && cp van/van.bay van.html", line.split(" "));
		assertEquals(ExitCode.FILES, result.code(), result.out() + result.err());
		assertHas(result.err(), "disk/" + file + " ");
		assertHas(result.err(), "No space left on device");
		assertEquals(Files.readString(rules), Files.readString(folder.resolve("after").resolve(file)));
		try (Stream<Path> files = Files.walk(folder.resolve("after"))) {
			assertEquals(List.of(), files.filter(left -> left.toString().endsWith(".part")).toList());
		}
	}

	/** A file that only its owner could replace is written over, which needs no more room than to replace it. */
	@Test
	void aFileOfSomebodyElseIsNotLostOnAFullDisk() throws IOException, InterruptedException {
		assumeTrue(isRoot(), "only root can give a file away");
		Runs.Result result = onFullDisk(28, new String[] { "setpriv", "--bounding-set", "-chown", "--inh-caps", "-chown" },
				"echo old > van.baypack && chown " + NOBODY + " van.baypack", "pack", "van");
		assertEquals(ExitCode.FINE, result.code(), result.out() + result.err());
		Path written = folder.resolve("after/van.baypack");
		assertEquals(NOBODY, Files.getAttribute(written, "unix:uid"));
		assertEquals(ExitCode.FINE, run("pack", "van").code());
		assertArrayEquals(Files.readAllBytes(folder.resolve("van.baypack")), Files.readAllBytes(written));
	}

	@Test
	void aDeviceIsWrittenIntoAndNeverReplaced() throws IOException, InterruptedException {
		assumeTrue(isRoot(), "only root can make a device node");
		// the same device as /dev/null, in a folder of this test
		shell("mknod null c 1 3");
		Runs.Result result = run("pack", "van", "-o", "null");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		shell("test -c null");
	}

	@Test
	void aPipeIsWrittenIntoAndNeverReplaced() throws IOException, InterruptedException {
		shell("mkfifo pipe");
		Process reader = new ProcessBuilder("bash", "-c", "cat pipe > copy.baypack").directory(folder.toFile()).start();
		assertEquals(ExitCode.FINE, run("pack", "van", "-o", "pipe").code());
		assertTrue(reader.waitFor(20, TimeUnit.SECONDS));
		shell("test -p pipe");
		assertEquals(ExitCode.FINE, run("verify", "copy.baypack").code());
	}

	@Test
	void aLinkToNothingIsFollowed() throws IOException, InterruptedException {
		Files.createSymbolicLink(folder.resolve("link.baypack"), Path.of("there.baypack"));
		assertEquals(ExitCode.FINE, run("pack", "van", "-o", "link.baypack").code());
		assertTrue(Files.isSymbolicLink(folder.resolve("link.baypack")));
		assertTrue(Files.isRegularFile(folder.resolve("there.baypack")));
	}

	@ParameterizedTest
	@ValueSource(strings = { "> out.baypack", "| cat > out.baypack" })
	void aPackGoesToStandardOutput(String shell) throws IOException, InterruptedException {
		Runs.Result result = new Command(folder).shell(shell).run("pack", "van", "-o", "/dev/stdout");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertHas(result.err(), "Wrote /dev/stdout");
		assertEquals(ExitCode.FINE, run("verify", "out.baypack").code());
	}

	@Test
	void namesOfFilesMayBeAsLongAsTheSystemAllows() throws IOException, InterruptedException {
		String name = "x".repeat(255 - ".baypack".length()) + ".baypack";
		assertEquals(ExitCode.FINE, run("pack", "van", "-o", name).code());
		assertTrue(Files.isRegularFile(folder.resolve(name)));
	}

	@Test
	void aFolderThatIsNotThereIsTold() throws IOException, InterruptedException {
		Runs.Result result = run("pack", "van", "-o", "pcaks/van.baypack");
		assertEquals(ExitCode.FILES, result.code());
		assertHas(result.err(), "There is no folder pcaks to write pcaks/van.baypack into.");
		assertFalse(Files.exists(folder.resolve("pcaks")));
	}

	// ---- what is read -----------------------------------------------------------------------------------------------

	@Test
	void aPipeAmongRuleFilesIsToldAndPassedOver() throws IOException, InterruptedException {
		shell("mkfifo van/x.bay");
		Runs.Result result = run("check", "van");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertHas(result.out(), "WARNING  van/x.bay:1:1  file-passed-over");
		assertHas(result.out(), "It is a pipe or a device");
		Runs.Result alone = run("check", "van/x.bay");
		assertEquals(ExitCode.FILES, alone.code());
		assertHas(alone.err(), "pipe or a device");
		shell("mkdir pipes && mkfifo pipes/p.bay");
		Runs.Result only = run("check", "pipes");
		assertEquals(ExitCode.FILES, only.code());
		assertEquals("pipes/p.bay: It is a pipe or a device, not a rule file, and was passed over. "
				+ "Take it out of the project, or rename it.\n", only.err());
	}

	@Test
	void aFolderThatMayNotBeReadIsAnError() throws IOException, InterruptedException {
		Command limited = withoutRights();
		Files.createDirectory(folder.resolve("van/locked"));
		Files.writeString(folder.resolve("van/locked/more.bay"), "sign more \"More\"\n");
		Files.setPosixFilePermissions(folder.resolve("van/locked"), PosixFilePermissions.fromString("---------"));
		try {
			Runs.Result result = limited.run("check", "van");
			assertEquals(ExitCode.FLAWS, result.code(), result.out() + result.err());
			assertHas(result.out(), "ERROR  van/locked:1:1  unreadable-folder");
		} finally {
			Files.setPosixFilePermissions(folder.resolve("van/locked"), PosixFilePermissions.fromString("rwxr-xr-x"));
		}
	}

	@Test
	void aProjectMayBeGivenThroughALink() throws IOException, InterruptedException {
		Files.createSymbolicLink(folder.resolve("link"), folder.resolve("van"));
		Runs.Result result = run("check", "link");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertHas(result.out(), "link: No problems found");
	}

	@ParameterizedTest
	@CsvSource({ "C", "POSIX", "C.UTF-8", "tr_TR.UTF-8", "''" })
	void namesAndLocalesDoNotMatter(String locale) throws IOException, InterruptedException {
		Path odd = folder.resolve("w#1?%20");
		TestFiles.copy(folder.resolve("van"), odd);
		Files.writeString(odd.resolve("b#%3F?.bay"), "sign b \"B\"\n");
		Runs.Result result = new Command(folder).with("LC_ALL", locale.isEmpty() ? null : locale).with("LANG", null).run("pack", "w#1?%20",
				"-o", "odd.baypack");
		assertEquals(ExitCode.FINE, result.code(), result.out() + result.err());
		assertEquals(ExitCode.FINE, new Runs(folder).run("pack", "w#1?%20", "-o", "here.baypack").code());
		assertArrayEquals(Files.readAllBytes(folder.resolve("here.baypack")), Files.readAllBytes(folder.resolve("odd.baypack")));
		assertEquals(ExitCode.FINE, run("verify", "odd.baypack").code());
	}

	@Test
	void aNameOfAFolderCannotDeceive() throws IOException, InterruptedException {
		String name = "v\u001B[31m\u202E\u200Fx";
		TestFiles.copy(folder.resolve("flawed"), folder.resolve(name));
		for (String[] args : new String[][] { { "check", name }, { "check", "--progress", name }, { "pack", name }, { "tidy", "--check", name },
				{ "check", "--format", "line", name }, { "check", "--fix", name } }) {
			Runs.Result result = new Command(folder).with("LC_ALL", "C.UTF-8").run(args);
			String told = result.out() + result.err();
			assertFalse(told.contains("\u001B") || told.contains("\u202E") || told.contains("\u200F"), told);
		}
	}

	// ---- tidy -------------------------------------------------------------------------------------------------------

	@Test
	void tidyLeavesAReadOnlyFile() throws IOException, InterruptedException {
		Path file = folder.resolve("van/van.bay");
		String untidy = Files.readString(file).replace("  tool", "tool") + "\n\n\n";
		Files.writeString(file, untidy);
		Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
		Runs.Result result = run("tidy", "van");
		assertEquals(ExitCode.FILES, result.code());
		assertHas(result.err(), "van.bay");
		assertEquals(untidy, Files.readString(file));
	}

	@Test
	void tidyKeepsOwnerRightsAndLineEnds() throws IOException, InterruptedException {
		Path file = folder.resolve("van/van.bay");
		String tidy = Files.readString(file).replace("\n", "\r\n");
		Files.writeString(file, tidy + "\r\n\r\n");
		Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw-r--"));
		if (isRoot()) {
			Files.setAttribute(file, "unix:uid", NOBODY);
		}
		Object owner = Files.getAttribute(file, "unix:uid");
		Runs.Result result = run("tidy", "van");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertEquals(tidy, Files.readString(file));
		assertEquals("rw-rw-r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
		assertEquals(owner, Files.getAttribute(file, "unix:uid"));
		assertEquals(ExitCode.FINE, run("tidy", "--check", "van").code());
	}

	@Test
	void tidyNeverWritesOverWhatIsSavedMeanwhile() throws IOException, InterruptedException {
		Files.createDirectory(folder.resolve("many"));
		int count = 400;
		for (int i = 0; i < count; i++) {
			Files.writeString(folder.resolve(String.format("many/f%03d.bay", i)), ("sign   s" + i + "   \"S\"\n").repeat(1));
		}
		Path first = folder.resolve("many/f000.bay");
		Path last = folder.resolve(String.format("many/f%03d.bay", count - 1));
		Process tidying = new Command(folder).start("tidy", "many");
		while (Files.readString(first).contains("   ") && tidying.isAlive()) {
			Thread.onSpinWait();
		}
		String saved = "sign   saved_by_its_author   \"S\"\n";
		Files.writeString(last, saved);
		String out = new String(tidying.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		assertTrue(tidying.waitFor(60, TimeUnit.SECONDS));
		assertEquals(saved, Files.readString(last));
		assertHas(out, "many/f399.bay:1:1  changed-meanwhile");
		assertEquals(ExitCode.FLAWS, tidying.exitValue());
	}

	@Test
	void tidyTellsAClauseThatIsWrittenTwice() throws IOException, InterruptedException {
		String twice = "test  twice \"T\" {\n  results a, b\n  takes 5 min\n  takes 6 min\n}\n";
		Files.writeString(folder.resolve("van/twice.bay"), twice);
		Runs.Result result = run("tidy", "van");
		assertNoTrace(result);
		assertEquals(ExitCode.FLAWS, result.code());
		assertHas(result.out(), "ERROR  van/twice.bay:4:");
		assertHas(result.out(), "clause-twice");
		assertEquals(twice, Files.readString(folder.resolve("van/twice.bay")));
	}

	@Test
	void whatAKilledRunLeftIsTakenAway() throws IOException, InterruptedException {
		Process gone = new ProcessBuilder("true").start();
		gone.waitFor();
		Path left = Files.writeString(folder.resolve(".baywright-" + gone.pid() + "-1.part"), "half");
		Files.setLastModifiedTime(left, java.nio.file.attribute.FileTime.fromMillis(System.currentTimeMillis() - 3_600_000));
		assertEquals(ExitCode.FINE, run("pack", "van").code());
		try (Stream<Path> files = Files.list(folder)) {
			assertEquals(0, files.filter(file -> file.toString().endsWith(".part")).count());
		}
	}
}
