package org.baywright.presenter.cases;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Stream;

import org.baywright.analysis.CaseResult;
import org.baywright.model.RuleBase;
import org.baywright.presenter.Say;

/**
 * What the view of finished jobs shows.
 *
 * @param all every job that was run, failing ones first, then by place
 * @param shown those that the filter shows
 * @param headline how many pass
 * @param families tallies by family
 * @param signs tallies by sign; a job with several signs counts for each
 */
public record Cases(List<Job> all, List<Job> shown, String headline, List<Tally> families, List<Tally> signs) {

	/**
	 * Which jobs are shown.
	 *
	 * @param failingOnly whether to leave out those that pass
	 * @param text words that must all stand in a job, in capitals or not; the empty text shows all
	 */
	public record Filter(boolean failingOnly, String text) {

		/** Shows every job. */
		public static final Filter ALL = new Filter(false, "");

		boolean shows(Job job) {
			String whole = String.join("\n", Stream.of(List.of(job.name(), job.family(), job.end(), job.message()), job.signs(),
					job.verdicts()).flatMap(List::stream).toList());
			return !(failingOnly && job.passed()) && Say.holds(whole, text);
		}
	}

	/** Before any job was run. */
	public static final Cases NONE = new Cases(List.of(), List.of(), "The jobs have not been run yet.", List.of(), List.of());

	public Cases {
		all = List.copyOf(all);
		shown = List.copyOf(shown);
		families = List.copyOf(families);
		signs = List.copyOf(signs);
	}

	/**
	 * Shows what became of jobs.
	 *
	 * @param base the rules that they were run through
	 */
	public static Cases of(RuleBase base, List<CaseResult> results, Filter filter) {
		JobMaker maker = new JobMaker(base);
		List<Job> jobs = results.stream().map(maker::job).sorted(Comparator.comparing(Job::passed)
				.thenComparing(job -> job.place().span()).thenComparing(Job::name)).toList();
		return new Cases(jobs, List.of(), headline(base, jobs), tallies(jobs, job -> List.of(job.family())),
				tallies(jobs, Job::signs)).with(filter);
	}

	/** Returns the same jobs through another filter. */
	public Cases with(Filter filter) {
		return new Cases(all, all.stream().filter(filter::shows).toList(), headline, families, signs);
	}

	private static String headline(RuleBase base, List<Job> jobs) {
		if (jobs.isEmpty()) {
			return base.cases().isEmpty() ? "There are no finished jobs in these rules."
					: "None of the finished jobs is on a vehicle that the rules know.";
		}
		long failed = jobs.stream().filter(job -> !job.passed()).count();
		int left = base.cases().size() - jobs.size();
		String rest = left == 0 ? "" : " " + Say.upper(Say.count(left, "job was", "jobs were"))
				+ " not run: no vehicle belongs to the family.";
		if (failed == 0) {
			return (jobs.size() == 1 ? "The one job passes." : "All " + jobs.size() + " jobs pass.") + rest;
		}
		return failed + " of " + Say.count(jobs.size(), "job") + (failed == 1 ? " fails." : " fail.") + rest;
	}

	private static List<Tally> tallies(List<Job> jobs, Function<Job, List<String>> keys) {
		Map<String, int[]> counts = new TreeMap<>();
		jobs.forEach(job -> keys.apply(job)
				.forEach(key -> counts.computeIfAbsent(key, unused -> new int[2])[job.passed() ? 0 : 1]++));
		List<Tally> tallies = new ArrayList<>();
		counts.forEach((title, count) -> tallies.add(new Tally(title, count[0], count[1])));
		return tallies;
	}
}
