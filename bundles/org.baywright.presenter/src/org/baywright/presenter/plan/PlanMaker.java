package org.baywright.presenter.plan;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Named;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.Trait;
import org.baywright.model.VerdictKind;
import org.baywright.model.Workshop;
import org.baywright.model.words.Limits;
import org.baywright.model.words.Words;
import org.baywright.planner.Diagnosis;
import org.baywright.planner.Ends;
import org.baywright.planner.Plan;
import org.baywright.planner.Position;
import org.baywright.planner.Proposals;
import org.baywright.planner.Search;
import org.baywright.presenter.Say;
import org.baywright.presenter.bench.Caution;
import org.baywright.presenter.bench.Precautions;
import org.baywright.presenter.bench.StepWords;

/** Works a plan out and puts it into words. */
final class PlanMaker {

	/** The result that stands for all that are seldom. */
	static final String ELSE = "anything else";

	private final RuleBase base;
	private final String family;
	private final List<Reading> readings;
	private final Words words;
	private final StepWords say;

	PlanMaker(RuleBase base, String family, List<Reading> readings) {
		this.base = base;
		this.family = family;
		this.readings = new ArrayList<>(readings);
		words = new Words(base);
		say = new StepWords(base, family);
	}

	PlanShown plan(BooleanSupplier cancelled) {
		List<String> signs = readings.stream().filter(PlanMaker::isThere).map(reading -> "“" + words.sign(reading.subject()) + "”").toList();
		if (signs.isEmpty()) {
			return none("Plan for " + words.family(family), "Choose a complaint to see the plan for it.");
		}
		String title = "Plan for " + Words.and(signs) + " on " + words.family(family);
		Optional<Diagnosis> begun = Diagnosis.of(base, family, readings);
		if (begun.isEmpty()) {
			return none(title, "No vehicle has all of this.");
		} else if (begun.get().begin().steps().isEmpty()) {
			return none(title, begun.get().begin().isSettled() ? "The rules have come to an end with that alone." : "Nothing that can be found out would make the rules say more.");
		}
		Diagnosis diagnosis = begun.get();
		// as the bench does, which begins behind what follows from the complaint
		for (Optional<Reading> follows = diagnosis.follows(); follows.isPresent(); follows = diagnosis.follows()) {
			readings.add(follows.get());
			diagnosis = Diagnosis.of(base, family, readings).orElseThrow();
		}
		Search.Found found = diagnosis.whole(cancelled);
		Plan plan = found.plan();
		if (plan.step().isPresent() && plan.branches().isEmpty()) {
			return none(title, "Whatever is found first, the rules contradict each other: no vehicle comes to an end. The flaws tell where.");
		}
		return new PlanShown(base, title, known(), Optional.of(figures(diagnosis, found)), groups(diagnosis, plan),
				Optional.of(twig(plan, "", 1)), cautions(told(plan)), Optional.of(Needs.of(base, say, told(plan))), bench(diagnosis, plan, cancelled), "");
	}

	private String bench(Diagnosis diagnosis, Plan plan, BooleanSupplier cancelled) {
		String first = plan.step().map(say::title).orElse("");
		return diagnosis.next(Proposals.Care.QUICK, cancelled).steps().stream().findFirst().map(proposal -> say.title(proposal.step())).filter(title -> !title.equals(first)).orElse("");
	}

	private PlanShown none(String title, String why) {
		return new PlanShown(base, title, known(), Optional.empty(), List.of(), Optional.empty(), cautions(List.of()), Optional.empty(), "", why);
	}

	private static boolean isThere(Reading reading) {
		return reading instanceof Reading.SignSeen seen && seen.present();
	}

	private List<String> known() {
		return readings.stream().filter(reading -> !isThere(reading)).map(reading -> words.reading(family, reading)).toList();
	}

	// ---- figures -------------------------------------------------------------------------------------------------

	private Figures figures(Diagnosis diagnosis, Search.Found found) {
		Plan plan = found.plan();
		double rest = 1 / diagnosis.rate();
		Map<Twig.Kind, Double> ends = new LinkedHashMap<>();
		double several = 0;
		for (Map.Entry<Plan, Double> end : plan.ends().entrySet()) {
			ends.merge(kind(end.getKey()), end.getValue(), Double::sum);
			several += !end.getKey().isCut() && confirmed(end.getKey()).size() > 1 ? end.getValue() : 0;
		}
		Function<Twig.Kind, Double> share = kind -> ends.getOrDefault(kind, 0.0);
		return new Figures(plan.expected(Position.Step::minutes, rest), plan.worst(Position.Step::minutes, rest), plan.expected(Position.Step::waiting, 0),
				plan.worst(Position.Step::waiting, 0), found.cost(), plan.worstCost(), found.least(), base.workshop().flatMap(Workshop::hour).isPresent(),
				share.apply(Twig.Kind.CONFIRMED) - several, several, share.apply(Twig.Kind.REFERRED), share.apply(Twig.Kind.NOTHING), share.apply(Twig.Kind.MORE));
	}

	private List<PlanShown.Undivided> groups(Diagnosis diagnosis, Plan plan) {
		List<String> causes = diagnosis.causes();
		double[] repairs = causes.stream().mapToDouble(fault -> repair(fault, diagnosis.rate())).toArray();
		return Ends.groups(plan, repairs).stream().map(group -> {
			List<String> faults = group.causes().stream().map(causes::get).map(words::fault).toList();
			String pays = group.pays().isPresent() ? " A step that does pays while it costs less than " + Figures.money(group.pays().getAsDouble()) + ", or "
					+ StepWords.minutes(group.pays().getAsDouble() / diagnosis.rate()) + " of work: what is repaired in vain otherwise."
					: " What a step that does may cost is not known, as not all of them have a repair that says what it takes.";
			return new PlanShown.Undivided(faults, group.reached(),
					"Nothing here tells apart " + Words.and(faults.stream().map(fault -> "“" + fault + "”").toList()) + ", with which " + Figures.of100(group.reached()) + " vehicles end." + pays);
		}).toList();
	}

	/** Returns what the cheapest repair of a fault costs; NaN where none says what it takes. */
	private double repair(String fault, double rate) {
		return base.repairsOf(fault).stream().filter(repair -> base.reaches(repair.scope(), family))
				.filter(repair -> repair.takes().signum() > 0 || repair.cost(base).signum() > 0)
				.mapToDouble(repair -> repair.cost(base).add(repair.takes().multiply(BigDecimal.valueOf(rate))).doubleValue()).min().orElse(Double.NaN);
	}

	/** Returns what comes before anything else, then the cautions of steps. */
	private List<Caution> cautions(List<Position.Step> steps) {
		Set<Caution> cautions = new LinkedHashSet<>();
		Precautions.caution(base, readings).ifPresent(cautions::add);
		steps.forEach(step -> cautions.addAll(say.cautions(step)));
		return List.copyOf(cautions);
	}

	/** Returns all steps that are told. */
	private static List<Position.Step> told(Plan plan) {
		List<Position.Step> steps = new ArrayList<>();
		addTold(plan, 1, steps);
		return steps;
	}

	private static void addTold(Plan plan, double share, List<Position.Step> steps) {
		plan.step().ifPresent(steps::add);
		for (Plan.Branch branch : plan.branches()) {
			if (share * branch.probability() > PlanShown.SELDOM) {
				addTold(branch.plan(), share * branch.probability(), steps);
			}
		}
	}

	// ---- the tree ------------------------------------------------------------------------------------------------

	private Twig twig(Plan whole, String result, double share) {
		Plan plan = looked(whole);
		Twig.Kind kind = kind(plan);
		return switch (kind) {
		case STEP -> {
			Position.Step step = plan.step().orElseThrow();
			yield new Twig(kind, result, share, say.title(step), detail(step), span(step), after(plan, share));
		}
		case MORE -> new Twig(kind, result, share, "…", "not looked at further", Span.NONE, List.of());
		case CONFIRMED -> new Twig(kind, result, share, Words.and(confirmed(plan).stream().map(words::fault).toList()), "confirmed",
				base.fault(confirmed(plan).get(0)).map(Named::span).orElse(Span.NONE), List.of());
		case REFERRED -> new Twig(kind, result, share, "Refer to " + Words.and(verdicts(plan).stream().filter(Verdict::isReferral).map(Verdict::fault).toList()), suspected(plan), Span.NONE, List.of());
		case NOTHING -> new Twig(kind, result, share, "Nothing confirmed", suspected(plan), Span.NONE, List.of());
		};
	}

	/** What follows from what was found is no step. */
	private static Plan looked(Plan plan) {
		Plan next = plan;
		while (next.step().filter(step -> step instanceof Diagnosis.Finding finding && finding.follows().isPresent()).isPresent()) {
			next = next.branches().get(0).plan();
		}
		return next;
	}

	private static Twig.Kind kind(Plan plan) {
		if (plan.step().isPresent()) {
			return Twig.Kind.STEP;
		}
		return plan.isCut() ? Twig.Kind.MORE : !confirmed(plan).isEmpty() ? Twig.Kind.CONFIRMED
				: verdicts(plan).stream().anyMatch(Verdict::isReferral) ? Twig.Kind.REFERRED : Twig.Kind.NOTHING;
	}

	private static List<Verdict> verdicts(Plan plan) {
		return ((Diagnosis.At) plan.position()).verdicts();
	}

	private static List<String> confirmed(Plan plan) {
		return verdicts(plan).stream().filter(verdict -> !verdict.isReferral() && verdict.kind() == VerdictKind.CONFIRMED).map(Verdict::fault).toList();
	}

	private String suspected(Plan plan) {
		List<String> faults = verdicts(plan).stream().filter(verdict -> !verdict.isReferral() && verdict.kind() == VerdictKind.SUSPECTED).map(Verdict::fault)
				.filter(fault -> !verdicts(plan).contains(new Verdict(fault, VerdictKind.CLEARED))).map(words::fault).toList();
		return faults.isEmpty() ? "" : "suspected: " + Words.and(faults);
	}

	private String detail(Position.Step step) {
		String title = say.title(step);
		String name = step instanceof Diagnosis.Finding finding ? say.name(finding.variable()) : "";
		if (step.minutes() + step.waiting() == 0) {
			return title.endsWith(name) && !title.equals(name) ? "" : "seen with what was done";
		}
		String takes = StepWords.time(step.minutes(), step.waiting());
		return title.contains(name) ? takes : name + "; " + takes;
	}

	private Span span(Position.Step step) {
		if (!(step instanceof Diagnosis.Finding finding)) {
			return base.workshop().map(Workshop::span).orElse(Span.NONE);
		}
		String name = finding.variable().name();
		Optional<? extends Named> named = switch (finding.variable().kind()) {
		case TEST -> base.test(name);
		case SIGN -> base.sign(name);
		case CODE -> base.code(name);
		case MODULE -> base.module(name);
		case TRAIT -> Optional.empty();
		};
		return named.map(Named::span).orElse(Span.NONE);
	}

	/** Results after which the plan goes on alike are told as one; those that are seldom, together. */
	private List<Twig> after(Plan plan, double share) {
		Map<Plan, List<Plan.Branch>> alike = new LinkedHashMap<>();
		plan.branches().forEach(branch -> alike.computeIfAbsent(branch.plan(), key -> new ArrayList<>()).add(branch));
		List<Twig> after = new ArrayList<>();
		double seldom = 0;
		for (Map.Entry<Plan, List<Plan.Branch>> way : alike.entrySet()) {
			double reached = share * way.getValue().stream().mapToDouble(Plan.Branch::probability).sum();
			if (reached > PlanShown.SELDOM) {
				after.add(twig(way.getKey(), result(plan.step().orElseThrow(), way.getValue()), reached));
			} else {
				seldom += reached;
			}
		}
		if (seldom > 0) {
			after.add(seldom(after.isEmpty(), seldom));
		}
		return after;
	}

	/** Returns what stands for results that are seldom. */
	static Twig seldom(boolean all, double share) {
		return new Twig(Twig.Kind.MORE, all ? "any result" : ELSE, share, "…", "seldom", Span.NONE, List.of());
	}

	/** Returns in words what was found. */
	private String result(Position.Step step, List<Plan.Branch> results) {
		if (!(step instanceof Diagnosis.Finding finding)) {
			return "read";
		}
		Optional<Domain> domain = domain(finding.variable());
		if (domain.isPresent()) {
			IndexSet all = results.stream().map(branch -> finding.means(branch.outcome())).reduce(IndexSet.EMPTY, IndexSet::union);
			return Limits.say(all, domain.get());
		}
		return results.stream().map(branch -> said(finding.reading(branch.outcome()))).distinct().collect(Collectors.joining(" or "));
	}

	private Optional<Domain> domain(Variable variable) {
		return switch (variable.kind()) {
		case TEST -> base.test(variable.name()).map(test -> test.domain());
		case TRAIT -> Optional.ofNullable(base.traitsOf(family).get(variable.name())).map(Trait::domain);
		default -> Optional.empty();
		};
	}

	private static String said(Reading reading) {
		if (reading instanceof Reading.SignSeen seen) {
			return seen.present() ? "present" : "absent";
		} else if (reading instanceof Reading.CodeRead read) {
			return Say.lower(read.reading());
		}
		return reading instanceof Reading.ModuleAsked asked && asked.answers() ? "answers" : "silent";
	}
}
