package org.baywright.pack.format;

import org.baywright.model.CodeReading;
import org.baywright.model.Condition;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;

/** Conditions as a tree in which each node names its kind. */
final class ConditionForm {

	private final RuleBase base;
	private final String file;

	/**
	 * @param base where tests are looked up
	 * @param file the file in which the conditions stand
	 */
	ConditionForm(RuleBase base, String file) {
		this.base = base;
		this.file = file;
	}

	JsonObject write(Condition condition) {
		return Places.line(node(condition), condition.span(), file).object();
	}

	private Json node(Condition condition) {
		return condition.match(
				(Condition.And and) -> new Json().text("kind", "all").list("parts", and.parts(), this::write),
				(Condition.Or or) -> new Json().text("kind", "any").list("parts", or.parts(), this::write),
				(Condition.Not not) -> new Json().text("kind", "not").value("part", write(not.part())),
				(Condition.Atom atom) -> atom.match(
						(Condition.TraitIs is) -> new Json().text("kind", "trait").text("trait", is.trait())
								.value("values", ValuesForm.values(is.values())),
						(Condition.SignIs is) -> new Json().text("kind", "sign").text("sign", is.sign()).flag("present", is.present()),
						this::test,
						(Condition.CodeIs is) -> new Json().text("kind", "code").text("code", is.code())
								.text("reading", JsonIn.word(is.reading())),
						(Condition.ModuleIs is) -> new Json().text("kind", "module").text("module", is.module())
								.flag("answers", is.answers()),
						(Condition.VerdictIs is) -> new Json().text("kind", "verdict").text("fault", is.fault())
								.text("verdict", is.verdict().word()).flag("stands", is.stands()),
						(Condition.Unexplained is) -> new Json().text("kind", "unexplained").text("sign", is.sign())));
	}

	private Json test(Condition.TestIs is) {
		Json json = new Json().text("kind", "test").text("test", is.test()).value("values", ValuesForm.values(is.values()));
		base.test(is.test()).ifPresent(found -> json.value("resolved", ValuesForm.resolved(is.values(), found.domain())));
		return json;
	}

	static Condition read(JsonIn in, String file) throws PackException {
		var span = Places.line(in, file);
		String kind = in.text("kind");
		switch (kind) {
		case "all":
			return new Condition.And(in.list("parts", part -> read(part, file)), span);
		case "any":
			return new Condition.Or(in.list("parts", part -> read(part, file)), span);
		case "not":
			return new Condition.Not(in.object("part", part -> read(part, file)), span);
		case "trait":
			return new Condition.TraitIs(in.text("trait"), in.object("values", ValuesForm::values), span);
		case "sign":
			return new Condition.SignIs(in.text("sign"), in.flag("present"), span);
		case "test":
			in.derived("resolved");
			return new Condition.TestIs(in.text("test"), in.object("values", ValuesForm::values), span);
		case "code":
			return new Condition.CodeIs(in.text("code"), in.word("reading", CodeReading.class), span);
		case "module":
			return new Condition.ModuleIs(in.text("module"), in.flag("answers"), span);
		case "verdict":
			return new Condition.VerdictIs(in.text("fault"), in.word("verdict", VerdictKind.class), in.flag("stands"), span);
		case "unexplained":
			return new Condition.Unexplained(in.text("sign"), span);
		default:
			throw in.unknown("kind", kind);
		}
	}
}
