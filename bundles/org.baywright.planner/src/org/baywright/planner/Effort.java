package org.baywright.planner;

import java.math.BigDecimal;
import java.util.Optional;

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
	private final double rate;

	/** @param rate what a minute costs, 0 or more */
	Effort(RuleBase base, double rate) {
		this.base = base;
		this.rate = rate;
	}

	/** Returns what the finding costs where some are made already; nothing if it is told with one of these. */
	double of(Variable finding, Prospect.Known known) {
		return isPaid(finding, known) ? 0 : price(finding).doubleValue() + rate * minutes(finding);
	}

	/** Returns how many minutes it takes. */
	double minutes(Variable finding) {
		return switch (finding.kind()) {
		case TEST -> base.test(finding.name()).map(base::doneBy).map(Test::takes).map(takes -> given(takes, TEST)).orElse(TEST);
		case MODULE, CODE -> module(finding).map(module -> base.scan(module).takes()).map(takes -> given(takes, MODULE)).orElse(MODULE);
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

	/** Who asks a module has all its codes, and who does a test sees what is seen with it. */
	private boolean isPaid(Variable finding, Prospect.Known known) {
		Optional<Module> module = module(finding);
		if (module.isPresent()) {
			return known.isMade(new Variable(Variable.Kind.MODULE, module.get().name()));
		}
		return finding.kind() == Variable.Kind.TEST && base.test(finding.name()).map(base::doneBy).stream()
				.flatMap(done -> base.tests().stream().filter(test -> base.doneBy(test).equals(done)))
				.anyMatch(test -> known.isMade(new Variable(Variable.Kind.TEST, test.name())));
	}

	private Optional<Module> module(Variable finding) {
		return switch (finding.kind()) {
		case CODE -> base.code(finding.name()).map(Code::module).flatMap(base::module);
		case MODULE -> base.module(finding.name());
		default -> Optional.empty();
		};
	}
}
