package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.OptionalInt;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;

/** What lies ahead of one vehicle: a slice of its program, made small and quick. */
final class Lookahead implements Prospect.Ahead {

	private final RuleBase base;
	private final Program program;
	private final LawfulValues lawful;
	private final Slice slice;
	private final SliceVariables variables;
	private final SliceRules rules;
	private final Prospect.Known begin;

	Lookahead(RuleBase base, LawfulValues lawful, Slice slice) {
		this.base = base;
		this.lawful = lawful;
		this.slice = slice;
		program = slice.program;
		variables = new SliceVariables(lawful, slice);
		rules = new SliceRules(slice, variables);
		begin = new Facts(variables.begin(), slice.complaint);
	}

	@Override
	public List<String> causes() {
		return slice.causes;
	}

	@Override
	public List<Variable> findings() {
		return variables.findings;
	}

	@Override
	public int number(Variable finding) {
		return variables.findings.indexOf(finding);
	}

	@Override
	public List<Reading> values(int finding) {
		return Arrays.stream(variables.cellsOf.get(finding)).mapToObj(cell -> reading(finding, cell)).toList();
	}

	private Reading reading(int finding, int cell) {
		Variable variable = variables.findings.get(finding);
		int value = program.cells.get(variables.inProgram[finding]).example(cell);
		return switch (variable.kind()) {
		case SIGN -> new Reading.SignSeen(variable.name(), value == Variable.PRESENT, Span.NONE);
		case MODULE -> new Reading.ModuleAsked(variable.name(), value == Variable.ANSWERS, Span.NONE);
		case CODE -> new Reading.CodeRead(variable.name(), CodeReading.values()[value], Span.NONE);
		default -> {
			Domain domain = program.domains.get(variables.inProgram[finding]).orElseThrow();
			yield domain instanceof Domain.Quantity quantity && quantity.isNumber(value) ? new Reading.Measured(variable.name(), quantity.value(value), Span.NONE)
					: new Reading.Named(variable.name(), name(domain, value), Span.NONE);
		}
		};
	}

	private static String name(Domain domain, int value) {
		return domain.named().stream().map(named -> named.name()).filter(name -> domain.indexOf(name) == value).findFirst().orElseThrow();
	}

	@Override
	public IndexSet means(int finding, int value) {
		IndexSet cells = IndexSet.EMPTY;
		int[] valueOfCell = variables.valueOf.get(finding);
		for (int cell = 0; cell < valueOfCell.length; cell++) {
			cells = valueOfCell[cell] == value ? cells.union(Encoding.only(cell)) : cells;
		}
		return program.cells.get(variables.inProgram[finding]).values(cells);
	}

	@Override
	public OptionalInt value(int finding, Reading reading) {
		Noted alone = new Noted(base, program);
		int var = variables.inProgram[finding];
		return alone.put(reading).isPresent() || alone.cells()[var] == Program.OPEN ? OptionalInt.empty() : OptionalInt.of(variables.valueOf.get(finding)[alone.cells()[var]]);
	}

	@Override
	public boolean isTied(int finding) {
		return lawful.isTied(variables.inProgram[finding]);
	}

	@Override
	public Prospect.Known known() {
		return begin;
	}

	/** Findings as values of the slice's variables. */
	final class Facts implements Prospect.Known, Clauses.Facts {

		private final int[] values;
		private final boolean[] stands;
		private final boolean complaint;
		private boolean[] mayStand;
		private Boolean settled;
		private BitSet openFor;
		private int[] open;
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

		Facts(int[] values, boolean complaint) {
			this.values = values;
			this.complaint = complaint;
			stands = new boolean[rules.verdictCount()];
			for (int group = 0; group < rules.strata.length; group++) {
				derive(rules.strata[group], rules.isLoop[group]);
			}
		}

		/** Findings that differ from others in some variables only. */
		private Facts(int[] values, Facts from, BitSet changed) {
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
			boolean something = cause == rules.causeCount();
			if (!something && has(cause, VerdictKind.CLEARED)) {
				return false;
			}
			boolean other = false;
			for (int each = 0; each < rules.causeCount(); each++) {
				if (has(each, VerdictKind.CONFIRMED)) {
					if (each == cause) {
						return true;
					}
					other = true;
				}
			}
			return !other;
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

		// ---- what would still matter ---------------------------------------------------------------------------

		@Override
		public int[] open(BitSet causes) {
			look(causes);
			return open;
		}

		@Override
		public Object mattering(BitSet causes) {
			lookAhead(causes);
			return mattering;
		}

		@Override
		public int[] ahead(BitSet causes) {
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
				mattering = new Rest(rules, this, seen, waiting).key();
			}
		}

		private BitSet signs(BitSet seen) {
			BitSet signs = (BitSet) supposed.clone();
			Arrays.stream(openOf(seen)).filter(var -> variables.isSign(var)).forEach(signs::set);
			return signs;
		}

		private void suppose(BitSet signs) {
			restOnSign = signs.equals(supposed) ? restOnSign : null;
			supposed = signs;
		}

		private void look(BitSet causes) {
			if (!causes.equals(openFor)) {
				openFor = (BitSet) causes.clone();
				ripe = new BitSet();
				ripened = new BitSet();
				BitSet seen = visited(causes);
				int[] ready = openOf(ripe);
				open = ready.length > 0 ? ready : openOf(seen);
				ripe = null;
			}
		}

		private int[] openOf(BitSet vars) {
			return vars.stream().filter(var -> variables.isFinding(var) && values[var] == Program.OPEN).toArray();
		}

		/** Returns all that conditions look at by which rules may still come to say something of one of these causes, or refer. */
		private BitSet visited(BitSet causes) {
			waiting = new BitSet();
			BitSet seen = new BitSet();
			BitSet behind = new BitSet();
			for (int verdict = 0; verdict < stands.length; verdict++) {
				int cause = rules.causeOf(verdict);
				if (!stands[verdict] && (rules.isReferral(verdict) || cause >= 0 && causes.get(cause))) {
					visit(verdict, behind, seen);
				}
			}
			return seen;
		}

		private void visit(int verdict, BitSet behind, BitSet seen) {
			if (!behind.get(verdict)) {
				behind.set(verdict);
				for (int body : rules.bodies[verdict]) {
					if (!rules.clauses.holds(body, this) && rules.clauses.mayHold(body, this) && isAsked(body)) {
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
			int[] parts = !rules.clauses.isVariable(body) && !rules.clauses.isVerdict(body) && rules.clauses.wantsAll(body) ? rules.clauses.parts(body) : new int[] { body };
			for (int part : parts) {
				if (rules.clauses.wantsVerdict(part) && !rules.clauses.holds(part, this)) {
					return;
				}
			}
			int test = rules.testOf(body);
			boolean before = false;
			for (int part : parts) {
				boolean isTest = rules.clauses.isVariable(part) && rules.clauses.about(part) == test;
				if (!isTest && !rules.clauses.isVerdict(part) && !rules.clauses.holds(part, this)) {
					before = true;
					rules.clauses.eachLeaf(part, leaf -> {
						if (rules.clauses.isVariable(leaf) && rules.clauses.about(leaf) != test) {
							ripenFinding(rules.clauses.about(leaf));
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
			int[] running = Arrays.stream(rules.runBy[var]).filter(body -> rules.clauses.mayHold(body, this) && isAsked(body)).toArray();
			if (running.length == 0 || values[var] != Program.OPEN) {
				ripe.set(var);
			}
			for (int body : running) {
				ripen(body);
			}
		}

		private void visitBody(int node, BitSet behind, BitSet seen) {
			if (rules.clauses.isVariable(node)) {
				seen.set(rules.clauses.about(node));
			} else if (rules.clauses.isVerdict(node)) {
				visit(rules.clauses.about(node), behind, seen);
			} else {
				for (int part : rules.clauses.parts(node)) {
					// what holds by findings alone holds for good, whatever else it asks for
					if (!rules.clauses.isPlain(part) || !rules.clauses.holds(part, this)) {
						visitBody(part, behind, seen);
					}
				}
			}
		}

		/** Returns whether a rule is about something that is there: who has no complaint yet is asked about everything. */
		private boolean isAsked(int body) {
			return !complaint || showsSign(body) || !rules.asksSign(body);
		}

		private boolean showsSign(int node) {
			if (rules.clauses.isVariable(node)) {
				int var = rules.clauses.about(node);
				return variables.isSign(var) && (values[var] == Variable.PRESENT || supposed.get(var)) && rules.clauses.holdsWith(node, Variable.PRESENT);
			} else if (rules.clauses.isVerdict(node)) {
				return rules.clauses.wantsVerdict(node) && restsOnSign(rules.clauses.about(node));
			}
			for (int part : rules.clauses.parts(node)) {
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
					for (int other = 0; other < stands.length; other++) {
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
				if (isAsked(body) && rules.clauses.mayHold(body, this)) {
					return true;
				}
			}
			return false;
		}

		// ---- what can be found ---------------------------------------------------------------------------------

		@Override
		public int[] possible(int finding) {
			return variables.possible(values, finding);
		}

		@Override
		public Prospect.Known with(int finding, int value) {
			int[] more = values.clone();
			BitSet changed = new BitSet();
			variables.set(more, finding, value, changed);
			return new Facts(more, this, changed);
		}

		@Override
		public Prospect.Known without(int finding) {
			int[] more = values.clone();
			BitSet changed = new BitSet();
			SliceVariables.put(more, finding, Clauses.LOST, changed);
			return new Facts(more, this, changed);
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
}
