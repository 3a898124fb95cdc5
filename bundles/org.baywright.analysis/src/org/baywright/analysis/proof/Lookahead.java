package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;

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

/**
 * What lies ahead of one vehicle: a slice of its program, made small and quick. Values that neither a rule of the slice nor a
 * law tells apart are one.
 */
final class Lookahead implements Prospect.Ahead {

	/** Of a verdict that is on no cause and no referral. */
	private static final int NOBODY = -2;
	private static final int REFERRAL = -1;

	private final RuleBase base;
	private final Program program;
	private final LawfulValues lawful;
	private final Slice slice;
	private final Prospect.Known begin;

	// ---- variables: what may be asked for comes first, in order ----
	private final List<Variable> findings;
	/** For each variable its number in the program. */
	private final int[] vars;
	/** For each variable the cells of the program that its values stand for, and for each cell of the program its value. */
	private final List<int[]> cellsOf = new ArrayList<>();
	private final List<int[]> valueOf = new ArrayList<>();
	/** For each variable that of the module that is asked for it; -1 for others. */
	private final int[] moduleOf;
	/** For each variable what it may be whatever is found of others; {@code null} where laws tie it to others. */
	private final List<int[]> free = new ArrayList<>();

	// ---- verdicts and branches ----
	private final List<Integer> verdicts = new ArrayList<>();
	private final Map<Integer, Integer> verdictHere = new HashMap<>();
	private final Clauses clauses = new Clauses();
	/** For each verdict the bodies of the branches that derive it. */
	private final List<int[]> bodies = new ArrayList<>();
	/** For each body of a branch of a rule that runs a test the variable of this. */
	private final Map<Integer, Integer> testOf = new HashMap<>();
	/** For each variable the bodies of branches of rules that run it. */
	private final List<int[]> runBy = new ArrayList<>();
	/** The bodies of branches that ask for a sign, or for a verdict that may rest on one. */
	private final BitSet asksSign = new BitSet();
	private final List<int[]> strata = new ArrayList<>();
	private final boolean[] isLoop;
	/** For each variable the numbers of the strata whose verdicts may come or go with it, in order. */
	private final List<int[]> touched = new ArrayList<>();
	/** For each cause its verdicts, confirmed, suspected and cleared; -1 where no rule says so. */
	private final int[][] ofCause;
	/** Verdicts whose coming or going is of interest: those on causes come with their cause, referrals with -1. */
	private final int[] causeOf;
	private final boolean[] isEnd;

	Lookahead(RuleBase base, Program program, LawfulValues lawful, Slice slice) {
		this.base = base;
		this.program = program;
		this.lawful = lawful;
		this.slice = slice;
		List<Integer> order = new ArrayList<>(slice.asked.stream().boxed().sorted((a, b) -> program.variables.get(a).compareTo(program.variables.get(b))).toList());
		findings = order.stream().map(program.variables::get).toList();
		mentioned().stream().filter(var -> !slice.asked.get(var)).forEach(order::add);
		vars = order.stream().mapToInt(Integer::intValue).toArray();
		int[] here = new int[program.variables.size()];
		Arrays.fill(here, -1);
		for (int var = 0; var < vars.length; var++) {
			here[vars[var]] = var;
		}
		moduleOf = Arrays.stream(vars).map(var -> program.moduleOf[var] < 0 ? -1 : here[program.moduleOf[var]]).toArray();
		for (int var : vars) {
			cutValues(var);
		}
		numberVerdicts();
		isLoop = new boolean[strata.size()];
		for (int group = 0; group < isLoop.length; group++) {
			isLoop[group] = strata.get(group).length > 1 || program.strata.isLoop(new int[] { verdicts.get(strata.get(group)[0]) });
		}
		compile(here);
		for (int var = 0; var < vars.length; var++) {
			int of = var;
			runBy.add(testOf.entrySet().stream().filter(entry -> entry.getValue() == of).mapToInt(Map.Entry::getKey).sorted().toArray());
		}
		touch();
		ofCause = slice.causes.stream().map(fault -> IntStream.range(0, VerdictKind.values().length)
				.map(kind -> verdictHere.getOrDefault(program.numberOf(new Verdict(fault, VerdictKind.values()[kind])), -1)).toArray()).toArray(int[][]::new);
		causeOf = verdicts.stream().mapToInt(verdict -> causeOf(program.verdicts.get(verdict))).toArray();
		isEnd = new boolean[verdicts.size()];
		for (int verdict = 0; verdict < isEnd.length; verdict++) {
			isEnd[verdict] = program.verdicts.get(verdicts.get(verdict)).isEnd();
		}
		int[] values = new int[vars.length];
		for (int var = 0; var < vars.length; var++) {
			values[var] = slice.cells[vars[var]] == Program.OPEN ? Program.OPEN : valueOf.get(var)[slice.cells[vars[var]]];
			free.add(lawful.isTied(vars[var]) ? null : possible(slice.cells.clone(), var));
		}
		begin = new Facts(values);
	}

	private int causeOf(Verdict verdict) {
		int cause = slice.causes.indexOf(verdict.fault());
		return verdict.isReferral() ? REFERRAL : cause >= 0 ? cause : NOBODY;
	}

	/** Returns the variables that branches of the slice look at, with the modules of codes, ascending. */
	private List<Integer> mentioned() {
		BitSet mentioned = new BitSet();
		slice.branches.stream().forEach(b -> program.branches.get(b).body().eachLeaf(leaf -> {
			if (leaf instanceof Formula.Known lit && lit.var() >= 0 && (slice.cells[lit.var()] != Program.OPEN || slice.asked.get(lit.var()))) {
				mentioned.set(lit.var());
			}
		}));
		mentioned.or(slice.asked);
		for (int var : mentioned.stream().toArray()) {
			if (program.moduleOf[var] >= 0) {
				mentioned.set(program.moduleOf[var]);
			}
		}
		return mentioned.stream().boxed().toList();
	}

	// ---- making it ready -------------------------------------------------------------------------------------

	/** Cells with which every branch of the slice holds alike are one value, if no law tells them apart. */
	private void cutValues(int var) {
		int count = program.cells.get(var).count();
		List<Formula.Known> literals = new ArrayList<>();
		slice.branches.stream().forEach(b -> program.branches.get(b).body().eachLeaf(leaf -> {
			if (leaf instanceof Formula.Known lit && lit.var() == var) {
				literals.add(lit);
			}
		}));
		boolean code = program.moduleOf[var] >= 0;
		boolean merges = !lawful.isTied(var) && (code || program.variables.get(var).kind() == Variable.Kind.TEST);
		Map<List<Boolean>, Integer> classes = new HashMap<>();
		List<Integer> first = new ArrayList<>();
		int[] value = new int[count];
		for (int cell = 0; cell < count; cell++) {
			int of = cell;
			List<Boolean> shows = literals.stream().map(lit -> lit.cells().contains(of)).toList();
			boolean alone = !merges || code && (cell == Variable.PRESENT || cell == Variable.UNREAD);
			Integer known = alone ? null : classes.get(shows);
			if (known == null) {
				known = first.size();
				first.add(cell);
				if (!alone) {
					classes.put(shows, known);
				}
			}
			value[cell] = known;
		}
		cellsOf.add(first.stream().mapToInt(Integer::intValue).toArray());
		valueOf.add(value);
	}

	private void numberVerdicts() {
		BitSet used = new BitSet();
		slice.branches.stream().forEach(b -> {
			program.branches.get(b).verdicts().forEach(used::set);
			program.branches.get(b).body().eachLeaf(leaf -> {
				if (leaf instanceof Formula.Stands stands) {
					used.set(stands.verdict());
				}
			});
		});
		for (int[] group : program.strata.groups()) {
			int[] of = Arrays.stream(group).filter(used::get).map(verdict -> {
				verdictHere.put(verdict, verdicts.size());
				verdicts.add(verdict);
				return verdicts.size() - 1;
			}).toArray();
			if (of.length > 0) {
				strata.add(of);
			}
		}
	}

	private void compile(int[] here) {
		Map<Integer, Integer> compiled = new HashMap<>();
		for (int verdict : verdicts) {
			bodies.add(program.derivedBy.get(verdict).stream().filter(slice.branches::get).mapToInt(b -> compiled.computeIfAbsent(b, key -> {
				int body = clauses.add(program.branches.get(key).body(), program, here, cellsOf, verdictHere::get);
				asksSign.set(body, asksSign(body));
				program.rules.get(program.branches.get(key).rule()).test().map(test -> program.numberOf(new Variable(Variable.Kind.TEST, test)))
						.filter(var -> var >= 0 && here[var] >= 0).ifPresent(var -> testOf.put(body, here[var]));
				return body;
			})).toArray());
		}
	}

	private void touch() {
		List<BitSet> varsOf = new ArrayList<>();
		for (int group = 0; group < strata.size(); group++) {
			BitSet vars = new BitSet();
			for (int verdict : strata.get(group)) {
				for (int body : bodies.get(verdict)) {
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
		for (int var = 0; var < vars.length; var++) {
			int of = var;
			touched.add(IntStream.range(0, strata.size()).filter(group -> varsOf.get(group).get(of)).toArray());
		}
	}

	private int groupOf(int verdict) {
		int group = 0;
		while (Arrays.stream(strata.get(group)).noneMatch(other -> other == verdict)) {
			group++;
		}
		return group;
	}

	// ---- what can be asked -----------------------------------------------------------------------------------

	@Override
	public List<String> causes() {
		return slice.causes;
	}

	@Override
	public List<Variable> findings() {
		return findings;
	}

	@Override
	public int number(Variable finding) {
		return findings.indexOf(finding);
	}

	@Override
	public List<Reading> values(int finding) {
		return Arrays.stream(cellsOf.get(finding)).mapToObj(cell -> reading(finding, cell)).toList();
	}

	private Reading reading(int finding, int cell) {
		Variable variable = findings.get(finding);
		int value = program.cells.get(vars[finding]).example(cell);
		return switch (variable.kind()) {
		case SIGN -> new Reading.SignSeen(variable.name(), value == Variable.PRESENT, Span.NONE);
		case MODULE -> new Reading.ModuleAsked(variable.name(), value == Variable.ANSWERS, Span.NONE);
		case CODE -> new Reading.CodeRead(variable.name(), CodeReading.values()[value], Span.NONE);
		default -> {
			Domain domain = program.domains.get(vars[finding]).orElseThrow();
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
		int[] valueOfCell = valueOf.get(finding);
		for (int cell = 0; cell < valueOfCell.length; cell++) {
			cells = valueOfCell[cell] == value ? cells.union(Encoding.only(cell)) : cells;
		}
		return program.cells.get(vars[finding]).values(cells);
	}

	@Override
	public OptionalInt value(int finding, Reading reading) {
		Noted alone = new Noted(base, program);
		int var = vars[finding];
		return alone.put(reading).isPresent() || alone.cells()[var] == Program.OPEN ? OptionalInt.empty() : OptionalInt.of(valueOf.get(finding)[alone.cells()[var]]);
	}

	@Override
	public boolean isTied(int finding) {
		return lawful.isTied(vars[finding]);
	}

	@Override
	public Prospect.Known known() {
		return begin;
	}

	/** @param cells what is known, in cells of the program */
	private int[] possible(int[] cells, int var) {
		int[] value = valueOf.get(var);
		return lawful.possible(cells, vars[var]).stream().mapToInt(cell -> value[cell]).distinct().sorted().toArray();
	}

	private boolean asksSign(int node) {
		if (clauses.isVariable(node)) {
			return isSign(node);
		} else if (clauses.isVerdict(node)) {
			return clauses.wantsVerdict(node);
		}
		for (int part : clauses.parts(node)) {
			if (asksSign(part)) {
				return true;
			}
		}
		return false;
	}

	private boolean isSign(int node) {
		return isSignal(program.variables.get(vars[clauses.about(node)]));
	}

	private static boolean isSignal(Variable variable) {
		return variable.kind() == Variable.Kind.SIGN;
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

		Facts(int[] values) {
			this.values = values;
			boolean there = slice.complaint;
			for (int var = 0; var < findings.size() && !there; var++) {
				there = values[var] == Variable.PRESENT && isSignal(findings.get(var));
			}
			complaint = there;
			stands = new boolean[verdicts.size()];
			for (int group = 0; group < strata.size(); group++) {
				derive(strata.get(group), isLoop[group]);
			}
		}

		/** Findings that differ from others in some variables only. */
		private Facts(int[] values, Facts from, BitSet changed) {
			this.values = values;
			complaint = from.complaint || changed.stream().anyMatch(var -> var < findings.size() && values[var] == Variable.PRESENT && isSignal(findings.get(var)));
			stands = from.stands.clone();
			BitSet groups = new BitSet();
			changed.stream().forEach(var -> Arrays.stream(touched.get(var)).forEach(groups::set));
			for (int group = groups.nextSetBit(0); group >= 0; group = groups.nextSetBit(group + 1)) {
				for (int verdict : strata.get(group)) {
					stands[verdict] = false;
				}
				derive(strata.get(group), isLoop[group]);
			}
		}

		private void derive(int[] group, boolean loop) {
			boolean changed = true;
			while (changed) {
				changed = false;
				for (int verdict : group) {
					if (!stands[verdict] && anyHolds(bodies.get(verdict))) {
						stands[verdict] = true;
						changed = loop;
					}
				}
			}
		}

		private boolean anyHolds(int[] nodes) {
			for (int node : nodes) {
				if (clauses.holds(node, this)) {
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
						if (!mayStand[other] && anyMayHold(bodies.get(other))) {
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
				if (clauses.mayHold(node, this)) {
					return true;
				}
			}
			return false;
		}

		@Override
		public List<Verdict> verdicts() {
			int[] cells = cells();
			return program.standing(program.derive(cells, -1));
		}

		private int[] cells() {
			int[] cells = slice.cells.clone();
			for (int var = 0; var < values.length; var++) {
				cells[vars[var]] = values[var] < 0 ? Program.OPEN : cellsOf.get(var)[values[var]];
			}
			return cells;
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
			boolean something = cause == ofCause.length;
			if (!something && has(cause, VerdictKind.CLEARED)) {
				return false;
			}
			boolean other = false;
			for (int each = 0; each < ofCause.length; each++) {
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
			int verdict = ofCause[cause][kind.ordinal()];
			return verdict >= 0 && stands[verdict];
		}

		@Override
		public boolean isSettled() {
			if (settled == null) {
				settled = false;
				for (int verdict = 0; verdict < stands.length && !settled; verdict++) {
					settled = isEnd[verdict] && stands[verdict] && lasts(verdict);
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
				for (int body : bodies.get(verdict)) {
					if (clauses.holds(body, this) && lasts(body, behind)) {
						return true;
					}
				}
			}
			return false;
		}

		private boolean lasts(int node, BitSet behind) {
			if (clauses.isVariable(node)) {
				return clauses.holds(node, this);
			} else if (clauses.isVerdict(node)) {
				return clauses.wantsVerdict(node) && isLasting(clauses.about(node), behind);
			}
			boolean all = clauses.wantsAll(node);
			for (int part : clauses.parts(node)) {
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
				mattering = new Rest(this, seen, waiting).key();
			}
		}

		private BitSet signs(BitSet seen) {
			BitSet signs = (BitSet) supposed.clone();
			Arrays.stream(openOf(seen)).filter(var -> isSignal(findings.get(var))).forEach(signs::set);
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
			return vars.stream().filter(var -> var < findings.size() && values[var] == Program.OPEN).toArray();
		}

		/** Returns all that conditions look at by which rules may still come to say something of one of these causes, or refer. */
		private BitSet visited(BitSet causes) {
			waiting = new BitSet();
			BitSet seen = new BitSet();
			BitSet behind = new BitSet();
			for (int verdict = 0; verdict < stands.length; verdict++) {
				int cause = causeOf[verdict];
				if (!stands[verdict] && (cause == REFERRAL || cause >= 0 && causes.get(cause))) {
					visit(verdict, behind, seen);
				}
			}
			return seen;
		}

		private void visit(int verdict, BitSet behind, BitSet seen) {
			if (!behind.get(verdict)) {
				behind.set(verdict);
				for (int body : bodies.get(verdict)) {
					if (!clauses.holds(body, this) && clauses.mayHold(body, this) && isAsked(body)) {
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
				if (clauses.wantsVerdict(part) && !clauses.holds(part, this)) {
					return;
				}
			}
			int test = testOf.getOrDefault(body, -1);
			boolean before = false;
			for (int part : parts) {
				boolean isTest = clauses.isVariable(part) && clauses.about(part) == test;
				if (!isTest && !clauses.isVerdict(part) && !clauses.holds(part, this)) {
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
			int[] running = Arrays.stream(runBy.get(var)).filter(body -> clauses.mayHold(body, this) && isAsked(body)).toArray();
			if (running.length == 0 || values[var] != Program.OPEN) {
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
					if (!clauses.isPlain(part) || !clauses.holds(part, this)) {
						visitBody(part, behind, seen);
					}
				}
			}
		}

		/** Returns whether a rule is about something that is there: who has no complaint yet is asked about everything. */
		private boolean isAsked(int body) {
			return !complaint || showsSign(body) || !asksSign.get(body);
		}

		private boolean showsSign(int node) {
			if (clauses.isVariable(node)) {
				int var = clauses.about(node);
				return isSign(node) && (values[var] == Variable.PRESENT || supposed.get(var)) && clauses.holdsWith(node, Variable.PRESENT);
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
					for (int other = 0; other < stands.length; other++) {
						if (!restOnSign.get(other) && anyAsked(bodies.get(other))) {
							restOnSign.set(other);
						}
					}
				}
			}
			return restOnSign.get(verdict);
		}

		private boolean anyAsked(int[] nodes) {
			for (int body : nodes) {
				if (isAsked(body) && clauses.mayHold(body, this)) {
					return true;
				}
			}
			return false;
		}

		// ---- what can be found ---------------------------------------------------------------------------------

		@Override
		public int[] possible(int finding) {
			int module = moduleOf[finding];
			boolean asked = module >= 0 && values[module] >= 0;
			if (free.get(finding) != null && !asked) {
				return free.get(finding);
			}
			return Lookahead.this.possible(cells(), finding);
		}

		@Override
		public Prospect.Known with(int finding, int value) {
			int[] more = values.clone();
			BitSet changed = new BitSet();
			set(more, finding, value, changed);
			boolean isModule = findings.get(finding).kind() == Variable.Kind.MODULE;
			int module = isModule ? finding : moduleOf[finding];
			if (module >= 0) {
				boolean silent = isModule ? value == Variable.SILENT : cellsOf.get(finding)[value] == Variable.UNREAD;
				set(more, module, valueOf.get(module)[silent ? Variable.SILENT : Variable.ANSWERS], changed);
				for (int code = 0; silent && code < more.length; code++) {
					if (moduleOf[code] == module) {
						set(more, code, valueOf.get(code)[Variable.UNREAD], changed);
					}
				}
			}
			return new Facts(more, this, changed);
		}

		private static void set(int[] values, int var, int value, BitSet changed) {
			values[var] = value;
			changed.set(var);
		}

		@Override
		public Prospect.Known without(int finding) {
			int[] more = values.clone();
			BitSet changed = new BitSet();
			set(more, finding, Clauses.LOST, changed);
			return new Facts(more, this, changed);
		}

		@Override
		public double[] least(double[] costs, int[] together, BitSet causes) {
			return new Cheapest(this, costs, together).ends(causes);
		}

		@Override
		public double[] confirming(double[] costs, int[] together) {
			return new Cheapest(this, costs, together).confirming();
		}

		Clauses clauses() {
			return clauses;
		}

		int variableCount() {
			return values.length;
		}

		int verdictCount() {
			return stands.length;
		}

		int causeCount() {
			return ofCause.length;
		}

		int[] bodies(int verdict) {
			return bodies.get(verdict);
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

		int confirmed(int cause) {
			return ofCause[cause][VerdictKind.CONFIRMED.ordinal()];
		}

		int cleared(int cause) {
			return ofCause[cause][VerdictKind.CLEARED.ordinal()];
		}

		/** Returns whether everything is asked for, as there is no complaint yet. */
		boolean askedAboutAll() {
			return !complaint;
		}
	}
}
