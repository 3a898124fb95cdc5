package org.baywright.cli.report;

import java.util.Collection;
import java.util.function.Function;

import org.baywright.analysis.Flaw;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.difference.Difference;
import org.baywright.analysis.difference.Edit;
import org.baywright.analysis.Effect;
import org.baywright.analysis.difference.JobChange;
import org.baywright.analysis.Reach;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Span;
import org.baywright.presenter.Say;
import org.baywright.presenter.review.Compared;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;

/** What differs between two states of the rules, as JSON for programs; see {@link JsonReport} for what may be relied on. */
public final class CompareReport {

	private static final String[] SIGN = { "present", "absent" };
	private static final String[] MODULE = { "answers", "silent" };

	private CompareReport() {
	}

	/** Returns the difference, with what of it is told to people. */
	public static String json(Difference difference, Compared told) {
		JsonObject all = JsonReport.versioned();
		all.addProperty("verdict", Say.lower(difference.verdict()));
		all.addProperty("told", told.headline());
		all.addProperty("complete", !difference.more() && difference.undecided().isEmpty());
		all.add("effects", list(difference.effects(), CompareReport::effect));
		all.add("reached", list(difference.reaches(), CompareReport::reach));
		all.add("jobs", list(difference.jobs(), CompareReport::job));
		all.add("newFindings", list(difference.come(), CompareReport::flaw));
		all.add("goneFindings", list(difference.gone(), CompareReport::flaw));
		all.add("edits", list(difference.edits(), CompareReport::edit));
		all.add("undecided", strings(difference.undecided()));
		return JsonReport.text(all);
	}

	private static JsonObject effect(Effect effect) {
		JsonObject one = new JsonObject();
		one.addProperty("kind", Say.lower(effect.kind()));
		one.addProperty("direct", effect.direct());
		one.addProperty("changesEnd", effect.changesEnd());
		one.add("families", strings(effect.families()));
		one.add("known", list(effect.facts(), fact -> fact(effect, fact)));
		one.add("open", list(effect.open(), CompareReport::variable));
		one.add("with", list(effect.with(), CompareReport::verdict));
		one.add("without", list(effect.without(), CompareReport::verdict));
		one.add("notAnyway", list(effect.anyway(), CompareReport::verdict));
		one.add("lost", list(effect.lost(), CompareReport::verdict));
		one.add("gained", list(effect.gained(), CompareReport::verdict));
		return one;
	}

	private static JsonObject variable(Variable variable) {
		JsonObject one = new JsonObject();
		one.addProperty("kind", Say.lower(variable.kind()));
		one.addProperty("name", variable.name());
		return one;
	}

	/** Numbers are told as closed ranges in the unit of the test or trait, other values by name. */
	private static JsonObject fact(Effect effect, Situation.Fact fact) {
		JsonObject one = variable(fact.variable());
		Domain domain = effect.domains().get(fact.variable());
		if (domain instanceof Domain.Quantity quantity) {
			one.addProperty("unit", quantity.unit());
			JsonArray bands = new JsonArray();
			JsonArray named = new JsonArray();
			for (int run = 0; run < fact.values().runCount(); run++) {
				int low = Math.max(quantity.first(), fact.values().low(run));
				int high = Math.min(quantity.last(), fact.values().high(run));
				if (low <= high) {
					JsonObject band = new JsonObject();
					band.addProperty("from", quantity.value(low));
					band.addProperty("to", quantity.value(high));
					bands.add(band);
				}
			}
			quantity.under().filter(value -> fact.values().contains(0)).ifPresent(value -> named.add(value.name()));
			quantity.over().filter(value -> fact.values().contains(quantity.size() - 1)).ifPresent(value -> named.add(value.name()));
			one.add("ranges", bands);
			if (!named.isEmpty()) {
				one.add("values", named);
			}
		} else {
			Function<Integer, String> name = domain instanceof Domain.Names names ? value -> names.values().get(value).name()
					: value -> word(fact.variable().kind(), value);
			one.add("values", values(fact.values(), name));
		}
		return one;
	}

	private static String word(Variable.Kind kind, int value) {
		return kind == Variable.Kind.SIGN ? SIGN[value] : kind == Variable.Kind.MODULE ? MODULE[value] : Say.lower(CodeReading.values()[value]);
	}

	private static JsonArray values(IndexSet set, Function<Integer, String> name) {
		JsonArray values = new JsonArray();
		for (int run = 0; run < set.runCount(); run++) {
			for (int value = set.low(run); value <= set.high(run); value++) {
				values.add(name.apply(value));
			}
		}
		return values;
	}

	private static JsonObject verdict(Verdict verdict) {
		JsonObject one = new JsonObject();
		if (verdict.isReferral()) {
			one.addProperty("refersTo", verdict.fault());
		} else {
			one.addProperty("verdict", Say.lower(verdict.kind()));
			one.addProperty("fault", verdict.fault());
		}
		return one;
	}

	private static JsonObject reach(Reach reach) {
		JsonObject one = verdict(reach.verdict());
		one.addProperty("now", reach.now());
		one.add("families", strings(reach.families()));
		return one;
	}

	private static JsonObject job(JobChange change) {
		JsonObject one = new JsonObject();
		one.addProperty("name", change.after().job().name());
		one.add("before", list(change.before().verdicts(), CompareReport::verdict));
		one.add("now", list(change.after().verdicts(), CompareReport::verdict));
		one.addProperty("passedBefore", change.before().passed());
		one.addProperty("passesNow", change.after().passed());
		return one;
	}

	private static JsonObject flaw(Flaw flaw) {
		JsonObject one = new JsonObject();
		one.addProperty("id", flaw.check());
		one.addProperty("severity", Say.lower(flaw.severity()));
		one.addProperty("key", flaw.acceptanceKey());
		one.addProperty("message", flaw.message());
		place(one, "at", flaw.span());
		return one;
	}

	private static JsonObject edit(Edit edit) {
		JsonObject one = new JsonObject();
		one.addProperty("element", edit.kind());
		edit.before().ifPresent(name -> one.addProperty("before", name));
		edit.after().ifPresent(name -> one.addProperty("now", name));
		one.addProperty("changes", Say.lower(edit.weight()));
		one.add("parts", strings(edit.parts()));
		edit.before().ifPresent(name -> place(one, "was", edit.was()));
		edit.after().ifPresent(name -> place(one, "is", edit.is()));
		return one;
	}

	private static void place(JsonObject into, String name, Span span) {
		JsonObject place = new JsonObject();
		place.addProperty("file", span.file());
		place.addProperty("line", span.line());
		into.add(name, place);
	}

	private static JsonArray strings(Collection<String> texts) {
		JsonArray array = new JsonArray();
		texts.forEach(array::add);
		return array;
	}

	private static <T> JsonArray list(Collection<T> elements, Function<T, ? extends JsonElement> form) {
		JsonArray array = new JsonArray();
		elements.forEach(element -> array.add(form.apply(element)));
		return array;
	}
}
