package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

/** Arrows between bundles run downwards only, and the kernel sees no Eclipse: see the table of bundles in DEVELOPERS.md. */
class ArrowsTest {

	private static final String OWN = "org.baywright.";

	/** What each bundle may use of ours. pack uses analysis, since a pack tells what was proved. */
	private static final Map<String, Set<String>> MAY_USE = new TreeMap<>(Map.ofEntries(Map.entry("model", Set.of()),
			Map.entry("analysis", Set.of("model")), //
			Map.entry("planner", Set.of("model", "analysis")), //
			Map.entry("pack", Set.of("model", "analysis")), //
			Map.entry("runtime", Set.of("model", "pack")), //
			Map.entry("language", Set.of("model", "analysis")), //
			Map.entry("language.ide", Set.of("model", "analysis", "planner", "language")), //
			Map.entry("presenter", Set.of("model", "analysis", "planner", "pack")), //
			Map.entry("cli", Set.of("model", "analysis", "planner", "pack", "runtime", "language", "language.ide", "presenter")),
			Map.entry("workbench",
					Set.of("model", "analysis", "planner", "pack", "runtime", "language", "language.ide", "presenter")), //
			Map.entry("application", Set.of("workbench"))));

	private static final Set<String> KERNEL = Set.of("model", "analysis", "planner", "pack", "runtime");

	/** Beginnings of the names of bundles and packages that the kernel never sees: Xtext and its friends, EMF, SWT. */
	private static final List<String> NOT_IN_KERNEL = List.of("org.eclipse.", "com.google.inject", "org.antlr.", "picocli");

	/** Returns the bundles of the product, without their tests, with the names of what they need. */
	private static Map<String, Set<String>> bundles() throws IOException {
		Map<String, Set<String>> bundles = new TreeMap<>();
		try (Stream<Path> folders = Files.list(TestFiles.root().resolve("bundles"))) {
			for (Path folder : folders.sorted().toList()) {
				Path file = folder.resolve("META-INF/MANIFEST.MF");
				if (Files.exists(file) && !folder.toString().endsWith(".tests")) {
					bundles.put(folder.getFileName().toString().substring(OWN.length()), needs(file));
				}
			}
		}
		return bundles;
	}

	private static Set<String> needs(Path file) throws IOException {
		try (InputStream in = Files.newInputStream(file)) {
			Attributes manifest = new Manifest(in).getMainAttributes();
			Set<String> names = new TreeSet<>();
			for (String header : List.of("Require-Bundle", "Import-Package", "Fragment-Host")) {
				String value = manifest.getValue(header);
				if (value != null) {
					// a comma within quotes belongs to a range of versions
					for (String entry : value.replaceAll("\"[^\"]*\"", "").split(",")) {
						names.add(entry.replaceFirst(";.*", "").strip());
					}
				}
			}
			return names;
		}
	}

	@Test
	void arrowsRunDownwards() throws IOException {
		List<String> wrong = new ArrayList<>();
		bundles().forEach((bundle, needs) -> {
			Set<String> allowed = MAY_USE.get(bundle);
			if (allowed == null) {
				wrong.add(bundle + " is not in the table of this test");
				return;
			}
			needs.stream().filter(name -> name.startsWith(OWN)).map(name -> name.substring(OWN.length()))
					.filter(name -> MAY_USE.keySet().stream().noneMatch(
							other -> allowed.contains(other) && (name.equals(other) || name.startsWith(other + "."))))
					.forEach(name -> wrong.add(bundle + " may not use " + name));
		});
		assertEquals(List.of(), wrong);
	}

	@Test
	void theTableItselfHasNoCircle() {
		MAY_USE.forEach((bundle, uses) -> uses.forEach(used -> assertTrue(
				!MAY_USE.get(used).contains(bundle) && MAY_USE.get(used).stream().noneMatch(deeper -> MAY_USE.get(deeper).contains(bundle)),
				bundle + " and " + used)));
	}

	@Test
	void theKernelNeedsNoEclipse() throws IOException {
		List<String> wrong = new ArrayList<>();
		bundles().forEach((bundle, needs) -> needs.stream()
				.filter(name -> KERNEL.contains(bundle) && NOT_IN_KERNEL.stream().anyMatch(name::startsWith))
				.forEach(name -> wrong.add(bundle + " needs " + name)));
		assertEquals(List.of(), wrong);
	}

	/** What the screens show is tested without a display. */
	@Test
	void presentersKnowNoScreen() throws IOException {
		assertEquals(List.of(), importsOf(Set.of("presenter"), List.of("org.eclipse.swt", "org.eclipse.jface", "org.eclipse.ui")));
	}

	@Test
	void theKernelImportsNoEclipse() throws IOException {
		assertEquals(List.of(), importsOf(KERNEL, NOT_IN_KERNEL));
	}

	/** Help and version come at once because only the package work, loaded when a command runs, knows the language. */
	@Test
	void onlyTheWorkOfTheCommandLineKnowsTheLanguage() throws IOException {
		List<String> wrong = importsOf(Set.of("cli"), List.of("org.baywright.language", "org.eclipse.", "com.google.inject")).stream()
				.filter(text -> !text.contains("/cli/work/")).toList();
		assertEquals(List.of(), wrong);
	}

	private static List<String> importsOf(Set<String> bundles, List<String> beginnings) throws IOException {
		Pattern imports = Pattern.compile("(?m)^import (?:static )?([\\w.]+)");
		List<String> found = new ArrayList<>();
		for (String bundle : bundles) {
			Path folder = TestFiles.root().resolve("bundles").resolve(OWN + bundle).resolve("src");
			if (!Files.isDirectory(folder)) {
				continue;
			}
			try (Stream<Path> files = Files.walk(folder)) {
				for (Path file : files.filter(path -> path.toString().endsWith(".java")).sorted().toList()) {
					Matcher matcher = imports.matcher(Files.readString(file));
					while (matcher.find()) {
						if (beginnings.stream().anyMatch(matcher.group(1)::startsWith)) {
							found.add(folder.relativize(file).toString().replace('\\', '/') + " imports " + matcher.group(1));
						}
					}
				}
			}
		}
		return found;
	}
}
