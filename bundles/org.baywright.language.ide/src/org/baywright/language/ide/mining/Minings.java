package org.baywright.language.ide.mining;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Report;
import org.baywright.language.ide.hover.RuleUses;
import org.baywright.language.ide.names.Usages;
import org.baywright.model.Agreement;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/** Tells beside declarations what the rules do with them. */
public final class Minings {

	private final RuleUses uses;
	private final Map<String, List<String>> casesByRule = new TreeMap<>();
	private final Map<String, Agreement> agreements = new TreeMap<>();
	private final boolean checked;

	/**
	 * @param base the rules, for how peers stand to them
	 * @param uses which rules have to do with what
	 * @param report what the newest check found, if there was one
	 */
	public Minings(RuleBase base, RuleUses uses, Optional<Report> report) {
		this.uses = uses;
		if (!base.reviews().isEmpty() || base.signOff().isPresent()) {
			Agreement.all(base).forEach(agreement -> agreements.put(agreement.name(), agreement));
		}
		checked = report.isPresent();
		for (CaseResult result : report.map(Report::cases).orElse(List.of())) {
			for (String rule : result.fired()) {
				casesByRule.computeIfAbsent(rule, none -> new ArrayList<>()).add(result.job().name());
			}
		}
	}

	/** Returns what there is to tell of the things that a file declares, in the order of the text. */
	public List<Mining> of(List<Usages.Named> names) {
		List<Mining> found = new ArrayList<>();
		for (Usages.Named named : names) {
			if (named.use().declaration() && named.target().value().isEmpty()) {
				of(named).ifPresent(found::add);
			}
		}
		return found;
	}

	private Optional<Mining> of(Usages.Named named) {
		String name = named.target().name();
		int offset = named.use().offset();
		return switch (named.target().kind()) {
		case TEST -> Optional.of(count(offset, uses.rules(name), "no rule uses this test", "uses this test", "use this test"));
		case SIGN -> Optional.of(count(offset, uses.rules(name), "no rule asks for this sign", "asks for this sign",
				"ask for this sign"));
		case CODE -> Optional.of(count(offset, uses.rules(name), "no rule asks for this code", "asks for this code",
				"ask for this code"));
		case FAULT -> Optional.of(fault(offset, name));
		case RULE -> rule(offset, name);
		default -> Optional.empty();
		};
	}

	private static Mining count(int offset, Collection<String> rules, String none, String one, String many) {
		String text = rules.isEmpty() ? none : rules.size() == 1 ? "1 rule " + one : rules.size() + " rules " + many;
		return new Mining(offset, text, List.copyOf(rules));
	}

	private Mining fault(int offset, String fault) {
		Collection<String> confirming = uses.rules(VerdictKind.CONFIRMED, fault);
		List<String> repairs = uses.repairs(fault);
		TreeSet<String> all = new TreeSet<>(confirming);
		all.addAll(repairs);
		String confirmed = confirming.isEmpty() ? "confirmed by no rule"
				: "confirmed by " + number(confirming.size(), "rule", "rules");
		String repaired = repairs.isEmpty() ? "no repair" : number(repairs.size(), "repair", "repairs");
		return new Mining(offset, confirmed + ", " + repaired, List.copyOf(all));
	}

	private Optional<Mining> rule(int offset, String rule) {
		List<String> cases = uses.madeOf(rule).stream().flatMap(made -> casesByRule.getOrDefault(made, List.of()).stream()).distinct().toList();
		if (!checked) {
			return Optional.empty();
		}
		String text = cases.isEmpty() ? "applies in no finished job"
				: cases.size() == 1 ? "applies in 1 finished job" : "applies in " + cases.size() + " finished jobs";
		return Optional.of(new Mining(offset, text + agreement(rule), cases));
	}

	/** Says how many agree with a rule as it stands and whether somebody objects; nothing of a rule that nobody has reviewed. */
	private String agreement(String rule) {
		Agreement agreement = agreements.get(rule);
		if (agreement == null || agreement.reviews().isEmpty() && agreement.signOff().isEmpty()) {
			return "";
		}
		int agreed = agreement.agreed().size();
		return ", " + (agreed == 0 ? "nobody agrees" : agreed == 1 ? "1 agrees" : agreed + " agree") + " with it as it stands"
				+ (agreement.objections().isEmpty() ? "" : ", " + agreement.objections().get(0).reviewer() + " objects");
	}

	private static String number(int count, String one, String many) {
		return count + " " + (count == 1 ? one : many);
	}
}
