package org.baywright.language.ide.grid;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.baywright.model.Conclusion;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.model.Written;

/**
 * One conclusion as it stands in a text.
 *
 * @param verdict what is said of faults; nothing for what is said of none
 * @param faults the faults, each with how it is written
 * @param other the text of a conclusion on no fault
 */
record Said(Optional<VerdictKind> verdict, List<Name> faults, String other) {

	private static final String NOTHING = "proves nothing";

	/**
	 * A fault.
	 *
	 * @param fault its name; the empty text if nobody knows what is meant
	 * @param written how it is written
	 */
	record Name(String fault, String written) {
	}

	Said {
		faults = List.copyOf(faults);
	}

	static Said nothing() {
		return new Said(Optional.empty(), List.of(), NOTHING);
	}

	boolean isNothing() {
		return other.equals(NOTHING);
	}

	String text() {
		return verdict.map(kind -> kind.verb() + " " + faults.stream().map(Name::written).collect(Collectors.joining(", "))).orElse(other);
	}

	/** Returns conclusions behind one another, as they stand in a line. */
	static String text(List<Said> all) {
		return all.stream().map(Said::text).collect(Collectors.joining("  "));
	}

	/** Returns the conclusions, changed so that they say this of a fault and nothing else; what need not change stays as it is. */
	static List<Said> with(List<Said> all, String fault, Optional<VerdictKind> verdict) {
		List<Said> now = new ArrayList<>();
		boolean there = false;
		for (Said said : all) {
			if (said.verdict().isEmpty()) {
				now.add(said);
				continue;
			}
			List<Name> kept = new ArrayList<>();
			for (Name name : said.faults()) {
				boolean stays = !there && said.verdict().equals(verdict);
				if (!name.fault().equals(fault)) {
					kept.add(name);
				} else if (stays) {
					kept.add(name);
					there = true;
				}
			}
			if (!kept.isEmpty()) {
				now.add(new Said(said.verdict(), kept, ""));
			}
		}
		if (verdict.isPresent() && !there) {
			add(now, verdict.get(), new Name(fault, Written.name(fault)));
		}
		if (now.stream().anyMatch(said -> !said.isNothing())) {
			now.removeIf(Said::isNothing);
		}
		return now.isEmpty() ? List.of(nothing()) : now;
	}

	private static void add(List<Said> now, VerdictKind verdict, Name name) {
		int behind = 0;
		for (int i = 0; i < now.size(); i++) {
			Said said = now.get(i);
			if (said.verdict().equals(Optional.of(verdict))) {
				List<Name> names = new ArrayList<>(said.faults());
				names.add(name);
				now.set(i, new Said(said.verdict(), names, ""));
				return;
			}
			behind = said.verdict().isPresent() ? i + 1 : behind;
		}
		now.add(behind, new Said(Optional.of(verdict), List.of(name), ""));
	}

	/** Returns what the conclusions say of a fault, the strongest first. */
	static Optional<VerdictKind> of(List<Said> all, String fault) {
		return all.stream().filter(said -> said.faults().stream().anyMatch(name -> name.fault().equals(fault)))
				.flatMap(said -> said.verdict().stream()).min(VerdictKind::compareTo);
	}

	/** Returns the conclusions for a rule that is written anew. */
	static List<Conclusion> conclusions(List<Said> all) {
		List<Conclusion> out = new ArrayList<>();
		for (Said said : all) {
			said.verdict().ifPresent(verdict -> said.faults().forEach(name -> out.add(new Conclusion.OnFault(verdict, name.fault(), Span.NONE))));
		}
		return out;
	}
}
