package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.BitSet;

import org.baywright.analysis.Variable;

/**
 * What would still matter where some findings are made: what the conditions look at by which rules may still come to say something.
 * Rules that ask for a sign are left aside unless they are about one that is there.
 */
final class StillOpen {

	private final SliceVariables variables;
	private final SliceRules rules;
	private final Clauses clauses;
	private final KnownFacts facts;
	private BitSet nowFor;
	private int[] now;
	private BitSet ripe;
	private BitSet ripened;
	private BitSet aheadFor;
	private int[] ahead;
	private Object mattering;
	/** The bodies of branches that were visited. */
	private BitSet waiting;
	/** Signs that are open and taken for present. */
	private BitSet supposed = new BitSet();
	/** The verdicts that rest on a sign that is there or is taken for present; {@code null} until somebody asks. */
	private BitSet restOnSign;

	StillOpen(SliceVariables variables, SliceRules rules, KnownFacts facts) {
		this.variables = variables;
		this.rules = rules;
		this.facts = facts;
		clauses = rules.clauses;
	}

	/** @see org.baywright.analysis.Prospect.Known#open */
	int[] now(BitSet causes) {
		look(causes);
		return now;
	}

	/** @see org.baywright.analysis.Prospect.Known#mattering */
	Object mattering(BitSet causes) {
		lookAhead(causes);
		return mattering;
	}

	/** @see org.baywright.analysis.Prospect.Known#ahead */
	int[] ahead(BitSet causes) {
		lookAhead(causes);
		return ahead;
	}

	/** Finds all that conditions look at or may come to, whatever signs are found. */
	private void lookAhead(BitSet causes) {
		if (!causes.equals(aheadFor)) {
			aheadFor = (BitSet) causes.clone();
			BitSet seen = visited(causes);
			for (BitSet signs = signs(seen); !signs.equals(supposed); signs = signs(seen)) {
				suppose(signs);
				seen = visited(causes);
			}
			suppose(new BitSet());
			ahead = openOf(seen);
			mattering = new Rest(rules, facts, seen, waiting).key();
		}
	}

	private BitSet signs(BitSet seen) {
		BitSet signs = (BitSet) supposed.clone();
		Arrays.stream(openOf(seen)).filter(variables::isSign).forEach(signs::set);
		return signs;
	}

	private void suppose(BitSet signs) {
		restOnSign = signs.equals(supposed) ? restOnSign : null;
		supposed = signs;
	}

	private void look(BitSet causes) {
		if (!causes.equals(nowFor)) {
			nowFor = (BitSet) causes.clone();
			ripe = new BitSet();
			ripened = new BitSet();
			BitSet seen = visited(causes);
			int[] ready = openOf(ripe);
			now = ready.length > 0 ? ready : openOf(seen);
			ripe = null;
		}
	}

	private int[] openOf(BitSet vars) {
		return vars.stream().filter(var -> variables.isFinding(var) && facts.value(var) == Program.OPEN).toArray();
	}

	/** Returns all that conditions look at by which rules may still come to say something of one of these causes, or refer. */
	private BitSet visited(BitSet causes) {
		waiting = new BitSet();
		BitSet seen = new BitSet();
		BitSet behind = new BitSet();
		for (int verdict = 0; verdict < rules.verdictCount(); verdict++) {
			int cause = rules.causeOf(verdict);
			if (!facts.stands(verdict) && (rules.isReferral(verdict) || cause >= 0 && causes.get(cause))) {
				visit(verdict, behind, seen);
			}
		}
		return seen;
	}

	private void visit(int verdict, BitSet behind, BitSet seen) {
		if (!behind.get(verdict)) {
			behind.set(verdict);
			for (int body : rules.bodies[verdict]) {
				if (!clauses.holds(body, facts) && clauses.mayHold(body, facts) && isAsked(body)) {
					waiting.set(body);
					visitBody(body, behind, seen);
					ripen(body);
				}
			}
		}
	}

	/** Notes what it is time for: a rule's conditions before its test, and none of them before the verdicts stand that it rests on. */
	private void ripen(int body) {
		if (ripe == null || ripened.get(body)) {
			return;
		}
		ripened.set(body);
		int[] parts = !clauses.isVariable(body) && !clauses.isVerdict(body) && clauses.wantsAll(body) ? clauses.parts(body) : new int[] { body };
		for (int part : parts) {
			if (clauses.wantsVerdict(part) && !clauses.holds(part, facts)) {
				return;
			}
		}
		int test = rules.testOf(body);
		boolean before = false;
		for (int part : parts) {
			boolean isTest = clauses.isVariable(part) && clauses.about(part) == test;
			if (!isTest && !clauses.isVerdict(part) && !clauses.holds(part, facts)) {
				before = true;
				clauses.eachLeaf(part, leaf -> {
					if (clauses.isVariable(leaf) && clauses.about(leaf) != test) {
						ripenFinding(clauses.about(leaf));
					}
				});
			}
		}
		if (!before && test >= 0) {
			ripe.set(test);
		}
	}

	/** When a test is done that is only given to a rule, the rules say that run it. */
	private void ripenFinding(int var) {
		int[] running = Arrays.stream(rules.runBy[var]).filter(body -> clauses.mayHold(body, facts) && isAsked(body)).toArray();
		if (running.length == 0 || facts.value(var) != Program.OPEN) {
			ripe.set(var);
		}
		for (int body : running) {
			ripen(body);
		}
	}

	private void visitBody(int node, BitSet behind, BitSet seen) {
		if (clauses.isVariable(node)) {
			seen.set(clauses.about(node));
		} else if (clauses.isVerdict(node)) {
			visit(clauses.about(node), behind, seen);
		} else {
			for (int part : clauses.parts(node)) {
				// what holds by findings alone holds for good, whatever else it asks for
				if (!clauses.isPlain(part) || !clauses.holds(part, facts)) {
					visitBody(part, behind, seen);
				}
			}
		}
	}

	/** Returns whether a rule is about something that is there: who has no complaint yet is asked about everything. */
	private boolean isAsked(int body) {
		return facts.askedAboutAll() || showsSign(body) || !rules.asksSign(body);
	}

	private boolean showsSign(int node) {
		if (clauses.isVariable(node)) {
			int var = clauses.about(node);
			return variables.isSign(var) && (facts.value(var) == Variable.PRESENT || supposed.get(var)) && clauses.holdsWith(node, Variable.PRESENT);
		} else if (clauses.isVerdict(node)) {
			return clauses.wantsVerdict(node) && restsOnSign(clauses.about(node));
		}
		for (int part : clauses.parts(node)) {
			if (showsSign(part)) {
				return true;
			}
		}
		return false;
	}

	/** Returns whether a verdict stands, or may come to, by a rule that is about something that is there. */
	private boolean restsOnSign(int verdict) {
		if (restOnSign == null) {
			restOnSign = new BitSet();
			for (int known = -1; known < restOnSign.cardinality();) {
				known = restOnSign.cardinality();
				for (int other = 0; other < rules.verdictCount(); other++) {
					if (!restOnSign.get(other) && anyAsked(rules.bodies[other])) {
						restOnSign.set(other);
					}
				}
			}
		}
		return restOnSign.get(verdict);
	}

	private boolean anyAsked(int[] nodes) {
		for (int body : nodes) {
			if (isAsked(body) && clauses.mayHold(body, facts)) {
				return true;
			}
		}
		return false;
	}
}
