package org.baywright.sharing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The stock command of Git, by which is looked at what was made. */
final class Git {

	private Git() {
	}

	/** Runs the command in a folder, which must end well, and returns what it prints. */
	static String run(Path folder, String... args) {
		List<String> words = new ArrayList<>(List.of("git", "-c", "user.name=Tester", "-c", "user.email=tester@example.com", "-c", "protocol.file.allow=always"));
		words.addAll(List.of(args));
		ProcessBuilder builder = new ProcessBuilder(words).directory(folder.toFile()).redirectErrorStream(true);
		builder.environment().put("GIT_CONFIG_NOSYSTEM", "1");
		builder.environment().put("GIT_CONFIG_GLOBAL", "/dev/null");
		builder.environment().put("LC_ALL", "C.UTF-8");
		try {
			Process process = builder.start();
			String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
			assertEquals(0, process.waitFor(), String.join(" ", args) + "\n" + out);
			return out;
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		} catch (InterruptedException e) {
			Thread.currentThread().interrupt();
			throw new AssertionError(e);
		}
	}

	/** Fails unless Git finds nothing wrong with a repository; what nothing leads to is nothing wrong. */
	static void assertSound(Path folder) {
		assertEquals("", run(folder, "fsck", "--strict", "--no-dangling", "--no-progress"));
	}
}
