package org.baywright.pack.format;

import java.util.Optional;

import org.baywright.model.CodeReading;
import org.baywright.model.Condition;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.VerdictKind;
import org.baywright.pack.PackException;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;

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
		if (condition instanceof Condition.And and) {
			return new Json().text("kind", "all").list("parts", and.parts(), this::write);
		} else if (condition instanceof Condition.Or or) {
			return new Json().text("kind", "any").list("parts", or.parts(), this::write);
		} else if (condition instanceof Condition.Not not) {
			return new Json().text("kind", "not").value("part", write(not.part()));
		} else if (condition instanceof Condition.TraitIs is) {
			return new Json().text("kind", "trait").text("trait", is.trait())
					.value("values", ValuesForm.values(is.values()));
		} else if (condition instanceof Condition.SignIs is) {
			return new Json().text("kind", "sign").text("sign", is.sign()).flag("present", is.present());
		} else if (condition instanceof Condition.TestIs is) {
			Json json = new Json().text("kind", "test").text("test", is.test())
					.value("values", ValuesForm.values(is.values()));
			Optional<Test> test = base.test(is.test());
			test.ifPresent(found -> json.value("resolved", ValuesForm.resolved(is.values(), found.domain())));
			return json;
		} else if (condition instanceof Condition.CodeIs is) {
			return new Json().text("kind", "code").text("code", is.code()).text("reading", JsonIn.word(is.reading()));
		} else if (condition instanceof Condition.ModuleIs is) {
			return new Json().text("kind", "module").text("module", is.module()).flag("answers", is.answers());
		} else if (condition instanceof Condition.VerdictIs is) {
			return new Json().text("kind", "verdict").text("fault", is.fault()).text("verdict", is.verdict().word())
					.flag("stands", is.stands());
		}
		return new Json().text("kind", "unexplained").text("sign", ((Condition.Unexplained) condition).sign());
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
