package org.baywright.benchmark;

import java.util.concurrent.TimeUnit;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.generate.GeneratedBase;
import org.baywright.analysis.generate.RuleBaseGenerator;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.RuleBase;
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

/** A full check, and a re-check after one edit, by size of the rule base. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(value = 1, jvmArgs = "-Xmx4g")
@Warmup(iterations = 2, time = 5)
@Measurement(iterations = 3, time = 5)
public class CheckBenchmark {

	@Param({ "1000", "5000", "20000" })
	public int rules;

	private GeneratedBase base;
	private Analysis kept;
	private RuleBase edited;
	private int edit;

	@Setup(Level.Trial)
	public void generate() {
		base = RuleBaseGenerator.generate(rules, 50, 7);
		kept = new Analysis();
		kept.check(base.rules(), Listener.NONE);
	}

	/** An edit is a rule base with one rule changed; making it is the editor's work and not measured. */
	@Setup(Level.Invocation)
	public void edit() {
		edit = (edit + 997) % base.rules().rules().size();
		edited = base.edited(edit);
	}

	@Benchmark
	public Report fullCheck() {
		return new Analysis().check(base.rules(), Listener.NONE);
	}

	@Benchmark
	public Report recheckAfterOneEdit() {
		return kept.check(edited, Listener.NONE);
	}
}
