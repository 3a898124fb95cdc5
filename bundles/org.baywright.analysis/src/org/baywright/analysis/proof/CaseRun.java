package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.CaseResult.Blame;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Case;
import org.baywright.model.Law;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/** Runs the finished jobs of one family through its rules. */
public final class CaseRun {

	private static final Comparator<Blame> IN_TEXT = Comparator.comparing((Blame blame) -> blame.span().file())
			.thenComparing(blame -> blame.span().line()).thenComparing(Blame::does);

	private final RuleBase base;
	private final Program program;
	private final Draft rules;
	private final Encoding laws;

	/** @param rules all that concerns the family */
	CaseRun(RuleBase base, Draft rules) {
		this.base = base;
		this.rules = rules;
		program = rules.program(base);
		laws = encoding(rules.laws());
	}

	private Encoding encoding(List<Law> alone) {
		return alone.isEmpty() ? null
				: new Encoding(new Draft(rules.family(), rules.rules(), alone, List.of()).program(base),
						Prover.CONFLICT_LIMIT, false);
	}

	/** Makes the rules of a vehicle family ready for its jobs. */
	public static CaseRun of(RuleBase base, String family) {
		return new CaseRun(base, Draft.of(base, family));
	}

	/** Returns what the rules make of the job. */
	public CaseResult run(Case job) {
		if (!program.isStratified()) {
			return new CaseResult(job, false, "the rules go round in a circle, so nothing can be derived.", List.of(),
					List.of(), List.of());
		}
		Noted noted = new Noted(base, program);
		List<Reading> readings = new ArrayList<>(job.traits());
		readings.addAll(job.found());
		for (Reading reading : readings) {
			Optional<String> wrong = noted.put(reading);
			if (wrong.isPresent()) {
				return new CaseResult(job, false, wrong.get(), List.of(), List.of(), List.of());
			}
		}
		int[] known = noted.cells();
		Program.Derived derived = program.derive(known, -1);
		List<String> fired = new ArrayList<>(new TreeSet<>(firedRules(derived)));
		List<Verdict> verdicts = program.standing(derived);
		if (!isLawful(laws, known)) {
			return new CaseResult(job, false, "the laws say that no vehicle can show these findings together.", fired, verdicts,
					lawsAgainst(known));
		}
		String message = judge(job, verdicts);
		return new CaseResult(job, message.isEmpty(), message, fired, verdicts, message.isEmpty() ? List.of() : blamed(job, derived, verdicts));
	}

	/** Returns a smallest set of laws that together exclude what was found: without any one of them it could be. */
	private List<Blame> lawsAgainst(int[] known) {
		List<Law> needed = new ArrayList<>(rules.laws());
		for (Law law : rules.laws()) {
			List<Law> without = new ArrayList<>(needed);
			without.removeIf(other -> other == law);
			if (!without.isEmpty() && !isLawful(encoding(without), known)) {
				needed = without;
			}
		}
		return needed.stream().map(law -> new Blame("", law.span(), "the law \u201c" + law.title() + "\u201d excludes it")).sorted(IN_TEXT)
				.toList();
	}

	/** Returns the rules that said what was wrong; where something was not said, those that could have. */
	private List<Blame> blamed(Case job, Program.Derived derived, List<Verdict> standing) {
		boolean referred = standing.stream().anyMatch(Verdict::isReferral);
		boolean onlyReferred = job.causes().stream().allMatch(cause -> standing.contains(new Verdict(cause, VerdictKind.CONFIRMED)))
				&& standing.stream().noneMatch(verdict -> verdict.kind() == VerdictKind.CLEARED && job.causes().contains(verdict.fault())
						|| verdict.kind() == VerdictKind.CONFIRMED && !job.causes().contains(verdict.fault()));
		Set<Blame> blamed = new TreeSet<>(IN_TEXT);
		for (int b = 0; b < derived.fired().length; b++) {
			Branch branch = program.branches.get(b);
			Rule rule = program.rules.get(branch.rule());
			boolean fired = derived.fired()[b];
			for (int number : branch.verdicts()) {
				Verdict verdict = program.verdicts.get(number);
				boolean cause = job.causes().contains(verdict.fault());
				boolean open = !standing.contains(new Verdict(verdict.fault(), VerdictKind.CONFIRMED))
						&& !standing.contains(new Verdict(verdict.fault(), VerdictKind.CLEARED));
				String does = fired && verdict.isReferral() && !job.referred() && onlyReferred ? " refers to " + verdict.fault()
						: fired && verdict.kind() == VerdictKind.CLEARED && cause ? " clears " + verdict.fault()
						: fired && verdict.kind() == VerdictKind.CONFIRMED && !cause ? " confirms " + verdict.fault()
						: !fired && verdict.kind() == VerdictKind.CONFIRMED && cause && open ? " would confirm " + verdict.fault() + " and did not fire"
						: !fired && verdict.isReferral() && job.referred() && !referred ? " would refer and did not fire" : "";
				if (!does.isEmpty()) {
					blamed.add(new Blame(rule.name(), rule.span(), "rule " + rule.name() + does));
				}
			}
		}
		return List.copyOf(blamed);
	}

	private List<String> firedRules(Program.Derived derived) {
		List<String> names = new ArrayList<>();
		for (int b = 0; b < derived.fired().length; b++) {
			if (derived.fired()[b]) {
				names.add(program.rules.get(program.branches.get(b).rule()).name());
			}
		}
		return names;
	}

	private static boolean isLawful(Encoding laws, int[] known) {
		if (laws == null) {
			return true;
		}
		List<Integer> assumptions = new ArrayList<>();
		for (int var = 0; var < known.length; var++) {
			if (known[var] != Program.OPEN) {
				assumptions.add(laws.values.in(var, Encoding.only(known[var])));
			}
		}
		return laws.ask(assumptions.stream().mapToInt(Integer::intValue).toArray()) != Answer.NO;
	}

	private static String judge(Case job, List<Verdict> verdicts) {
		Set<String> confirmed = new TreeSet<>();
		Set<String> cleared = new HashSet<>();
		boolean referred = false;
		for (Verdict verdict : verdicts) {
			referred |= verdict.isReferral();
			if (verdict.kind() == VerdictKind.CONFIRMED) {
				confirmed.add(verdict.fault());
			} else if (verdict.kind() == VerdictKind.CLEARED) {
				cleared.add(verdict.fault());
			}
		}
		List<String> wrong = new ArrayList<>();
		for (String cause : job.causes()) {
			if (cleared.contains(cause)) {
				wrong.add("the cause was " + cause + ", but the rules clear it");
			} else if (!confirmed.contains(cause)) {
				wrong.add("the cause was " + cause + ", but the rules do not confirm it");
			}
		}
		confirmed.removeAll(job.causes());
		confirmed.forEach(other -> wrong.add("the rules confirm " + other + ", which was not the cause"));
		if (job.referred() && !referred) {
			wrong.add("the job was referred, but no rule refers");
		} else if (!job.referred() && referred && wrong.isEmpty()) {
			wrong.add("the rules find the cause, and refer the job as well");
		}
		return wrong.isEmpty() ? "" : String.join("; ", wrong) + ".";
	}
}
