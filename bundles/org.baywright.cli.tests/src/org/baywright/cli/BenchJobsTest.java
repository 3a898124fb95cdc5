package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whole jobs, from the complaint to the kept job, on copies of the example projects. */
class BenchJobsTest {

	private static final String PROMPT = "> ";
	private static final int MOST_QUESTIONS = 100;

	@TempDir
	Path folder;

	static List<String> jobs() throws IOException {
		try (Stream<Path> files = Files.list(TestFiles.own("jobs"))) {
			return files.map(file -> file.getFileName().toString()).sorted().toList();
		}
	}

	@ParameterizedTest
	@MethodSource("jobs")
	void leadsToTheKeptJob(String file) throws IOException, InterruptedException {
		PlayedJob job = PlayedJob.of(TestFiles.own("jobs/" + file));
		for (String project : List.of(job.project(), "trailer-socket")) {
			TestFiles.copy(TestFiles.root().resolve("rules-examples").resolve(project), folder.resolve(project));
		}
		String name = job.name();
		Set<String> before = flaws(job.project());
		String told = play(job);
		int at = 0;
		for (String line : job.expected()) {
			int found = told.indexOf(line, at);
			assertTrue(found >= 0, () -> line + "\nis not told, or in another order, in:\n" + told);
			at = found;
		}
		assertTrue(told.matches("(?s).*\n(The repair is verified\\. Keep the job|Refer to [^\n]+)\\.\nAnswer: keep, or keep NAME\n> “" + Pattern.quote(name) + "” is kept in [a-z]+\\.bay\\.\n"),
				told);
		Set<String> after = flaws(job.project());
		after.removeAll(before);
		assertEquals(Set.of(), after);
		String passed = new Runs(folder).run("check", "--format", "junit", job.project()).out();
		assertTrue(passed.matches("(?s).*<testcase [^>]*name=\"" + Pattern.quote(name) + "\"[^>]*/>.*"), passed);
	}

	private Set<String> flaws(String project) {
		Set<String> flaws = new TreeSet<>();
		// a place may move, what is said of it not
		new Runs(folder).run("check", "--format", "line", "--accepted", project).out().lines().forEach(line -> flaws.add(line.replaceFirst("^\\S+ ", "")));
		return flaws;
	}

	private String play(PlayedJob job) throws IOException, InterruptedException {
		Process process = new Command(folder).prompted().start(job.arguments().toArray(String[]::new));
		StringBuilder told = new StringBuilder();
		try (Writer to = process.outputWriter(StandardCharsets.UTF_8); Reader from = process.inputReader(StandardCharsets.UTF_8)) {
			int asked = 0;
			for (int begin = 0; asks(from, told); begin = told.length()) {
				assertTrue(asked++ < MOST_QUESTIONS, () -> "it does not end:\n" + told);
				to.write(job.answer(told.substring(begin)) + "\n");
				to.flush();
			}
		}
		assertTrue(process.waitFor(10, TimeUnit.SECONDS));
		assertEquals("", new String(process.getErrorStream().readAllBytes(), StandardCharsets.UTF_8));
		assertEquals(ExitCode.FINE, process.exitValue(), told.toString());
		assertFalse(job.answers().size() > 0, () -> "not asked for: " + job.answers() + "\n" + told);
		return told.toString();
	}

	/** Reads on to the next question; returns whether there is one. */
	private static boolean asks(Reader from, StringBuilder told) throws IOException {
		for (int c = from.read(); c >= 0; c = from.read()) {
			told.append((char) c);
			if (told.length() > PROMPT.length() && told.substring(told.length() - PROMPT.length() - 1).equals("\n" + PROMPT)) {
				return true;
			}
		}
		return false;
	}
}
