package org.baywright.pack.json;

import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import com.google.gson.stream.MalformedJsonException;

import org.baywright.pack.manifest.PackException;

/** Reads JSON strictly: valid UTF-8, no name twice in an object, no endless nesting. */
public final class JsonText {

	/** No rule is nested this deep; a text that is would only exhaust the reader. */
	static final int MAX_DEPTH = 500;

	private static final int MAX_DIGITS = 400;

	private final JsonReader in;
	private final String entry;
	private int depth;

	private JsonText(String entry, String text) {
		this.entry = entry;
		in = new JsonReader(new StringReader(text));
		in.setStrictness(Strictness.STRICT);
	}

	/**
	 * Reads an entry of a pack.
	 *
	 * @param entry the entry's name, for messages
	 * @param bytes its content
	 * @throws PackException if it is not JSON, or is not read the same by everybody
	 */
	public static JsonElement read(String entry, byte[] bytes) throws PackException {
		String text;
		try {
			text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
		} catch (CharacterCodingException e) {
			throw new PackException(entry + " is not UTF-8 text.", e);
		}
		if (text.startsWith("\uFEFF")) {
			throw new PackException(entry + " begins with a byte order mark, which JSON may not.");
		}
		JsonText reader = new JsonText(entry, text);
		try {
			JsonElement value = reader.value();
			if (reader.in.peek() != JsonToken.END_DOCUMENT) {
				throw new PackException(entry + " holds more than one value.");
			}
			return value;
		} catch (MalformedJsonException | IllegalStateException | NumberFormatException e) {
			throw new PackException(entry + " is not JSON; the mistake is at " + reader.in.getPath() + ".", e);
		} catch (IOException e) {
			throw new PackException(entry + " ends too early; the pack is damaged.", e);
		}
	}

	private JsonElement value() throws IOException, PackException {
		if (++depth > MAX_DEPTH) {
			throw new PackException(entry + " is nested more than " + MAX_DEPTH + " deep.");
		}
		JsonElement value = switch (in.peek()) {
		case BEGIN_OBJECT -> object();
		case BEGIN_ARRAY -> array();
		case STRING -> new JsonPrimitive(in.nextString());
		case BOOLEAN -> new JsonPrimitive(in.nextBoolean());
		case NUMBER -> new JsonPrimitive(number(in.nextString()));
		case NULL -> {
			in.nextNull();
			yield JsonNull.INSTANCE;
		}
		default -> throw new MalformedJsonException("no value");
		};
		depth--;
		return value;
	}

	private BigDecimal number(String text) throws PackException {
		if (text.length() > MAX_DIGITS) {
			throw new PackException(entry + " holds a number of more than " + MAX_DIGITS + " characters at " + in.getPath()
					+ ".");
		}
		return new BigDecimal(text);
	}

	private JsonObject object() throws IOException, PackException {
		JsonObject object = new JsonObject();
		in.beginObject();
		while (in.hasNext()) {
			String name = in.nextName();
			if (object.has(name)) {
				throw new PackException(entry + " holds \"" + name + "\" twice at " + in.getPath() + ".");
			}
			object.add(name, value());
		}
		in.endObject();
		return object;
	}

	private JsonArray array() throws IOException, PackException {
		JsonArray array = new JsonArray();
		in.beginArray();
		while (in.hasNext()) {
			array.add(value());
		}
		in.endArray();
		return array;
	}
}
