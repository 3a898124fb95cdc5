package org.baywright.planner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.analysis.Verdict;
import org.baywright.model.Case;
import org.baywright.model.Fault;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.VerdictKind;

/**
 * How likely each cause is before anything is found, and how likely a finding is under each: counted from finished jobs, with
 * a prior (Dirichlet; Laplace's rule of succession, 1814), and weighed by what the rules say of the finding. The last cause is
 * "something else".
 */
final class Beliefs {

	/** What each cause and each result counts before any job does. */
	private static final double PRIOR = 1;
	/** How many times as likely a result is under a fault that it makes the rules suspect. */
	private static final double SUSPECTED = 3;
	/** How many times as likely a result is under a fault that it makes the rules confirm. */
	private static final double CONFIRMED = 9;
	/** How many times less likely than its answer the silence of a module is before any job shows it. */
	private static final double SILENCE = 20;

	private final RuleBase base;
	private final Prospect prospect;
	private final Prospect.Known begin;
	private final List<String> causes;
	private final Map<Variable, double[][]> likelihoods = new HashMap<>();

	/** @param causes the faults that it may be, without "something else" */
	Beliefs(RuleBase base, Prospect prospect, Prospect.Known begin, List<String> causes) {
		this.base = base;
		this.prospect = prospect;
		this.begin = begin;
		this.causes = List.copyOf(causes);
	}

	/** Returns how likely each cause is; they add up to 1. */
	double[] prior() {
		double[] prior = new double[causes.size() + 1];
		for (int cause = 0; cause < causes.size(); cause++) {
			prior[cause] = PRIOR + base.fault(causes.get(cause)).map(Fault::seen).orElse(0);
		}
		prior[causes.size()] = PRIOR;
		return norm(prior);
	}

	static double[] norm(double[] weights) {
		double sum = Arrays.stream(weights).sum();
		return sum == 0 ? weights : Arrays.stream(weights).map(weight -> weight / sum).toArray();
	}

	/** Returns for each value of a finding and each cause how likely the value is under the cause. */
	double[][] likelihood(Variable finding) {
		return likelihoods.computeIfAbsent(finding, this::count);
	}

	private double[][] count(Variable finding) {
		int values = prospect.values(finding).size();
		double[][] likelihood = new double[values][causes.size() + 1];
		List<Integer> possible = begin.possible(finding);
		for (int value : possible) {
			Prospect.Known after = begin.with(finding, value);
			for (int cause = 0; cause <= causes.size(); cause++) {
				likelihood[value][cause] = PRIOR * (isSilence(finding, value) ? 1 / SILENCE : 1) * (cause < causes.size() ? ratio(after, causes.get(cause)) : 1);
			}
		}
		for (Case job : base.cases()) {
			int cause = job.causes().size() == 1 ? causes.indexOf(job.causes().get(0)) : -1;
			if (cause >= 0) {
				found(job, finding).stream().filter(possible::contains).forEach(value -> likelihood[value][cause]++);
			}
		}
		for (int cause = 0; cause <= causes.size(); cause++) {
			int of = cause;
			double sum = Arrays.stream(likelihood).mapToDouble(row -> row[of]).sum();
			for (double[] row : likelihood) {
				row[cause] /= sum;
			}
		}
		return likelihood;
	}

	private static boolean isSilence(Variable finding, int value) {
		return finding.kind() == Variable.Kind.MODULE && value == Variable.SILENT || finding.kind() == Variable.Kind.CODE && value == Variable.UNREAD;
	}

	private double ratio(Prospect.Known after, String fault) {
		if (isNew(after, new Verdict(fault, VerdictKind.CONFIRMED))) {
			return CONFIRMED;
		}
		return isNew(after, new Verdict(fault, VerdictKind.SUSPECTED)) ? SUSPECTED : 1;
	}

	private boolean isNew(Prospect.Known after, Verdict verdict) {
		return after.has(verdict) && !begin.has(verdict);
	}

	private List<Integer> found(Case job, Variable finding) {
		List<Integer> values = new ArrayList<>();
		for (Reading reading : job.found()) {
			OptionalInt value = reading.subject().equals(finding.name()) ? prospect.value(finding, reading) : OptionalInt.empty();
			value.ifPresent(values::add);
		}
		return values;
	}
}
