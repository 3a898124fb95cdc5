package org.baywright.presenter.bench;

import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

import org.baywright.analysis.Variable;
import org.baywright.model.Reading;
import org.baywright.model.Repair;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;
import org.baywright.model.Workshop;

/**
 * What a job has taken so far by the rules: each test and each module once, however much is seen with it, and every repair
 * that was done, in vain too, with the tests of its verification. What the user says instead comes first.
 *
 * @param each how many minutes each finding took, in the order of the bench; 0 for what is seen along with another
 * @param minutes the whole, in minutes
 * @param cost the whole, in the project's own money
 * @param byRules whether minutes and cost are those of the rules, and nobody has said anything else
 */
public record Spent(List<BigDecimal> each, BigDecimal minutes, BigDecimal cost, boolean byRules) {

	public Spent {
		each = List.copyOf(each);
	}

	static Spent of(Bench bench) {
		RuleBase base = bench.base();
		Done done = bench.now().done();
		Sum sum = new Sum(base);
		if (bench.now().scanned()) {
			sum.scan();
		}
		List<BigDecimal> each = bench.now().readings().stream().map(sum::add).toList();
		done.inVain().forEach(inVain -> {
			inVain.before().forEach(outdated -> sum.add(outdated.reading()));
			base.repair(inVain.repair()).ifPresent(sum::add);
			sum.begin();
			inVain.read().forEach(sum::add);
		});
		done.repairs().forEach((name, progress) -> {
			boolean verifying = !progress.checks().isEmpty() || !progress.read().isEmpty();
			boolean over = base.repair(name).filter(repair -> !repair.steps().isEmpty() && progress.steps().size() == repair.steps().size()).isPresent();
			if (verifying || over) {
				base.repair(name).ifPresent(sum::add);
				sum.begin();
				progress.read().values().forEach(sum::add);
			}
		});
		return new Spent(each, done.minutes().orElse(sum.minutes), done.cost().orElse(sum.cost), done.minutes().isEmpty() && done.cost().isEmpty());
	}

	/** Adds up. */
	private static final class Sum {
		private final RuleBase base;
		private final Set<Variable> paid = new HashSet<>();
		private BigDecimal minutes = BigDecimal.ZERO;
		private BigDecimal cost = BigDecimal.ZERO;

		Sum(RuleBase base) {
			this.base = base;
		}

		/** All modules are read at once. */
		void scan() {
			base.workshop().flatMap(Workshop::all).ifPresent(scan -> add(scan.takes(), scan.cost(base)));
			base.modules().forEach(module -> paid.add(new Variable(Variable.Kind.MODULE, module.name())));
		}

		/** From now on everything is paid for again. */
		void begin() {
			paid.clear();
		}

		void add(Repair repair) {
			add(repair.takes(), repair.cost(base));
		}

		private BigDecimal add(BigDecimal time, BigDecimal money) {
			minutes = minutes.add(time);
			cost = cost.add(money);
			return time;
		}

		/** Returns the minutes that come with a reading. */
		BigDecimal add(Reading reading) {
			Variable variable = Variable.of(base, reading);
			Optional<Test> test = variable.kind() == Variable.Kind.TEST ? base.test(variable.name()).map(base::doneBy) : Optional.empty();
			if (test.isPresent()) {
				return paid.add(new Variable(Variable.Kind.TEST, test.get().name())) ? add(test.get().takes(), test.get().cost(base)) : BigDecimal.ZERO;
			}
			return Doing.module(base, variable).filter(module -> paid.add(new Variable(Variable.Kind.MODULE, module.name())))
					.map(base::scan).map(scan -> add(scan.takes(), scan.cost(base))).orElse(BigDecimal.ZERO);
		}
	}
}
