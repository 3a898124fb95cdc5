package org.baywright.planner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/** What the ends of a plan leave undivided. */
public final class Ends {

	private Ends() {
	}

	/**
	 * Causes that a plan does not tell apart: wherever one of them is still possible at an end, so are the others.
	 *
	 * @param causes their numbers, ascending; two or more
	 * @param reached how often the plan ends where they are possible, from 0 to 1
	 * @param pays below what cost a step that tells them apart pays, see {@link #groups}; nothing where a repair is not known
	 */
	public record Group(List<Integer> causes, double reached, OptionalDouble pays) {
		public Group {
			causes = List.copyOf(causes);
		}
	}

	/**
	 * Returns the groups that no step of a plan splits, in the order of their first cause; none with a cause that is possible
	 * at a place at which nobody looked how it goes on.
	 *
	 * <p>Who has come to an end with such a group repairs one fault after the other until the vehicle is well, in the order of
	 * likelihood over cost, as with checks that show one fault each. What is repaired in vain on the way is what a step could
	 * save that told at once which one it is: for each but the last its cost, as often as a later one is the cause. That step is
	 * done wherever the plan ends with the group, so it pays while its cost is below what is saved on all vehicles over the
	 * share of vehicles that come there. That repairing in vain does no harm, and that a repair shows at once whether it helped,
	 * is taken for granted. A dearer step may still pay when some repairs were in vain, which is not looked at.
	 *
	 * @param repairs what putting each cause right costs, NaN where that is not known; causes behind these are in no group
	 */
	public static List<Group> groups(Plan plan, double[] repairs) {
		Map<Plan, Double> ends = plan.ends();
		Map<Set<Integer>, List<Integer>> alike = new LinkedHashMap<>();
		List<Map.Entry<Plan, Double>> places = List.copyOf(ends.entrySet());
		List<double[]> left = places.stream().map(end -> end.getKey().position().likelihoods()).toList();
		for (int cause = 0; cause < repairs.length; cause++) {
			Set<Integer> possible = new TreeSet<>();
			boolean looked = true;
			for (int end = 0; end < places.size(); end++) {
				if (left.get(end)[cause] > 0) {
					possible.add(end);
					looked &= !places.get(end).getKey().isCut();
				}
			}
			if (looked && !possible.isEmpty()) {
				alike.computeIfAbsent(possible, key -> new ArrayList<>()).add(cause);
			}
		}
		double[] prior = plan.position().likelihoods();
		List<Group> groups = new ArrayList<>();
		alike.forEach((at, causes) -> {
			if (causes.size() > 1) {
				double reached = at.stream().mapToDouble(end -> places.get(end).getValue()).sum();
				double saved = inVain(causes, prior, repairs);
				groups.add(new Group(causes, reached, Double.isNaN(saved) || reached == 0 ? OptionalDouble.empty() : OptionalDouble.of(saved / reached)));
			}
		});
		groups.sort(Comparator.comparing(group -> group.causes().get(0)));
		return groups;
	}

	/** Returns what is to be expected of repairs in vain where causes are put right one after the other. */
	private static double inVain(List<Integer> causes, double[] likely, double[] repairs) {
		List<Integer> order = causes.stream().sorted(Comparator.comparingDouble(cause -> repairs[cause] / likely[cause])).toList();
		double later = causes.stream().mapToDouble(cause -> likely[cause]).sum();
		double sum = 0;
		for (int cause : order) {
			later -= likely[cause];
			sum += repairs[cause] * Math.max(0, later);
		}
		return sum;
	}
}
