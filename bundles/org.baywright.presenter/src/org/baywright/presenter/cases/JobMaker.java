package org.baywright.presenter.cases;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.CaseResult;
import org.baywright.model.Case;
import org.baywright.model.Conclusion;
import org.baywright.model.Domain;
import org.baywright.model.Outcome;
import org.baywright.model.Reading;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Words;
import org.baywright.presenter.Link;
import org.baywright.presenter.Say;

/** Makes what is shown of a job. */
final class JobMaker {

	private final RuleBase base;
	private final Words words;

	JobMaker(RuleBase base) {
		this.base = base;
		words = new Words(base);
	}

	Job job(CaseResult result) {
		Case job = result.job();
		List<Link> fired = new ArrayList<>();
		List<Link> decided = new ArrayList<>();
		for (String name : result.fired()) {
			base.rule(name).ifPresent(rule -> {
				fired.add(new Link(rule.title(), rule.span()));
				outcomes(rule, job).forEach(outcome -> outcome.conclusions().stream().filter(said -> isEnd(said, job))
						.forEach(said -> decided.add(new Link(rule.title() + ": " + words.conclusion(said), said.span()))));
			});
		}
		List<String> signs = job.found().stream().filter(Reading.SignSeen.class::isInstance).map(Reading.SignSeen.class::cast)
				.filter(Reading.SignSeen::present).map(seen -> words.sign(seen.subject())).distinct().toList();
		List<String> verdicts = result.verdicts().stream().map(verdict -> Say.verdict(words, verdict)).toList();
		return new Job(job.name(), Link.to(job.span(), ""), words.family(job.family()), signs, end(job), result.passed(),
				Say.upper(result.message()), decided, fired, verdicts, result);
	}

	private String end(Case job) {
		List<String> ends = new ArrayList<>(job.causes().stream().map(words::fault).toList());
		if (job.referred()) {
			ends.add("referred");
		}
		return Words.and(ends);
	}

	private static boolean isEnd(Conclusion said, Case job) {
		return said instanceof Conclusion.OnFault on ? on.verdict() == VerdictKind.CONFIRMED && job.causes().contains(on.fault())
				: said instanceof Conclusion.Refers && job.referred();
	}

	/** Returns the outcomes of a rule that fired: those of the result that its test gave. */
	private List<Outcome> outcomes(Rule rule, Case job) {
		Optional<Test> test = rule.test().flatMap(base::test);
		if (test.isEmpty()) {
			return rule.outcomes();
		}
		Domain domain = test.get().domain();
		return job.found().stream().filter(reading -> reading.subject().equals(test.get().name()))
				.flatMap(reading -> rule.outcomes().stream()
						.filter(outcome -> outcome.values().isPresent()
								&& outcome.values().get().in(domain).contains(domain.indexOf(reading))))
				.toList();
	}
}
