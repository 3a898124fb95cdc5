package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.IntStream;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;

/** All rules of one family, asked what findings yet to be made would do. */
public final class Outlook implements Prospect {

	private final RuleBase base;
	private final Program program;
	private final int conflictLimit;
	private Encoding encoding;
	/** What vehicles there are, whatever the rules say of them. */
	private LawfulValues lawful;

	/** @param conflictLimit conflicts after which a question stays undecided, 1 or more */
	public Outlook(RuleBase base, String family, int conflictLimit) {
		this.base = base;
		this.conflictLimit = conflictLimit;
		Draft draft = Draft.of(base, family);
		program = new ProgramBuilder(base, family, draft.rules().stream().sorted(Comparator.comparing(rule -> rule.name())).toList(), draft.laws(),
				draft.exclusives()).build();
	}

	@Override
	public Optional<Known> begin(List<Reading> readings) {
		if (!program.isStratified()) {
			return Optional.empty();
		}
		if (encoding == null) {
			encoding = new Encoding(program, conflictLimit, false);
			lawful = new LawfulValues(program, conflictLimit);
		}
		VehicleRun run = new VehicleRun(base, program);
		for (Reading reading : readings) {
			if (run.take(reading).isPresent()) {
				return Optional.empty();
			}
		}
		Facts facts = new Facts(run.known().clone());
		return facts.ask() == Answer.NO ? Optional.empty() : Optional.of(facts);
	}

	@Override
	public List<Reading> values(Variable finding) {
		int var = program.numberOf(finding);
		return var < 0 ? List.of() : IntStream.range(0, program.cells.get(var).count()).mapToObj(cell -> reading(finding, var, cell)).toList();
	}

	private Reading reading(Variable finding, int var, int cell) {
		int value = program.cells.get(var).example(cell);
		return switch (finding.kind()) {
		case SIGN -> new Reading.SignSeen(finding.name(), value == Variable.PRESENT, Span.NONE);
		case MODULE -> new Reading.ModuleAsked(finding.name(), value == Variable.ANSWERS, Span.NONE);
		case CODE -> new Reading.CodeRead(finding.name(), CodeReading.values()[value], Span.NONE);
		default -> {
			Domain domain = program.domains.get(var).orElseThrow();
			yield domain instanceof Domain.Quantity quantity && quantity.isNumber(value) ? new Reading.Measured(finding.name(), quantity.value(value), Span.NONE)
					: new Reading.Named(finding.name(), name(domain, value), Span.NONE);
		}
		};
	}

	private static String name(Domain domain, int value) {
		return domain.named().stream().map(named -> named.name()).filter(name -> domain.indexOf(name) == value).findFirst().orElseThrow();
	}

	@Override
	public OptionalInt value(Variable finding, Reading reading) {
		Noted alone = new Noted(base, program);
		int var = program.numberOf(finding);
		return var < 0 || alone.put(reading).isPresent() || alone.cells()[var] == Program.OPEN ? OptionalInt.empty() : OptionalInt.of(alone.cells()[var]);
	}

	/** Findings as the cells of the program. */
	private final class Facts implements Known {

		private final int[] cells;
		private final Program.Derived derived;
		/** Whether some sign is there. */
		private final boolean complaint;
		/** Verdicts that stand or may come to. */
		private boolean[] reachable;

		Facts(int[] cells) {
			this.cells = cells;
			derived = program.derive(cells, -1);
			complaint = IntStream.range(0, cells.length)
					.anyMatch(var -> program.variables.get(var).kind() == Variable.Kind.SIGN && cells[var] == Variable.PRESENT);
		}

		@Override
		public boolean isMade(Variable finding) {
			int var = program.numberOf(finding);
			return var >= 0 && cells[var] != Program.OPEN;
		}

		@Override
		public List<Verdict> verdicts() {
			return program.standing(derived);
		}

		@Override
		public boolean has(Verdict verdict) {
			int number = program.numberOf(verdict);
			return number >= 0 && derived.verdicts()[number];
		}

		@Override
		public boolean isLasting(Verdict verdict) {
			int number = program.numberOf(verdict);
			return number >= 0 && isLasting(number, new HashSet<>());
		}

		private boolean isLasting(int verdict, Set<Integer> behind) {
			return derived.verdicts()[verdict] && behind.add(verdict)
					&& program.derivedBy.get(verdict).stream().anyMatch(b -> derived.fired()[b] && isLasting(program.branches.get(b).body(), behind));
		}

		/** Findings that are made stay; that a verdict does not stand may change. */
		private boolean isLasting(Formula formula, Set<Integer> behind) {
			if (formula instanceof Formula.Known) {
				return Program.holds(formula, cells, derived.verdicts());
			} else if (formula instanceof Formula.Stands stands) {
				return stands.stands() && isLasting(stands.verdict(), behind);
			}
			return formula instanceof Formula.All ? parts(formula).stream().allMatch(part -> isLasting(part, behind))
					: parts(formula).stream().anyMatch(part -> isLasting(part, behind));
		}

		/** Asks whether some vehicle with these findings makes the literals hold. */
		private Answer ask(int... more) {
			int[] assumptions = Arrays.copyOf(more, more.length + cells.length);
			int count = more.length;
			for (int var = 0; var < cells.length; var++) {
				if (cells[var] != Program.OPEN) {
					assumptions[count++] = encoding.values.knownIn(var, program.meant(var, cells[var]));
				}
			}
			return encoding.ask(Arrays.copyOf(assumptions, count));
		}

		@Override
		public List<Integer> possible(Variable finding) {
			return lawful.possible(cells, program.numberOf(finding));
		}

		@Override
		public boolean canConfirm(String fault) {
			int verdict = program.numberOf(new Verdict(fault, VerdictKind.CONFIRMED));
			return verdict >= 0 && ask(encoding.verdict(verdict)) != Answer.NO;
		}

		@Override
		public boolean isAsked(String fault) {
			int verdict = program.numberOf(new Verdict(fault, VerdictKind.CONFIRMED));
			return verdict >= 0 && isAsked(verdict, new HashSet<>());
		}

		private boolean isAsked(int verdict, Set<Integer> behind) {
			if (behind.add(verdict)) {
				for (int b : program.derivedBy.get(verdict)) {
					Formula body = program.branches.get(b).body();
					if (mayHold(body) && isAsked(body, behind)) {
						return true;
					}
				}
			}
			return false;
		}

		private boolean isAsked(Formula body) {
			return isAsked(body, new HashSet<>());
		}

		/** Returns whether a rule is about something that is there: who has no complaint yet is asked about everything. */
		private boolean isAsked(Formula body, Set<Integer> behind) {
			return !complaint || showsSign(body, behind) || !asksSign(body);
		}

		/** Returns whether a sign that is known to be there, or a verdict that rests on one, is part of what may let a formula hold. */
		private boolean showsSign(Formula formula, Set<Integer> behind) {
			if (formula instanceof Formula.Known lit) {
				return isSign(lit) && cells[lit.var()] == Variable.PRESENT && lit.cells().contains(Variable.PRESENT);
			} else if (formula instanceof Formula.Stands stands) {
				return stands.stands() && isAsked(stands.verdict(), behind);
			}
			return parts(formula).stream().anyMatch(part -> showsSign(part, behind));
		}

		private boolean asksSign(Formula formula) {
			return formula instanceof Formula.Known lit ? isSign(lit)
					: formula instanceof Formula.Stands stands ? stands.stands() : parts(formula).stream().anyMatch(this::asksSign);
		}

		private boolean isSign(Formula.Known lit) {
			return lit.var() >= 0 && program.variables.get(lit.var()).kind() == Variable.Kind.SIGN;
		}

		@Override
		public List<Variable> open(List<String> faults) {
			Set<Variable> open = new TreeSet<>();
			eachAhead(faults, lit -> {
				if (cells[lit.var()] == Program.OPEN && !lit.cells().isEmpty()) {
					open.add(program.variables.get(lit.var()));
				}
			});
			return List.copyOf(open);
		}

		@Override
		public Object mattering(List<String> faults) {
			SortedMap<Integer, Integer> found = new TreeMap<>();
			eachAhead(faults, lit -> found.put(lit.var(), cells[lit.var()]));
			return found;
		}

		/** Visits what is asked for on the ways on which verdicts on some faults, or referrals, may come to stand or no longer stand. */
		private void eachAhead(List<String> faults, Consumer<Formula.Known> use) {
			Set<Integer> behind = new HashSet<>();
			for (int verdict = 0; verdict < program.verdicts.size(); verdict++) {
				Verdict of = program.verdicts.get(verdict);
				if (!derived.verdicts()[verdict] && (of.isReferral() || faults.contains(of.fault()))) {
					eachAhead(verdict, behind, use);
				}
			}
		}

		private void eachAhead(int verdict, Set<Integer> behind, Consumer<Formula.Known> use) {
			if (behind.add(verdict)) {
				for (int b : program.derivedBy.get(verdict)) {
					Formula body = program.branches.get(b).body();
					if (!derived.fired()[b] && isAsked(body) && mayHold(body)) {
						eachAhead(body, behind, use);
					}
				}
			}
		}

		private void eachAhead(Formula formula, Set<Integer> behind, Consumer<Formula.Known> use) {
			if (formula instanceof Formula.Known lit) {
				if (lit.var() >= 0) {
					use.accept(lit);
				}
			} else if (formula instanceof Formula.Stands stands) {
				eachAhead(stands.verdict(), behind, use);
			} else {
				parts(formula).forEach(part -> eachAhead(part, behind, use));
			}
		}

		/** Returns whether a formula holds or may come to, for all that is known without the laws. */
		private boolean mayHold(Formula formula) {
			if (formula instanceof Formula.Known lit) {
				return lit.var() >= 0 && (cells[lit.var()] == Program.OPEN ? !lit.cells().isEmpty() : program.meant(lit.var(), cells[lit.var()]).meets(lit.cells()));
			} else if (formula instanceof Formula.Stands stands) {
				return stands.stands() ? reachable()[stands.verdict()] : !derived.verdicts()[stands.verdict()];
			}
			return formula instanceof Formula.All ? parts(formula).stream().allMatch(this::mayHold) : parts(formula).stream().anyMatch(this::mayHold);
		}

		private boolean[] reachable() {
			if (reachable == null) {
				reachable = derived.verdicts().clone();
				boolean changed = true;
				while (changed) {
					changed = false;
					for (int verdict = 0; verdict < reachable.length; verdict++) {
						if (!reachable[verdict] && program.derivedBy.get(verdict).stream().anyMatch(b -> mayHold(program.branches.get(b).body()))) {
							reachable[verdict] = true;
							changed = true;
						}
					}
				}
			}
			return reachable;
		}

		@Override
		public Known with(Variable finding, int value) {
			int var = program.numberOf(finding);
			int[] more = cells.clone();
			more[var] = value;
			int module = finding.kind() == Variable.Kind.MODULE ? var : program.moduleOf[var];
			boolean silent = finding.kind() == Variable.Kind.MODULE ? value == Variable.SILENT : module >= 0 && value == Variable.UNREAD;
			if (module >= 0) {
				more[module] = silent ? Variable.SILENT : Variable.ANSWERS;
				for (int code = 0; silent && code < more.length; code++) {
					if (program.moduleOf[code] == module) {
						more[code] = Variable.UNREAD;
					}
				}
			}
			return new Facts(more);
		}
	}

	private static List<Formula> parts(Formula formula) {
		return formula instanceof Formula.All all ? all.parts() : ((Formula.Any) formula).parts();
	}
}
