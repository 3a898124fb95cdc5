package org.baywright.planner;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.model.Code;
import org.baywright.model.Module;
import org.baywright.model.RuleBase;
import org.baywright.model.Test;

/** What it takes to make a finding, in the project's own money: minutes at a rate, and the price with that of the tools. */
final class Effort {

	/** Minutes of a test of which nobody says how long it takes. */
	private static final double TEST = 5;
	/** Minutes of reading a module of which nobody says how long it takes. */
	private static final double MODULE = 3;
	/** Minutes of asking or looking for a sign. */
	private static final double SIGN = 1;

	private final RuleBase base;
	private final double[] costs;
	/** For each finding the number of the doing that shows it. */
	private final int[] doings;
	private final List<int[]> findingsOf = new ArrayList<>();

	/** @param rate what a minute costs, 0 or more */
	Effort(RuleBase base, Prospect.Ahead ahead, double rate) {
		this.base = base;
		List<Variable> findings = ahead.findings();
		Map<Object, Integer> numbers = new LinkedHashMap<>();
		costs = findings.stream().mapToDouble(finding -> price(finding).doubleValue() + rate * minutes(finding)).toArray();
		doings = findings.stream().mapToInt(finding -> numbers.computeIfAbsent(doing(finding), key -> numbers.size())).toArray();
		for (int doing = 0; doing < numbers.size(); doing++) {
			int of = doing;
			findingsOf.add(IntStream.range(0, doings.length).filter(finding -> doings[finding] == of).toArray());
		}
	}

	/** Returns what the finding costs where some are made already; nothing if it is told with one of these. */
	double of(int finding, Prospect.Known known) {
		return isPaid(finding, known) ? 0 : costs[finding];
	}

	/** Who asks a module has all its codes, and who does a test sees what is seen with it. */
	boolean isPaid(int finding, Prospect.Known known) {
		for (int other : findingsOf.get(doings[finding])) {
			if (known.isMade(other)) {
				return true;
			}
		}
		return false;
	}

	/** Returns what each finding costs where some are made already. */
	double[] least(Prospect.Known known) {
		return IntStream.range(0, costs.length).mapToDouble(finding -> of(finding, known)).toArray();
	}

	/** Returns for each finding the number of the doing that shows it. */
	int[] together() {
		return doings;
	}

	/** Returns what all of it costs together. */
	double all() {
		return findingsOf.stream().mapToDouble(findings -> Arrays.stream(findings).mapToDouble(finding -> costs[finding]).max().orElse(0)).sum();
	}

	private Object doing(Variable finding) {
		return switch (finding.kind()) {
		case TEST -> base.test(finding.name()).map(base::doneBy).<Object>map(test -> test).orElse(finding);
		case MODULE, CODE -> module(finding).<Object>map(module -> module).orElse(finding);
		default -> finding;
		};
	}

	/** Returns how many minutes it takes. */
	private double minutes(Variable finding) {
		return switch (finding.kind()) {
		case TEST -> base.test(finding.name()).map(base::doneBy).map(Test::takes).map(takes -> given(takes, TEST)).orElse(TEST);
		case MODULE, CODE -> module(finding).map(Module::takes).map(takes -> given(takes, MODULE)).orElse(MODULE);
		default -> SIGN;
		};
	}

	private static double given(BigDecimal minutes, double otherwise) {
		return minutes.signum() > 0 ? minutes.doubleValue() : otherwise;
	}

	private BigDecimal price(Variable finding) {
		return switch (finding.kind()) {
		case TEST -> base.test(finding.name()).map(test -> test.cost(base)).orElse(BigDecimal.ZERO);
		case MODULE, CODE -> module(finding).map(module -> module.cost(base)).orElse(BigDecimal.ZERO);
		default -> BigDecimal.ZERO;
		};
	}

	private Optional<Module> module(Variable finding) {
		return switch (finding.kind()) {
		case CODE -> base.code(finding.name()).map(Code::module).flatMap(base::module);
		case MODULE -> base.module(finding.name());
		default -> Optional.empty();
		};
	}
}
