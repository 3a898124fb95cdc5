package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.run.Prospects;
import org.baywright.model.Fault;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Telling;
import org.baywright.model.words.Words;
import org.baywright.planner.Diagnosis;
import org.baywright.planner.Plan;
import org.baywright.planner.Position;
import org.baywright.planner.Proposals;
import org.baywright.planner.Proposals.Proposal;
import org.baywright.presenter.Say;

/**
 * Works out what to do next on a bench, and puts it into words. Keep one instance: it stays prepared for the same rules and
 * family. May be called from any thread, one call at a time.
 */
final class Leading {

	/** A cause that is less likely is not told. */
	private static final double WORTH_TELLING = 0.05;
	private static final int TENTHS = 10;

	private RuleBase base;
	private String family = "";
	private Prospect prospect;
	private Optional<Told> told = Optional.empty();

	/**
	 * What was told last.
	 *
	 * @param readings what was known
	 * @param minutes what was to be expected until the cause is found, waiting included
	 * @param likeliest name of the likeliest cause
	 * @param before what was told before that, with less known
	 */
	private record Told(List<Reading> readings, long minutes, String likeliest, Optional<Told> before) {

		/** Returns what was told before these are known. */
		Optional<Told> before(List<Reading> known) {
			return known.equals(readings) ? before : Optional.of(this).filter(last -> known.size() > readings.size() && known.subList(0, readings.size()).equals(readings));
		}
	}

	/**
	 * Works it out.
	 *
	 * @param readings what counts of what was entered: nothing that was disturbed before
	 * @param cancelled asked now and then whether to stop
	 * @throws CancellationException if it was stopped
	 */
	synchronized Lead lead(Bench bench, List<Reading> readings, Proposals.Care care, BooleanSupplier cancelled) {
		if (bench.now().family().isEmpty()) {
			return Lead.NONE;
		}
		if (readings.stream().noneMatch(reading -> reading instanceof Reading.SignSeen seen && seen.present())) {
			return new Lead(true, Optional.empty(), List.of(), "", Optional.empty());
		}
		if (prospect == null || base != bench.base() || !family.equals(bench.now().family())) {
			base = bench.base();
			family = bench.now().family();
			told = Optional.empty();
			prospect = Prospects.of(base, family);
		}
		return Diagnosis.of(base, prospect, readings, new Diagnosis.Before(states(base, readings), bench.now().scanned(), bench.now().done().mended()))
				.map(diagnosis -> diagnosis.follows().map(reading -> new Lead(false, Optional.empty(), List.of(), "", Optional.of(reading)))
						.orElseGet(() -> lead(diagnosis, readings, diagnosis.next(care, cancelled)))).orElse(Lead.NONE);
	}

	private Lead lead(Diagnosis diagnosis, List<Reading> readings, Proposals proposals) {
		Optional<Told> before = told.flatMap(last -> last.before(readings)).map(last -> new Told(last.readings(), last.minutes(), last.likeliest(), Optional.empty()));
		Wording wording = new Wording(base, family, readings, diagnosis, before);
		told = proposals.steps().stream().findFirst().map(first -> new Told(List.copyOf(readings), minutes(first), wording.likeliest(), before));
		return wording.lead(proposals);
	}

	private static long minutes(Proposal proposal) {
		return Math.round(proposal.expectedMinutes() + proposal.expectedWaiting());
	}

	/** Returns the state that the tests done so far left the vehicle in. */
	private static Map<String, String> states(RuleBase base, List<Reading> readings) {
		Map<String, String> states = new LinkedHashMap<>();
		for (Reading reading : readings) {
			base.test(reading.subject()).map(base::doneBy).ifPresent(test -> test.states().forEach(setting -> states.put(setting.state(), setting.value())));
		}
		return states;
	}

	/** Puts proposals into words. */
	private static final class Wording {

		private final RuleBase base;
		private final Words words;
		private final Subjects subjects;
		private final StepWords say;
		private final Diagnosis diagnosis;
		private final Diagnosis.At at;
		private final List<Reading> readings;
		private final Optional<Told> before;

		Wording(RuleBase base, String family, List<Reading> readings, Diagnosis diagnosis, Optional<Told> before) {
			this.base = base;
			this.readings = readings;
			this.diagnosis = diagnosis;
			this.before = before;
			words = new Words(base);
			subjects = new Subjects(base, family);
			say = new StepWords(base, family);
			at = diagnosis.begin();
		}

		Lead lead(Proposals proposals) {
			List<Proposal> steps = proposals.steps();
			List<Lead.Other> others = others(steps).flatMap(other -> variable(other.step()).map(variable -> new Lead.Other(say.title(other.step()), time(other), variable)).stream()).toList();
			return new Lead(false, steps.stream().findFirst().map(first -> todo(first, proposals)), others, beyond(), Optional.empty());
		}

		/** Returns what could be done instead, what is told to take least first. */
		private static Stream<Proposal> others(List<Proposal> steps) {
			return steps.stream().skip(1).sorted(Comparator.comparingLong(Leading::minutes));
		}

		private String beyond() {
			List<String> out = at.beyond().stream().map(say::name).toList();
			return out.isEmpty() ? "" : "Out of reach here, for want of a tool or of who may do it: " + Words.and(out) + ".";
		}

		private static Optional<Variable> variable(Position.Step step) {
			return shows(step).stream().findFirst();
		}

		private static List<Variable> shows(Position.Step step) {
			return step instanceof Diagnosis.Finding finding ? finding.isSeen() ? List.of(finding.variable()) : finding.shows() : ((Diagnosis.Scan) step).shows();
		}

		// ---- the step --------------------------------------------------------------------------------------------

		private Lead.Todo todo(Proposal proposal, Proposals proposals) {
			Position.Step step = proposal.step();
			Optional<Doing> doing = step instanceof Diagnosis.Finding finding ? Optional.of(Doing.of(base, readings, finding.variable())) : Optional.empty();
			return new Lead.Todo(say.title(step), shows(step).stream().flatMap(variable -> subjects.subject(variable).stream()).toList(),
					doing.or(() -> variable(step).map(variable -> Doing.of(base, readings, variable))).map(Doing::exception).orElse(""), doing.map(Doing::cautions).orElse(List.of()), how(step, doing), why(proposal, proposals), doing.map(Doing::pictures).orElse(List.of()), step instanceof Diagnosis.Scan);
		}

		private List<String> how(Position.Step step, Optional<Doing> doing) {
			if (step instanceof Diagnosis.Finding finding && finding.isSeen()) {
				return List.of("It is seen with what was done before and takes nothing more.");
			}
			List<String> how = new ArrayList<>(doing.map(Doing::how).orElseGet(() -> List.of("Takes: " + Telling.minutes(BigDecimal.valueOf(step.minutes())))));
			if (step instanceof Diagnosis.Finding finding && !finding.disturbs().isEmpty()) {
				how.add("It spoils what is not found out before it: " + Words.and(finding.disturbs().stream().map(say::name).toList()) + ".");
			}
			return how;
		}

		// ---- why -------------------------------------------------------------------------------------------------

		private List<String> why(Proposal proposal, Proposals proposals) {
			List<String> why = new ArrayList<>();
			why.add(likely());
			why.add(tells(proposal));
			why.add(expected(proposal, proposals));
			why.removeIf(String::isEmpty);
			return why;
		}

		/** Returns of ten jobs how many have which cause. */
		private String likely() {
			double[] shares = at.likelihoods();
			List<String> causes = diagnosis.causes();
			List<String> told = IntStream.range(0, causes.size()).boxed().filter(cause -> shares[cause] >= WORTH_TELLING)
					.sorted(Comparator.comparing(cause -> -shares[cause])).limit(3)
					.map(cause -> tenths(shares[cause]) + " “" + words.fault(causes.get(cause)) + "”").toList();
			if (told.isEmpty()) {
				return "";
			}
			int counted = causes.stream().flatMap(cause -> base.fault(cause).stream()).mapToInt(Fault::seen).sum();
			return "Of ten such jobs about " + Words.and(told) + (counted > 0 ? ", from " + Say.count(counted, "counted job") + "."
					: ". That is by the rules alone: nobody has counted yet how often each was the cause.");
		}

		private static String tenths(double share) {
			long tenths = Math.max(1, Math.round(TENTHS * share));
			return tenths + (tenths == 1 ? " was" : " were");
		}

		/** Returns what the rules may say after it that they do not say now. */
		private String tells(Proposal proposal) {
			Set<Verdict> now = Set.copyOf(at.verdicts());
			Map<VerdictKind, Set<String>> news = new LinkedHashMap<>();
			Set<String> refers = new TreeSet<>();
			for (Plan.Branch branch : proposal.plan()) {
				for (Verdict verdict : ((Diagnosis.At) branch.plan().position()).verdicts()) {
					if (!now.contains(verdict) && verdict.isReferral()) {
						refers.add(verdict.fault());
					} else if (!now.contains(verdict)) {
						news.computeIfAbsent(verdict.kind(), key -> new TreeSet<>()).add(words.fault(verdict.fault()));
					}
				}
			}
			List<String> parts = new ArrayList<>();
			Set<String> confirmed = news.get(VerdictKind.CONFIRMED);
			boolean both = confirmed != null && confirmed.equals(news.get(VerdictKind.CLEARED));
			told(both ? "confirm or rule out " : "confirm ", confirmed, parts);
			told("rule out ", both ? null : news.get(VerdictKind.CLEARED), parts);
			told("point to ", news.get(VerdictKind.SUSPECTED), parts);
			if (!refers.isEmpty()) {
				parts.add("end in handing the job on");
			}
			return parts.isEmpty() ? "What comes next depends on it." : "It can " + String.join("; ", parts) + ".";
		}

		private static void told(String verb, Set<String> faults, List<String> parts) {
			if (faults != null) {
				List<String> some = faults.stream().limit(3).collect(Collectors.toCollection(ArrayList::new));
				if (faults.size() > some.size()) {
					some.add((faults.size() - some.size()) + " more");
				}
				parts.add(verb + Words.and(some));
			}
		}

		private String expected(Proposal proposal, Proposals proposals) {
			StringBuilder text = new StringBuilder("Until the cause is found: about " + time(proposal) + more(proposal));
			Optional<Proposal> next = others(proposals.steps()).findFirst();
			next.ifPresent(other -> text.append("; about ").append(time(other)).append(" beginning with the next best"));
			if (next.filter(other -> other.expectedCost() < proposal.expectedCost()).isPresent()) {
				text.append(". That differs little, and this costs less to begin with");
			}
			return text.append(proposals.isBest() ? ". No order of steps takes less." : ". That is an estimate; the plan looks further.").toString();
		}

		/** Returns that it takes longer than was told before, and why where one cause tells it; the empty text where it does not. */
		private String more(Proposal proposal) {
			return before.filter(last -> minutes(proposal) > last.minutes())
					.map(last -> isOut(last.likeliest()) ? ", more than before, as the likeliest cause is out" : ", more than estimated before").orElse("");
		}

		private boolean isOut(String cause) {
			int number = diagnosis.causes().indexOf(cause);
			return number >= 0 && at.likelihoods()[number] < WORTH_TELLING;
		}

		private String likeliest() {
			double[] shares = at.likelihoods();
			return IntStream.range(0, diagnosis.causes().size()).boxed().max(Comparator.comparing(cause -> shares[cause])).map(diagnosis.causes()::get).orElse("");
		}

		private static String time(Proposal proposal) {
			return StepWords.time(proposal.expectedMinutes(), proposal.expectedWaiting());
		}
	}
}
