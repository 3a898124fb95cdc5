package org.baywright.pack.json;

import java.io.IOException;
import java.nio.charset.StandardCharsets;

import org.baywright.pack.manifest.PackException;
import org.erdtman.jcs.JsonCanonicalizer;

import com.google.gson.JsonElement;

/** JSON texts in the one form that RFC 8785 gives each value: sorted names, no spaces, one spelling of each number. */
public final class CanonicalJson {

	private CanonicalJson() {
	}

	/**
	 * Returns the canonical form of a value, as UTF-8.
	 *
	 * @throws PackException if a text in it holds half a character (a lone surrogate), which UTF-8 cannot carry
	 */
	public static byte[] bytes(JsonElement value) throws PackException {
		return bytes(value.toString());
	}

	/**
	 * Returns the canonical form of a JSON text, as UTF-8.
	 *
	 * @throws PackException if the text is not JSON, or a text in it holds half a character
	 */
	public static byte[] bytes(String json) throws PackException {
		try {
			String canonical = new JsonCanonicalizer(json).getEncodedString();
			refuseHalfCharacters(canonical);
			return canonical.getBytes(StandardCharsets.UTF_8);
		} catch (IOException e) {
			throw new PackException("The text is not JSON: " + e.getMessage(), e);
		}
	}

	private static void refuseHalfCharacters(String text) throws PackException {
		for (int i = 0; i < text.length(); i++) {
			char c = text.charAt(i);
			if (Character.isHighSurrogate(c) && i + 1 < text.length() && Character.isLowSurrogate(text.charAt(i + 1))) {
				i++;
			} else if (Character.isSurrogate(c)) {
				String before = text.substring(Math.max(0, i - 30), i);
				throw new PackException("A text holds half a character, which no file can carry; it stands after: " + before);
			}
		}
	}
}
