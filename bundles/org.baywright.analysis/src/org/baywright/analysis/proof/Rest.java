package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.BitSet;

/**
 * What is left of the rules once some findings are made and only some others can still be: two vehicles on which the same is
 * left, and the same verdicts stand, have the same verdicts after the same findings.
 */
final class Rest implements Clauses.Facts {

	/** What stands for the value of a variable that makes no difference. */
	private static final int LOOKED_PAST = -3;

	private final SliceRules rules;
	private final KnownFacts facts;
	private final Clauses clauses;
	private final BitSet findable;
	private final boolean[] mayStand;
	private final int[] values;
	private final BitSet waiting = new BitSet();
	private final BitSet asking;

	/**
	 * @param findable what may still be found, and what was found of that kind
	 * @param asking bodies of branches by which that is asked for
	 */
	Rest(SliceRules rules, KnownFacts facts, BitSet findable, BitSet asking) {
		this.rules = rules;
		this.facts = facts;
		this.findable = findable;
		this.asking = asking;
		clauses = rules.clauses;
		mayStand = new boolean[rules.verdictCount()];
		for (boolean changed = true; changed;) {
			changed = false;
			for (int verdict = 0; verdict < mayStand.length; verdict++) {
				if (!mayStand[verdict] && (facts.stands(verdict) || anyMayHold(verdict))) {
					mayStand[verdict] = true;
					changed = true;
				}
			}
		}
		values = new int[facts.variableCount()];
		for (int var = 0; var < values.length; var++) {
			values[var] = findable.get(var) ? facts.value(var) : LOOKED_PAST;
		}
		for (int verdict = 0; verdict < mayStand.length; verdict++) {
			for (int body : rules.bodies[verdict]) {
				if (clauses.holds(body, this) ? clauses.wantsAbsence(body) : clauses.mayHold(body, this)) {
					waiting.set(body);
					note(body);
				}
			}
		}
	}

	private boolean anyMayHold(int verdict) {
		for (int body : rules.bodies[verdict]) {
			if (clauses.mayHold(body, this)) {
				return true;
			}
		}
		return false;
	}

	/** What holds by findings alone holds for good: that the branch waits tells enough of it. */
	private void note(int node) {
		if (clauses.isVariable(node)) {
			values[clauses.about(node)] = facts.value(clauses.about(node));
		} else if (!clauses.isVerdict(node)) {
			for (int part : clauses.parts(node)) {
				if (!clauses.isPlain(part) || !clauses.holds(part, this)) {
					note(part);
				}
			}
		}
	}

	/** Returns what is equal where the same is left. */
	Object key() {
		return new Key(values, waiting, asking);
	}

	@Override
	public int value(int var) {
		int value = facts.value(var);
		return value == Program.OPEN && !findable.get(var) ? Clauses.LOST : value;
	}

	@Override
	public boolean stands(int verdict) {
		return facts.stands(verdict);
	}

	@Override
	public boolean mayStand(int verdict) {
		return mayStand[verdict];
	}

	@Override
	public boolean mayFall(int verdict) {
		return !facts.lasts(verdict);
	}

	private record Key(int[] values, BitSet waiting, BitSet asking) {

		@Override
		public boolean equals(Object other) {
			return other instanceof Key key && Arrays.equals(values, key.values) && waiting.equals(key.waiting) && asking.equals(key.asking);
		}

		@Override
		public int hashCode() {
			return 31 * (31 * Arrays.hashCode(values) + waiting.hashCode()) + asking.hashCode();
		}
	}
}
