package org.baywright.pack.json;

import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Pattern;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;

import org.baywright.pack.manifest.PackException;

/**
 * A JSON object that is read property by property. Every message begins with the entry and the place in it as a JSON
 * pointer (RFC 6901), such as {@code rules.json/rules/3/name}.
 */
public final class JsonIn {

	/** The one way a decimal number is written; long enough for every converted unit. */
	private static final Pattern DECIMAL = Pattern
			.compile("(?!-0$)-?(0|[1-9][0-9]{0,99})(\\.[0-9]{0,99}[1-9])?");

	private final JsonObject object;
	private final String place;
	private final boolean strict;
	private boolean old;
	private final Set<String> read = new HashSet<>();

	private JsonIn(JsonObject object, String place, boolean strict) {
		this.object = object;
		this.place = place;
		this.strict = strict;
	}

	/** Reads one value of a list or a property. */
	@FunctionalInterface
	public interface Form<T> {
		T read(JsonIn in) throws PackException;
	}

	/**
	 * Begins to read an entry.
	 *
	 * @param entry name of the entry, for messages
	 * @param value its content
	 * @param strict whether {@link #end()} refuses properties that nobody read
	 */
	public static JsonIn of(String entry, JsonElement value, boolean strict) throws PackException {
		return of(value, entry, strict);
	}

	private static JsonIn of(JsonElement value, String place, boolean strict) throws PackException {
		if (!(value instanceof JsonObject object)) {
			throw wrong(place, "an object", value);
		}
		return new JsonIn(object, place, strict);
	}

	/** Returns the text of a property. */
	public String text(String name) throws PackException {
		return text(place + "/" + name, need(name));
	}

	/** Returns the text of a property if it is there. */
	public Optional<String> optionalText(String name) throws PackException {
		return has(name) ? Optional.of(text(name)) : Optional.empty();
	}

	/** Returns a list of texts. */
	public List<String> texts(String name) throws PackException {
		List<String> values = new ArrayList<>();
		int index = 0;
		for (JsonElement value : array(name)) {
			values.add(text(place + "/" + name + "/" + index++, value));
		}
		return values;
	}

	/** Returns a whole number. */
	public int whole(String name) throws PackException {
		JsonElement value = need(name);
		if (value instanceof JsonPrimitive number && number.isNumber()) {
			BigDecimal decimal = number.getAsBigDecimal();
			if (decimal.signum() >= 0 && decimal.scale() <= 0 && decimal.scale() > -10 && decimal.compareTo(BigDecimal.valueOf(Integer.MAX_VALUE)) <= 0) {
				return decimal.intValueExact();
			}
		}
		throw wrong(place + "/" + name, "a whole number", value);
	}

	/** Returns a decimal number, which is written as a text. */
	public BigDecimal decimal(String name) throws PackException {
		String text = text(name);
		if (!DECIMAL.matcher(text).matches()) {
			throw new PackException(place + "/" + name + " is not a decimal number in its shortest form such as \"12.4\": \""
					+ cut(text) + "\".");
		}
		return new BigDecimal(text);
	}

	/** Returns a decimal number if it is there. */
	public Optional<BigDecimal> optionalDecimal(String name) throws PackException {
		return has(name) ? Optional.of(decimal(name)) : Optional.empty();
	}

	/** Returns a day. */
	public LocalDate date(String name) throws PackException {
		String text = text(name);
		try {
			return LocalDate.parse(text);
		} catch (DateTimeException e) {
			throw new PackException(place + "/" + name + " is not a day such as 2026-03-02: \"" + cut(text) + "\".", e);
		}
	}

	/** Returns a day if it is there. */
	public Optional<LocalDate> optionalDate(String name) throws PackException {
		return has(name) ? Optional.of(date(name)) : Optional.empty();
	}

	/** Returns true or false. */
	public boolean flag(String name) throws PackException {
		JsonElement value = need(name);
		if (value instanceof JsonPrimitive flag && flag.isBoolean()) {
			return flag.getAsBoolean();
		}
		throw wrong(place + "/" + name, "true or false", value);
	}

	/** Returns one of the words. */
	public <E extends Enum<E>> E word(String name, Class<E> type) throws PackException {
		String text = text(name);
		for (E constant : type.getEnumConstants()) {
			if (word(constant).equals(text)) {
				return constant;
			}
		}
		throw unknown(name, text);
	}

	/** Returns the word by which a constant is written. */
	public static String word(Enum<?> constant) {
		return constant.name().toLowerCase(java.util.Locale.ROOT);
	}

	/** Returns an object. */
	public <T> T object(String name, Form<T> form) throws PackException {
		JsonIn in = of(need(name), place + "/" + name, strict).old(old);
		T value = form.read(in);
		in.end();
		return value;
	}

	/** Returns an object if it is there. */
	public <T> Optional<T> optional(String name, Form<T> form) throws PackException {
		return has(name) ? Optional.of(object(name, form)) : Optional.empty();
	}

	/** Returns a list of objects. */
	public <T> List<T> list(String name, Form<T> form) throws PackException {
		List<T> values = new ArrayList<>();
		int index = 0;
		for (JsonElement value : array(name)) {
			JsonIn in = of(value, place + "/" + name + "/" + index++, strict).old(old);
			values.add(form.read(in));
			in.end();
		}
		return values;
	}

	/** Says that the entry is written in the first version of the format, which had less. */
	public JsonIn old(boolean isOld) {
		old = isOld;
		return this;
	}

	/** Returns whether the first version of the format is read. */
	public boolean isOld() {
		return old;
	}

	/** Returns a list of objects that the first version of the format did not have. */
	public <T> List<T> added(String name, Form<T> form) throws PackException {
		return old ? List.of() : list(name, form);
	}

	/** Returns the text of a property that the first version of the format did not have, if it is there. */
	public Optional<String> addedText(String name) throws PackException {
		return old ? Optional.empty() : optionalText(name);
	}

	/** Returns the name of a property that the first version of the format called otherwise. */
	public String renamed(String before, String now) {
		return old ? before : now;
	}

	/** Returns the names of all properties, sorted. */
	public SortedSet<String> names() {
		return new TreeSet<>(object.keySet());
	}

	/** Returns whether the property is there. */
	public boolean has(String name) {
		return object.has(name);
	}

	/** Passes over a property that must be there but can be derived from others. */
	public void derived(String name) throws PackException {
		need(name);
	}

	/** Passes over a property. */
	public void skip(String name) {
		read.add(name);
	}

	/** Returns an exception for a word that the property may not hold. */
	public PackException unknown(String name, String word) {
		return new PackException(place + "/" + name + " may not be \"" + cut(word) + "\".");
	}

	/** Returns an exception about this object as a whole. */
	public PackException wrong(String what) {
		return new PackException(place + " " + what);
	}

	/**
	 * Ends reading.
	 *
	 * @throws PackException if a property was not read and all of them should be known
	 */
	public void end() throws PackException {
		if (strict) {
			for (String name : object.keySet()) {
				if (!read.contains(name)) {
					throw new PackException(place + " has a property that does not belong there: \"" + cut(name) + "\".");
				}
			}
		}
	}

	private JsonElement need(String name) throws PackException {
		read.add(name);
		JsonElement value = object.get(name);
		if (value == null) {
			throw new PackException(place + " lacks \"" + name + "\".");
		}
		return value;
	}

	private JsonArray array(String name) throws PackException {
		JsonElement value = need(name);
		if (value instanceof JsonArray array) {
			return array;
		}
		throw wrong(place + "/" + name, "a list", value);
	}

	private static String text(String place, JsonElement value) throws PackException {
		if (value instanceof JsonPrimitive text && text.isString()) {
			return text.getAsString();
		}
		throw wrong(place, "a text", value);
	}

	private static PackException wrong(String place, String wanted, JsonElement value) {
		String found = value.isJsonObject() ? "an object"
				: value.isJsonArray() ? "a list"
						: value.isJsonNull() ? "null" : value.getAsJsonPrimitive().isString() ? "a text" : cut(value.toString());
		return new PackException(place + " should be " + wanted + ", but is " + found + ".");
	}

	private static String cut(String text) {
		return text.length() <= 60 ? text : text.substring(0, 60) + "…";
	}
}
