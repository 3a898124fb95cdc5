package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.model.Acceptance;
import org.baywright.model.BuiltOn;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.manifest.PackException;
import org.baywright.pack.manifest.PackManifest;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;

/** Holds packs against the schemas by an independent validator, com.networknt:json-schema-validator. */
class SchemaTest {

	private static Map<String, Schema> schemas;
	private static Map<String, byte[]> entries;

	@BeforeAll
	static void read() throws PackException {
		schemas = Map.of(Archive.RULES, schema(Schemas.rules()), Archive.MANIFEST, schema(Schemas.manifest()));
		entries = Archive.read(PackWriter.bytes(Tarn.contents()));
	}

	private static Schema schema(String text) {
		return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12).getSchema(text, InputFormat.JSON);
	}

	private static List<Error> errors(String entry, String json) {
		return schemas.get(entry).validate(json, InputFormat.JSON,
				context -> context.executionConfig(config -> config.formatAssertionsEnabled(true)));
	}

	private static String text(String entry) {
		return new String(entries.get(entry), StandardCharsets.UTF_8);
	}

	@Test
	void theSchemasAreValidThemselves() {
		Schema meta = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
				.getSchema(SchemaLocation.of(SpecificationVersion.DRAFT_2020_12.getDialectId()));
		assertEquals(List.of(), meta.validate(Schemas.rules(), InputFormat.JSON));
		assertEquals(List.of(), meta.validate(Schemas.manifest(), InputFormat.JSON));
	}

	@Test
	void aPackIsValid() {
		assertEquals(List.of(), errors(Archive.RULES, text(Archive.RULES)));
		assertEquals(List.of(), errors(Archive.MANIFEST, text(Archive.MANIFEST)));
	}

	@Test
	void aManifestWithEverythingIsValid() throws PackException {
		Acceptance accepted = new Acceptance("gap:y@0123abcd", "It is on order.", Optional.of("A. Author"),
				Optional.of(java.time.LocalDate.of(2026, 3, 6)), Span.NONE);
		byte[] pack = PackWriter.bytes(PackWriterTest.fixed(PackWriterTest.flaw("gap:x", Severity.NOTE),
				PackWriterTest.flaw("gap:y", Severity.WARNING).accept(accepted)));
		assertEquals(List.of(), errors(Archive.MANIFEST, new String(Archive.read(pack).get(Archive.MANIFEST), StandardCharsets.UTF_8)));
	}

	/** What a project builds on is written once each, comes back, and is told. */
	@Test
	void aManifestOfWhatBuildsOnOthersIsValid() throws PackException {
		RuleBase.Builder rules = new Tarn().builder();
		RuleBase shared = new RuleBase.Builder("shared").build();
		rules.builtOn.add(new BuiltOn("../z.baypack", "0123abcd", shared, Span.NONE));
		rules.builtOn.add(new BuiltOn("../shared", "89abcdef", shared, Span.NONE));
		rules.builtOn.add(new BuiltOn("../shared", "89abcdef", shared, Span.NONE));
		PackContents contents = Tarn.contents();
		byte[] pack = PackWriter.bytes(new PackContents(rules.build(), contents.report(), contents.problems(), contents.tool(), contents.pictures(), true));
		assertEquals(List.of(), errors(Archive.MANIFEST, new String(Archive.read(pack).get(Archive.MANIFEST), StandardCharsets.UTF_8)));
		Pack read = PackReader.read(pack);
		assertEquals(List.of(new PackManifest.BuiltOn("../shared", "shared", "89abcdef"), new PackManifest.BuiltOn("../z.baypack", "shared", "0123abcd")),
				read.manifest().builtOn());
		assertTrue(PackText.of(read, false).contains("Built on shared (../shared), meaning 89abcdef; all of it is in this pack.\n"));
		String bad = new String(Archive.read(pack).get(Archive.MANIFEST), StandardCharsets.UTF_8).replace("89abcdef", "89ABCDEF");
		assertFalse(errors(Archive.MANIFEST, bad).isEmpty());
	}

	@ParameterizedTest
	@CsvSource(delimiter = '|', value = { "rules.json|\"version\":\"2.0\"|\"version\":\"3.0\"",
			"rules.json|\"name\":\"flat\"|\"name\":\"\"", "rules.json|\"name\":\"flat\"|\"name\":\"flat\",\"new\":1",
			"rules.json|\"name\":\"flat\",|", "rules.json|\"step\":\"0.1\"|\"step\":0.1", "rules.json|\"step\":\"0.1\"|\"step\":\"0.10\"",
			"rules.json|\"kind\":\"confirms\"|\"kind\":\"proves\"", "rules.json|\"code\":\"U3003\"|\"code\":\"X3003\"",
			"rules.json|\"spn\":168|\"spn\":524288", "rules.json|\"fmi\":4|\"fmi\":32", "rules.json|\"skill\":\"basic\"|\"skill\":\"any\"",
			"rules.json|\"date\":\"2026-03-04\"|\"date\":\"2026-02-30\"", "rules.json|\"at\":\"work.bay:11\"|\"at\":\"work.bay\"",
			"rules.json|\"line\":3|\"line\":0", "rules.json|\"stale\":true|\"stale\":null",
			"rules.json|\"reading\":\"missing\"|\"reading\":\"gone\"", "manifest.json|\"jobsPassed\":1|\"jobsPassed\":-1",
			"manifest.json|\"severity\":\"warning\"|\"severity\":\"error\"", "manifest.json|\"fingerprint\":\"|\"fingerprint\":\"x",
			"manifest.json|\"signs\":2,|", "manifest.json|\"tools\":2|\"tools\":2,\"toys\":2", "manifest.json|\"rules.html\"|\"rules.pdf\"",
			"manifest.json|\"name\":\"Baywright\"|\"name\":\"x\"" })
	void findsWhatIsWrong(String entry, String from, String to) {
		String changed = text(entry).replace(from, to == null ? "" : to);
		assertFalse(changed.equals(text(entry)), from);
		assertFalse(errors(entry, changed).isEmpty(), to);
	}

	@Test
	void everyObjectIsStrictAndEveryPropertyDescribed() {
		for (String text : List.of(Schemas.rules(), Schemas.manifest())) {
			JsonObject schema = JsonParser.parseString(text).getAsJsonObject();
			assertTrue(strict(schema, schema, "") > 5);
		}
	}

	private static int strict(JsonObject root, JsonElement element, String path) {
		int objects = 0;
		if (element instanceof JsonArray array) {
			for (JsonElement item : array) {
				objects += strict(root, item, path + "/*");
			}
		} else if (element instanceof JsonObject object) {
			if (object.has("properties") && object.has("type")) {
				objects++;
				assertFalse(object.get("additionalProperties").getAsBoolean(), path);
				for (Map.Entry<String, JsonElement> property : object.getAsJsonObject("properties").entrySet()) {
					assertTrue(isDescribed(root, property.getValue().getAsJsonObject()), path + "/" + property.getKey());
				}
			}
			for (Map.Entry<String, JsonElement> member : object.entrySet()) {
				objects += strict(root, member.getValue(), path + "/" + member.getKey());
			}
		}
		return objects;
	}

	private static boolean isDescribed(JsonObject root, JsonObject schema) {
		JsonObject described = schema.has("description") || !schema.has("$ref") ? schema
				: root.getAsJsonObject("$defs").getAsJsonObject(schema.get("$ref").getAsString().substring("#/$defs/".length()));
		return described.has("description") && described.get("description").getAsString().endsWith(".");
	}
}
