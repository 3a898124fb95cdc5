package org.baywright.planner;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.model.Case;
import org.baywright.model.CodeReading;
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
	/** How many times less likely a result is under a cause if it makes the rules suspect or confirm others only. */
	private static final double OTHERS = 9;
	/** How many times less likely a fault is after a repair that did not put the vehicle right. */
	private static final double MENDED = 9;
	/** How many times less likely than its answer the silence of a module is before any job shows it. */
	private static final double SILENCE = 20;

	private final RuleBase base;
	private final Prospect.Ahead ahead;
	private final List<String> causes;
	private final Map<Integer, double[][]> likelihoods = new HashMap<>();

	Beliefs(RuleBase base, Prospect.Ahead ahead) {
		this.base = base;
		this.ahead = ahead;
		causes = ahead.causes();
	}

	/**
	 * Returns how likely each cause is; they add up to 1.
	 *
	 * @param mended faults whose repair did not put the vehicle right
	 */
	double[] prior(Set<String> mended) {
		double[] prior = new double[causes.size() + 1];
		for (int cause = 0; cause < causes.size(); cause++) {
			String fault = causes.get(cause);
			prior[cause] = (PRIOR + base.fault(fault).map(Fault::seen).orElse(0)) / (mended.contains(fault) ? MENDED : 1);
		}
		prior[causes.size()] = PRIOR;
		return norm(prior);
	}

	static double[] norm(double[] weights) {
		double sum = 0;
		for (double weight : weights) {
			sum += weight;
		}
		double[] shares = weights.clone();
		for (int cause = 0; cause < shares.length && sum > 0; cause++) {
			shares[cause] /= sum;
		}
		return shares;
	}

	/** Returns for each value of a finding and each cause how likely the value is under the cause. */
	double[][] likelihood(int finding) {
		return likelihoods.computeIfAbsent(finding, this::count);
	}

	private double[][] count(int finding) {
		Variable variable = ahead.findings().get(finding);
		List<Reading> values = ahead.values(finding);
		double[][] likelihood = new double[values.size()][causes.size() + 1];
		Set<Integer> possible = new HashSet<>();
		for (int value : ahead.known().possible(finding)) {
			possible.add(value);
			Prospect.Known after = ahead.known().with(finding, value);
			double others = pointsSomewhere(after) ? 1 / OTHERS : 1;
			for (int cause = 0; cause <= causes.size(); cause++) {
				likelihood[value][cause] = PRIOR * (isSilence(values.get(value)) ? 1 / SILENCE : 1) * (cause < causes.size() ? ratio(after, cause, others) : others);
			}
		}
		for (Case job : base.cases()) {
			int cause = job.causes().size() == 1 ? causes.indexOf(job.causes().get(0)) : -1;
			if (cause >= 0) {
				found(job, finding, variable).stream().filter(possible::contains).forEach(value -> likelihood[value][cause]++);
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

	private static boolean isSilence(Reading reading) {
		return reading instanceof Reading.ModuleAsked asked && !asked.answers() || reading instanceof Reading.CodeRead read && read.reading() == CodeReading.UNREAD;
	}

	private double ratio(Prospect.Known after, int cause, double others) {
		if (isNew(after, cause, VerdictKind.CONFIRMED)) {
			return CONFIRMED;
		}
		return isNew(after, cause, VerdictKind.SUSPECTED) ? SUSPECTED : others;
	}

	private boolean pointsSomewhere(Prospect.Known after) {
		for (int cause = 0; cause < causes.size(); cause++) {
			if (isNew(after, cause, VerdictKind.CONFIRMED) || isNew(after, cause, VerdictKind.SUSPECTED)) {
				return true;
			}
		}
		return false;
	}

	private boolean isNew(Prospect.Known after, int cause, VerdictKind kind) {
		return after.has(cause, kind) && !ahead.known().has(cause, kind);
	}

	private List<Integer> found(Case job, int finding, Variable variable) {
		List<Integer> values = new ArrayList<>();
		for (Reading reading : job.found()) {
			OptionalInt value = reading.subject().equals(variable.name()) ? ahead.value(finding, reading) : OptionalInt.empty();
			value.ifPresent(values::add);
		}
		return values;
	}
}
