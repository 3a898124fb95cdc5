package org.baywright.analysis.proof;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.baywright.analysis.Variable;
import org.baywright.model.Code;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Meaning;
import org.baywright.model.NamedValue;
import org.baywright.model.RuleBase;
import org.baywright.model.Trait;
import org.baywright.model.unit.UnitException;
import org.baywright.model.unit.Units;

/**
 * What can be found on vehicles of a family as two rule bases say it, so that rules of both can be asked of the same
 * vehicle. A value that only one of them knows is never known to the other. One rule base is ground with itself.
 */
final class Ground {

	/** What a test or trait is called as it was, where its values before and now have nothing in common. */
	private static final String AS_IT_WAS = " (as it was)";

	final Map<Variable, Cells.Cutter> cutters = new LinkedHashMap<>();
	private final RuleBase old;
	private final RuleBase now;
	private final String family;
	/** For each variable that has one the domain with the values of both. */
	private final Map<Variable, Optional<Domain>> domains = new HashMap<>();

	Ground(RuleBase old, RuleBase now, String family) {
		this.old = old;
		this.now = now;
		this.family = family;
	}

	/** Returns what stands for a variable of one of the rule bases. */
	Variable key(RuleBase base, Variable variable) {
		return base == now || isComparable(variable) ? variable : new Variable(variable.kind(), variable.name() + AS_IT_WAS);
	}

	/** Returns whether what a variable gave before can be set beside what it gives now. */
	private boolean isComparable(Variable variable) {
		return old == now || own(old, variable).isEmpty() || own(now, variable).isEmpty() || both(variable).isPresent();
	}

	private Optional<Domain> both(Variable variable) {
		return domains.computeIfAbsent(variable, key -> joined(before(key), own(now, key).orElseThrow()));
	}

	/** Returns what a test or trait gave before, in the unit that it has now. */
	private Domain before(Variable variable) {
		Domain before = own(old, variable).orElseThrow();
		return own(now, variable).map(after -> inUnit(before, after)).orElse(before);
	}

	/** Returns all the values of what stands for a variable; nothing for signs, modules and codes. */
	Optional<Domain> domain(Variable key) {
		if (old == now) {
			return own(now, key);
		} else if (key.name().endsWith(AS_IT_WAS)) {
			return own(old, new Variable(key.kind(), key.name().substring(0, key.name().length() - AS_IT_WAS.length())));
		}
		Optional<Domain> before = own(old, key);
		Optional<Domain> after = own(now, key);
		return before.isPresent() && after.isPresent() ? both(key).or(() -> after) : after.or(() -> before);
	}

	private Optional<Domain> own(RuleBase base, Variable variable) {
		return switch (variable.kind()) {
		case TRAIT -> Optional.ofNullable(base.traitsOf(family).get(variable.name())).map(Trait::domain);
		case TEST -> base.test(variable.name()).map(org.baywright.model.Test::domain);
		default -> Optional.empty();
		};
	}

	/** Returns values of one of the rule bases as numbers of {@link #domain}. */
	IndexSet values(Variable key, Optional<Domain> own, IndexSet values) {
		Optional<Domain> all = old == now ? own : domain(key);
		if (own.isEmpty() || all.isEmpty() || own.get() == all.get() || own.get().equals(all.get())) {
			return values;
		}
		IndexSet mapped = IndexSet.EMPTY;
		for (int run = 0; run < values.runCount(); run++) {
			mapped = mapped.union(map(inUnit(own.get(), all.get()), all.get(), values.low(run), values.high(run)));
		}
		return mapped;
	}

	private static IndexSet map(Domain own, Domain all, int low, int high) {
		IndexSet mapped = IndexSet.EMPTY;
		if (own instanceof Domain.Names names) {
			for (int i = low; i <= high; i++) {
				int at = all.indexOf(names.values().get(i).name());
				mapped = mapped.union(IndexSet.range(at, at));
			}
			return mapped;
		}
		Domain.Quantity from = (Domain.Quantity) own;
		Domain.Quantity to = (Domain.Quantity) all;
		if (from.under().isPresent() && low == 0) {
			int at = to.indexOf(from.under().get().name());
			mapped = mapped.union(IndexSet.range(at, at));
		}
		if (from.over().isPresent() && high == from.size() - 1) {
			int at = to.indexOf(from.over().get().name());
			mapped = mapped.union(IndexSet.range(at, at));
		}
		int first = Math.max(low, from.first());
		int last = Math.min(high, from.last());
		if (first > last) {
			return mapped;
		}
		// what an instrument with finer steps shows in between, a coarser one shows as the step below
		BigDecimal end = last == from.last() ? from.value(last) : from.value(last + 1).subtract(to.step());
		return mapped.union(IndexSet.range(to.floorIndex(from.value(first)), to.floorIndex(end)));
	}

	boolean asksForState(String code) {
		return now.asksForState(code) || old.asksForState(code);
	}

	/** Returns the module of a code, as it is now if it was another before. */
	String moduleOf(String code) {
		return now.code(code).or(() -> old.code(code)).map(Code::module).orElseThrow();
	}

	// ---- values of both ----------------------------------------------------------------------------------------

	private static Optional<Domain> joined(Domain before, Domain after) {
		if (Meaning.text(before).equals(Meaning.text(after))) {
			return Optional.of(after);
		} else if (before instanceof Domain.Names some && after instanceof Domain.Names others) {
			List<NamedValue> all = new ArrayList<>(others.values());
			some.values().stream().filter(value -> others.indexOf(value.name()) < 0).forEach(all::add);
			return Optional.of(new Domain.Names(all));
		}
		return before instanceof Domain.Quantity one && after instanceof Domain.Quantity other && one.unit().equals(other.unit())
				? joined(one, other) : Optional.empty();
	}

	/** Returns the same values in the unit of another domain, if that measures the same kind of thing. */
	private static Domain inUnit(Domain own, Domain other) {
		if (!(own instanceof Domain.Quantity from) || !(other instanceof Domain.Quantity to) || from.unit().equals(to.unit())) {
			return own;
		}
		try {
			BigDecimal low = Units.standard().convert(from.low(), from.unit(), to.unit());
			BigDecimal next = Units.standard().convert(from.low().add(from.step()), from.unit(), to.unit());
			return new Domain.Quantity(to.unit(), low, low.add(next.subtract(low).multiply(BigDecimal.valueOf(from.last() - from.first()))), next.subtract(low),
					from.under(), from.over());
		} catch (UnitException | IllegalArgumentException otherKind) {
			return own;
		}
	}

	private static Optional<Domain> joined(Domain.Quantity before, Domain.Quantity after) {
		if (!agree(before.under(), after.under()) || !agree(before.over(), after.over())) {
			return Optional.empty();
		}
		BigDecimal step = common(common(before.step(), after.step()), before.low().subtract(after.low()));
		try {
			return Optional.of(new Domain.Quantity(after.unit(), before.low().min(after.low()),
					before.value(before.last()).max(after.value(after.last())), step, after.under().or(before::under), after.over().or(before::over)));
		} catch (IllegalArgumentException tooMany) {
			return Optional.empty();
		}
	}

	private static boolean agree(Optional<NamedValue> one, Optional<NamedValue> other) {
		return one.isEmpty() || other.isEmpty() || one.get().name().equals(other.get().name());
	}

	/** Returns the greatest number of which both are multiples. */
	private static BigDecimal common(BigDecimal one, BigDecimal other) {
		int scale = Math.max(0, Math.max(one.scale(), other.scale()));
		BigInteger divisor = one.setScale(scale).unscaledValue().gcd(other.setScale(scale).unscaledValue());
		return new BigDecimal(divisor, scale);
	}
}
