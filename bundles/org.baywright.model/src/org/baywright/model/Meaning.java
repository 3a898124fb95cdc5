package org.baywright.model;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What elements mean, apart from how they are written: order of conditions, spelling of numbers, titles, provenance and
 * layout do not matter. Reviews and acceptances are tied to the fingerprint of a meaning.
 */
public final class Meaning {

	private static final int SHOWN_DIGITS = 8;

	private Meaning() {
	}

	/** Returns a canonical text of what the rule means. */
	public static String text(Rule rule) {
		return node("rule", List.of(text(rule.scope()), all("given", rule.given()), strings("in", rule.states()),
				"run " + rule.test().orElse("-"), sorted("outcomes", rule.outcomes().stream().map(Meaning::text))));
	}

	/** Returns a canonical text of what the law means. */
	public static String text(Law law) {
		return node("law", List.of(sorted("for", law.families().stream()), text(law.when()), text(law.then())));
	}

	/** Returns a canonical text of a domain. */
	public static String text(Domain domain) {
		if (domain instanceof Domain.Quantity quantity) {
			return "(quantity " + quantity.unit() + " " + number(quantity.low()) + " " + number(quantity.high()) + " "
					+ number(quantity.step()) + quantity.under().map(value -> " under " + value.name()).orElse("")
					+ quantity.over().map(value -> " over " + value.name()).orElse("") + ")";
		}
		return ((Domain.Names) domain).values().stream().map(NamedValue::name)
				.collect(Collectors.joining(" ", "(names ", ")"));
	}

	/** Returns a canonical text of which vehicles are meant. */
	public static String text(Scope scope) {
		return node("for", List.of(sorted("", scope.families().stream()), sorted("except", scope.except().stream()),
				scope.where().map(Meaning::text).orElse("-")));
	}

	private static String text(Outcome outcome) {
		return node("on", List.of(outcome.values().map(Meaning::text).orElse("-"),
				sorted("says", outcome.conclusions().stream().map(Meaning::text))));
	}

	private static String text(Conclusion conclusion) {
		if (conclusion instanceof Conclusion.OnFault verdict) {
			return verdict.verdict().verb() + " " + verdict.fault();
		}
		return conclusion instanceof Conclusion.Refers refers ? "refers " + quote(refers.toWhom()) : "proves nothing";
	}

	/** Returns a canonical text of what the condition means. */
	public static String text(Condition condition) {
		return condition.match(
				(Condition.And and) -> and.parts().size() == 1 ? text(and.parts().get(0)) : all("and", and.parts()),
				(Condition.Or or) -> or.parts().size() == 1 ? text(or.parts().get(0)) : all("or", or.parts()),
				(Condition.Not not) -> "(not " + text(not.part()) + ")",
				(Condition.Atom atom) -> atom.match(
						(Condition.TraitIs is) -> "(trait " + is.trait() + " " + text(is.values()) + ")",
						(Condition.SignIs is) -> "(sign " + is.sign() + " " + is.present() + ")",
						(Condition.TestIs is) -> "(test " + is.test() + " " + text(is.values()) + ")",
						(Condition.CodeIs is) -> "(code " + is.code() + " " + is.reading() + ")",
						(Condition.ModuleIs is) -> "(module " + is.module() + " " + is.answers() + ")",
						(Condition.VerdictIs is) -> "(verdict " + is.fault() + " " + is.verdict() + " " + is.stands() + ")",
						(Condition.Unexplained is) -> "(unexplained " + is.sign() + ")"));
	}

	/** Returns a canonical text of a set of values. */
	public static String text(ValueSet values) {
		if (values instanceof ValueSet.Choices choices) {
			return sorted("any", choices.names().stream().distinct());
		} else if (values instanceof ValueSet.Band band) {
			return (band.lowOpen() ? "(" : "[") + limit(band.low()) + "," + limit(band.high())
					+ (band.highOpen() ? ")" : "]");
		} else if (values instanceof ValueSet.Union union) {
			return sorted("union", union.parts().stream().map(Meaning::text));
		}
		return "(except " + text(((ValueSet.Except) values).part()) + ")";
	}

	private static String limit(Optional<BigDecimal> limit) {
		return limit.map(Meaning::number).orElse("-");
	}

	/** Returns the one spelling that all equal numbers share. */
	public static String number(BigDecimal number) {
		return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
	}

	private static String all(String word, List<Condition> parts) {
		return sorted(word, parts.stream().map(Meaning::text));
	}

	private static String strings(String word, Collection<?> parts) {
		return sorted(word, parts.stream().map(Object::toString));
	}

	private static String sorted(String word, Stream<String> parts) {
		return node(word, parts.sorted().toList());
	}

	private static String node(String word, List<String> parts) {
		return "(" + word + parts.stream().map(part -> " " + part).collect(Collectors.joining()) + ")";
	}

	/** How a text stands in a meaning; that of a rule file is another, and this must stay as it is. */
	private static String quote(String text) {
		return '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
	}

	/** Returns the fingerprint of all rules and laws that follow from a chain. */
	public static String fingerprint(Chain chain) {
		return fingerprint(chain.rules().stream().map(Meaning::text).collect(Collectors.joining(" "))
				+ chain.laws().stream().map(Meaning::text).collect(Collectors.joining(" ")));
	}

	/** Returns the fingerprint that reviews and acceptances carry: eight hexadecimal digits. */
	public static String fingerprint(Rule rule) {
		return fingerprint(text(rule));
	}

	/** Returns the first eight hexadecimal digits of the text's SHA-256. */
	public static String fingerprint(String text) {
		return HexFormat.of().formatHex(sha256(text), 0, SHOWN_DIGITS / 2);
	}

	/** Returns the SHA-256 of the text's UTF-8 bytes. */
	public static byte[] sha256(String text) {
		try {
			return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
		} catch (NoSuchAlgorithmException e) {
			throw new IllegalStateException("every Java platform must provide SHA-256", e);
		}
	}
}
