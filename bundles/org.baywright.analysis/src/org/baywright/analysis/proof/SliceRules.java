package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.VerdictKind;

/** The branches of a slice, made quick, and the verdicts that they derive or look at, by number: each behind those that it rests on. Immutable. */
final class SliceRules {

	/** Of a verdict that is on no cause and no referral. */
	private static final int NOBODY = -2;
	private static final int REFERRAL = -1;

	final Program program;
	final Clauses clauses = new Clauses();
	/** For each verdict the bodies of the branches that derive it. */
	final int[][] bodies;
	/** Verdicts that are derived together, in order, and of each such stratum whether its verdicts may rest on each other. */
	final int[][] strata;
	final boolean[] isLoop;
	/** For each variable the numbers of the strata whose verdicts may come or go with it, in order. */
	final int[][] touched;
	/** For each variable the bodies of branches of rules that run it. */
	final int[][] runBy;

	private final Slice slice;
	private final SliceVariables variables;
	private final List<Integer> verdicts = new ArrayList<>();
	private final Map<Integer, Integer> verdictHere = new HashMap<>();
	/** For each body of a branch of a rule that runs a test the variable of this. */
	private final Map<Integer, Integer> testOf = new HashMap<>();
	/** The bodies of branches that ask for a sign, or for a verdict that may rest on one. */
	private final BitSet asksSign = new BitSet();
	/** For each cause its verdicts, confirmed, suspected and cleared; -1 where no rule says so. */
	private final int[][] ofCause;
	/** Verdicts whose coming or going is of interest: those on causes come with their cause, referrals with -1. */
	private final int[] causeOf;
	private final boolean[] isEnd;

	SliceRules(Slice slice, SliceVariables variables) {
		this.slice = slice;
		this.variables = variables;
		program = slice.program;
		strata = numberVerdicts();
		isLoop = new boolean[strata.length];
		for (int group = 0; group < isLoop.length; group++) {
			isLoop[group] = strata[group].length > 1 || program.strata.isLoop(new int[] { verdicts.get(strata[group][0]) });
		}
		bodies = compile();
		runBy = IntStream.range(0, variables.count()).mapToObj(this::runBy).toArray(int[][]::new);
		touched = touch();
		ofCause = slice.causes.stream().map(fault -> IntStream.range(0, VerdictKind.values().length)
				.map(kind -> verdictHere.getOrDefault(program.numberOf(new Verdict(fault, VerdictKind.values()[kind])), -1)).toArray()).toArray(int[][]::new);
		causeOf = verdicts.stream().mapToInt(verdict -> causeOf(program.verdicts.get(verdict))).toArray();
		isEnd = new boolean[verdicts.size()];
		for (int verdict = 0; verdict < isEnd.length; verdict++) {
			isEnd[verdict] = program.verdicts.get(verdicts.get(verdict)).isEnd();
		}
	}

	private int causeOf(Verdict verdict) {
		int cause = slice.causes.indexOf(verdict.fault());
		return verdict.isReferral() ? REFERRAL : cause >= 0 ? cause : NOBODY;
	}

	// ---- making it ready -------------------------------------------------------------------------------------

	private int[][] numberVerdicts() {
		BitSet used = new BitSet();
		slice.branches.stream().forEach(b -> {
			program.branches.get(b).verdicts().forEach(used::set);
			program.branches.get(b).body().eachLeaf(leaf -> {
				if (leaf instanceof Formula.Stands stands) {
					used.set(stands.verdict());
				}
			});
		});
		List<int[]> groups = new ArrayList<>();
		for (int[] group : program.strata.groups()) {
			int[] of = Arrays.stream(group).filter(used::get).map(verdict -> {
				verdictHere.put(verdict, verdicts.size());
				verdicts.add(verdict);
				return verdicts.size() - 1;
			}).toArray();
			if (of.length > 0) {
				groups.add(of);
			}
		}
		return groups.toArray(int[][]::new);
	}

	private int[][] compile() {
		Map<Integer, Integer> compiled = new HashMap<>();
		return verdicts.stream().map(verdict -> program.derivedBy.get(verdict).stream().filter(slice.branches::get)
				.mapToInt(b -> compiled.computeIfAbsent(b, this::compile)).toArray()).toArray(int[][]::new);
	}

	private int compile(int b) {
		int body = clauses.add(program.branches.get(b).body(), program, variables.here, variables.cellsOf, verdictHere::get);
		asksSign.set(body, findsSign(body));
		program.rules.get(program.branches.get(b).rule()).test().map(test -> program.numberOf(new Variable(Variable.Kind.TEST, test)))
				.filter(var -> var >= 0 && variables.here[var] >= 0).ifPresent(var -> testOf.put(body, variables.here[var]));
		return body;
	}

	private boolean findsSign(int node) {
		if (clauses.isVariable(node)) {
			return variables.isSign(clauses.about(node));
		} else if (clauses.isVerdict(node)) {
			return clauses.wantsVerdict(node);
		}
		for (int part : clauses.parts(node)) {
			if (findsSign(part)) {
				return true;
			}
		}
		return false;
	}

	private int[] runBy(int var) {
		return testOf.entrySet().stream().filter(entry -> entry.getValue() == var).mapToInt(Map.Entry::getKey).sorted().toArray();
	}

	private int[][] touch() {
		List<BitSet> varsOf = new ArrayList<>();
		for (int[] group : strata) {
			BitSet vars = new BitSet();
			for (int verdict : group) {
				for (int body : bodies[verdict]) {
					clauses.eachLeaf(body, leaf -> {
						if (clauses.isVariable(leaf)) {
							vars.set(clauses.about(leaf));
						} else if (groupOf(clauses.about(leaf)) < varsOf.size()) {
							vars.or(varsOf.get(groupOf(clauses.about(leaf))));
						}
					});
				}
			}
			varsOf.add(vars);
		}
		return IntStream.range(0, variables.count()).mapToObj(var -> IntStream.range(0, strata.length).filter(group -> varsOf.get(group).get(var)).toArray())
				.toArray(int[][]::new);
	}

	private int groupOf(int verdict) {
		int group = 0;
		while (Arrays.stream(strata[group]).noneMatch(other -> other == verdict)) {
			group++;
		}
		return group;
	}

	// ---- branches --------------------------------------------------------------------------------------------

	/** Returns the variable of the test that the rule of a branch runs, or -1. */
	int testOf(int body) {
		return testOf.getOrDefault(body, -1);
	}

	/** Returns whether a branch asks for a sign, or for a verdict that may rest on one. */
	boolean asksSign(int body) {
		return asksSign.get(body);
	}

	// ---- verdicts --------------------------------------------------------------------------------------------

	int verdictCount() {
		return bodies.length;
	}

	int causeCount() {
		return ofCause.length;
	}

	boolean isEnd(int verdict) {
		return isEnd[verdict];
	}

	boolean isReferral(int verdict) {
		return causeOf[verdict] == REFERRAL;
	}

	/** Returns the cause that a verdict is on, or a number below 0. */
	int causeOf(int verdict) {
		return causeOf[verdict];
	}

	/** Returns the verdict of a kind on a cause, or -1 where no rule says so. */
	int verdict(int cause, VerdictKind kind) {
		return ofCause[cause][kind.ordinal()];
	}

	int confirmed(int cause) {
		return verdict(cause, VerdictKind.CONFIRMED);
	}

	int cleared(int cause) {
		return verdict(cause, VerdictKind.CLEARED);
	}
}
