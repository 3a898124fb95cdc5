package org.baywright.language.ide.grid;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Meaning;
import org.baywright.model.ValueSet;
import org.baywright.model.words.Limits;
import org.baywright.model.write.RuleWriter;

/** Results of a test as numbers of its values, in words, and as they are written in a rule. */
final class Results {

	private Results() {
	}

	/** Returns the same results as a rule would name them: with a limit where a band has one, else open. */
	static ValueSet set(IndexSet values, Domain domain) {
		List<ValueSet> parts = new ArrayList<>();
		List<String> names = new ArrayList<>();
		for (int run = 0; run < values.runCount(); run++) {
			if (domain instanceof Domain.Quantity quantity) {
				band(values.low(run), values.high(run), quantity, parts, names);
			} else {
				for (int i = values.low(run); i <= values.high(run); i++) {
					names.add(domain.named().get(i).name());
				}
			}
		}
		if (!names.isEmpty()) {
			parts.add(new ValueSet.Choices(names));
		}
		return parts.size() == 1 ? parts.get(0) : new ValueSet.Union(parts);
	}

	private static void band(int from, int to, Domain.Quantity quantity, List<ValueSet> parts, List<String> names) {
		boolean fromLeast = from == 0;
		boolean toGreatest = to == quantity.size() - 1;
		int low = Math.max(from, quantity.first());
		int high = Math.min(to, quantity.last());
		if (low > high || fromLeast && toGreatest) {
			// an open band would take in nothing but what is shown beyond the range, or all of it
			quantity.under().filter(under -> from == 0).ifPresent(under -> names.add(under.name()));
			quantity.over().filter(over -> toGreatest).ifPresent(over -> names.add(over.name()));
			if (low > high) {
				return;
			}
			parts.add(ValueSet.Band.closed(number(low, quantity), number(high, quantity)));
		} else if (fromLeast) {
			parts.add(high < quantity.last() ? ValueSet.Band.below(number(high + 1, quantity)) : ValueSet.Band.atMost(number(high, quantity)));
		} else {
			parts.add(toGreatest ? ValueSet.Band.atLeast(number(low, quantity))
					: ValueSet.Band.closed(number(low, quantity), number(high, quantity)));
		}
	}

	/** Nobody writes a rule with 12.00 where 12 will do. */
	private static BigDecimal number(int index, Domain.Quantity quantity) {
		return new BigDecimal(Meaning.number(quantity.value(index)));
	}

	/** Returns the results as they stand in a rule: {@code on below 12.4 V}. */
	static String label(IndexSet values, Domain domain) {
		return "on " + RuleWriter.results(set(values, domain), domain instanceof Domain.Quantity quantity ? quantity.unit() : "");
	}

	/** Returns the results in words: "below 12.4 V". */
	static String say(IndexSet values, Domain domain) {
		return Limits.say(set(values, domain), domain);
	}

	/** Returns all results below a limit. */
	static IndexSet below(BigDecimal limit, Domain.Quantity quantity) {
		return IndexSet.range(0, Math.min(quantity.last(), quantity.ceilIndex(limit) - 1));
	}

	/** Returns what belongs to the first and not to the second. */
	static IndexSet without(IndexSet values, IndexSet other, Domain domain) {
		return values.intersect(other.complement(domain.size()));
	}
}
