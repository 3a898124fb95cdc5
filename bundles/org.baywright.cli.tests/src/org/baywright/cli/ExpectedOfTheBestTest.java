package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

/** What people expect of a good command line, each as a process. */
class ExpectedOfTheBestTest extends ProcessFixture {

	@Test
	void jsonForPrograms() throws IOException, InterruptedException {
		JsonObject all = JsonParser.parseString(run("check", "flawed", "--format", "json").out()).getAsJsonObject();
		JsonObject project = all.getAsJsonArray("projects").get(0).getAsJsonObject();
		assertEquals(1, all.get("version").getAsInt());
		assertEquals(2, project.getAsJsonObject("counts").get("errors").getAsInt());
		assertTrue(project.getAsJsonArray("flaws").toString().contains("\"id\":\"contradiction\""));
		run("pack", "van");
		JsonObject pack = JsonParser.parseString(run("show", "van.baypack", "--format", "json", "--rules").out()).getAsJsonObject();
		assertEquals("van", pack.getAsJsonObject("manifest").get("project").getAsString());
		assertEquals(2, pack.getAsJsonObject("rules").getAsJsonArray("rules").size());
		JsonObject kinds = JsonParser.parseString(run("explain", "gap", "--format", "json").out()).getAsJsonObject();
		assertEquals("gap", kinds.getAsJsonArray("kinds").get(0).getAsJsonObject().get("id").getAsString());
	}

	@Test
	void oneLineForLogs() throws IOException, InterruptedException {
		String out = run("check", "flawed", "--format", "line").out();
		assertTrue(out.lines().allMatch(line -> line.matches("\\S+:\\d+:\\d+: (error|warning|note): .* \\[[a-z0-9-]+\\]")), out);
		assertHas(out, "flawed/flawed.bay:24:3: error: ");
	}

	@Test
	void quietAndColour() throws IOException, InterruptedException {
		assertEquals("", run("check", "--quiet", "van").out());
		assertEquals("", run("pack", "-q", "van").out());
		assertEquals("", run("tidy", "-q", "van").out());
		assertHas(run("check", "--quiet", "flawed").out(), "contradiction");
		assertHas(run("check", "--color", "always", "flawed").out(), "\u001B[1;31mERROR");
		assertFalse(run("check", "--color=never", "flawed").out().contains("\u001B"));
	}

	@Test
	void theShellCompletes() throws IOException, InterruptedException {
		Files.writeString(folder.resolve("completion.bash"), run("completion").out());
		assertEquals("verify", completed("ver"));
		assertEquals("json junit", completed("check", "--format", "j"));
		assertEquals("warning", completed("check", "--fail-on", "w"));
		assertEquals("dead-rule", completed("check", "--only", "dead"));
		assertEquals("wrong-date", completed("explain", "wrong-d"));
	}

	/** What the shell offers for the last of some words. */
	private String completed(String... words) throws IOException {
		String line = "baywright " + String.join(" ", words);
		Process bash = new ProcessBuilder("bash", "-c", "source completion.bash; COMP_WORDS=(" + line + "); COMP_CWORD=" + words.length
				+ "; COMP_LINE='" + line + "'; COMP_POINT=" + line.length() + "; _complete_baywright; echo \"${COMPREPLY[*]}\"")
				.directory(folder.toFile()).redirectError(ProcessBuilder.Redirect.DISCARD).start();
		return new String(bash.getInputStream().readAllBytes()).strip();
	}

	@Test
	void aFolderIsNoPack() throws IOException, InterruptedException {
		Runs.Result result = run("show", "van");
		assertEquals(ExitCode.USAGE, result.code());
		assertEquals("van is a folder, and a rule pack (*.baypack) is wanted. 'baywright pack van' makes one of a rule project.\n",
				result.err());
	}

	@Test
	void theDifferenceThatTidyWouldMakeIsOneThatPatchKnows() throws IOException, InterruptedException {
		Path file = folder.resolve("van/van.bay");
		String tidy = Files.readString(file);
		String untidy = tidy.replace("  tool", "tool").replace("\n  trait", "\n\t\ttrait  ") + "\n\n\n";
		Files.writeString(file, untidy);
		Runs.Result result = run("tidy", "--diff", "--quiet", "van");
		assertEquals(ExitCode.FLAWS, result.code());
		assertEquals(untidy, Files.readString(file));
		assertHas(result.out(), "--- van/van.bay\n+++ van/van.bay\n@@ -");
		Files.writeString(folder.resolve("tidy.patch"), result.out());
		Process git = new ProcessBuilder("git", "apply", "-p0", "tidy.patch").directory(folder.toFile()).redirectErrorStream(true).start();
		String told = new String(git.getInputStream().readAllBytes());
		assertEquals(0, git.waitFor(), told);
		assertEquals(tidy, Files.readString(file));
	}

	@Test
	void slipsOfWritingArePutRight() throws IOException, InterruptedException {
		Path file = folder.resolve("van/more.bay");
		String right = "rule more \"More\" {\n  given no_crank\n  then suspects battery.flat\n  because \"x\"\n  source practice\n}\n";
		Files.writeString(file, right.replace("no_crank", "no_crnk"));
		assertHas(run("check", "van", "--format", "line", "--only", "text").out(), "[unknown-name]");
		Runs.Result result = run("check", "--fix", "van");
		assertHas(result.out(), "Fixed   van/more.bay:2:9: Write no_crank [unknown-name]\n");
		assertHas(result.out(), "1 fix in 1 file, ");
		assertEquals(right, Files.readString(file));
		assertFalse(run("check", "van", "--format", "line").out().contains("unknown-name"));
		run("check", "--fix", "van");
		assertEquals(right, Files.readString(file), "a second time nothing is left to do");
	}

	/** A name is put right only where it is misspelt and the right one is used elsewhere; else either may be meant. */
	@Test
	void noRuleIsTurnedAround() throws IOException, InterruptedException {
		String head = "module lamps\npart lamp {\n  fault dead \"Lamp dead\"\n}\n";
		String ends = "  because \"x\"\n  source practice\n  by \"R. Falk\" on 2026-03-02\n}\n";
		String outcome = "rule r {\n  run t\n  on %s : confirms lamp.dead\n" + ends;
		String used = "rule s {\n  run t\n  on %s : confirms lamp.dead\n" + ends;
		Map<String, String> left = new LinkedHashMap<>();
		left.put("another value", "test t { results whole \"filament whole\" takes 1 min }\n" + outcome.formatted("broken")
				+ used.formatted("whole"));
		left.put("a missing comma", "test t { results ok \"ok\" bad \"bad\" takes 1 min }\n" + outcome.formatted("bad") + used.formatted("ok"));
		left.put("a quote too many", "test t { results fine, worn takes 1 min }\n" + outcome.formatted("wo\"rn") + used.formatted("worn"));
		left.put("another number", "test t { results fine, cell_1 takes 1 min }\n" + outcome.formatted("cell_2") + used.formatted("cell_1"));
		left.put("the opposite", "test t { results fine, abnormal takes 1 min }\n" + outcome.formatted("normal") + used.formatted("abnormal"));
		left.put("another side", "test t { results fine, fuse_l takes 1 min }\n" + outcome.formatted("fuse_r") + used.formatted("fuse_l"));
		// pairs that are near each other in writing and far apart in meaning
		StringBuilder pairs = new StringBuilder("test t { results fine, worn takes 1 min }\npart glow {\n");
		StringBuilder rules = new StringBuilder();
		int number = 0;
		for (String pair : List.of("unstable stable", "overcharged undercharged", "disconnected connected", "restarts starts", "near_noise rear_noise",
				"open_slow open_low", "leaked leaks", "door_lift door_left", "atypical typical")) {
			String[] two = pair.split(" ");
			number++;
			pairs.append("  fault ").append(two[1]).append(" \"x\"\n");
			rules.append(outcome.formatted("worn").replace("lamp.dead", "glow." + two[0]).replace("rule r", "rule r" + number))
					.append(used.formatted("fine").replace("lamp.dead", "glow." + two[1]).replace("rule s", "rule s" + number));
		}
		for (String word : List.of("unconfirms", "conforms")) {
			rules.append(outcome.formatted("worn").replace("confirms", word).replace("rule r", "rule " + word));
		}
		left.put("pairs", pairs + "}\n" + rules);
		left.put("two that are near", "test t { results dimmed, dimmer takes 1 min }\n" + outcome.formatted("dimmes") + used.formatted("dimmed"));
		left.put("a misspelt definition", "test t { results wohle, worn takes 1 min }\n" + outcome.formatted("whole"));
		left.put("a misspelt part", "part ALTERNATOR { fault flat \"x\" fault open \"x\" }\ntest t { results fine, worn takes 1 min }\n"
				+ outcome.formatted("worn").replace("lamp.dead", "alternator.flat") + used.formatted("fine").replace("lamp.dead", "alternator.open"));
		left.put("a part of one fault", "test t { results fine, worn takes 1 min }\n" + outcome.formatted("worn").replace("lamp.dead", "lamp")
				+ used.formatted("worn"));
		left.put("a unit", "test t { measures Ohm 0 .. 9000 step 1 takes 1 min }\n" + outcome.formatted("below 5"));
		Path file = folder.resolve("one.bay");
		for (Map.Entry<String, String> one : left.entrySet()) {
			Files.writeString(file, head + one.getValue());
			Runs.Result result = run("check", "--fix", "one.bay");
			assertEquals(head + one.getValue(), Files.readString(file), one.getKey());
			assertEquals(ExitCode.FLAWS, result.code(), one.getKey());
		}
		String misspelt = "job \"Job 9\" {\n  on van with engine deisel, built 2018\n  found no_crank, rest_voltage 11.6 V\n  was battery.flat\n}\n";
		file = folder.resolve("van/more.bay");
		Files.writeString(file, misspelt);
		assertHas(run("check", "--fix", "van").out(), "Fixed   van/more.bay:2:22: Write diesel [unknown-value]\n");
		assertEquals(misspelt.replace("deisel", "diesel"), Files.readString(file));
	}

	/** No side of a contradiction, no opinion of a person and no rule is given up by a program. */
	@Test
	void whatARuleSaysIsLeftToPeople() throws IOException, InterruptedException {
		TestFiles.copy(TestFiles.root().resolve("rules-examples/flawed"), folder.resolve("all"));
		try (Stream<Path> files = Files.list(folder.resolve("all"))) {
			for (Path file : files.filter(one -> one.toString().endsWith(".bay")).sorted().toList()) {
				String before = Files.readString(file);
				Runs.Result result = run("check", "--fix", "all/" + file.getFileName());
				assertEquals(before, Files.readString(file), file.getFileName().toString());
				assertHas(result.out(), "0 fixes in 0 files");
			}
		}
		assertHas(run("check", "--fix", "flawed").out(), "Yours   flawed/flawed.bay:");
	}

	@Test
	void checksAgainAfterAChangeUntilStopped() throws IOException, InterruptedException {
		Process watching = new Command(folder).shell("& wait $!").start("check", "--watch", "van");
		try (BufferedReader err = watching.errorReader(); BufferedReader out = watching.inputReader()) {
			assertEquals("Waiting for a change; Ctrl+C ends.", err.readLine());
			Files.writeString(folder.resolve("van/zz.bay"), "rule half {\n  given nobody\n}\n");
			assertEquals("Waiting for a change; Ctrl+C ends.", err.readLine());
			watching.descendants().forEach(ProcessHandle::destroy);
			assertTrue(watching.waitFor(20, TimeUnit.SECONDS));
			String all = String.join("\n", out.lines().toList());
			assertHas(all, "van: No problems found");
			assertHas(all, "unknown-name");
		} finally {
			watching.descendants().forEach(ProcessHandle::destroyForcibly);
			watching.destroyForcibly();
		}
	}
}
