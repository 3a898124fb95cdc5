package org.baywright.benchmark;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Fault;
import org.baywright.model.NamedValue;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;
import org.baywright.model.code.J1939Code;

/** Writes generated rule bases as rule files. It knows only what the generator makes. */
final class RuleTexts {

	private final Map<String, StringBuilder> files = new TreeMap<>();
	private final RuleBase base;
	private final int topicsPerFile;

	private RuleTexts(RuleBase base, int topicsPerFile) {
		this.base = base;
		this.topicsPerFile = topicsPerFile;
	}

	/**
	 * Returns the text of each file by its name.
	 *
	 * @param topicsPerFile how many topics share a file; 0 for one file with everything
	 */
	static SortedMap<String, String> of(RuleBase base, int topicsPerFile) {
		RuleTexts texts = new RuleTexts(base, topicsPerFile);
		texts.declarations();
		base.rules().forEach(texts::rule);
		base.repairs().forEach(repair -> texts.in(repair.span()).append("repair ").append(repair.name()).append(" {\n  fixes ")
				.append(String.join(", ", repair.fixes())).append("\n  steps \"Replace it.\"\n  takes 10 min\n  cost 1\n")
				.append("  skill trained\n  verify { repeat what confirmed }\n}\n\n"));
		SortedMap<String, String> written = new TreeMap<>();
		texts.files.forEach((file, text) -> written.put(file, text.toString()));
		return written;
	}

	private StringBuilder in(Span span) {
		String topic = span.file().replaceAll("\\D", "");
		String file = topicsPerFile == 0 ? "all.bay"
				: span.file().startsWith("topic") ? "topics" + Integer.parseInt(topic) / topicsPerFile + ".bay" : "families.bay";
		return files.computeIfAbsent(file, none -> new StringBuilder());
	}

	private void declarations() {
		base.families().forEach(family -> {
			StringBuilder out = in(family.span()).append("family ").append(family.name()).append(" {\n");
			family.traits().forEach(trait -> out.append("  trait ").append(trait.name()).append(" : ")
					.append(trait.word()).append(' ').append(values(trait.domain())).append('\n'));
			out.append("}\n\n");
		});
		base.signs().forEach(sign -> in(sign.span()).append("sign ").append(sign.name()).append(" \"").append(sign.title())
				.append("\"\n"));
		base.modules().forEach(module -> in(module.span()).append("module ").append(module.name()).append('\n'));
		base.codes().forEach(code -> in(code.span()).append("code ").append(code.name()).append(" on ").append(code.module())
				.append(" = j1939 spn ").append(((J1939Code) code.text()).spn()).append(" fmi ")
				.append(((J1939Code) code.text()).fmi()).append('\n'));
		base.tests().forEach(test -> in(test.span()).append("test ").append(test.name()).append(" {\n  ")
				.append(test.domain() instanceof Domain.Names ? "results " : "measures V ").append(values(test.domain()))
				.append("\n  takes 10 min\n}\n"));
		base.parts().forEach(part -> {
			StringBuilder out = in(part.span()).append("part ").append(part.name()).append(" {\n");
			part.faults().forEach(fault -> fault(fault, out));
			out.append("}\n\n");
		});
		base.exclusives().forEach(exclusive -> in(exclusive.span()).append("exclusive ")
				.append(String.join(", ", exclusive.faults())).append("\n\n"));
		base.laws().forEach(law -> in(law.span()).append("law \"").append(law.title()).append("\" : when ")
				.append(condition(law.when())).append(" then ").append(condition(law.then())).append("\n\n"));
	}

	private static void fault(Fault fault, StringBuilder out) {
		out.append("  fault ").append(fault.name().substring(fault.name().indexOf('.') + 1)).append(" seen ")
				.append(fault.seen()).append('\n');
	}

	private static String values(Domain domain) {
		if (domain instanceof Domain.Quantity quantity) {
			boolean years = quantity.unit().isEmpty();
			return quantity.low().toPlainString() + " .. " + quantity.high().toPlainString()
					+ (years ? "" : " step " + quantity.step().toPlainString());
		}
		return ((Domain.Names) domain).values().stream().map(NamedValue::name).collect(Collectors.joining(", "));
	}

	private void rule(Rule rule) {
		StringBuilder out = in(rule.span()).append("rule ").append(rule.name()).append(" {\n  for ")
				.append(String.join(", ", rule.scope().families())).append('\n');
		if (!rule.given().isEmpty()) {
			out.append("  given ").append(rule.given().stream().map(RuleTexts::condition).collect(Collectors.joining(", ")))
					.append('\n');
		}
		rule.test().ifPresent(test -> out.append("  run ").append(test).append('\n'));
		rule.outcomes().forEach(outcome -> outcome(outcome, out));
		out.append("  because \"Generated.\"\n  source practice\n  by \"Generator\" on 2026-01-01\n}\n\n");
	}

	private static void outcome(Outcome outcome, StringBuilder out) {
		out.append("  ").append(outcome.values().map(values -> "on " + values(values)).orElse("then")).append(" : ")
				.append(outcome.conclusions().stream().map(RuleTexts::conclusion).collect(Collectors.joining(" "))).append('\n');
	}

	private static String conclusion(Conclusion conclusion) {
		if (conclusion instanceof Conclusion.OnFault on) {
			return on.verdict().verb() + " " + on.fault();
		}
		return conclusion instanceof Conclusion.Refers refers ? "refers \"" + refers.toWhom() + "\"" : "proves nothing";
	}

	private static String values(ValueSet values) {
		if (values instanceof ValueSet.Choices choices) {
			return String.join(", ", choices.names());
		}
		ValueSet.Band band = (ValueSet.Band) values;
		BigDecimal limit = band.low().or(band::high).orElseThrow();
		return (band.low().isPresent() ? "at_least " : "below ") + limit.toPlainString() + " V";
	}

	private static String condition(Condition condition) {
		return condition.match(
				(Condition.And and) -> all(and.parts(), " and "),
				(Condition.Or or) -> all(or.parts(), " or "),
				(Condition.Not not) -> {
					throw new IllegalArgumentException("the generator makes no " + not);
				},
				(Condition.Atom atom) -> atom.match(
						(Condition.TraitIs is) -> is.trait() + " is " + values(is.values()),
						(Condition.SignIs is) -> is.sign() + (is.present() ? "" : " absent"),
						(Condition.TestIs is) -> is.test() + " " + values(is.values()),
						(Condition.CodeIs is) -> is.code() + " " + is.reading().name().toLowerCase(java.util.Locale.ROOT),
						(Condition.ModuleIs is) -> {
							throw new IllegalArgumentException("the generator makes no " + is);
						},
						(Condition.VerdictIs is) -> is.fault() + (is.stands() ? " " : " not ") + is.verdict().word(),
						(Condition.Unexplained is) -> is.sign() + " unexplained"));
	}

	private static String all(List<Condition> parts, String joined) {
		return parts.stream().map(RuleTexts::condition).collect(Collectors.joining(joined, "(", ")"));
	}
}
