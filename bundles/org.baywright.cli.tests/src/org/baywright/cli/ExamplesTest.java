package org.baywright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.stream.Stream;

import org.baywright.pack.PackReader;
import org.baywright.pack.Schemas;
import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;

/** Makes the packs of the example projects, and of the sample project of these tests. */
class ExamplesTest {

	@TempDir
	private Path folder;

	static List<Path> projects() throws IOException {
		List<Path> projects = new ArrayList<>(List.of(TestFiles.own("projects/van")));
		Path examples = TestFiles.root().resolve("rules-examples");
		if (Files.isDirectory(examples)) {
			try (Stream<Path> all = Files.list(examples)) {
				all.filter(Files::isDirectory).filter(path -> !path.endsWith("flawed")).sorted().forEach(projects::add);
			}
		}
		return projects;
	}

	private byte[] pack(Path project, String name) throws IOException {
		Runs.Result result = new Runs(folder).run("pack", project.toString(), "-o", name);
		assertEquals(ExitCode.FINE, result.code(), result.out() + result.err());
		return Files.readAllBytes(folder.resolve(name));
	}

	@ParameterizedTest
	@MethodSource("projects")
	void bytesAreTheSameEverywhere(Path project) throws IOException {
		byte[] pack = pack(project, "a.baypack");
		assertArrayEquals(pack, pack(project, "b.baypack"));
		Locale locale = Locale.getDefault();
		TimeZone zone = TimeZone.getDefault();
		try {
			Locale.setDefault(Locale.forLanguageTag("tr-TR"));
			TimeZone.setDefault(TimeZone.getTimeZone("Asia/Kathmandu"));
			assertArrayEquals(pack, pack(project, "c.baypack"));
			Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
			assertArrayEquals(pack, pack(project, "d.baypack"));
		} finally {
			Locale.setDefault(locale);
			TimeZone.setDefault(zone);
		}
	}

	@ParameterizedTest
	@MethodSource("projects")
	void packsAreRight(Path project) throws IOException {
		pack(project, "a.baypack");
		Runs.Result result = new Runs(folder).run("verify", "--prove", "a.baypack");
		assertEquals(ExitCode.FINE, result.code(), result.out());
	}

	@ParameterizedTest
	@MethodSource("projects")
	void packsAreValidBySchema(Path project) throws IOException, PackException {
		pack(project, "a.baypack");
		Map<String, byte[]> entries = PackReader.entries(folder.resolve("a.baypack"));
		assertValid(Schemas.manifest(), entries.get("manifest.json"));
		assertValid(Schemas.rules(), entries.get("rules.json"));
		assertTrue(new String(entries.get("rules.html"), StandardCharsets.UTF_8).endsWith("</html>\n"));
	}

	private static void assertValid(String schema, byte[] json) {
		Schema validator = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(schema, InputFormat.JSON);
		assertEquals(List.of(), validator.validate(new String(json, StandardCharsets.UTF_8), InputFormat.JSON,
				context -> context.executionConfig(config -> config.formatAssertionsEnabled(true))));
	}
}
