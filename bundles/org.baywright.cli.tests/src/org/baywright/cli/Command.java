package org.baywright.cli;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

import org.osgi.framework.Bundle;
import org.osgi.framework.FrameworkUtil;

/** The command line as a process of its own, with the streams that a shell gives it. */
final class Command {

	private static final long LONGEST_SECONDS = 120;

	private final Path folder;
	private final Map<String, String> environment = new TreeMap<>();
	private final List<String> before = new ArrayList<>();
	private final List<String> options = new ArrayList<>();
	private String redirection = "";

	/** @param folder where it runs */
	Command(Path folder) {
		this.folder = folder;
	}

	/** Sets a variable of the environment; null takes it out. */
	Command with(String name, String value) {
		environment.put(name, value);
		return this;
	}

	/** Puts words before the command, such as one that changes the user. */
	Command under(String... words) {
		before.addAll(List.of(words));
		return this;
	}

	/** Lets standard input be taken for a terminal, so that it is told when it is its turn. */
	Command prompted() {
		options.add("-Dbaywright.terminals=0");
		return this;
	}

	/** Adds what the shell does with the command, such as {@code > /dev/full}. */
	Command shell(String text) {
		redirection = " " + text;
		return this;
	}

	/** Returns the words that start the command, for a shell. */
	String line(String... args) {
		List<String> words = new ArrayList<>(before);
		words.addAll(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:+UseSerialGC",
				"-XX:TieredStopAtLevel=1", "-Xshare:auto"));
		words.addAll(options);
		words.addAll(List.of("-cp", classPath(), "org.baywright.cli.Main"));
		words.addAll(List.of(args));
		StringBuilder line = new StringBuilder();
		words.forEach(word -> line.append('\'').append(word.replace("'", "'\\''")).append("' "));
		return line + redirection;
	}

	Process start(String... args) throws IOException {
		ProcessBuilder builder = new ProcessBuilder("bash", "-c", line(args)).directory(folder.toFile());
		environment.forEach((name, value) -> {
			if (value == null) {
				builder.environment().remove(name);
			} else {
				builder.environment().put(name, value);
			}
		});
		return builder.start();
	}

	Runs.Result run(String... args) throws IOException, InterruptedException {
		return answering("", args);
	}

	/** Runs with a text that is read as answers. */
	Runs.Result answering(String answers, String... args) throws IOException, InterruptedException {
		Process process = start(args);
		try (var to = process.outputWriter(StandardCharsets.UTF_8)) {
			to.write(answers);
		}
		CompletableFuture<String> out = text(process.getInputStream());
		CompletableFuture<String> err = text(process.getErrorStream());
		if (!process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
			process.descendants().forEach(ProcessHandle::destroyForcibly);
			process.destroyForcibly();
			throw new AssertionError("it does not end: " + String.join(" ", args));
		}
		return new Runs.Result(process.exitValue(), out.join(), err.join());
	}

	private static CompletableFuture<String> text(InputStream in) {
		return CompletableFuture.supplyAsync(() -> {
			try {
				return new String(in.readAllBytes(), StandardCharsets.UTF_8);
			} catch (IOException e) {
				return "";
			}
		});
	}

	/** The bundles of this platform; the command line needs no platform, and where the tests have none it is their own path. */
	private static String classPath() {
		if (FrameworkUtil.getBundle(Main.class) == null) {
			return System.getProperty("java.class.path");
		}
		List<String> paths = new ArrayList<>();
		Path installed = Path.of(System.getProperty("osgi.install.area").replaceFirst("^file:", ""));
		for (Bundle bundle : FrameworkUtil.getBundle(Main.class).getBundleContext().getBundles()) {
			String location = bundle.getLocation().replaceFirst("^initial@", "").replaceFirst("^reference:", "");
			if (location.startsWith("file:")) {
				Path path = installed.resolve(location.substring("file:".length())).normalize();
				Path classes = path.resolve("target/classes");
				paths.add((Files.isDirectory(classes) ? classes : path).toString());
				if (Files.isDirectory(classes)) {
					paths.add(path.toString()); // schemas and help pages lie beside the classes
				}
			}
		}
		return String.join(File.pathSeparator, paths);
	}
}
