package org.baywright.pack.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;

import org.baywright.pack.manifest.PackException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import com.google.gson.JsonArray;

class CanonicalJsonTest {

	private static String canonical(String json) throws PackException {
		return new String(CanonicalJson.bytes(json), StandardCharsets.UTF_8);
	}

	// RFC 8785, section 3.2.2.
	@Test
	void writesNumbersTextsAndLiteralsAsTheStandardDoes() throws PackException {
		assertEquals("[1e+30,4.5,333333333.3333333,0.002,1e-27]",
				canonical("[1E30,4.50,333333333.33333329,2e-3,1e-27]"));
		// From memory; the npm package canonicalize 4.0.0, a second implementation, gives the same.
		assertEquals("{\"literals\":[null,true,false],\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}",
				canonical("{ \"string\": \"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"\\/\", "
						+ "\"literals\": [null, true, false] }"));
	}

	// RFC 8785, appendix B: the bits of a double and how it is written.
	@ParameterizedTest
	@CsvSource({ "4340000000000001, 9007199254740994", "444b1ae4d6e2ef50, 1e+21", "3eb0c6f7a0b5ed8d, 0.000001",
			"3eb0c6f7a0b5ed8c, 9.999999999999997e-7", "8000000000000000, 0" })
	void writesDoublesAsTheStandardDoes(String bits, String written) throws PackException {
		double number = Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16));
		assertEquals("[" + written + "]", canonical("[" + number + "]"));
	}

	// RFC 8785, section 3.2.3: names are sorted by UTF-16 units, so that U+1F602 stands before U+FB33.
	@Test
	void sortsNamesByTheirUtf16Units() throws PackException {
		assertEquals("{\"\\r\":1,\"1\":2,\"\u0080\":3,\"ö\":4,\"€\":5,\"\uD83D\uDE02\":6,\"\uFB33\":7}", canonical(
				"{\"\\u20ac\":5,\"\\r\":1,\"\\ufb33\":7,\"1\":2,\"\\ud83d\\ude02\":6,\"\\u0080\":3,\"\\u00f6\":4}"));
	}

	@Test
	void leavesACanonicalTextAsItIs() throws PackException {
		String text = "{\"a\":[{\"b\":\"\u2028\",\"c\":-1}],\"d\":{}}";
		assertEquals(text, canonical(text));
	}

	@Test
	void refusesHalfCharacters() {
		JsonArray half = new JsonArray();
		half.add("a lamp \uD83D that");
		PackException wrong = assertThrows(PackException.class, () -> CanonicalJson.bytes(half));
		assertTrue(wrong.getMessage().contains("a lamp"), wrong.getMessage());
		assertThrows(PackException.class, () -> CanonicalJson.bytes("[\"\\uDE02\\uD83D\"]"));
	}

	@Test
	void refusesWhatIsNotJson() {
		assertThrows(PackException.class, () -> CanonicalJson.bytes("{'a':1}"));
		assertThrows(PackException.class, () -> CanonicalJson.bytes("[1,]"));
		assertThrows(PackException.class, () -> CanonicalJson.bytes("[1] 2"));
	}
}
