package org.baywright.cli.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

import org.baywright.analysis.check.HelpPages;
import org.baywright.cli.TestFiles;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;

/** Section numbers are those of SARIF 2.1.0 (OASIS). Its JSON Schema is in the folder schemas of these tests. */
class SarifReportTest {

	private static Schema schema;
	private static JsonObject run;

	@BeforeAll
	static void read() throws IOException {
		schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
				.getSchema(Files.readString(TestFiles.own("schemas/sarif-2.1.0.json")), InputFormat.JSON);
		run = run("rules/");
	}

	private static String report(String prefix) {
		return SarifReport.of(List.of(Sample.project(prefix)), id -> HelpPages.page(id).orElse(""));
	}

	private static JsonObject run(String prefix) {
		return JsonParser.parseString(report(prefix)).getAsJsonObject().getAsJsonArray("runs").get(0).getAsJsonObject();
	}

	private static JsonObject result(String fingerprint) {
		for (var result : run.getAsJsonArray("results")) {
			if (result.getAsJsonObject().getAsJsonObject("partialFingerprints").toString().contains(fingerprint)) {
				return result.getAsJsonObject();
			}
		}
		throw new AssertionError("no result " + fingerprint);
	}

	@Test
	void isValidBySchema() {
		for (String prefix : List.of("", "rules/", "../x/", TestFiles.root() + "/")) {
			assertEquals(List.of(), schema.validate(report(prefix), InputFormat.JSON));
		}
		assertEquals(List.of(), schema.validate(
				SarifReport.of(List.of(Sample.project("a/"), Sample.project("b/")), id -> "# Help\n"), InputFormat.JSON));
		assertFalse(schema.validate(report("").replace("\"version\": \"2.1.0\"", "\"version\": \"3\""), InputFormat.JSON).isEmpty());
	}

	@Test
	void describesEveryCheckOnceAndResultsPointAtTheirs() {
		JsonArray rules = run.getAsJsonObject("tool").getAsJsonObject("driver").getAsJsonArray("rules");
		List<String> ids = rules.asList().stream().map(rule -> rule.getAsJsonObject().get("id").getAsString()).toList();
		assertTrue(ids.containsAll(org.baywright.analysis.check.Checks.ids()));
		assertEquals(ids.size(), ids.stream().distinct().count());
		for (var rule : rules) {
			JsonObject object = rule.getAsJsonObject();
			assertTrue(object.getAsJsonObject("help").get("markdown").getAsString().startsWith("# " + object.get("id").getAsString() + ": "));
		}
		for (var result : run.getAsJsonArray("results")) {
			JsonObject object = result.getAsJsonObject();
			assertEquals(object.get("ruleId").getAsString(), ids.get(object.get("ruleIndex").getAsInt()));
		}
	}

	@Test
	void tellsPlacesEvidenceAndLevels() {
		JsonObject clash = result("contradiction:low/high");
		assertEquals("error", clash.get("level").getAsString());
		assertEquals("Rule low confirms what rule high clears.\nFor example: Invented van with engine diesel; "
				+ "Battery voltage at rest: 12.0 V.", clash.getAsJsonObject("message").get("text").getAsString());
		JsonObject place = clash.getAsJsonArray("locations").get(0).getAsJsonObject().getAsJsonObject("physicalLocation");
		assertEquals("rules/power/flat%20battery.bay", place.getAsJsonObject("artifactLocation").get("uri").getAsString());
		assertEquals("{\"startLine\":3,\"startColumn\":3,\"endLine\":3,\"endColumn\":8,\"charOffset\":93,\"charLength\":5}",
				place.getAsJsonObject("region").toString());
		JsonArray related = clash.getAsJsonArray("relatedLocations");
		assertEquals(1, related.size());
		assertEquals("rule high, met",
				related.get(0).getAsJsonObject().getAsJsonObject("message").get("text").getAsString());
		assertEquals(2, result("dead-rule:high").getAsJsonArray("relatedLocations").size());
		assertEquals("note", result("unused-result:lamp").get("level").getAsString());
		assertFalse(result("unused-result:lamp").has("locations"));
	}

	// 3.27.9 and 3.27.10
	@Test
	void whatIsUndecidedIsOpen() {
		assertEquals("open", result("undecided:low/1").get("kind").getAsString());
		assertEquals("none", result("undecided:low/1").get("level").getAsString());
	}

	// 3.35
	@Test
	void whatIsAcceptedIsSuppressedInSource() {
		JsonObject suppression = result("band-gap:low").getAsJsonArray("suppressions").get(0).getAsJsonObject();
		assertEquals("inSource", suppression.get("kind").getAsString());
		assertEquals("accepted", suppression.get("status").getAsString());
		assertEquals("It is known. – A. Author, 2026-03-06", suppression.get("justification").getAsString());
		assertFalse(result("gap:no_crank/1").has("suppressions"));
	}

	@Test
	void tellsNoPathOfTheMachine() {
		Path folder = TestFiles.root();
		String report = report(folder + "/");
		assertFalse(report.contains(folder.toString()));
		assertTrue(report.contains("\"uriBaseId\": \"PROJECT\""));
	}
}
