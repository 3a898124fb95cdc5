package org.baywright.analysis;

import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;

import org.baywright.model.Reading;

/**
 * One vehicle of a family: what the rules make of the findings made so far, which rules still wait and for what, and
 * which can no longer fire and why. Every answer looks at all the findings that may yet be made and that the laws allow.
 * Keep one instance while the rules stay the same. Not safe for use by several threads at once.
 */
public interface Consultation {

	/** What has become of a rule. */
	enum State {
		/** It has fired. */
		FIRED,
		/** It has not fired, and some vehicle with these findings lets it fire yet. */
		OPEN,
		/** It has not fired, and whatever is found yet, it will not. */
		NEVER,
		/** The search reached its limit, or the findings themselves cannot be: nobody knows. */
		UNDECIDED
	}

	/**
	 * What the rules say of a vehicle.
	 *
	 * @param trouble why nothing can be derived: the rules go round in a circle; the empty text if they do not
	 * @param clashes findings that cannot be; empty if some vehicle has them all
	 * @param rules all rules that reach the family, by name
	 * @param verdicts what stands, sorted
	 */
	record Advice(String trouble, List<Clash> clashes, List<Standing> rules, List<Derived> verdicts) {
		public Advice {
			clashes = List.copyOf(clashes);
			rules = List.copyOf(rules);
			verdicts = List.copyOf(verdicts);
		}
	}

	/**
	 * Findings that no vehicle has together; without any one of them, or of the laws, it would be possible.
	 *
	 * @param message what is wrong, in one sentence
	 * @param readings the findings, in the order in which they were given
	 * @param laws titles of the laws that they break, sorted
	 */
	record Clash(String message, List<Reading> readings, List<String> laws) {
		public Clash {
			readings = List.copyOf(readings);
			laws = List.copyOf(laws);
		}
	}

	/**
	 * One verdict that stands.
	 *
	 * @param rules names of the rules that derive it, sorted
	 */
	record Derived(Verdict verdict, List<String> rules) {
		public Derived {
			rules = List.copyOf(rules);
		}
	}

	/**
	 * What has become of one rule.
	 *
	 * @param fired numbers of its outcomes that fired, ascending
	 * @param possible numbers of the outcomes that may still apply, ascending; empty unless it is open
	 * @param begun whether a condition of it on a finding, or on a verdict that must stand, holds already
	 * @param needs what an open rule waits for, in the order of its text
	 * @param obstacle why the rule can never fire
	 */
	record Standing(String rule, State state, List<Integer> fired, List<Integer> possible, boolean begun,
			List<Need> needs, Obstacle obstacle) {
		public Standing {
			fired = List.copyOf(fired);
			possible = List.copyOf(possible);
			needs = List.copyOf(needs);
		}
	}

	/**
	 * One condition that a rule waits for.
	 *
	 * @param demand the condition
	 * @param open findings it looks at that nobody has made yet, sorted
	 * @param verdicts verdicts it waits for: to stand, or no longer to stand, sorted
	 */
	record Need(Demand demand, Set<Variable> open, Set<Verdict> verdicts) {
	}

	/**
	 * Why a rule can never fire: these conditions of it cannot all hold with these findings; without any one of either
	 * they could. Both are empty where there is no obstacle.
	 *
	 * @param demands conditions of the rule, in the order of its text
	 * @param readings findings, in the order in which they were given; none if no vehicle of the family lets it fire
	 */
	record Obstacle(List<Demand> demands, List<Reading> readings) {
		/** For a rule that can fire, or has. */
		public static final Obstacle NONE = new Obstacle(List.of(), List.of());

		public Obstacle {
			demands = List.copyOf(demands);
			readings = List.copyOf(readings);
		}
	}

	/**
	 * Says what the rules make of a vehicle.
	 *
	 * @param readings what is known of it, traits and findings; of two readings of one thing the later one clashes
	 * @param listener can stop the work
	 * @throws CancellationException if the listener asked to stop
	 */
	Advice advise(List<Reading> readings, Listener listener);
}
