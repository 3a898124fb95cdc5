package org.baywright.presenter.plan;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

import org.baywright.model.Meaning;
import org.baywright.model.words.Words;
import org.baywright.presenter.bench.StepWords;

/**
 * What is to be expected of a plan.
 *
 * @param minutes work to be expected, in minutes
 * @param worstMinutes the most work on any way to an end
 * @param waiting how long the vehicle only waits, in minutes
 * @param worstWaiting the most waiting on any way to an end
 * @param cost time and money together, in the project's own money
 * @param worstCost the most of it on any way to an end
 * @param least what no plan can do better than; {@code cost} if the plan is the best
 * @param hourly whether a workshop says what an hour costs; otherwise a minute counts like one of the money
 * @param one which share of the vehicles ends with one cause confirmed, from 0 to 1
 * @param several which with several
 * @param referred which with nothing confirmed, and somebody else goes on
 * @param nothing which with nothing confirmed
 * @param unseen which comes to places at which nobody looked how it goes on
 */
public record Figures(double minutes, double worstMinutes, double waiting, double worstWaiting, double cost, double worstCost, double least, boolean hourly,
		double one, double several, double referred, double nothing, double unseen) {

	/** Returns whether no plan costs less. */
	public boolean isBest() {
		return least >= cost;
	}

	/** Returns them as sentences. */
	List<String> sentences() {
		List<String> said = new ArrayList<>();
		said.add("Work: about " + StepWords.minutes(minutes) + " to be expected, " + StepWords.minutes(worstMinutes) + " at worst.");
		if (worstWaiting >= 1) {
			said.add("Waiting: " + (waiting < 1 ? "less than a minute" : "about " + StepWords.minutes(waiting)) + " to be expected, " + StepWords.minutes(worstWaiting) + " at worst.");
		}
		said.add("Time and money together: about " + money(cost) + " to be expected, " + money(worstCost) + " at worst, in the project’s own money; "
				+ (hourly ? "an hour of work as the workshop says." : "a minute of work counts like one of it."));
		said.add(isBest() ? "No order of steps costs less." : "The search for a better order stopped before its end: none costs less than " + money(least) + ", but this plan need not be the best.");
		List<String> ends = new ArrayList<>();
		add(ends, one, "end with one cause confirmed");
		add(ends, several, "end with several causes confirmed");
		add(ends, referred, "go on to somebody else");
		add(ends, nothing, "end with nothing confirmed");
		add(ends, unseen, "come to where the search did not look on, so that the times are estimates");
		said.add("Of 100 vehicles " + Words.and(ends) + ".");
		return said;
	}

	private static void add(List<String> ends, double share, String how) {
		if (share > 0) {
			ends.add(number(share) + " " + how);
		}
	}

	/** Returns a share of the vehicles: "34 of 100". */
	static String of100(double share) {
		return number(share) + " of 100";
	}

	/** Returns how many of a hundred. */
	private static String number(double share) {
		long whole = Math.round(100 * share);
		return whole == 0 ? "fewer than 1" : whole == 100 && share < 1 - 1e-9 ? "more than 99" : Long.toString(whole);
	}

	/** Returns money to three digits, as it is only expected. */
	static String money(double money) {
		return Meaning.number(BigDecimal.valueOf(money).setScale(money < 9.95 ? 1 : 0, RoundingMode.HALF_UP));
	}

	/** Returns what moved against earlier figures, in short. */
	List<String> against(Figures before) {
		List<String> moved = new ArrayList<>();
		add(moved, "expected", StepWords.minutes(before.minutes), StepWords.minutes(minutes));
		add(moved, "worst", StepWords.minutes(before.worstMinutes), StepWords.minutes(worstMinutes));
		add(moved, "waiting", wait(before.waiting), wait(waiting));
		add(moved, "cost", money(before.cost), money(cost));
		add(moved, "one cause confirmed in", of100(before.one), of100(one));
		return moved;
	}

	private static String wait(double waiting) {
		return waiting < 1 ? "none" : StepWords.minutes(waiting);
	}

	private static void add(List<String> moved, String what, String before, String now) {
		if (!before.equals(now)) {
			int unit = now.lastIndexOf(' ');
			boolean same = unit > 0 && before.endsWith(now.substring(unit)) && before.indexOf(' ') == before.lastIndexOf(' ');
			moved.add(what + " " + (same ? before.substring(0, before.lastIndexOf(' ')) : before) + " → " + now);
		}
	}
}
