package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;

/** {@code baywright compare} as a process. */
class CompareCommandTest extends ProcessFixture {

	@BeforeEach
	void keepTheStateBefore() throws IOException {
		TestFiles.copy(folder.resolve("van"), folder.resolve("before"));
	}

	private void edit(String from, String to) throws IOException {
		edit("van.bay", from, to);
	}

	/** Moves the limit under which a rule does not clear the battery. */
	private void moveLimit() throws IOException {
		edit("rules/starting.bay", "expect 12.4 V .. 13.0 V\n  met", "expect 12.6 V .. 13.0 V\n  met");
	}

	private void edit(String name, String from, String to) throws IOException {
		Path file = folder.resolve("van").resolve(name);
		String text = Files.readString(file);
		assertTrue(text.contains(from), from);
		Files.writeString(file, text.replace(from, to));
	}

	@Test
	void nothingChangedIsFine() throws IOException, InterruptedException {
		Runs.Result result = run("compare", "before", "van");
		assertEquals(ExitCode.FINE, result.code(), result.err());
		assertEquals("No change.\n\nAll situations were compared, by proof. What is not listed comes out as before, and what other rules say anyway stays.\n", result.out());
		edit("\n", "\n\n");
		edit("test rest_voltage", "// a comment\ntest rest_voltage");
		assertEquals(result.out(), run("compare", "before", "van").out());
	}

	@Test
	void whatIsDoneAtTheVehicleCounts() throws IOException, InterruptedException {
		edit("takes 8 min", "takes 9 min");
		Runs.Result result = run("compare", "before", "van");
		assertEquals(ExitCode.FLAWS, result.code(), result.err());
		assertHas(result.out(), "Edited: what is done at the vehicle\n  test rest_voltage: time edited\n");
	}

	@Test
	void aLimitThatMovesIsToldInAllForms() throws IOException, InterruptedException {
		moveLimit();
		Runs.Result text = run("compare", "before", "van");
		assertEquals(ExitCode.FLAWS, text.code(), text.err());
		assertHas(text.out(), "Battery voltage at rest: 12.4 V to 12.5 V");
		assertEquals(text.out(), run("compare", "before", "van").out(), "the same each time");
		JsonObject json = JsonParser.parseString(run("compare", "--format", "json", "before", "van").out()).getAsJsonObject();
		assertEquals(1, json.get("version").getAsInt());
		assertEquals("changed", json.get("verdict").getAsString());
		assertTrue(json.get("complete").getAsBoolean());
		JsonArray known = json.getAsJsonArray("effects").get(0).getAsJsonObject().getAsJsonArray("known");
		assertHas(known.toString(), "{\"kind\":\"test\",\"name\":\"rest_voltage\",\"unit\":\"V\",\"ranges\":[{\"from\":12.4,\"to\":12.5}]}");
		Runs.Result page = run("compare", "--format", "html", "--output", "review.html", "before", "van");
		assertEquals("Wrote review.html\n", page.out());
		assertHas(Files.readString(folder.resolve("review.html")), "Battery voltage at rest: 12.4 V to 12.5 V");
		assertHas(run("compare", "--plans", "before", "van").out(), "Plans\n");
	}

	@Test
	void packsAreComparedAsProjectsAre() throws IOException, InterruptedException {
		assertEquals(ExitCode.FINE, run("pack", "before", "--output", "before.baypack").code());
		assertEquals(ExitCode.FINE, run("compare", "before.baypack", "van").code());
		moveLimit();
		Runs.Result result = run("compare", "before.baypack", "van");
		assertEquals(ExitCode.FLAWS, result.code(), result.err());
		assertHas(result.out(), "Battery voltage at rest: 12.4 V to 12.5 V");
	}

	@Test
	void whatCannotBeComparedIsTold() throws IOException, InterruptedException {
		Runs.Result missing = run("compare", "before", "elsewhere");
		assertEquals(ExitCode.FILES, missing.code());
		assertEquals("There is no file or folder elsewhere.\n", missing.err());
		edit("family ", "famly ");
		Runs.Result wrong = run("compare", "before", "van");
		assertEquals(ExitCode.FILES, wrong.code());
		assertHas(wrong.err(), "and cannot be compared. The first: jobs.bay:2:6: There is no family `van`.");
		assertFalse(wrong.err().contains("\tat "), wrong.err());
		Files.writeString(folder.resolve("broken.baypack"), "no pack");
		assertEquals(ExitCode.FILES, run("compare", "before", "broken.baypack").code());
		assertEquals(ExitCode.USAGE, run("compare", "before").code());
	}

	@Test
	void aStateOfTheRepositoryIsComparedByStockGit() throws IOException, InterruptedException {
		git("init", "-q", "-b", "main");
		git("add", "van");
		git("commit", "-q", "-m", "Begin");
		assertEquals(ExitCode.FINE, run("compare", "--since", "main", "van").code());
		moveLimit();
		Runs.Result changed = run("compare", "--since", "main", "van");
		assertEquals(ExitCode.FLAWS, changed.code(), changed.err());
		assertHas(changed.out(), "Battery voltage at rest: 12.4 V to 12.5 V");
		git("commit", "-q", "-a", "-m", "Raise the limit");
		Runs.Result commits = run("compare", "--since", "HEAD~1", "--until", "HEAD", "van");
		assertEquals(changed.out(), commits.out(), commits.err());
		Runs.Result unknown = run("compare", "--since", "nowhere", "van");
		assertEquals(ExitCode.FILES, unknown.code());
		assertHas(unknown.err(), "There is no state nowhere.");
		assertEquals(ExitCode.USAGE, run("compare", "--until", "HEAD", "van").code());
		assertEquals(ExitCode.FILES, run("compare", "--since", "HEAD", "before").code(), "it was not there then");
	}

	private void git(String... args) throws IOException, InterruptedException {
		List<String> words = new ArrayList<>(List.of("git", "-c", "user.name=A. Author", "-c", "user.email=author@baywright.invalid"));
		words.addAll(List.of(args));
		Process process = new ProcessBuilder(words).directory(folder.toFile()).redirectErrorStream(true).start();
		String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		assertEquals(0, process.waitFor(), said);
	}
}
