package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

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
	private final Encoding laws;

	/** @param rules all that concerns the family */
	CaseRun(RuleBase base, Draft rules) {
		this.base = base;
		program = rules.program(base);
		List<Law> alone = rules.laws();
		laws = alone.isEmpty() ? null
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
					List.of(), List.of(), List.of());
		}
		VehicleRun run = new VehicleRun(base, program);
		List<Reading> readings = new ArrayList<>(job.traits());
		readings.addAll(job.found());
		for (Reading reading : readings) {
			Optional<VehicleRun.Refused> refused = run.take(reading);
			if (refused.isPresent()) {
				return new CaseResult(job, false, why(reading, refused.get()), List.of(), List.of(), List.of(), List.of());
			}
		}
		int[] known = run.known();
		Optional<String> elsewhere = forOtherVehicles(known);
		if (elsewhere.isPresent()) {
			return new CaseResult(job, false, elsewhere.get(), List.of(), List.of(), List.of(), List.of());
		}
		List<String> fired = run.applied();
		List<Verdict> verdicts = program.standing(run.derived());
		if (!isLawful(known)) {
			return new CaseResult(job, false, "the laws say that no vehicle can show these findings together.", fired, verdicts,
					List.of(), lawsAgainst(known));
		}
		List<Wrong> wrong = judge(job, verdicts);
		String message = wrong.isEmpty() ? "" : wrong.stream().map(Wrong::says).collect(Collectors.joining("; ", "", "."));
		return new CaseResult(job, wrong.isEmpty(), message, fired, verdicts, confirming(job, run), blamed(wrong, run.derived()));
	}

	/** A code that was read and a module that is silent cannot both have been found, nor anything else that says two things of one. */
	private static String why(Reading reading, VehicleRun.Refused refused) {
		return refused.about().map(about -> reading.subject() + " and what was found before it say two things of " + about.name()
				+ ", so one of them is wrong.").orElse(refused.message());
	}

	/** What was found although the job's vehicle is none of those on which it makes sense; a trait that nobody told may fit. */
	private Optional<String> forOtherVehicles(int[] known) {
		boolean[] none = new boolean[program.verdicts.size()];
		return found(known).stream().filter(var -> allKnown(program.limitOf.get(var), known) && !Program.holds(program.limitOf.get(var), known, none))
				.findFirst().map(var -> program.variables.get(var).name() + " was found, but it is for other vehicles.");
	}

	private static boolean allKnown(Formula formula, int[] known) {
		boolean[] all = { true };
		formula.eachLeaf(leaf -> all[0] &= !(leaf instanceof Formula.Known lit) || lit.var() < 0 || known[lit.var()] != Program.OPEN);
		return all[0];
	}

	private List<String> confirming(Case job, VehicleRun run) {
		return IntStream.range(0, program.verdicts.size()).filter(number -> program.verdicts.get(number).kind() == VerdictKind.CONFIRMED
				&& job.causes().contains(program.verdicts.get(number).fault())).boxed().flatMap(number -> run.behind(number).stream()).distinct().sorted()
				.toList();
	}

	/** Returns the laws that, as few as can be, exclude what was found. */
	private List<Blame> lawsAgainst(int[] known) {
		List<Integer> found = found(known);
		return new Laws(laws.program, Prover.CONFLICT_LIMIT).against(found, found.stream().mapToInt(var -> known[var]).toArray()).stream()
				.map(law -> new Blame("", law.span(), "the law \u201c" + law.title() + "\u201d excludes it")).sorted(IN_TEXT).toList();
	}

	private static List<Integer> found(int[] known) {
		return IntStream.range(0, known.length).filter(var -> known[var] != Program.OPEN).boxed().toList();
	}

	/** Returns the rules that said what is wrong; where something was not said, those that could have. */
	private List<Blame> blamed(List<Wrong> wrong, Program.Derived derived) {
		Set<Blame> blamed = new TreeSet<>(IN_TEXT);
		for (Wrong one : wrong) {
			for (int number = 0; number < program.verdicts.size(); number++) {
				Verdict verdict = program.verdicts.get(number);
				if (one.about().test(verdict)) {
					for (int b : program.derivedBy.get(number)) {
						Rule rule = program.rules.get(program.branches.get(b).rule());
						if (derived.fired()[b] == one.said()) {
							blamed.add(new Blame(rule.name(), rule.span(), "rule " + rule.name() + " " + one.does(verdict)));
						}
					}
				}
			}
		}
		return List.copyOf(blamed);
	}

	/**
	 * Something that is wrong with what the rules make of a job.
	 *
	 * @param says it, as part of a sentence
	 * @param about the verdicts that it is about
	 * @param said whether it is wrong that one was said, or that none was
	 */
	private record Wrong(String says, Predicate<Verdict> about, boolean said) {

		String does(Verdict verdict) {
			String verb = verdict.isReferral() ? "refer" : verdict.kind() == VerdictKind.CLEARED ? "clear" : "confirm";
			String what = verdict.isReferral() ? said ? " to " + verdict.fault() : "" : " " + verdict.fault();
			return said ? verb + "s" + what : "would " + verb + what + " and did not apply";
		}
	}

	private boolean isLawful(int[] known) {
		return laws == null || laws.ask(found(known).stream().mapToInt(var -> laws.values.in(var, program.meant(var, known[var]))).toArray())
				!= Answer.NO;
	}

	private static List<Wrong> judge(Case job, List<Verdict> verdicts) {
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
		List<Wrong> wrong = new ArrayList<>();
		for (String cause : job.causes()) {
			if (cleared.contains(cause)) {
				wrong.add(new Wrong("the cause was " + cause + ", but the rules clear it",
						new Verdict(cause, VerdictKind.CLEARED)::equals, true));
			} else if (!confirmed.contains(cause)) {
				wrong.add(new Wrong("the cause was " + cause + ", but the rules do not confirm it",
						new Verdict(cause, VerdictKind.CONFIRMED)::equals, false));
			}
		}
		confirmed.removeAll(job.causes());
		confirmed.forEach(other -> wrong.add(new Wrong("the rules confirm " + other + ", which was not the cause",
				new Verdict(other, VerdictKind.CONFIRMED)::equals, true)));
		if (job.referred() && !referred) {
			wrong.add(new Wrong("the job was referred, but no rule refers", Verdict::isReferral, false));
		} else if (!job.referred() && referred && wrong.isEmpty()) {
			wrong.add(new Wrong("the rules find the cause, and refer the job as well", Verdict::isReferral, true));
		}
		return wrong;
	}
}
