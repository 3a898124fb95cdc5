package org.baywright.pack.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;

import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JsonTextTest {

	private static String refused(String json) {
		return refused(json.getBytes(StandardCharsets.UTF_8));
	}

	private static String refused(byte[] json) {
		return assertThrows(PackException.class, () -> JsonText.read("rules.json", json)).getMessage();
	}

	@Test
	void readsJson() throws PackException {
		byte[] json = "{\"a\":[1,\"two\",true,null,{\"b\":-0.5}]}".getBytes(StandardCharsets.UTF_8);
		assertEquals("{\"a\":[1,\"two\",true,null,{\"b\":-0.5}]}", JsonText.read("rules.json", json).toString());
	}

	@ParameterizedTest
	@ValueSource(strings = { "", "{", "[1,]", "{'a':1}", "{a:1}", "[01]", "[NaN]", "nul", "[1]\n/*x*/", "// x\n1", "[\"\t\"]",
			"[1 2]", "{\"a\" 1}", "\uFEFF{}" })
	void refusesWhatIsNotStrictlyJson(String json) {
		assertTrue(refused(json).startsWith("rules.json "), refused(json));
	}

	@Test
	void refusesASecondValue() {
		assertTrue(refused("{} {}").startsWith("rules.json "));
	}

	@Test
	void refusesANameTwice() {
		assertEquals("rules.json holds \"name\" twice at $.x[0].name.", refused("{\"x\":[{\"name\":1,\"name\":1}]}"));
	}

	@Test
	void refusesBytesThatAreNotUtf8() {
		assertEquals("rules.json is not UTF-8 text.", refused(new byte[] { '"', (byte) 0xC3, '"' }));
	}

	@Test
	void refusesEndlessNestingInsteadOfRunningOutOfStack() {
		assertEquals("rules.json is nested more than 500 deep.", refused("[".repeat(1_000_000)));
	}

	@Test
	void refusesNumbersThatWouldFillTheMemory() {
		assertTrue(refused("[" + "9".repeat(1000) + "]").contains("more than 400 characters"));
	}
}
