package org.baywright.pack.json;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.Optional;
import java.util.function.Function;

import org.baywright.model.Meaning;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;

/** Builds a JSON object, property by property. */
public final class Json {

	private final JsonObject object = new JsonObject();

	/** Adds a text. */
	public Json text(String name, String value) {
		object.addProperty(name, value);
		return this;
	}

	/** Adds a text if there is one. */
	public Json text(String name, Optional<?> value) {
		value.ifPresent(present -> object.addProperty(name, present.toString()));
		return this;
	}

	/** Adds a list of texts. */
	public Json texts(String name, Collection<String> values) {
		return list(name, values, JsonPrimitive::new);
	}

	/** Adds a whole number. */
	public Json whole(String name, int value) {
		object.addProperty(name, value);
		return this;
	}

	/** Adds a decimal number as a text, so that no reader rounds it. */
	public Json decimal(String name, BigDecimal value) {
		object.addProperty(name, Meaning.number(value));
		return this;
	}

	/** Adds a decimal number if there is one. */
	public Json decimal(String name, Optional<BigDecimal> value) {
		value.ifPresent(present -> decimal(name, present));
		return this;
	}

	/** Adds true or false. */
	public Json flag(String name, boolean value) {
		object.addProperty(name, value);
		return this;
	}

	/** Adds any value. */
	public Json value(String name, JsonElement value) {
		object.add(name, value);
		return this;
	}

	/** Adds a list. */
	public <T> Json list(String name, Collection<T> values, Function<? super T, ? extends JsonElement> form) {
		JsonArray array = new JsonArray(values.size());
		values.forEach(value -> array.add(form.apply(value)));
		object.add(name, array);
		return this;
	}

	/** Returns the object. */
	public JsonObject object() {
		return object;
	}
}
