package org.baywright.language.testing;

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

/** The sample projects of the tests and the example projects of the product, found from the working directory upwards. */
public final class Samples {

	private static final String OWN = "bundles/org.baywright.language.tests/projects";
	private static final String EXAMPLES = "rules-examples";
	private static final String FLAWED = "flawed";

	private Samples() {
	}

	/** Returns the folder of the sample project that most tests build on. */
	public static Path tarn() {
		return find(OWN).resolve("tarn");
	}

	/** Returns the folder of single files that each show what one check finds. */
	public static Path flawed() {
		return find(EXAMPLES).resolve(FLAWED);
	}

	/** Returns the text of each file of a project by its relative path. */
	public static SortedMap<String, String> texts(Path project) {
		try (Stream<Path> files = Files.walk(project)) {
			SortedMap<String, String> texts = new TreeMap<>();
			for (Path file : files.filter(path -> path.toString().endsWith(".bay")).toList()) {
				texts.put(project.relativize(file).toString().replace('\\', '/'),
						Files.readString(file, StandardCharsets.UTF_8));
			}
			return texts;
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns a project in memory with the files of the sample project. */
	public static RuleProject tarnInMemory() {
		RuleProject project = RuleProject.inMemory("tarn");
		texts(tarn()).forEach(project::update);
		return project;
	}

	/** Returns every project that must be read without trouble: the tests' own and the product's examples. */
	public static List<Path> all() {
		try {
			List<Path> projects = new java.util.ArrayList<>();
			for (Path folder : new Path[] { find(OWN), find(EXAMPLES) }) {
				if (folder != null) {
					try (Stream<Path> found = Files.list(folder)) {
						found.filter(Files::isDirectory).filter(project -> !project.endsWith(FLAWED)).sorted()
								.forEach(projects::add);
					}
				}
			}
			return projects;
		} catch (IOException e) {
			throw new UncheckedIOException(e);
		}
	}

	/** Returns whether a project belongs to the tests and is no example of the product. */
	public static boolean isOwn(Path project) {
		return project.startsWith(find(OWN));
	}

	private static Path find(String relative) {
		String root = System.getProperty("baywright.root");
		for (Path folder = Path.of(root == null ? "" : root).toAbsolutePath(); folder != null; folder = folder.getParent()) {
			if (Files.isDirectory(folder.resolve(relative))) {
				return folder.resolve(relative);
			}
		}
		return null;
	}
}
