package org.baywright.analysis.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.Evidence;
import org.baywright.analysis.Fix;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.Situation;
import org.baywright.analysis.Variable;
import org.baywright.analysis.proof.Checked;
import org.baywright.analysis.proof.Component;
import org.baywright.analysis.proof.GapSearch;
import org.baywright.analysis.proof.Program;
import org.baywright.analysis.proof.ProofCheck;
import org.baywright.analysis.proof.Prover;
import org.baywright.model.Conclusion;
import org.baywright.model.Condition;
import org.baywright.model.Family;
import org.baywright.model.Meaning;
import org.baywright.model.Outcome;
import org.baywright.model.Provenance;
import org.baywright.model.Rule;
import org.baywright.model.Scope;
import org.baywright.model.Severity;
import org.baywright.model.Sign;
import org.baywright.model.Source;
import org.baywright.model.Span;
import org.baywright.model.words.Names;
import org.baywright.model.words.Words;
import org.baywright.model.write.RuleWriter;

/**
 * A sign is present, every test of the family is done, and still nothing is confirmed and nobody referred to. Gaps are
 * told as regions: what a region does not mention does not matter.
 */
@RuleCheck(id = "gap", severity = Severity.WARNING, summary = "A sign is present, all tests are done, and no rule confirms anything or refers to anybody")
public final class Gap implements ProofCheck<Map<String, GapSearch.Found>> {

	@Override
	public Map<String, GapSearch.Found> examine(Prover prover) {
		Program program = prover.program();
		Map<String, GapSearch.Found> bySign = new LinkedHashMap<>();
		for (int var = 0; var < program.variables.size(); var++) {
			if (program.variables.get(var).kind() == Variable.Kind.SIGN && program.isAsked(var)) {
				GapSearch.Found found = new GapSearch(prover).of(var);
				if (!found.regions().isEmpty()) {
					bySign.put(program.variables.get(var).name(), found);
				}
			}
		}
		return bySign;
	}

	@Override
	public Map<String, GapSearch.Found> nothing() {
		return Map.of();
	}

	@Override
	public void report(Checked checked) {
		reportForgottenSigns(checked);
		Map<String, Told> told = new LinkedHashMap<>();
		checked.each(this, (part, bySign) -> {
			if (!bySign.isEmpty()) {
				for (String family : part.families()) {
					inFamily(checked, part, family, bySign).forEach((sign, found) -> collect(told, family, sign, found, part));
				}
			}
		});
		HeldBack heldBack = HeldBack.in(checked);
		told.values().stream().filter(gap -> !heldBack.mayForbid(gap.region()) && !heldBack.uses(gap.sign()) && gap.rules().stream()
				.noneMatch(rule -> heldBack.touches(checked.base().rule(rule).orElseThrow()))).forEach(gap -> report(checked, gap));
	}

	/** Gaps count only for vehicles for which the other parts of the family can be quiet. */
	private Map<String, GapSearch.Found> inFamily(Checked checked, Component part, String family,
			Map<String, GapSearch.Found> bySign) {
		List<Condition> unquiet = new ArrayList<>();
		for (Component other : checked.partsOfFamily(family)) {
			if (other != part) {
				unquiet.addAll(Checked.unquiet(other));
			}
		}
		return unquiet.isEmpty() ? bySign : examine(checked.prover(part, family, unquiet));
	}

	/** One region of one sign with the families that have it. */
	private record Told(String sign, Situation region, boolean more, List<String> families, Set<String> rules) {
	}

	private static void collect(Map<String, Told> told, String family, String sign, GapSearch.Found found,
			Component part) {
		for (int i = 0; i < found.regions().size(); i++) {
			Situation region = found.regions().get(i);
			boolean more = found.more() && i == found.regions().size() - 1;
			Told gap = told.computeIfAbsent(sign + region.facts(), key -> new Told(sign, region, more, new ArrayList<>(), new TreeSet<>()));
			gap.families().add(family);
			gap.rules().addAll(part.rules());
		}
	}

	private void report(Checked checked, Told gap) {
		Sign sign = checked.base().sign(gap.sign()).orElseThrow();
		Set<String> families = new HashSet<>(gap.families());
		Situation region = new Situation(gap.families().get(0), gap.region().facts());
		String name = gap.sign() + "/" + Meaning.fingerprint(region.facts().toString()).substring(0, 4);
		Checked.Draftsman flaw = checked.flaw(this, name, sign.span())
				.says("When \"" + sign.title() + "\" is there, all tests can be done with nothing confirmed and nobody referred to"
						+ (families.size() > 1 ? " (families " + String.join(", ", gap.families()) + ")" : "") + "."
						+ " Add a rule that goes on, or one that refers."
						+ (gap.more() ? " There are more such regions than are listed." : ""))
				.shownBy(new Evidence.Region(region))
				.fix(new Fix.AddElement("Add a rule that refers when nothing explains it",
						refers(checked, sign.name() + "_unexplained", sign.title() + ", and nothing explains it", Scope.EVERY,
								new Condition.Unexplained(sign.name(), Span.NONE), "Nothing that can be checked here explains it.")));
		gap.rules().forEach(rule -> checked.base().rule(rule).ifPresent(flaw::about));
		flaw.add();
	}

	/** Signs for which no rule asks, in any family or in some. */
	private void reportForgottenSigns(Checked checked) {
		Map<String, Set<String>> familiesBySign = new HashMap<>();
		Set<String> reached = new HashSet<>();
		for (Rule rule : checked.base().rules()) {
			Set<String> asked = new HashSet<>();
			rule.given().forEach(given -> given.eachAtom(atom -> collectSign(atom, asked)));
			asked.forEach(sign -> familiesBySign.computeIfAbsent(sign, key -> new HashSet<>()).addAll(checked.reach(rule)));
			reached.addAll(checked.reach(rule));
		}
		Set<String> seen = new HashSet<>();
		for (Sign sign : checked.base().signs()) {
			if (seen.add(sign.name()) && !HeldBack.in(checked).uses(sign.name())) {
				Set<String> asking = familiesBySign.get(sign.name());
				if (asking == null) {
					checked.flaw(this, sign.name(), sign.span())
							.says("No rule asks for \"" + sign.title() + "\", so it leads nowhere in any family; "
									+ "write a rule for it.")
							.about(sign.name())
							.fix(new Fix.AddElement("Add a rule that refers", refers(checked, sign.name() + "_to_specialist", sign.title(), Scope.EVERY,
									new Condition.SignIs(sign.name(), true, Span.NONE), "No rule says yet how to go on.")))
							.add();
				} else if (!asking.isEmpty()) {
					reportFamilies(checked, sign, reached.stream()
							.filter(family -> !asking.contains(family) && asking.stream().anyMatch(other -> areRelated(checked, family, other))
									&& checked.mayShow(family, sign.name())).sorted().toList());
				}
			}
		}
	}

	/** Returns a rule that refers; who says so is for its author to write. */
	private static String refers(Checked checked, String name, String title, Scope scope, Condition given, String because) {
		String free = Names.free(name, taken -> checked.base().rule(taken).isPresent());
		Conclusion refers = new Conclusion.Refers("a specialist, with all results written down", Span.NONE);
		return new RuleWriter(checked.base()).text(new Rule(free, title, scope, List.of(given), List.of(), Optional.empty(),
				List.of(new Outcome("then", Optional.empty(), false, List.of(refers), Span.NONE)),
				new Provenance(Optional.empty(), Optional.empty(), new Source(Source.Kind.PRACTICE, ""), Optional.of(because)), Span.NONE, Span.NONE));
	}

	/** Families that build on the same one are much alike; those that share a system need not be. */
	private static boolean areRelated(Checked checked, String family, String other) {
		List<String> line = checked.base().lineage(family);
		List<String> others = checked.base().lineage(other);
		return line.stream().filter(others::contains)
				.anyMatch(name -> checked.base().family(name).orElseThrow().kind() != Family.Kind.SYSTEM);
	}

	private void reportFamilies(Checked checked, Sign sign, List<String> families) {
		if (!families.isEmpty()) {
			checked.flaw(this, sign.name() + "/" + String.join("+", families), sign.span())
					.says("No rule asks for \"" + sign.title() + "\" in " + (families.size() == 1 ? "family " : "families ")
							+ Words.and(families) + ", so it leads nowhere there; write a rule for it, or a law that it is never there.")
					.about(sign.name())
					.fix(new Fix.AddElement("Add a rule that refers", refers(checked, sign.name() + "_elsewhere", sign.title() + " in other vehicles",
							new Scope(families, List.of(), Optional.empty(), Span.NONE), new Condition.SignIs(sign.name(), true, Span.NONE),
							"No rule of these families speaks of it yet.")))
					.add();
		}
	}

	private static void collectSign(Condition.Atom atom, Set<String> into) {
		Variable.of(atom).filter(asked -> asked.kind() == Variable.Kind.SIGN).ifPresent(asked -> into.add(asked.name()));
	}
}
