package org.baywright.analysis;

import java.util.Comparator;
import java.util.List;
import java.util.Map;

import org.baywright.model.Domain;

/**
 * What changes in all situations of a region.
 *
 * @param kind what changes
 * @param direct whether edited rules or laws say so themselves; else it follows for rules that look at what they say
 * @param families the vehicle families, in the order of their declaration
 * @param facts what is known in all of these situations, sorted; what is not listed does not matter. The numbers of
 *            values are those of {@code domains}
 * @param open what nobody has looked at yet in any of them, sorted
 * @param domains the values, before and now, of what has a domain
 * @param with verdicts that stand in all of them, before and now, sorted
 * @param without verdicts that stand in none of them, before or now, sorted
 * @param anyway verdicts that stand in none of them by rules that are as before, sorted
 * @param lost verdicts that stood before and stand no more, unless other rules bring them about as well, sorted
 * @param gained verdicts that stand now and did not before, unless other rules brought them about as well, sorted
 */
public record Effect(Kind kind, boolean direct, List<String> families, List<Situation.Fact> facts, List<Variable> open, Map<Variable, Domain> domains,
		List<Verdict> with, List<Verdict> without, List<Verdict> anyway, List<Verdict> lost, List<Verdict> gained) {

	/** What can change. */
	public enum Kind {
		/** Verdicts come or go. */
		VERDICTS,
		/** The laws let something be that they shut out before. */
		POSSIBLE,
		/** The laws shut something out that could be before. */
		IMPOSSIBLE
	}

	/** Effects that change the end of jobs stand first; then as their situations are told. */
	public static final Comparator<Effect> ORDER = Comparator.comparing(Effect::kind).thenComparing(effect -> !effect.direct()).thenComparing(effect -> !effect.changesEnd())
			.thenComparing(effect -> effect.families().get(0)).thenComparing(effect -> effect.facts().size() + effect.open().size() + effect.with().size() + effect.without().size() + effect.anyway().size())
			.thenComparing(effect -> effect.gained().toString()).thenComparing(effect -> effect.lost().toString())
			.thenComparing(effect -> effect.facts().toString()).thenComparing(effect -> effect.open().toString()).thenComparing(effect -> effect.with().toString()).thenComparing(effect -> effect.without().toString())
			.thenComparing(effect -> effect.anyway().toString());

	public Effect {
		families = List.copyOf(families);
		facts = List.copyOf(facts);
		open = List.copyOf(open);
		with = List.copyOf(with);
		without = List.copyOf(without);
		anyway = List.copyOf(anyway);
		lost = List.copyOf(lost);
		gained = List.copyOf(gained);
	}

	/** Returns whether a job ends otherwise: what is confirmed, or to whom it is handed on. */
	public boolean changesEnd() {
		return lost.stream().anyMatch(Verdict::isEnd) || gained.stream().anyMatch(Verdict::isEnd);
	}
}
