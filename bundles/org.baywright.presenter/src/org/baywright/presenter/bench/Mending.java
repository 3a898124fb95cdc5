package org.baywright.presenter.bench;

import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.model.Span;
import org.baywright.presenter.Link;

/**
 * What the bench shows once there is an end in sight: the causes with their repairs, the repair that is chosen with its
 * verification, and what was tried in vain.
 *
 * @param stage where the job stands
 * @param headline the same in one or two sentences; the empty text as long as everything is still to be found
 * @param causes the faults that are the cause, sorted
 * @param work the repair that is chosen, or the only one there is
 * @param others repairs for the causes that were begun beside it
 * @param inVain repairs that did not put the vehicle right, in their order
 * @param referral to whom the job may go
 * @param spent what the job has taken so far
 */
public record Mending(Stage stage, String headline, List<Cause> causes, Optional<Work> work, List<Work> others, List<Done.InVain> inVain,
		Referral referral, Spent spent) {

	/** Where a job stands. */
	public enum Stage {
		/** The cause is not known. */
		FINDING,
		/** The cause is known, and its repair is not verified yet. */
		REPAIR,
		/** What was read after the repair is other than expected. */
		FAILED,
		/** Each cause is put right, and that is verified. */
		VERIFIED,
		/** The job goes to somebody else. */
		REFERRED
	}

	/**
	 * A fault that is the cause.
	 *
	 * @param fault its name
	 * @param title what a technician calls it
	 * @param confirmed whether the rules confirm it, or somebody only says so
	 * @param inVain whether it was repaired in vain, and nobody has said since that it is the cause
	 * @param rules the rules that confirm it
	 * @param repairs the repairs for it on this vehicle, those that were not done in vain first
	 * @param note what to say of it; the empty text for nothing
	 */
	public record Cause(String fault, String title, boolean confirmed, boolean inVain, List<Link> rules, List<Offer> repairs, String note) {
		public Cause {
			rules = List.copyOf(rules);
			repairs = List.copyOf(repairs);
		}
	}

	/**
	 * A repair that can be chosen.
	 *
	 * @param repair its name; what {@link Bench#repair} takes
	 * @param title what a technician calls it
	 * @param effort what it takes: "40 min, cost 140"; the empty text if nobody says
	 * @param only on which vehicles it can be done, where nobody has said whether this is one; the empty text for all else
	 * @param inVain whether it was done and did not put the vehicle right
	 * @param span where it is written
	 */
	public record Offer(String repair, String title, String effort, String only, boolean inVain, Span span) {
	}

	public Mending {
		causes = List.copyOf(causes);
		others = List.copyOf(others);
		inVain = List.copyOf(inVain);
	}

	/**
	 * Returns what is shown of a bench.
	 *
	 * @param advice what the rules make of it
	 */
	public static Mending of(Bench bench, Advice advice) {
		return new MendingMaker(bench, advice).mending();
	}

	/** Returns whether a repair is to be chosen and each that there is was done in vain. */
	public boolean isWithoutOther() {
		return stage == Stage.REPAIR && work.isEmpty() && areInVain(causes);
	}

	/** Returns whether there are repairs for some causes and each was done in vain. */
	static boolean areInVain(List<Cause> causes) {
		List<Offer> offers = causes.stream().flatMap(cause -> cause.repairs().stream()).toList();
		return !offers.isEmpty() && offers.stream().allMatch(Offer::inVain);
	}

	/** Returns whether there is an end, so that the job can be kept. */
	public boolean isEnded() {
		return !known().isEmpty() || stage == Stage.REFERRED;
	}

	/** Returns the faults that the job is kept with: what was repaired in vain is no known cause before its repair is verified. */
	public List<String> known() {
		return causes.stream().filter(cause -> !cause.inVain() || stage == Stage.VERIFIED).map(Cause::fault).toList();
	}
}
