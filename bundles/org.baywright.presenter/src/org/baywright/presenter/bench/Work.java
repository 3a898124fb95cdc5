package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.baywright.analysis.Variable;
import org.baywright.model.Notice;
import org.baywright.model.Reading;
import org.baywright.model.Span;
import org.baywright.presenter.Link;
import org.baywright.presenter.bench.Check.Verdict;
import org.baywright.presenter.bench.Done.InVain;

/**
 * A repair on one vehicle, from its first step to the end of its verification.
 *
 * @param repair its name; what commands on the bench take
 * @param title what a technician calls it
 * @param span where it is written
 * @param faults names of the faults of this vehicle that it puts right
 * @param cautions what can hurt somebody, first
 * @param place where it is done, in words; the empty text if nobody says
 * @param pictures what shows where or how it is done, each with the way to its file
 * @param tools tools it needs
 * @param minutes how long it takes, 0 if nobody says
 * @param cost what it costs with its tools, in the project's own money
 * @param who who may do it, in words
 * @param steps what to do
 * @param notices who is told what
 * @param changes what is not as before
 * @param checks how it is verified, in the order of the work
 * @param restsOn what the faults were confirmed by, and what else was found on their parts
 */
public record Work(String repair, String title, Span span, List<String> faults, List<Caution> cautions, String place, List<Link> pictures,
		List<String> tools, BigDecimal minutes, BigDecimal cost, String who, List<Step> steps, List<Told> notices, List<String> changes,
		List<Check> checks, Set<Variable> restsOn) {

	/** What is known of the whole. */
	public enum Outcome {
		/** Something is not done yet, or what was read does not tell. */
		OPEN,
		/** Everything is done and as expected. */
		VERIFIED,
		/** Something that was read is other than expected. */
		FAILED
	}

	/**
	 * One step of the repair.
	 *
	 * @param text what to do
	 * @param done whether it is ticked
	 */
	public record Step(String text, boolean done) {
	}

	/**
	 * Somebody who is told something.
	 *
	 * @param whom who
	 * @param text what they must know or accept
	 * @param why why they must be told; may be empty
	 * @param done whether it is ticked
	 */
	public record Told(Notice.Whom whom, String text, String why, boolean done) {
	}

	public Work {
		faults = List.copyOf(faults);
		cautions = List.copyOf(cautions);
		pictures = List.copyOf(pictures);
		tools = List.copyOf(tools);
		steps = List.copyOf(steps);
		notices = List.copyOf(notices);
		changes = List.copyOf(changes);
		checks = List.copyOf(checks);
		restsOn = Set.copyOf(restsOn);
	}

	/** Returns what is known of the whole. */
	public Outcome outcome() {
		if (checks.stream().anyMatch(check -> check.verdict() == Verdict.NOT_AS_EXPECTED)) {
			return Outcome.FAILED;
		}
		return !checks.isEmpty() && checks.stream().allMatch(check -> check.verdict() == Verdict.AS_EXPECTED) ? Outcome.VERIFIED : Outcome.OPEN;
	}

	/** Returns whether anything of it was ticked or read. */
	public boolean isBegun() {
		return steps.stream().anyMatch(Step::done) || notices.stream().anyMatch(Told::done)
				|| checks.stream().anyMatch(check -> check.ticked() || check.read().isPresent());
	}

	/** Returns what was read in the verification; of what was read several times, the last. */
	public List<Reading> read() {
		Map<Variable, Reading> last = new LinkedHashMap<>();
		checks.forEach(check -> check.read().ifPresent(reading -> last.put(check.at().variable().orElseThrow(), reading)));
		return new ArrayList<>(last.values());
	}

	/**
	 * Returns what is to be noted of it after it failed.
	 *
	 * @param before what does not count any more
	 */
	InVain inVain(List<InVain.Outdated> before) {
		return new InVain(repair, title, faults, checks.stream().filter(check -> check.verdict() == Verdict.NOT_AS_EXPECTED)
				.map(check -> check.subject().orElseThrow().title() + " " + check.said() + ", expected " + check.expected()).toList(), before, checks.stream().flatMap(check -> check.read().stream()).toList());
	}
}
