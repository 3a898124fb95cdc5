package org.baywright.pack.format;

import java.util.List;

import org.baywright.model.Bands;
import org.baywright.model.Domain;
import org.baywright.model.NamedValue;
import org.baywright.model.ValueSet;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;

/** Domains and sets of values. */
final class ValuesForm {

	private ValuesForm() {
	}

	static JsonObject domain(Domain domain, String file) {
		if (domain instanceof Domain.Quantity quantity) {
			Json json = new Json().text("kind", "quantity").text("unit", quantity.unit()).decimal("low", quantity.low())
					.decimal("high", quantity.high()).decimal("step", quantity.step());
			quantity.under().ifPresent(value -> json.value("under", named(value, file)));
			quantity.over().ifPresent(value -> json.value("over", named(value, file)));
			return json.object();
		}
		return new Json().text("kind", "names").list("values", domain.named(), value -> named(value, file)).object();
	}

	static Domain domain(JsonIn in, String file) throws PackException {
		String kind = in.text("kind");
		switch (kind) {
		case "names":
			return new Domain.Names(in.list("values", value -> named(value, file)));
		case "quantity":
			try {
				return new Domain.Quantity(in.text("unit"), in.decimal("low"), in.decimal("high"), in.decimal("step"),
						in.optional("under", value -> named(value, file)), in.optional("over", value -> named(value, file)));
			} catch (IllegalArgumentException e) {
				throw in.wrong("is no range: " + e.getMessage() + ".");
			}
		default:
			throw in.unknown("kind", kind);
		}
	}

	static JsonObject named(NamedValue value, String file) {
		return Places.line(new Json().text("name", value.name()).text("title", value.title()), value.span(), file)
				.object();
	}

	static NamedValue named(JsonIn in, String file) throws PackException {
		return new NamedValue(in.text("name"), in.text("title"), Places.line(in, file));
	}

	static JsonObject values(ValueSet values) {
		if (values instanceof ValueSet.Choices choices) {
			return new Json().text("kind", "choices").texts("names", choices.names()).object();
		} else if (values instanceof ValueSet.Band band) {
			return new Json().text("kind", "band").decimal("low", band.low()).flag("lowOpen", band.lowOpen())
					.decimal("high", band.high()).flag("highOpen", band.highOpen()).object();
		} else if (values instanceof ValueSet.Union union) {
			return new Json().text("kind", "union").list("parts", union.parts(), ValuesForm::values).object();
		}
		return new Json().text("kind", "except").value("part", values(((ValueSet.Except) values).part())).object();
	}

	static ValueSet values(JsonIn in) throws PackException {
		String kind = in.text("kind");
		return switch (kind) {
		case "choices" -> new ValueSet.Choices(in.texts("names"));
		case "band" -> new ValueSet.Band(in.optionalDecimal("low"), in.flag("lowOpen"), in.optionalDecimal("high"),
				in.flag("highOpen"));
		case "union" -> new ValueSet.Union(in.list("parts", ValuesForm::values));
		case "except" -> new ValueSet.Except(in.object("part", ValuesForm::values));
		default -> throw in.unknown("kind", kind);
		};
	}

	/** Returns the named values, or the bands within the domain and what of beyond them, without reference to how the author put it. */
	static JsonObject resolved(ValueSet values, Domain domain) {
		var in = values.in(domain);
		List<String> names = domain.named().stream().map(NamedValue::name).filter(name -> in.contains(domain.indexOf(name))).toList();
		if (!(domain instanceof Domain.Quantity quantity)) {
			return new Json().texts("names", names).object();
		}
		Json json = new Json().list("bands", Bands.of(values, quantity).bands(), band -> new Json()
				.decimal("low", band.low()).flag("lowOpen", band.lowOpen()).decimal("high", band.high())
				.flag("highOpen", band.highOpen()).object());
		return (names.isEmpty() ? json : json.texts("names", names)).object();
	}
}
