package org.baywright.analysis.proof;

import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.TreeSet;

import org.baywright.model.Law;
import org.baywright.model.Meaning;

/**
 * A line of the source, told so that moving the whole element in its file does not change it.
 *
 * @param kind "rule" or "law"
 * @param element name of the rule; title of the law
 * @param meaning fingerprint of the law, as laws may share a title; empty for a rule
 * @param offset lines below the line of the element's name; may be negative
 * @param together the lines it stands for, if it is what {@linkplain #several several laws} say together
 */
public record SourceLine(String kind, String element, String meaning, int offset, List<SourceLine> together)
		implements Comparable<SourceLine> {

	private static final Comparator<SourceLine> ORDER = Comparator.comparing(SourceLine::kind)
			.thenComparing(SourceLine::element).thenComparing(SourceLine::meaning).thenComparingInt(SourceLine::offset);

	/** Returns a line of a rule. */
	static SourceLine of(String rule, int offset) {
		return new SourceLine("rule", rule, "", offset, List.of());
	}

	/** Returns the line that stands for all of a law: it is one statement. */
	static SourceLine of(Law law) {
		return new SourceLine("law", law.title(), Meaning.fingerprint(Meaning.text(law)), 0, List.of());
	}

	/** Returns a line that stands for what laws say together. */
	static SourceLine several(List<Law> laws) {
		List<SourceLine> lines = List.copyOf(new TreeSet<>(laws.stream().map(SourceLine::of).toList()));
		return lines.size() == 1 ? lines.get(0) : new SourceLine("law", "", "", 0, lines);
	}

	/** Returns the lines it stands for: itself, or those of several laws. */
	public List<SourceLine> lines() {
		return together.isEmpty() ? List.of(this) : together;
	}

	@Override
	public int compareTo(SourceLine other) {
		Iterator<SourceLine> left = lines().iterator();
		Iterator<SourceLine> right = other.lines().iterator();
		while (left.hasNext() && right.hasNext()) {
			int order = ORDER.compare(left.next(), right.next());
			if (order != 0) {
				return order;
			}
		}
		return Boolean.compare(left.hasNext(), right.hasNext());
	}
}
