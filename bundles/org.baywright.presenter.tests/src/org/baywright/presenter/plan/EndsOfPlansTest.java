package org.baywright.presenter.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.baywright.analysis.CaseResult;
import org.baywright.analysis.Listener;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.analysis.run.Jobs;
import org.baywright.model.Case;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.Family;
import org.baywright.model.IndexSet;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.planner.Diagnosis;
import org.baywright.planner.Plan;
import org.baywright.presenter.Examples;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * At every end of the plan of every complaint of the example projects stands what the rules derive from what was found on any
 * way there. What they derive is asked as of finished jobs, which knows nothing of plans, and also says if no vehicle shows that.
 */
class EndsOfPlansTest {

	/** What is said of a job whose findings no vehicle has. */
	private static final Pattern CANNOT_BE = Pattern.compile("the laws say|for other vehicles|two things of");

	/** What a plan says at the end of a way. */
	private record Way(String name, List<Verdict> verdicts) {
	}

	private final Random any = new Random(7);
	/** Each way twice: with the value that the plan names for each result, and with any that the result stands for. */
	private final List<Case> jobs = new ArrayList<>();
	private final List<Way> ways = new ArrayList<>();

	@ParameterizedTest
	@ValueSource(strings = { "electric-van", "farm-tractor", "light-van", "service-truck" })
	void everyEndSaysWhatTheRulesDerive(String project) {
		RuleBase base = Examples.checked(project).rules();
		for (Family family : base.vehicleFamilies()) {
			PlanShown.complaints(base, family.name()).forEach(sign -> plan(base, family.name(), new Reading.SignSeen(sign.variable().name(), true, Span.NONE)));
		}
		assertTrue(ways.size() > 20, project + " has " + ways.size());
		RuleBase.Builder asked = new RuleBase.Builder(base.name()).add(base);
		asked.cases.clear();
		asked.cases.addAll(jobs);
		List<CaseResult> derived = Jobs.run(asked.build(), Listener.NONE);
		List<String> wrong = new ArrayList<>();
		for (int job = 0; job < jobs.size(); job++) {
			Way way = ways.get(job);
			CaseResult result = derived.get(job);
			if (!way.verdicts().equals(result.verdicts()) || CANNOT_BE.matcher(result.message()).find()) {
				wrong.add(way.name() + " after " + result.job().traits() + result.job().found() + "\n  plan says " + way.verdicts() + "\n  rules say " + result.verdicts() + " " + result.message());
			}
		}
		assertEquals(List.of(), wrong.stream().limit(3).toList(), () -> wrong.size() + " of " + jobs.size());
	}

	private void plan(RuleBase base, String family, Reading complaint) {
		Optional<Diagnosis> diagnosis = Diagnosis.of(base, family, List.of(complaint));
		if (diagnosis.isPresent()) {
			follow(base, family, diagnosis.get().whole(() -> false).plan(), List.of(complaint), List.of(complaint));
		}
	}

	private void follow(RuleBase base, String family, Plan plan, List<Reading> named, List<Reading> meant) {
		if (plan.step().isEmpty()) {
			assertTrue(plan.isCut() || plan.position().steps().isEmpty(), () -> "ends too early: " + family + named);
			List<Verdict> verdicts = ((Diagnosis.At) plan.position()).verdicts();
			for (List<Reading> found : List.of(named, meant)) {
				ways.add(new Way(family, verdicts));
				Map<Boolean, List<Reading>> traits = found.stream().collect(Collectors.partitioningBy(reading -> Variable.of(base, reading).kind() == Variable.Kind.TRAIT));
				jobs.add(new Case("Job " + jobs.size(), family, traits.get(true), traits.get(false), List.of(), false, Optional.empty(), Span.NONE));
			}
		}
		for (Plan.Branch branch : plan.branches()) {
			List<Reading> namedToo = new ArrayList<>(named);
			List<Reading> meantToo = new ArrayList<>(meant);
			// reading all modules at once finds nothing by itself
			if (plan.step().get() instanceof Diagnosis.Finding finding) {
				namedToo.add(finding.reading(branch.outcome()));
				meantToo.add(reading(base, family, finding.variable(), finding.means(branch.outcome())));
			}
			follow(base, family, branch.plan(), namedToo, meantToo);
		}
	}

	/** Returns a reading of one of some values. */
	private Reading reading(RuleBase base, String family, Variable variable, IndexSet values) {
		int run = any.nextInt(values.runCount());
		int value = values.low(run) + any.nextInt(values.high(run) - values.low(run) + 1);
		return switch (variable.kind()) {
		case SIGN -> new Reading.SignSeen(variable.name(), value == Variable.PRESENT, Span.NONE);
		case MODULE -> new Reading.ModuleAsked(variable.name(), value == Variable.ANSWERS, Span.NONE);
		case CODE -> new Reading.CodeRead(variable.name(), CodeReading.values()[value], Span.NONE);
		case TEST -> reading(variable.name(), base.test(variable.name()).orElseThrow().domain(), value);
		case TRAIT -> reading(variable.name(), base.traitsOf(family).get(variable.name()).domain(), value);
		};
	}

	private static Reading reading(String name, Domain domain, int value) {
		return domain instanceof Domain.Quantity quantity && quantity.isNumber(value) ? new Reading.Measured(name, quantity.value(value), Span.NONE)
				: new Reading.Named(name, domain.named().stream().filter(named -> domain.indexOf(named.name()) == value).findFirst().orElseThrow().name(), Span.NONE);
	}
}
