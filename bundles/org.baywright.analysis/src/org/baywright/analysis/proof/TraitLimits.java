package org.baywright.analysis.proof;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntPredicate;

import org.baywright.analysis.sat.Answer;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Law;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;
import org.baywright.model.ValueSet;

/** Works out which vehicles something is impossible for, as conditions on traits. */
final class TraitLimits {

	/** More combinations of trait values than this are not walked through one by one. */
	private static final int MOST_COMBINATIONS = 4096;

	private TraitLimits() {
	}

	/**
	 * Returns which vehicles the laws of the draft shut out; empty if there are too many kinds of vehicle to say.
	 */
	static Optional<List<Limit>> of(RuleBase base, Draft draft, Function<Law, Footprint> prints) {
		boolean tied = draft.laws().stream().map(prints)
				.anyMatch(print -> !Footprint.traits(base, print).isEmpty() && !print.findings().isEmpty());
		if (!tied) {
			return Optional.of(List.of());
		}
		Program program = new Draft(draft.family(), List.of(), draft.laws(), List.of()).program(base);
		Encoding encoding = new Encoding(program, Prover.CONFLICT_LIMIT, false);
		Laws laws = new Laws(program, Prover.CONFLICT_LIMIT);
		List<Integer> traits = traits(program);
		return impossible(program, encoding, traits).map(vehicles -> vehicles.stream()
				.map(cells -> new Limit(new Law("", List.of(), vehicle(program, traits, cells), new Condition.Or(List.of(), Span.NONE),
						Span.NONE), SourceLine.several(laws.against(traits, cells))))
				.toList());
	}

	private static List<Integer> traits(Program program) {
		List<Integer> traits = new ArrayList<>();
		for (int var = 0; var < program.variables.size(); var++) {
			if (program.isTrait(var)) {
				traits.add(var);
			}
		}
		return traits;
	}

	/**
	 * Returns the vehicles, as cells of their traits, for which the assumptions cannot hold; empty if the traits have too
	 * many combinations to walk through.
	 */
	private static Optional<List<int[]>> impossible(Program program, Encoding encoding, List<Integer> traits,
			int... assumptions) {
		long combinations = traits.stream().mapToLong(var -> program.cells.get(var).count()).reduce(1, (a, b) -> a * b);
		if (combinations > MOST_COMBINATIONS) {
			return Optional.empty();
		}
		List<int[]> found = new ArrayList<>();
		int[] cells = new int[traits.size()];
		for (long n = 0; n < combinations; n++) {
			int[] all = java.util.Arrays.copyOf(assumptions, assumptions.length + cells.length);
			for (int i = 0; i < cells.length; i++) {
				all[assumptions.length + i] = encoding.values.in(traits.get(i), Encoding.only(cells[i]));
			}
			if (encoding.ask(all) == Answer.NO) {
				found.add(cells.clone());
			}
			for (int i = 0; i < cells.length && ++cells[i] == program.cells.get(traits.get(i)).count(); i++) {
				cells[i] = 0;
			}
		}
		return Optional.of(found);
	}

	private static Condition vehicle(Program program, List<Integer> traits, int[] cells) {
		List<Condition> parts = new ArrayList<>();
		for (int i = 0; i < cells.length; i++) {
			int var = traits.get(i);
			if (program.cells.get(var).count() > 1) {
				IndexSet values = program.cells.get(var).values(Encoding.only(cells[i]));
				Optional<Domain> domain = program.domains.get(var);
				parts.add(new Condition.TraitIs(program.variables.get(var).name(), valueSet(domain.orElseThrow(), values),
						Span.NONE));
			}
		}
		return new Condition.And(parts, Span.NONE);
	}

	/** Returns the set as an author would have to write it. */
	private static ValueSet valueSet(Domain domain, IndexSet values) {
		if (domain instanceof Domain.Names names) {
			List<String> chosen = new ArrayList<>();
			IntPredicate in = values::contains;
			for (int i = 0; i < names.size(); i++) {
				if (in.test(i)) {
					chosen.add(names.values().get(i).name());
				}
			}
			return new ValueSet.Choices(chosen);
		}
		Domain.Quantity quantity = (Domain.Quantity) domain;
		List<ValueSet> bands = new ArrayList<>();
		for (int run = 0; run < values.runCount(); run++) {
			BigDecimal low = quantity.value(values.low(run));
			bands.add(ValueSet.Band.closed(low, quantity.value(values.high(run))));
		}
		return bands.size() == 1 ? bands.get(0) : new ValueSet.Union(bands);
	}

	/**
	 * Returns the vehicles for which the program always ends in a verdict, whatever the complete findings are; empty if
	 * there are too many kinds of vehicle to say.
	 */
	static Optional<List<Condition>> unquiet(Program program, Encoding encoding) {
		int end = encoding.ended();
		if (encoding.ask(encoding.allKnown(), -end) == Answer.NO) {
			return Optional.of(List.of(new Condition.And(List.of(), Span.NONE)));
		}
		List<Integer> traits = traits(program);
		return impossible(program, encoding, traits, encoding.allKnown(), -end)
				.map(vehicles -> vehicles.stream().map(cells -> vehicle(program, traits, cells)).toList());
	}
}
