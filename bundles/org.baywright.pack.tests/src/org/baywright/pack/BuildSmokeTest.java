package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.JsonObject;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.Test;

class BuildSmokeTest {

	@Test
	void canonicalFormSortsMembers() throws Exception {
		JsonObject json = new JsonObject();
		json.addProperty("b", 1.0);
		json.addProperty("a", "x");
		assertEquals("{\"a\":\"x\",\"b\":1}", new JsonCanonicalizer(json.toString()).getEncodedString());
	}

	@Test
	void schemaIsChecked() {
		SchemaRegistry registry = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
		Schema schema = registry.getSchema("{\"type\": \"object\", \"required\": [\"a\"]}");
		assertEquals(0, schema.validate("{\"a\": 1}", InputFormat.JSON).size());
		assertEquals(1, schema.validate("{}", InputFormat.JSON).size());
	}
}
