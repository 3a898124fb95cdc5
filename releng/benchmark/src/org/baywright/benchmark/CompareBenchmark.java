package org.baywright.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.difference.Comparison;
import org.baywright.analysis.difference.Difference;
import org.baywright.analysis.generate.RuleBaseGenerator;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.Conclusion;
import org.baywright.model.Outcome;
import org.baywright.model.Rule;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What ten edits do to vehicles, after both states are read, beside the full check of one of them. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = "-Xmx4g")
@Warmup(iterations = 2, time = 10)
@Measurement(iterations = 3, time = 10)
public class CompareBenchmark {

	private static final int EDITS = 10;

	@Param({ "1000", "5000", "20000" })
	public int rules;

	private RuleBase old;
	private RuleBase now;

	/** Read twice, so that no element is the same object; every other edit takes a rule away, the others add a referral. */
	@Setup(Level.Trial)
	public void generate() {
		old = RuleBaseGenerator.generate(rules, 50, 7).rules();
		RuleBase.Builder edited = new RuleBase.Builder(old.name()).add(RuleBaseGenerator.generate(rules, 50, 7).rules());
		for (int edit = 0; edit < EDITS; edit++) {
			int at = (edit + 1) * 997 * edited.rules.size() / 10_007 % edited.rules.size();
			if (edit % 2 == 0) {
				edited.rules.remove(at);
			} else {
				edited.rules.set(at, referring(edited.rules.get(at), "somebody " + edit));
			}
		}
		now = edited.build();
	}

	private static Rule referring(Rule rule, String toWhom) {
		List<Outcome> outcomes = new ArrayList<>(rule.outcomes());
		Outcome first = outcomes.get(0);
		List<Conclusion> conclusions = new ArrayList<>(first.conclusions());
		conclusions.add(new Conclusion.Refers(toWhom, Span.NONE));
		outcomes.set(0, new Outcome(first.label(), first.values(), first.listed(), conclusions, first.span()));
		return new Rule(rule.name(), rule.title(), rule.scope(), rule.given(), rule.states(), rule.test(), outcomes, rule.provenance(), rule.testSpan(), rule.span());
	}

	@Benchmark
	public Difference tenEdits() {
		return new Comparison().compare(old, now, Listener.NONE);
	}

	@Benchmark
	public Report fullCheck() {
		return new Analysis().check(now, Listener.NONE);
	}
}
