package org.baywright.language.ide.grid;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.NamedValue;
import org.baywright.model.ValueSet;
import org.baywright.model.VerdictKind;

/** Reads a cell as it stands in a spreadsheet: "below 12.4 V confirms; above clears". */
final class CellText {

	/**
	 * A result with what it proves.
	 *
	 * @param result the result as it was written; the empty text for none
	 * @param verdict what it proves; nothing if it proves nothing
	 */
	record Part(String result, Optional<VerdictKind> verdict) {
	}

	/** What cannot be read, in a sentence that says what to write. */
	static final class Unread extends Exception {
		private static final long serialVersionUID = 1;

		Unread(String sentence) {
			super(sentence);
		}
	}

	private static final Pattern PART = Pattern.compile("(?:(.*?)\\s*[:,]?\\s+)?(confirms|suspects|clears|proves nothing|nothing)", Pattern.CASE_INSENSITIVE);
	private static final String NUMBER = "([+-]?\\d+(?:[.,]\\d+)?)\\s*(\\S*?)";
	private static final Pattern BELOW = Pattern.compile("(?:below|<)\\s*" + NUMBER);
	private static final Pattern ABOVE = Pattern.compile("(?:above|>)\\s*" + NUMBER);
	private static final Pattern LEAST = Pattern.compile("(?:at[ _]least|>=|≥)\\s*" + NUMBER + "|" + NUMBER + "\\s+or more");
	private static final Pattern MOST = Pattern.compile("(?:at[ _]most|<=|≤)\\s*" + NUMBER + "|" + NUMBER + "\\s+or less");
	private static final Pattern FROM_TO = Pattern.compile("(above )?" + NUMBER + "\\s*(?:to|up to|\\.\\.|–|…)\\s*(below )?" + NUMBER);

	private CellText() {
	}

	/** Returns the parts of a cell. */
	static List<Part> parts(String text) throws Unread {
		List<Part> parts = new ArrayList<>();
		for (String piece : text.split("[;\n\r]+")) {
			String part = piece.strip();
			if (part.isEmpty()) {
				continue;
			}
			Matcher matcher = PART.matcher(part);
			if (!matcher.matches()) {
				throw new Unread("“" + part + "” is not understood. Write a result and what it proves, such as “below 12.4 V confirms” or “dark suspects”.");
			}
			String verb = matcher.group(2).toLowerCase(Locale.ROOT);
			parts.add(new Part(matcher.group(1) == null ? "" : matcher.group(1).strip(),
					java.util.Arrays.stream(VerdictKind.values()).filter(kind -> kind.verb().equals(verb)).findFirst()));
		}
		return parts;
	}

	/**
	 * Returns the results that a part names.
	 *
	 * @param before results of the part before, to which "above" and "below" alone refer
	 */
	static IndexSet results(String result, Domain domain, Optional<IndexSet> before) throws Unread {
		IndexSet all = IndexSet.EMPTY;
		String low = result.toLowerCase(Locale.ROOT);
		if (domain instanceof Domain.Quantity quantity && before.isPresent() && !before.get().isEmpty()) {
			if (low.equals("above")) {
				return IndexSet.range(before.get().last() + 1, quantity.size() - 1);
			} else if (low.equals("below")) {
				return IndexSet.range(0, before.get().first() - 1);
			}
		}
		// "10 V or more" is one result, "dark or dim" are two
		for (String one : result.split("(?i)\\s+or\\s+(?!more\\b|less\\b)|,(?=\\s*\\D)")) {
			all = all.union(one(one.strip(), domain));
		}
		return all;
	}

	private static IndexSet one(String result, Domain domain) throws Unread {
		for (NamedValue value : domain.named()) {
			if (value.name().equalsIgnoreCase(result) || value.title().equalsIgnoreCase(result)) {
				int index = domain.indexOf(value.name());
				return IndexSet.range(index, index);
			}
		}
		if (domain instanceof Domain.Quantity quantity) {
			Optional<ValueSet.Band> band = band(result.toLowerCase(Locale.ROOT), result, quantity);
			if (band.isPresent()) {
				IndexSet set = band.get().in(quantity);
				if (set.isEmpty()) {
					throw new Unread("“" + result + "” holds no value: the test measures " + quantity.range() + ".");
				}
				return set;
			}
			throw new Unread("“" + result + "” is no result of the test. It measures " + quantity.range()
					+ "; write such as “below 12.4”, “12 to 12.4” or “12.4 or more”.");
		}
		throw new Unread("“" + result + "” is no result of the test. It has "
				+ String.join(", ", domain.named().stream().map(NamedValue::title).toList()) + ".");
	}

	private static Optional<ValueSet.Band> band(String low, String result, Domain.Quantity quantity) throws Unread {
		Matcher fromTo = FROM_TO.matcher(low);
		if (fromTo.matches()) {
			checkUnit(fromTo.group(3), result, quantity);
			checkUnit(fromTo.group(6), result, quantity);
			return Optional.of(new ValueSet.Band(Optional.of(number(fromTo.group(2))), fromTo.group(1) != null, Optional.of(number(fromTo.group(5))),
					fromTo.group(4) != null));
		}
		for (Pattern pattern : List.of(BELOW, ABOVE, LEAST, MOST)) {
			Matcher matcher = pattern.matcher(low);
			if (matcher.matches()) {
				int group = matcher.group(1) == null ? 3 : 1;
				checkUnit(matcher.group(group + 1), result, quantity);
				BigDecimal limit = number(matcher.group(group));
				return Optional.of(pattern == BELOW ? ValueSet.Band.below(limit) : pattern == ABOVE ? ValueSet.Band.above(limit)
						: pattern == LEAST ? ValueSet.Band.atLeast(limit) : ValueSet.Band.atMost(limit));
			}
		}
		Matcher exact = Pattern.compile(NUMBER).matcher(low);
		if (exact.matches()) {
			checkUnit(exact.group(2), result, quantity);
			return Optional.of(ValueSet.Band.closed(number(exact.group(1)), number(exact.group(1))));
		}
		return Optional.empty();
	}

	private static BigDecimal number(String text) {
		return new BigDecimal(text.replace(',', '.'));
	}

	private static void checkUnit(String unit, String result, Domain.Quantity quantity) throws Unread {
		if (!unit.isEmpty() && !unit.equalsIgnoreCase(quantity.unit())) {
			throw new Unread("“" + result + "” is in " + unit + ", and the test measures " + (quantity.unit().isEmpty() ? "without a unit" : "in " + quantity.unit()) + ".");
		}
	}
}
