package org.baywright.language.ide.grid;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.ide.grid.RuleTable.Line;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;

/** The results of which a rule says nothing, each as a line that could be written. */
final class Unsaid {

	private Unsaid() {
	}

	static List<Line> lines(List<Line> said, Domain domain) {
		IndexSet covered = IndexSet.EMPTY;
		for (Line line : said) {
			covered = covered.union(line.values().orElse(IndexSet.EMPTY));
		}
		IndexSet rest = covered.complement(domain.size());
		List<Line> lines = new ArrayList<>();
		for (int run = 0; run < rest.runCount(); run++) {
			if (domain instanceof Domain.Quantity) {
				lines.add(labelled(IndexSet.range(rest.low(run), rest.high(run)), said, domain));
			} else {
				for (int i = rest.low(run); i <= rest.high(run); i++) {
					lines.add(RuleTable.anew(IndexSet.range(i, i), domain, RuleTable.NOTHING, true));
				}
			}
		}
		return lines;
	}

	/** A rule that names what it expects has words for what lies there, below it and above it. */
	private static Line labelled(IndexSet values, List<Line> said, Domain domain) {
		Optional<IndexSet> met = values(said, "met");
		Optional<IndexSet> below = values(said, "below");
		Optional<IndexSet> above = values(said, "above");
		String label = null;
		if (met.isPresent()) {
			label = below.isEmpty() && values.first() == 0 && values.last() == met.get().first() - 1 ? "below"
					: above.isEmpty() && values.last() == domain.size() - 1 && values.first() == met.get().last() + 1 ? "above" : null;
		} else if (below.isPresent() || above.isPresent()) {
			boolean behind = values.first() == below.map(set -> set.last() + 1).orElse(0);
			boolean before = values.last() == above.map(set -> set.first() - 1).orElse(domain.size() - 1);
			label = behind && before ? "met" : null;
		}
		return label == null ? RuleTable.anew(values, domain, RuleTable.NOTHING, true)
				: new Line(Optional.empty(), label, Optional.of(values), RuleTable.NOTHING, true);
	}

	private static Optional<IndexSet> values(List<Line> said, String label) {
		return said.stream().filter(line -> line.label().equals(label)).flatMap(line -> line.values().stream())
				.filter(values -> !values.isEmpty()).findFirst();
	}
}
