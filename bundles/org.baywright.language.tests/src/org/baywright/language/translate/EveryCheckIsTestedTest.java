package org.baywright.language.translate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.baywright.language.testing.Samples;
import org.junit.jupiter.api.Test;

/** No local check without a marked text that shows it. */
class EveryCheckIsTestedTest {

	private static final Pattern REPORTED = Pattern
			.compile("report\\.(?:error|flaw|warning|note)\\(\\s*(?:\\w[^\"(]*\\? )?\"([a-z0-9-]+)\"(?: : \"([a-z0-9-]+)\")?");
	private static final Pattern MARKED = Pattern.compile("\\^ (?:error|warning|note) ([a-z0-9-]+):");

	@Test
	void everyIdStandsInAMarkedText() throws IOException {
		Path bundles = Samples.tarn().getParent().getParent().getParent();
		Set<String> reported = ids(bundles.resolve("org.baywright.language/src/org/baywright/language/translate"), REPORTED);
		Set<String> marked = ids(bundles.resolve("org.baywright.language.tests/src"), MARKED);
		assertTrue(reported.size() > 40, reported::toString);
		reported.removeAll(marked);
		assertEquals(Set.of(), reported);
	}

	private static Set<String> ids(Path folder, Pattern pattern) throws IOException {
		Set<String> ids = new TreeSet<>();
		try (Stream<Path> files = Files.walk(folder)) {
			for (Path file : files.filter(path -> path.toString().endsWith(".java")).toList()) {
				Matcher matcher = pattern.matcher(Files.readString(file));
				while (matcher.find()) {
					ids.add(matcher.group(1));
					if (matcher.groupCount() > 1 && matcher.group(2) != null) {
						ids.add(matcher.group(2));
					}
				}
			}
		}
		return ids;
	}
}
