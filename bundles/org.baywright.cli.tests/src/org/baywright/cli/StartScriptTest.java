package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The start script, mostly with a Java that only tells how it was started. */
class StartScriptTest {

	@TempDir
	private Path folder;
	private Path work;

	@BeforeEach
	void layOut() throws IOException {
		work = folder;
		Path releng = Files.createDirectories(folder.resolve("releng"));
		for (String script : new String[] { "baywright", "common.sh" }) {
			Files.copy(TestFiles.root().resolve("releng").resolve(script), releng.resolve(script));
		}
		Files.createDirectories(releng.resolve("dist/plugins"));
		Files.writeString(Files.createDirectories(releng.resolve("dist/workbench/plugins")).resolve("org.eclipse.equinox.launcher_1.jar"), "");
		Files.writeString(Files.createDirectories(folder.resolve("java")).resolve("release"), "JAVA_VERSION=\"17.0.1\"\n");
		script("java/bin/java", "echo \"started LC_ALL=${LC_ALL:-} $*\"");
	}

	private void script(String path, String text) throws IOException {
		Path file = folder.resolve(path);
		Files.createDirectories(file.getParent());
		Files.writeString(file, "#!/usr/bin/env bash\n" + text + "\n");
		assertTrue(file.toFile().setExecutable(true));
	}

	private String run(String locale, String... args) throws IOException, InterruptedException {
		List<String> words = new ArrayList<>(List.of("bash", folder.resolve("releng/baywright").toString()));
		words.addAll(List.of(args));
		ProcessBuilder builder = new ProcessBuilder(words).directory(work.toFile()).redirectErrorStream(true);
		builder.environment().keySet().removeIf(name -> name.startsWith("LC_") || name.equals("LANG") || name.equals("LANGUAGE"));
		if (locale != null) {
			builder.environment().put("LANG", locale);
		}
		builder.environment().put("DISPLAY", ":99");
		builder.environment().put("HOME", folder.resolve("home").toString());
		builder.environment().put("JAVA_HOME", folder.resolve("java").toString());
		builder.environment().put("PATH", folder.resolve("bin") + ":" + System.getenv("PATH"));
		Process process = builder.start();
		String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		process.waitFor();
		return out;
	}

	@ParameterizedTest
	@CsvSource({ ",C.UTF-8", "C,C.UTF-8", "POSIX,C.UTF-8", "C.UTF-8,''", "C.utf8,''",
			"xx_XX.UTF-8,C.UTF-8" })
	void namesOfFilesAreReadWithoutALocaleToo(String locale, String wanted) throws IOException, InterruptedException {
		assertTrue(run(locale, "check", "x").contains("started LC_ALL=" + wanted + " "), () -> "locale " + locale);
	}

	/** The real command line, started by the script. */
	@Test
	void umlautsInNamesOfFilesNeedNoLocale() throws IOException, InterruptedException {
		script("java/bin/java", "while [[ $1 != org.baywright.cli.Main ]]; do shift; done\nshift\nexec "
				+ new Command(folder).shell("\"$@\"").line());
		List<String> locales = List.of("C", "C.UTF-8");
		for (String locale : locales) {
			work = Files.createDirectories(folder.resolve(locale));
			TestFiles.copy(TestFiles.own("projects/van"), work.resolve("Pr\u00fcfstand"));
			Path rules = work.resolve("Pr\u00fcfstand/L\u00e4rm.bay");
			Files.move(work.resolve("Pr\u00fcfstand/van.bay"), rules);
			Files.writeString(rules, Files.readString(rules) + "\n\n\n");
			assertEquals("Pr\u00fcfstand/L\u00e4rm.bay\n3 files: 1 laid out anew.\n", run(locale, "tidy", "Pr\u00fcfstand"));
			assertTrue(run(locale, "check", "Pr\u00fcfstand").startsWith("Pr\u00fcfstand: No problems found"));
			String told = run(locale, "pack", "Pr\u00fcfstand", "-o", "\u00fc.baypack", "--sheet", "\u00fc.html");
			assertTrue(told.contains("Wrote \u00fc.baypack"), told);
		}
		for (String file : List.of("\u00fc.baypack", "\u00fc.html", "Pr\u00fcfstand/L\u00e4rm.bay")) {
			assertArrayEquals(Files.readAllBytes(folder.resolve("C").resolve(file)), Files.readAllBytes(folder.resolve("C.UTF-8").resolve(file)), file);
		}
	}

	/** A program that goes on writing to a pipe whose reader has found what it sought is ended, and that is no answer. */
	@Test
	void theLibraryIsFoundHoweverLongTheList() throws IOException, InterruptedException {
		script("bin/ldconfig", "echo '	libgtk-3.so.0 (libc6,x86-64)'; for ((i = 0; i < 20000; i++)); do echo \"	libother$i.so\"; done");
		for (int i = 0; i < 5; i++) {
			String out = run("C.UTF-8", "workbench", "w");
			assertTrue(out.contains("started "), out);
		}
		script("bin/ldconfig", "echo '	libother.so'");
		assertTrue(run("C.UTF-8", "workbench", "w").contains("GTK 3 is missing"));
	}

	@Test
	void theWorkbenchTakesTheHomeFolderThatIsSet() throws IOException, InterruptedException {
		script("bin/ldconfig", "echo '	libgtk-3.so.0'");
		String out = run("C.UTF-8", "workbench");
		assertTrue(out.contains(" -Duser.home=" + folder.resolve("home") + " "), out);
	}

	@Test
	void theHelpOfTheWorkbenchIsThatOfTheCommandLine() throws IOException, InterruptedException {
		for (String help : List.of("--help", "-h")) {
			String out = run("C.UTF-8", "workbench", help);
			assertTrue(out.endsWith("org.baywright.cli.Main workbench " + help + "\n"), out);
		}
		assertTrue(run("C.UTF-8", "workbench", "w", "--help").endsWith("org.baywright.cli.Main workbench w --help\n"));
	}

	@Test
	void noScriptEndsAPipeEarly() throws IOException {
		List<String> wrong = new ArrayList<>();
		try (Stream<Path> files = Stream.concat(Files.walk(TestFiles.root().resolve("releng"), 2), Stream.of(TestFiles.root().resolve(".ci/run")))) {
			for (Path file : files.filter(Files::isRegularFile).filter(StartScriptTest::isShell).toList()) {
				for (String line : Files.readAllLines(file)) {
					if (line.matches(".*\\|\\s*(grep\\s+-[a-zA-Z]*[qm]|head|sed .*q\\b).*")) {
						wrong.add(file.getFileName() + ": " + line.strip());
					}
				}
			}
		}
		assertEquals(List.of(), wrong);
	}

	private static boolean isShell(Path file) {
		try {
			byte[] begin = new byte[40];
			try (var in = Files.newInputStream(file)) {
				in.readNBytes(begin, 0, begin.length);
			}
			String text = new String(begin, StandardCharsets.ISO_8859_1);
			assertFalse(text.isEmpty());
			return text.startsWith("#!/usr/bin/env bash") || text.startsWith("# shellcheck shell=bash");
		} catch (IOException e) {
			return false;
		}
	}
}
