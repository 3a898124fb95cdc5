package org.baywright.pack;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The JSON Schemas (2020-12) of a pack's entries, for those who write or check packs with other tools. */
public final class Schemas {

	private Schemas() {
	}

	/** Returns the schema of {@code manifest.json}. */
	public static String manifest() {
		return read("baypack-manifest.schema.json");
	}

	/** Returns the schema of {@code rules.json}. */
	public static String rules() {
		return read("baypack-rules.schema.json");
	}

	private static String read(String name) {
		try (InputStream in = Schemas.class.getResourceAsStream("/schema/" + name)) {
			return new String(in.readAllBytes(), StandardCharsets.UTF_8);
		} catch (IOException e) {
			throw new UncheckedIOException("a part of the program cannot be read", e);
		}
	}
}
