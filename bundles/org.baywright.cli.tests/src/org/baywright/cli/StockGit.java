package org.baywright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The stock command of Git, with nobody's own settings. */
final class StockGit {

	private StockGit() {
	}

	static Runs.Result run(Path folder, String... args) throws IOException, InterruptedException {
		List<String> words = new ArrayList<>(List.of("git", "-c", "user.name=Tester", "-c", "user.email=tester@example.com"));
		words.addAll(List.of(args));
		ProcessBuilder builder = new ProcessBuilder(words).directory(folder.toFile()).redirectErrorStream(true);
		builder.environment().put("GIT_CONFIG_NOSYSTEM", "1");
		builder.environment().put("GIT_CONFIG_GLOBAL", "/dev/null");
		Process process = builder.start();
		String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
		return new Runs.Result(process.waitFor(), out, "");
	}
}
