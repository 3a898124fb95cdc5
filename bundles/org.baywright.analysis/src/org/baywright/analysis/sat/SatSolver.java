package org.baywright.analysis.sat;

import java.util.concurrent.CancellationException;

import org.sat4j.core.VecInt;
import org.sat4j.minisat.SolverFactory;
import org.sat4j.specs.ContradictionException;
import org.sat4j.specs.ISolver;
import org.sat4j.specs.TimeoutException;

/** An incremental solver. Not safe for use by several threads at once. */
public final class SatSolver {

	/** The literal that always holds. */
	public static final int TRUE = 1;

	private final ISolver solver = SolverFactory.newDefault();
	private int variables;
	private boolean broken;
	private long questions;

	/** @param conflictLimit conflicts after which a question stays undecided, greater than 0 */
	public SatSolver(int conflictLimit) {
		solver.setTimeoutOnConflicts(conflictLimit);
		solver.setDBSimplificationAllowed(false);
		newLiteral();
		add(TRUE);
	}

	/** Returns a literal of a new variable. */
	public int newLiteral() {
		variables++;
		solver.registerLiteral(variables);
		return variables;
	}

	/** Demands that at least one of the literals holds. */
	public void add(int... literals) {
		if (broken) {
			return;
		}
		try {
			solver.addClause(new VecInt(literals));
		} catch (ContradictionException e) {
			broken = true; // no model, whatever is assumed
		}
	}

	/**
	 * Asks whether all clauses and all assumptions can hold together.
	 *
	 * @throws CancellationException if the thread was interrupted, as it is when nobody waits for the answer any more
	 */
	public Answer solve(int... assumptions) {
		if (Thread.currentThread().isInterrupted()) {
			throw new CancellationException();
		}
		questions++;
		if (broken) {
			return Answer.NO;
		}
		try {
			return solver.isSatisfiable(new VecInt(assumptions), false) ? Answer.YES : Answer.NO;
		} catch (TimeoutException e) {
			return Answer.UNDECIDED;
		}
	}

	/** Returns whether the literal holds in the model of the last question that was answered YES. */
	public boolean holds(int literal) {
		boolean value = solver.model(Math.abs(literal));
		return literal > 0 ? value : !value;
	}

	/** Returns how many questions were asked so far. */
	public long questions() {
		return questions;
	}
}
