package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Case;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.Law;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/** Runs the finished jobs of one family through its rules. */
public final class CaseRun {

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

	/** Returns what the rules make of the job. */
	public CaseResult run(Case job) {
		if (!program.circle().isEmpty()) {
			return new CaseResult(job, false, "the rules go round in a circle, so nothing can be derived.", List.of(),
					List.of());
		}
		int[] known = new int[program.variables.size()];
		Arrays.fill(known, Program.OPEN);
		List<Reading> readings = new ArrayList<>(job.traits());
		readings.addAll(job.found());
		for (Reading reading : readings) {
			Optional<String> wrong = put(known, reading);
			if (wrong.isPresent()) {
				return new CaseResult(job, false, wrong.get(), List.of(), List.of());
			}
		}
		Program.Derived derived = program.derive(known, -1);
		List<String> fired = new ArrayList<>(new TreeSet<>(firedRules(derived)));
		List<Verdict> verdicts = new ArrayList<>();
		for (int verdict = 0; verdict < program.verdicts.size(); verdict++) {
			if (derived.verdicts()[verdict]) {
				verdicts.add(program.verdicts.get(verdict));
			}
		}
		String message = isLawful(known) ? judge(job, verdicts)
				: "the laws say that no vehicle can show these findings together.";
		return new CaseResult(job, message.isEmpty(), message, fired, verdicts);
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

	private boolean isLawful(int[] known) {
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
		}
		return wrong.isEmpty() ? "" : String.join("; ", wrong) + ".";
	}

	/** Notes a reading; returns what is wrong with it, if anything. */
	private Optional<String> put(int[] known, Reading reading) {
		if (reading instanceof Reading.SignSeen seen) {
			set(known, Variable.Kind.SIGN, seen.subject(), seen.present() ? Variable.PRESENT : Variable.ABSENT);
		} else if (reading instanceof Reading.ModuleAsked asked) {
			set(known, Variable.Kind.MODULE, asked.subject(), asked.answers() ? Variable.ANSWERS : Variable.SILENT);
			if (!asked.answers()) {
				base.codes().stream().filter(code -> code.module().equals(asked.subject()))
						.forEach(code -> set(known, Variable.Kind.CODE, code.name(), Variable.UNREAD));
			}
		} else if (reading instanceof Reading.CodeRead read) {
			int value = read.reading() == CodeReading.PRESENT ? Variable.PRESENT
					: read.reading() == CodeReading.ABSENT ? Variable.ABSENT : Variable.UNREAD;
			set(known, Variable.Kind.CODE, read.subject(), value);
			base.code(read.subject()).ifPresent(code -> set(known, Variable.Kind.MODULE, code.module(),
					value == Variable.UNREAD ? Variable.SILENT : Variable.ANSWERS));
		} else {
			return putValue(known, reading);
		}
		return Optional.empty();
	}

	private Optional<String> putValue(int[] known, Reading reading) {
		boolean isTest = base.test(reading.subject()).isPresent();
		Variable.Kind kind = isTest ? Variable.Kind.TEST : Variable.Kind.TRAIT;
		Optional<Domain> domain = isTest ? base.test(reading.subject()).map(org.baywright.model.Test::domain)
				: Optional.ofNullable(base.traitsOf(program.family).get(reading.subject()))
						.map(org.baywright.model.Trait::domain);
		int value = -1;
		if (reading instanceof Reading.Named named && domain.orElse(null) instanceof Domain.Names names) {
			value = names.indexOf(named.value());
		} else if (reading instanceof Reading.Measured measured
				&& domain.orElse(null) instanceof Domain.Quantity quantity) {
			value = quantity.floorIndex(measured.value());
		}
		if (value < 0 || value >= domain.map(Domain::size).orElse(0)) {
			return Optional.of("the value given for " + reading.subject() + " is not one that it can have.");
		}
		set(known, kind, reading.subject(), value);
		return Optional.empty();
	}

	/** A finding that no rule looks at is left out. */
	private void set(int[] known, Variable.Kind kind, String name, int value) {
		int var = program.numberOf(new Variable(kind, name));
		if (var >= 0) {
			known[var] = program.cells.get(var).of(value);
		}
	}
}
