package org.baywright.analysis.proof;

import java.util.BitSet;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.Fault;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/** What of a program can still matter to one vehicle, from what is known of it at the beginning. */
final class Slice {

	final Program program;
	/** Cell of each variable, or {@link Program#OPEN}. */
	final int[] cells;
	/** Whether some sign is there. */
	final boolean complaint;
	/** The faults that may be confirmed yet and are asked for, in the order of the rule base. */
	final List<String> causes;
	/** The open variables that may come to be asked for. */
	final BitSet asked = new BitSet();
	/** The branches that may fire yet. */
	final BitSet branches = new BitSet();

	private final Program.Derived derived;
	/** Signs that are there or may come to be found. */
	private final BitSet signs = new BitSet();
	/** Verdicts that stand or may come to. */
	private BitSet reachable;

	/**
	 * @param cells what is known
	 * @param canStand tells of a verdict whether some vehicle with these findings lets the rules derive it
	 */
	Slice(RuleBase base, Program program, int[] cells, IntPredicate canStand) {
		this.program = program;
		this.cells = cells;
		derived = program.derive(cells, -1);
		IntStream.range(0, cells.length).filter(var -> isSign(var) && cells[var] == Variable.PRESENT).forEach(signs::set);
		complaint = !signs.isEmpty();
		reachable = reachable(var -> true);
		causes = base.faults().stream().map(Fault::name).filter(fault -> isCause(fault, canStand)).toList();
		grow();
		reachable = reachable(asked::get);
		IntStream.range(0, program.branches.size()).filter(b -> mayHold(program.branches.get(b).body(), asked::get)).forEach(branches::set);
	}

	private boolean isSign(int var) {
		return program.variables.get(var).kind() == Variable.Kind.SIGN;
	}

	private boolean isCause(String fault, IntPredicate canStand) {
		int cleared = program.numberOf(new Verdict(fault, VerdictKind.CLEARED));
		int confirmed = program.numberOf(new Verdict(fault, VerdictKind.CONFIRMED));
		return confirmed >= 0 && (cleared < 0 || !derived.verdicts()[cleared]) && isAsked(confirmed, new BitSet()) && canStand.test(confirmed);
	}

	/** A sign that is found on the way may have more asked for. */
	private void grow() {
		boolean changed = true;
		while (changed) {
			BitSet behind = new BitSet();
			for (int verdict = 0; verdict < program.verdicts.size(); verdict++) {
				Verdict of = program.verdicts.get(verdict);
				if (of.isReferral() || causes.contains(of.fault())) {
					collect(verdict, behind);
				}
			}
			changed = false;
			for (int var = asked.nextSetBit(0); var >= 0; var = asked.nextSetBit(var + 1)) {
				if (isSign(var) && !signs.get(var)) {
					signs.set(var);
					changed = true;
				}
			}
		}
	}

	private void collect(int verdict, BitSet behind) {
		if (!behind.get(verdict)) {
			behind.set(verdict);
			for (int b : program.derivedBy.get(verdict)) {
				Formula body = program.branches.get(b).body();
				if (isAsked(body, new BitSet()) && mayHold(body, var -> true)) {
					collect(body, behind);
				}
			}
		}
	}

	private void collect(Formula body, BitSet behind) {
		body.eachLeaf(leaf -> {
			if (leaf instanceof Formula.Stands stands) {
				collect(stands.verdict(), behind);
			} else if (leaf instanceof Formula.Known lit && lit.var() >= 0 && cells[lit.var()] == Program.OPEN && !lit.cells().isEmpty()) {
				asked.set(lit.var());
			}
		});
	}

	// ---- what is about the complaint -------------------------------------------------------------------------

	private boolean isAsked(int verdict, BitSet behind) {
		if (!behind.get(verdict)) {
			behind.set(verdict);
			for (int b : program.derivedBy.get(verdict)) {
				Formula body = program.branches.get(b).body();
				if (mayHold(body, var -> true) && isAsked(body, behind)) {
					return true;
				}
			}
		}
		return false;
	}

	/** Returns whether a rule is about something that is there: who has no complaint yet is asked about everything. */
	private boolean isAsked(Formula body, BitSet behind) {
		return !complaint || showsSign(body, behind) || !asksSign(body);
	}

	/** Returns whether a sign that is there, or a verdict that rests on one, is part of what may let a formula hold. */
	private boolean showsSign(Formula formula, BitSet behind) {
		if (formula instanceof Formula.Known lit) {
			return lit.var() >= 0 && signs.get(lit.var()) && lit.cells().contains(Variable.PRESENT);
		} else if (formula instanceof Formula.Stands stands) {
			return stands.stands() && isAsked(stands.verdict(), behind);
		}
		return parts(formula).stream().anyMatch(part -> showsSign(part, behind));
	}

	private boolean asksSign(Formula formula) {
		return formula instanceof Formula.Known lit ? lit.var() >= 0 && isSign(lit.var())
				: formula instanceof Formula.Stands stands ? stands.stands() : parts(formula).stream().anyMatch(this::asksSign);
	}

	// ---- what may hold ---------------------------------------------------------------------------------------

	/** @param findable tells of an open variable whether somebody may find it */
	private BitSet reachable(IntPredicate findable) {
		reachable = new BitSet();
		boolean changed = true;
		while (changed) {
			changed = false;
			for (int b = 0; b < program.branches.size(); b++) {
				Branch branch = program.branches.get(b);
				if (!branch.verdicts().stream().allMatch(reachable::get) && mayHold(branch.body(), findable)) {
					branch.verdicts().forEach(reachable::set);
					changed = true;
				}
			}
		}
		return reachable;
	}

	/** Returns whether a formula holds or may come to, for all that is known without the laws; a verdict that stands may cease to. */
	private boolean mayHold(Formula formula, IntPredicate findable) {
		if (formula instanceof Formula.Known lit) {
			int var = lit.var();
			return var >= 0 && (cells[var] == Program.OPEN ? findable.test(var) && !lit.cells().isEmpty() : program.meant(var, cells[var]).meets(lit.cells()));
		} else if (formula instanceof Formula.Stands stands) {
			return !stands.stands() || reachable.get(stands.verdict());
		}
		return formula instanceof Formula.All ? parts(formula).stream().allMatch(part -> mayHold(part, findable))
				: parts(formula).stream().anyMatch(part -> mayHold(part, findable));
	}

	static List<Formula> parts(Formula formula) {
		return formula instanceof Formula.All all ? all.parts() : ((Formula.Any) formula).parts();
	}
}
