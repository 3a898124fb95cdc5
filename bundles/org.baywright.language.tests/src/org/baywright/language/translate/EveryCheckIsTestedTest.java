package org.baywright.language.translate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.baywright.language.testing.Samples;
import org.baywright.model.ProblemKind;
import org.junit.jupiter.api.Test;

/** No kind of problem without a marked text that shows it, and no id of one written anywhere but in the list of kinds. */
class EveryCheckIsTestedTest {

	/** Kinds that files have and texts have not, or texts that are too large to be shown; other tests show them. */
	private static final Set<ProblemKind> NOT_MARKED = EnumSet.of(ProblemKind.CHANGED_MEANWHILE, ProblemKind.FILE_PASSED_OVER,
			ProblemKind.NOT_UTF8, ProblemKind.PICTURE_MISSING, ProblemKind.PICTURE_TOO_LARGE, ProblemKind.TEXT_TOO_LONG, ProblemKind.TOO_DEEP, ProblemKind.UNREADABLE_FILE,
			ProblemKind.UNREADABLE_FOLDER);

	private static final Pattern MARKED = Pattern.compile("\\^ (error|warning|note) ([a-z0-9-]+):");
	private static final Path BUNDLES = Samples.tarn().getParent().getParent().getParent();

	@Test
	void everyKindStandsInAMarkedText() throws IOException {
		Set<String> marked = new TreeSet<>();
		for (Path file : sources(BUNDLES.resolve("org.baywright.language.tests/src"))) {
			Matcher matcher = MARKED.matcher(Files.readString(file));
			while (matcher.find()) {
				marked.add(matcher.group(2));
			}
		}
		assertEquals(Set.of(), Arrays.stream(ProblemKind.values()).filter(kind -> !NOT_MARKED.contains(kind)).map(ProblemKind::id)
				.filter(id -> !marked.contains(id)).collect(Collectors.toCollection(TreeSet::new)));
	}

	@Test
	void noIdIsWrittenElsewhere() throws IOException {
		Set<String> written = new TreeSet<>();
		try (Stream<Path> bundles = Files.list(BUNDLES)) {
			for (Path bundle : bundles.filter(each -> !each.toString().endsWith(".tests")).sorted().toList()) {
				for (Path file : sources(bundle.resolve("src"))) {
					String source = Files.readString(file);
					Arrays.stream(ProblemKind.values()).filter(kind -> source.contains('"' + kind.id() + '"'))
							.forEach(kind -> written.add(file.getFileName() + ": " + kind.id()));
				}
			}
		}
		assertEquals(Set.of(), written);
	}

	private static Iterable<Path> sources(Path folder) throws IOException {
		try (Stream<Path> files = Files.walk(folder)) {
			return files.filter(path -> path.toString().endsWith(".java")).toList();
		}
	}
}
