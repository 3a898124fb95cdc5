package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.junit.jupiter.api.Test;

/** Arrows between bundles run downwards only, packages make no circles, and the kernel sees no Eclipse: see DEVELOPERS.md. */
class ArrowsTest {

	private static final String OWN = "org.baywright.";

	/** What each bundle may use of ours. pack uses analysis, since a pack tells what was proved. */
	private static final Map<String, Set<String>> MAY_USE = new TreeMap<>(Map.ofEntries(Map.entry("model", Set.of()),
			Map.entry("analysis", Set.of("model")), //
			Map.entry("planner", Set.of("model", "analysis")), //
			Map.entry("pack", Set.of("model", "analysis")), //
			Map.entry("language", Set.of("model", "analysis", "pack")), //
			Map.entry("language.ide", Set.of("model", "analysis", "language")), //
			Map.entry("sharing", Set.of("model", "pack", "language")), //
			Map.entry("presenter", Set.of("model", "analysis", "planner", "pack")), //
			Map.entry("cli", Set.of("model", "analysis", "pack", "language", "language.ide", "presenter", "sharing")),
			Map.entry("workbench", Set.of("model", "analysis", "pack", "language", "language.ide", "presenter")), //
			Map.entry("application", Set.of("workbench"))));

	private static final Set<String> KERNEL = Set.of("model", "analysis", "planner", "pack");

	/** Beginnings of the names of bundles and packages that the kernel never sees: Xtext and its friends, EMF, SWT. */
	private static final List<String> NOT_IN_KERNEL = List.of("org.eclipse.", "com.google.inject", "org.antlr.", "picocli");

	/** A package of ours before the name of a class, or all of its classes. */
	private static final Pattern PACKAGE_USED = Pattern.compile("\\borg\\.baywright\\.([a-z_0-9]+(?:\\.[a-z_0-9]+)*)\\.[A-Z*]");

	/** Texts, letters and comments. */
	private static final Pattern SILENT = Pattern.compile(
			"\"\"\"(?s:.*?)\"\"\"|\"[^\"\\\\\n]*+(?:\\\\.[^\"\\\\\n]*+)*+\"|'(?:\\\\.|[^'\\\\])[^'\n]*+'|/\\*(?s:.*?)\\*/|//[^\n]*+");

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
			Set<String> allowed = MAY_USE.getOrDefault(bundle, Set.of());
			needs.stream().filter(name -> name.startsWith(OWN)).map(name -> name.substring(OWN.length()))
					.filter(name -> MAY_USE.keySet().stream().noneMatch(
							other -> allowed.contains(other) && (name.equals(other) || name.startsWith(other + "."))))
					.forEach(name -> wrong.add(bundle + " may not use " + name));
		});
		assertEquals(List.of(), wrong);
	}

	/** A bundle that is new has to be entered, and one that is gone taken out. */
	@Test
	void theTableKnowsTheBundlesThatThereAre() throws IOException {
		assertEquals(bundles().keySet(), MAY_USE.keySet());
	}

	@Test
	void theTableItselfHasNoCircle() {
		assertEquals(List.of(), Circles.of(MAY_USE));
	}

	@Test
	void packagesHaveNoCircles() throws IOException {
		Map<String, Map<String, SortedSet<String>>> arrows = new TreeMap<>();
		for (String bundle : bundles().keySet()) {
			addArrows(bundle, arrows);
		}
		assertEquals("", Circles.of(usedBy(arrows)).stream().map(circle -> told(circle, arrows)).collect(Collectors.joining("\n")));
	}

	@Test
	void circlesAreFound() {
		assertEquals(List.of(Set.of("a", "b", "c"), Set.of("x", "y")),
				Circles.of(Map.of("a", Set.of("b", "d"), "b", Set.of("c"), "c", Set.of("a"), "d", Set.of("d", "x"), //
						"x", Set.of("y"), "y", Set.of("x", "z"))));
		assertEquals(List.of(), Circles.of(Map.of("a", Set.of("b", "c"), "b", Set.of("c"))));
	}

	@Test
	void arrowsAreReadFromImportsAndFromNamesWrittenInFull() {
		assertEquals(new TreeSet<>(Set.of("a", "b.c", "d", "e")), packagesIn("""
				package org.baywright.z;
				import static org.baywright.a.A.of;
				import org.baywright.b.c.C;
				import org.baywright.d.*;
				/** See {@link org.baywright.no.Doc}. */
				class Z extends org.baywright.e.E.Inner { // org.baywright.no.Comment
					char quote = '"'; String id = "org.baywright.no.Text";
				}
				"""));
	}

	private static Map<String, Set<String>> usedBy(Map<String, Map<String, SortedSet<String>>> arrows) {
		Map<String, Set<String>> used = new TreeMap<>();
		arrows.forEach((from, to) -> used.put(from, to.keySet()));
		return used;
	}

	/** Tells a circle with the classes that make it, a line for each arrow. */
	private static String told(SortedSet<String> circle, Map<String, Map<String, SortedSet<String>>> arrows) {
		StringBuilder out = new StringBuilder("A circle of " + String.join(", ", circle) + ":\n");
		for (String from : circle) {
			arrows.get(from).forEach((to, classes) -> {
				if (circle.contains(to)) {
					out.append("  ").append(from).append(" uses ").append(to).append(" in ").append(String.join(", ", classes)).append('\n');
				}
			});
		}
		return out.toString();
	}

	/** Adds for each package of a bundle the packages that it uses, with the classes that do so. */
	private static void addArrows(String bundle, Map<String, Map<String, SortedSet<String>>> arrows) throws IOException {
		for (Path file : sources(bundle)) {
			Path folder = TestFiles.root().resolve("bundles").resolve(OWN + bundle).resolve("src/org/baywright").relativize(file.getParent());
			String from = folder.toString().replace('\\', '/').replace('/', '.');
			String name = file.getFileName().toString().replace(".java", "");
			for (String to : packagesIn(Files.readString(file))) {
				if (!to.equals(from)) {
					arrows.computeIfAbsent(from, key -> new TreeMap<>()).computeIfAbsent(to, key -> new TreeSet<>()).add(name);
				}
			}
		}
	}

	/** Returns our packages that a source names outside comments and texts, without {@code org.baywright} before them. */
	private static Set<String> packagesIn(String source) {
		Set<String> packages = new TreeSet<>();
		Matcher used = PACKAGE_USED.matcher(SILENT.matcher(source).replaceAll(" "));
		while (used.find()) {
			packages.add(used.group(1));
		}
		return packages;
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
			for (Path file : sources(bundle)) {
				Matcher matcher = imports.matcher(Files.readString(file));
				while (matcher.find()) {
					if (beginnings.stream().anyMatch(matcher.group(1)::startsWith)) {
						found.add(folder.relativize(file).toString().replace('\\', '/') + " imports " + matcher.group(1));
					}
				}
			}
		}
		return found;
	}

	/** Returns the sources of a bundle that people write, sorted. */
	private static List<Path> sources(String bundle) throws IOException {
		try (Stream<Path> files = Files.walk(TestFiles.root().resolve("bundles").resolve(OWN + bundle).resolve("src"))) {
			return files.filter(path -> path.toString().endsWith(".java")).sorted().toList();
		}
	}
}
