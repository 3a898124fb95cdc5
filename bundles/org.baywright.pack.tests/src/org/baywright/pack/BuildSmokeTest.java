package org.baywright.pack;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.JsonObject;
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
}
