package org.baywright.language.ide.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.baywright.language.workspace.RuleProject;

/** The product's example projects, found from the working directory upwards. */
public final class Samples {

	private static final String EXAMPLES = "rules-examples";
	private static final String FLAWED = "flawed";

	private Samples() {
	}

	/** Returns the folder of each example project. */
	public static List<Path> projects() {
		return list(examples()).stream().filter(Files::isDirectory).filter(folder -> !folder.endsWith(FLAWED)).toList();
	}

	/** Returns the folder of one example project. */
	public static Path project(String name) {
		return examples().resolve(name);
	}

	/** Returns the small files that each show one kind of flaw. */
	public static List<Path> flawed() {
		return rules(examples().resolve(FLAWED));
	}

	private static Path examples() {
		for (Path folder = Path.of("").toAbsolutePath(); folder != null; folder = folder.getParent()) {
			if (Files.isDirectory(folder.resolve(EXAMPLES))) {
				return folder.resolve(EXAMPLES);
			}
		}
		throw new IllegalStateException("no folder " + EXAMPLES);
	}

	private static List<Path> rules(Path folder) {
		return list(folder).stream().filter(file -> file.toString().endsWith(".bay")).toList();
	}

	private static List<Path> list(Path folder) {
		try (Stream<Path> found = Files.list(folder)) {
			return found.sorted().toList();
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns the text of a file. */
	public static String read(Path file) {
		try {
			return Files.readString(file, StandardCharsets.UTF_8);
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns the text of each file of a project by its name. */
	public static SortedMap<String, String> texts(Path project) {
		SortedMap<String, String> texts = new TreeMap<>();
		rules(project).forEach(file -> texts.put(file.getFileName().toString(), read(file)));
		return texts;
	}

	/** Returns a project in memory with these texts. */
	public static RuleProject inMemory(SortedMap<String, String> texts) {
		RuleProject project = RuleProject.inMemory("sample");
		texts.forEach(project::update);
		return project;
	}
}
