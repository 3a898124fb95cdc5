package org.baywright.analysis.proof;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.model.Condition;
import org.baywright.model.Exclusive;
import org.baywright.model.Family;
import org.baywright.model.Law;
import org.baywright.model.Meaning;
import org.baywright.model.Repair;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Scope;
import org.baywright.model.Sign;
import org.baywright.model.Test;
import org.baywright.model.Trait;

/**
 * Cuts a rule base into parts, proves those not proved before and lets the checks report. What was proved is kept from
 * run to run under the meaning of the part, so that an edit costs what it can reach.
 */
public final class Engine {

	/** What a run found. */
	public record Outcome(List<Flaw> flaws, List<CaseResult> cases, int parts, int proved) {
	}

	private final List<Check> checks;
	private final int threads;
	private final int conflictLimit;
	private final RuleMemory memory = new RuleMemory();
	private Map<Law, Footprint> lawPrints = new IdentityHashMap<>();
	private Map<Law, Key> lawKeys = new IdentityHashMap<>();
	private Map<Key, Component> known = new HashMap<>();
	private Map<String, FamilyParts> families = new HashMap<>();

	/**
	 * @param checks checks to make, in order
	 * @param threads provers at work at once, 1 or more
	 * @param conflictLimit conflicts after which a question stays undecided, 1 or more
	 */
	public Engine(List<Check> checks, int threads, int conflictLimit) {
		this.checks = List.copyOf(checks);
		this.threads = threads;
		this.conflictLimit = conflictLimit;
	}

	/**
	 * Checks a rule base.
	 *
	 * @throws CancellationException if the listener asked to stop; what was proved until then is kept
	 */
	public Outcome run(RuleBase base, Listener listener) {
		memory.learn(base);
		rememberLaws(base);
		String exclusives = base.exclusives().stream().map(Exclusive::faults).toList().toString();
		Key common = Key.of(exclusives);
		Map<String, FamilyParts> now = new LinkedHashMap<>();
		Map<Key, Component> used = new LinkedHashMap<>();
		Map<Component, Draft> toProve = new LinkedHashMap<>();
		for (Family family : base.vehicleFamilies()) {
			FamilyParts parts = partsOf(base, family.name(), memory.rulesOf(family.name()), common, toProve);
			now.put(family.name(), parts);
			for (Component part : parts.parts()) {
				if (used.put(part.key, part) == null) {
					part.forgetFamilies();
				}
				part.addFamily(family.name());
			}
		}
		try {
			prove(base, toProve, listener);
		} finally {
			known.values().removeIf(part -> !part.proved);
		}
		known = used;
		families = now;
		Checked checked = new Checked(base, List.copyOf(used.values()), now, memory, conflictLimit);
		lookAtEachRule(checked);
		for (Check check : checks) {
			if (listener.isCancelled()) {
				throw new CancellationException();
			}
			if (!(check instanceof EachRule)) {
				check.report(checked);
			}
		}
		return new Outcome(checked.flaws(), checked.cases(), used.size(), toProve.size());
	}

	private void lookAtEachRule(Checked checked) {
		List<EachRule> single = checks.stream().filter(EachRule.class::isInstance).map(EachRule.class::cast).toList();
		for (RuleFacts facts : memory.rules()) {
			if (!facts.isQuiet) {
				int before = checked.flaws().size();
				single.forEach(check -> check.report(checked, facts.rule));
				facts.isQuiet = checked.flaws().size() == before;
			}
		}
	}

	private void rememberLaws(RuleBase base) {
		Map<Law, Footprint> prints = new IdentityHashMap<>();
		Map<Law, Key> keys = new IdentityHashMap<>();
		Map<Variable, Key> described = new HashMap<>();
		for (Law law : base.laws()) {
			Footprint print = Optional.ofNullable(lawPrints.get(law)).orElseGet(() -> Footprint.of(law));
			prints.put(law, print);
			keys.put(law, RuleMemory.bind(base, print, described)); // a test may have other values than before
		}
		lawPrints = prints;
		lawKeys = keys;
	}

	/** Laws made up while cutting are not remembered; they speak of traits alone. */
	private Footprint printOf(Law law) {
		Footprint print = lawPrints.get(law);
		return print == null ? Footprint.of(law) : print;
	}

	private FamilyParts partsOf(RuleBase base, String family, List<Rule> rules, Key common,
			Map<Component, Draft> toProve) {
		List<Law> laws = base.laws().stream().filter(law -> base.reaches(law.families(), family)).toList();
		List<Key> sequence = new ArrayList<>(rules.size() + laws.size() + 1);
		sequence.add(common);
		rules.forEach(rule -> sequence.add(memory.of(rule).key));
		laws.forEach(law -> sequence.add(lawKeys.get(law)));
		Key signature = Key.sequence(sequence, family + traits(base, family) + fitted(base, family));
		FamilyParts before = families.get(family);
		if (before != null && before.signature.equals(signature)) {
			return before;
		}
		List<Draft> drafts = new Partition(base, family, rule -> memory.of(rule).print, this::printOf).cut(rules, laws,
				base.exclusives());
		List<Component> parts = new ArrayList<>();
		for (Draft draft : drafts) {
			List<Key> meanings = new ArrayList<>();
			draft.rules().forEach(rule -> meanings.add(memory.of(rule).key));
			draft.laws().forEach(law -> meanings.add(keyOf(law)));
			draft.limits().forEach(limit -> meanings.add(Key.of(printOf(limit.law()).text() + limit.line())));
			Key key = Key.of(meanings, usedTraits(base, family, draft) + draft.exclusives() + mends(base, family, draft));
			Component part = known.get(key);
			if (part == null) {
				part = new Component(key, draft.rules().stream().map(Rule::name).toList());
				known.put(key, part);
				toProve.put(part, draft);
			}
			parts.add(part);
		}
		return new FamilyParts(signature, parts, drafts,
				new Draft(family, rules, laws, base.exclusives().stream().map(Exclusive::faults).toList()));
	}

	private Key keyOf(Law law) {
		Key key = lawKeys.get(law);
		return key == null ? Key.of(printOf(law).text()) : key;
	}

	private static String traits(RuleBase base, String family) {
		StringBuilder text = new StringBuilder();
		for (Trait trait : base.traitsOf(family).values()) {
			text.append(trait.name()).append(Meaning.text(trait.domain()));
		}
		return text.toString();
	}

	/** Families that differ only in traits a part does not speak of share its proof. */
	private String usedTraits(RuleBase base, String family, Draft draft) {
		Map<String, String> used = new java.util.TreeMap<>();
		draft.rules().forEach(rule -> Footprint.traits(base, memory.of(rule).print).forEach(trait -> used.put(trait, "")));
		Stream.concat(draft.laws().stream(), draft.limits().stream().map(Limit::law))
				.forEach(law -> Footprint.traits(base, printOf(law)).forEach(trait -> used.put(trait, "")));
		used.replaceAll((name, unused) -> Optional.ofNullable(base.traitsOf(family).get(name))
				.map(trait -> Meaning.text(trait.domain())).orElse("-"));
		return used + fitted(base, family);
	}

	/** Returns for which vehicles the repairs for the faults of a part are meant, where that is not for all. */
	private String mends(RuleBase base, String family, Draft draft) {
		StringBuilder text = new StringBuilder();
		draft.rules().stream().flatMap(rule -> memory.of(rule).print.faults().stream()).distinct().sorted()
				.forEach(fault -> base.repairsOf(fault).stream().map(Repair::scope).filter(scope -> !scope.isEvery())
						.forEach(scope -> text.append(fault).append(base.reaches(scope, family)).append(Meaning.text(scope))));
		return text.toString();
	}

	private static String fitted(RuleBase base, String family) {
		StringBuilder fitted = new StringBuilder();
		for (org.baywright.model.Module module : base.modules()) {
			if (!module.families().isEmpty()) {
				fitted.append(base.reaches(module.families(), family) ? '1' : '0');
			}
		}
		Stream.concat(base.signs().stream().map(Sign::scope), base.tests().stream().map(base::scopeOf)).filter(scope -> !scope.isEvery())
				.forEach(scope -> fitted.append(base.reaches(scope, family) ? '1' : '0'));
		return fitted.toString();
	}

	// ---- proving -----------------------------------------------------------------------------------------------

	private void prove(RuleBase base, Map<Component, Draft> toProve, Listener listener) {
		AtomicInteger done = new AtomicInteger();
		int total = toProve.size();
		if (total == 0) {
			return;
		}
		// also a single part gets a thread of its own: one that proves cannot look whether somebody still waits
		ExecutorService pool = Executors.newFixedThreadPool(Math.min(threads, total), task -> {
			Thread thread = new Thread(task, "baywright-prover");
			thread.setDaemon(true);
			return thread;
		});
		try {
			List<Future<?>> tasks = new ArrayList<>();
			toProve.forEach(
					(part, draft) -> tasks.add(pool.submit(() -> proveOne(base, part, draft, listener, done, total))));
			for (Future<?> task : tasks) {
				await(task, listener);
			}
		} catch (ExecutionException e) {
			throw e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e.getCause());
		} catch (InterruptedException e) {
			Thread.currentThread().interrupt();
			throw new CancellationException();
		} finally {
			pool.shutdownNow();
			leave(pool);
		}
	}

	/** What is being proved stops at its next question; it must not write into what a later check uses. */
	private static void leave(ExecutorService pool) {
		boolean interrupted = false;
		while (true) {
			try {
				if (pool.awaitTermination(1, TimeUnit.SECONDS)) {
					break;
				}
			} catch (InterruptedException e) {
				interrupted = true;
			}
		}
		if (interrupted) {
			Thread.currentThread().interrupt();
		}
	}

	/** Waits for a task, but no longer than somebody wants its result; a part that is hard may take minutes. */
	private static void await(Future<?> task, Listener listener) throws ExecutionException, InterruptedException {
		while (true) {
			try {
				task.get(100, TimeUnit.MILLISECONDS);
				return;
			} catch (TimeoutException e) {
				if (listener.isCancelled()) {
					throw new CancellationException();
				}
			}
		}
	}

	private void proveOne(RuleBase base, Component part, Draft draft, Listener listener, AtomicInteger done,
			int total) {
		if (listener.isCancelled()) {
			throw new CancellationException();
		}
		Program program = draft.program(base);
		Prover prover = new Prover(base, program, conflictLimit);
		boolean sound = !program.rules.isEmpty() && program.isStratified() && prover.isPossible();
		for (Check check : checks) {
			if (check instanceof ProofCheck<?> proof) {
				part.put(proof, sound || proof.needsNoProgram() ? proof.examine(prover) : proof.nothing());
			}
		}
		if (sound) {
			Optional<List<Condition>> unquiet = TraitLimits.unquiet(program, prover.encoding());
			if (unquiet.isEmpty()) {
				prover.undecided("for which vehicles the rules about " + String.join(", ", part.rules())
						+ " always end in a verdict");
			}
			part.unquiet = unquiet.orElse(List.of());
		}
		part.undecided = prover.undecidedQuestions();
		part.proved = true;
		listener.progress(done.incrementAndGet(), total);
	}
}
