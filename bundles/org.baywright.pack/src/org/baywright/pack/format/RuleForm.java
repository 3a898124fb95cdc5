package org.baywright.pack.format;

import java.util.Optional;

import org.baywright.model.Chain;
import org.baywright.model.Conclusion;
import org.baywright.model.Domain;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.Test;
import org.baywright.model.VerdictKind;
import org.baywright.pack.json.Json;
import org.baywright.pack.json.JsonIn;
import org.baywright.pack.manifest.PackException;

import com.google.gson.JsonObject;

/** Laws and rules. */
final class RuleForm {

	private RuleForm() {
	}

	static JsonObject law(RuleBase base, Law law) {
		ConditionForm conditions = new ConditionForm(base, law.span().file());
		return Places.at(new Json(), law.span()).text("title", law.title()).texts("families", law.families())
				.value("when", conditions.write(law.when())).value("then", conditions.write(law.then())).object();
	}

	static Law law(JsonIn in) throws PackException {
		var span = Places.at(in);
		return new Law(in.text("title"), in.texts("families"),
				in.object("when", when -> ConditionForm.read(when, span.file())),
				in.object("then", then -> ConditionForm.read(then, span.file())), span);
	}

	static JsonObject rule(RuleBase base, Rule rule) {
		String file = rule.span().file();
		ConditionForm conditions = new ConditionForm(base, file);
		Optional<Domain> domain = rule.test().flatMap(base::test).map(Test::domain);
		Json json = Places.at(new Json(), rule.span()).text("name", rule.name()).text("title", rule.title())
				.text("meaning", Meaning.fingerprint(rule)).value("scope", scope(conditions, rule.scope(), file))
				.texts("reaches", base.reach(rule.scope())).list("given", rule.given(), conditions::write)
				.list("states", rule.states(), VehicleForm::setting).text("test", rule.test());
		return Places.line(json, "testLine", rule.testSpan(), file)
				.list("outcomes", rule.outcomes(), outcome -> outcome(outcome, domain, file))
				.value("provenance", provenance(rule.provenance())).object();
	}

	static JsonObject chain(RuleBase base, Chain chain) {
		String file = chain.span().file();
		ConditionForm conditions = new ConditionForm(base, file);
		return Places.at(new Json(), chain.span()).text("name", chain.name()).text("title", chain.title())
				.text("meaning", Meaning.fingerprint(chain)).value("scope", scope(conditions, chain.scope(), file))
				.list("given", chain.given(), conditions::write)
				.list("points", chain.points(), point -> Places.line(new Json().text("test", point.test()).text("title", point.title())
						.value("good", ValuesForm.values(point.good())).texts("faults", point.faults()), point.span(), file).object())
				.texts("beyond", chain.beyond()).value("provenance", provenance(chain.provenance()))
				.texts("rules", chain.rules().stream().map(Rule::name).toList()).object();
	}

	static Chain chain(JsonIn in) throws PackException {
		var span = Places.at(in);
		String file = span.file();
		in.derived("meaning");
		in.derived("rules");
		return new Chain(in.text("name"), in.text("title"), in.object("scope", scope -> scope(scope, file)),
				in.list("given", given -> ConditionForm.read(given, file)),
				in.list("points", point -> new Chain.Point(point.text("test"), point.text("title"), point.object("good", ValuesForm::values),
						point.texts("faults"), Places.line(point, file))),
				in.texts("beyond"), in.object("provenance", RuleForm::provenance), span);
	}

	static JsonObject scope(ConditionForm conditions, Scope scope, String file) {
		Json json = new Json().texts("families", scope.families()).texts("except", scope.except());
		scope.where().ifPresent(where -> json.value("where", conditions.write(where)));
		return Places.line(json, scope.span(), file).object();
	}

	private static JsonObject outcome(Outcome outcome, Optional<Domain> domain, String file) {
		Json json = new Json().text("label", outcome.label()).flag("listed", outcome.listed())
				.list("conclusions", outcome.conclusions(),
						conclusion -> Places.line(conclusion(conclusion), conclusion.span(), file).object());
		outcome.values().ifPresent(values -> {
			json.value("values", ValuesForm.values(values));
			domain.ifPresent(found -> json.value("resolved", ValuesForm.resolved(values, found)));
		});
		return Places.line(json, outcome.span(), file).object();
	}

	private static Json conclusion(Conclusion conclusion) {
		if (conclusion instanceof Conclusion.OnFault on) {
			return new Json().text("kind", on.verdict().verb()).text("fault", on.fault());
		} else if (conclusion instanceof Conclusion.Refers refers) {
			return new Json().text("kind", "refers").text("to", refers.toWhom());
		}
		return new Json().text("kind", "nothing");
	}

	private static JsonObject provenance(Provenance provenance) {
		Source source = provenance.source();
		return new Json().text("author", provenance.author()).text("date", provenance.date())
				.value("source", new Json().text("kind", JsonIn.word(source.kind())).text("text", source.text()).object())
				.text("because", provenance.because()).object();
	}

	static Rule rule(JsonIn in) throws PackException {
		var span = Places.at(in);
		String file = span.file();
		in.derived("meaning");
		in.derived("reaches");
		return new Rule(in.text("name"), in.text("title"), in.object("scope", scope -> scope(scope, file)),
				in.list("given", given -> ConditionForm.read(given, file)), in.list("states", VehicleForm::setting),
				in.optionalText("test"), in.list("outcomes", outcome -> outcome(outcome, file)),
				in.object("provenance", RuleForm::provenance), Places.line(in, "testLine", file), span);
	}

	/** Writes for which vehicles something is, if that is not all. */
	static void scope(Json json, RuleBase base, Scope scope, String file) {
		if (!scope.isEvery()) {
			json.value("scope", scope(new ConditionForm(base, file), scope, file));
		}
	}

	/** Reads for which vehicles something is; in the first version of the format everything was for all. */
	static Scope scope(JsonIn in, Span span) throws PackException {
		return in.isOld() ? Scope.EVERY : in.optional("scope", scope -> scope(scope, span.file())).orElse(Scope.EVERY);
	}

	private static Scope scope(JsonIn in, String file) throws PackException {
		return new Scope(in.texts("families"), in.texts("except"),
				in.optional("where", where -> ConditionForm.read(where, file)), Places.line(in, file));
	}

	private static Outcome outcome(JsonIn in, String file) throws PackException {
		in.skip("resolved");
		return new Outcome(in.text("label"), in.optional("values", ValuesForm::values), in.flag("listed"),
				in.list("conclusions", conclusion -> conclusion(conclusion, file)), Places.line(in, file));
	}

	private static Conclusion conclusion(JsonIn in, String file) throws PackException {
		var span = Places.line(in, file);
		String kind = in.text("kind");
		for (VerdictKind verdict : VerdictKind.values()) {
			if (verdict.verb().equals(kind)) {
				return new Conclusion.OnFault(verdict, in.text("fault"), span);
			}
		}
		return switch (kind) {
		case "refers" -> new Conclusion.Refers(in.text("to"), span);
		case "nothing" -> new Conclusion.Nothing(span);
		default -> throw in.unknown("kind", kind);
		};
	}

	private static Provenance provenance(JsonIn in) throws PackException {
		return new Provenance(in.optionalText("author"), in.optionalDate("date"),
				in.object("source", source -> new Source(source.word("kind", Source.Kind.class), source.text("text"))),
				in.optionalText("because"));
	}
}
