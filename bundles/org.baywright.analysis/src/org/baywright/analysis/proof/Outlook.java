package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.sat.Answer;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;

/** All rules of one family, asked what findings yet to be made would do. */
public final class Outlook implements Prospect {

	private final RuleBase base;
	private final Program program;
	private final int conflictLimit;
	private Encoding encoding;
	/** What vehicles there are, whatever the rules say of them. */
	private LawfulValues lawful;

	/** @param conflictLimit conflicts after which a question stays undecided, 1 or more */
	public Outlook(RuleBase base, String family, int conflictLimit) {
		this.base = base;
		this.conflictLimit = conflictLimit;
		Draft draft = Draft.of(base, family);
		program = new ProgramBuilder(base, family, draft.rules().stream().sorted(Comparator.comparing(rule -> rule.name())).toList(), draft.laws(),
				draft.exclusives()).build();
	}

	@Override
	public Optional<Ahead> begin(List<Reading> readings) {
		if (!program.isStratified()) {
			return Optional.empty();
		}
		if (encoding == null) {
			encoding = new Encoding(program, conflictLimit, false);
			lawful = new LawfulValues(program, conflictLimit);
		}
		VehicleRun run = new VehicleRun(base, program);
		for (Reading reading : readings) {
			if (run.take(reading).isPresent()) {
				return Optional.empty();
			}
		}
		int[] cells = run.known().clone();
		IntPredicate canStand = verdict -> ask(cells, encoding.verdict(verdict)) != Answer.NO;
		return ask(cells) == Answer.NO ? Optional.empty() : Optional.of(new Lookahead(base, lawful, new Slice(base, program, cells, canStand)));
	}

	/** Asks whether some vehicle with these findings makes the literals hold. */
	private Answer ask(int[] cells, int... more) {
		int[] assumptions = Arrays.copyOf(more, more.length + cells.length);
		int count = more.length;
		for (int var = 0; var < cells.length; var++) {
			if (cells[var] != Program.OPEN) {
				assumptions[count++] = encoding.values.knownIn(var, program.meant(var, cells[var]));
			}
		}
		return encoding.ask(Arrays.copyOf(assumptions, count));
	}
}
