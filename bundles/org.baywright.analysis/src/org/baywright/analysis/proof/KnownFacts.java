package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.VerdictKind;

/** A set of findings, as values of the slice's variables, and what the rules derive from it. */
final class KnownFacts implements Prospect.Known, Clauses.Facts {

	private final SliceVariables variables;
	private final SliceRules rules;
	private final int[] values;
	private final boolean[] stands;
	private final boolean complaint;
	private boolean[] mayStand;
	private Boolean settled;
	private Boolean anyConfirmed;
	private StillOpen stillOpen;

	/**
	 * What is known at the beginning.
	 *
	 * @param complaint whether some sign is there
	 */
	KnownFacts(SliceVariables variables, SliceRules rules, boolean complaint) {
		this.variables = variables;
		this.rules = rules;
		values = variables.begin();
		this.complaint = complaint;
		stands = new boolean[rules.verdictCount()];
		for (int group = 0; group < rules.strata.length; group++) {
			derive(rules.strata[group], rules.isLoop[group]);
		}
	}

	/** Findings that differ from others in some variables only. */
	private KnownFacts(int[] values, KnownFacts from, BitSet changed) {
		variables = from.variables;
		rules = from.rules;
		this.values = values;
		complaint = from.complaint || changed.stream().anyMatch(var -> variables.isFinding(var) && values[var] == Variable.PRESENT && variables.isSign(var));
		stands = from.stands.clone();
		BitSet groups = new BitSet();
		changed.stream().forEach(var -> Arrays.stream(rules.touched[var]).forEach(groups::set));
		for (int group = groups.nextSetBit(0); group >= 0; group = groups.nextSetBit(group + 1)) {
			for (int verdict : rules.strata[group]) {
				stands[verdict] = false;
			}
			derive(rules.strata[group], rules.isLoop[group]);
		}
	}

	private void derive(int[] group, boolean loop) {
		boolean changed = true;
		while (changed) {
			changed = false;
			for (int verdict : group) {
				if (!stands[verdict] && anyHolds(rules.bodies[verdict])) {
					stands[verdict] = true;
					changed = loop;
				}
			}
		}
	}

	private boolean anyHolds(int[] nodes) {
		for (int node : nodes) {
			if (rules.clauses.holds(node, this)) {
				return true;
			}
		}
		return false;
	}

	@Override
	public int value(int var) {
		return values[var];
	}

	@Override
	public boolean stands(int verdict) {
		return stands[verdict];
	}

	@Override
	public boolean mayFall(int verdict) {
		return false;
	}

	@Override
	public boolean mayStand(int verdict) {
		if (mayStand == null) {
			mayStand = stands.clone();
			boolean changed = true;
			while (changed) {
				changed = false;
				for (int other = 0; other < mayStand.length; other++) {
					if (!mayStand[other] && anyMayHold(rules.bodies[other])) {
						mayStand[other] = true;
						changed = true;
					}
				}
			}
		}
		return mayStand[verdict];
	}

	private boolean anyMayHold(int[] nodes) {
		for (int node : nodes) {
			if (rules.clauses.mayHold(node, this)) {
				return true;
			}
		}
		return false;
	}

	@Override
	public List<Verdict> verdicts() {
		return rules.program.standing(rules.program.derive(variables.cells(values), -1));
	}

	@Override
	public Object said() {
		return BitSet.valueOf(packed());
	}

	private long[] packed() {
		long[] bits = new long[(stands.length + 63) / 64];
		for (int verdict = 0; verdict < stands.length; verdict++) {
			bits[verdict / 64] |= stands[verdict] ? 1L << verdict : 0;
		}
		return bits;
	}

	@Override
	public boolean isMade(int finding) {
		return values[finding] != Program.OPEN;
	}

	@Override
	public boolean fits(int cause) {
		if (cause < rules.causeCount() && (has(cause, VerdictKind.CLEARED) || has(cause, VerdictKind.CONFIRMED))) {
			return !has(cause, VerdictKind.CLEARED);
		}
		return !isAnyConfirmed();
	}

	private boolean isAnyConfirmed() {
		if (anyConfirmed == null) {
			boolean any = false;
			for (int cause = 0; cause < rules.causeCount() && !any; cause++) {
				any = has(cause, VerdictKind.CONFIRMED);
			}
			anyConfirmed = any;
		}
		return anyConfirmed;
	}

	@Override
	public boolean has(int cause, VerdictKind kind) {
		int verdict = rules.verdict(cause, kind);
		return verdict >= 0 && stands[verdict];
	}

	@Override
	public boolean isSettled() {
		if (settled == null) {
			settled = false;
			for (int verdict = 0; verdict < stands.length && !settled; verdict++) {
				settled = rules.isEnd(verdict) && stands[verdict] && lasts(verdict);
			}
		}
		return settled;
	}

	/** Returns whether a verdict stands, whatever is found yet. */
	boolean lasts(int verdict) {
		return isLasting(verdict, new BitSet());
	}

	/** Whatever is found yet, it stands: it does not rest on another that may still come. */
	private boolean isLasting(int verdict, BitSet behind) {
		if (stands[verdict] && !behind.get(verdict)) {
			behind.set(verdict);
			for (int body : rules.bodies[verdict]) {
				if (rules.clauses.holds(body, this) && lasts(body, behind)) {
					return true;
				}
			}
		}
		return false;
	}

	private boolean lasts(int node, BitSet behind) {
		if (rules.clauses.isVariable(node)) {
			return rules.clauses.holds(node, this);
		} else if (rules.clauses.isVerdict(node)) {
			return rules.clauses.wantsVerdict(node) && isLasting(rules.clauses.about(node), behind);
		}
		boolean all = rules.clauses.wantsAll(node);
		for (int part : rules.clauses.parts(node)) {
			if (lasts(part, behind) != all) {
				return !all;
			}
		}
		return all;
	}

	// ---- what can be found -----------------------------------------------------------------------------------

	@Override
	public int[] open(BitSet causes) {
		return stillOpen().now(causes);
	}

	@Override
	public int[] ahead(BitSet causes) {
		return stillOpen().ahead(causes);
	}

	@Override
	public Object mattering(BitSet causes) {
		return stillOpen().mattering(causes);
	}

	private StillOpen stillOpen() {
		if (stillOpen == null) {
			stillOpen = new StillOpen(variables, rules, this);
		}
		return stillOpen;
	}

	@Override
	public int[] possible(int finding) {
		return variables.possible(values, finding);
	}

	@Override
	public Prospect.Known with(int finding, int value) {
		int[] more = values.clone();
		BitSet changed = new BitSet();
		variables.set(more, finding, value, changed);
		return new KnownFacts(more, this, changed);
	}

	@Override
	public Prospect.Known without(int finding) {
		int[] more = values.clone();
		BitSet changed = new BitSet();
		more[finding] = Clauses.LOST;
		changed.set(finding);
		return new KnownFacts(more, this, changed);
	}

	@Override
	public double[] least(double[] costs, int[] together, BitSet causes) {
		return new Cheapest(rules, this, costs, together).ends(causes);
	}

	@Override
	public double[] confirming(double[] costs, int[] together) {
		return new Cheapest(rules, this, costs, together).confirming();
	}

	int variableCount() {
		return values.length;
	}

	/** Returns whether everything is asked for, as there is no complaint yet. */
	boolean askedAboutAll() {
		return !complaint;
	}
}
