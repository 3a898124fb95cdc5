package org.baywright.analysis.proof;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

import org.baywright.analysis.Prospect;
import org.baywright.analysis.Variable;
import org.baywright.model.CodeReading;
import org.baywright.model.Domain;
import org.baywright.model.IndexSet;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;

/** What lies ahead of one vehicle: a slice of its program, made small and quick. */
final class Lookahead implements Prospect.Ahead {

	private final RuleBase base;
	private final Program program;
	private final LawfulValues lawful;
	private final Slice slice;
	private final SliceVariables variables;
	private final Prospect.Known begin;

	Lookahead(RuleBase base, LawfulValues lawful, Slice slice) {
		this.base = base;
		this.lawful = lawful;
		this.slice = slice;
		program = slice.program;
		variables = new SliceVariables(lawful, slice);
		begin = new KnownFacts(variables, new SliceRules(slice, variables), slice.complaint);
	}

	@Override
	public List<String> causes() {
		return slice.causes;
	}

	@Override
	public List<Variable> findings() {
		return variables.findings;
	}

	@Override
	public int number(Variable finding) {
		return variables.findings.indexOf(finding);
	}

	@Override
	public List<Reading> values(int finding) {
		return Arrays.stream(variables.cellsOf.get(finding)).mapToObj(cell -> reading(finding, cell)).toList();
	}

	private Reading reading(int finding, int cell) {
		Variable variable = variables.findings.get(finding);
		int value = program.cells.get(variables.inProgram[finding]).example(cell);
		return switch (variable.kind()) {
		case SIGN -> new Reading.SignSeen(variable.name(), value == Variable.PRESENT, Span.NONE);
		case MODULE -> new Reading.ModuleAsked(variable.name(), value == Variable.ANSWERS, Span.NONE);
		case CODE -> new Reading.CodeRead(variable.name(), CodeReading.values()[value], Span.NONE);
		default -> {
			Domain domain = program.domains.get(variables.inProgram[finding]).orElseThrow();
			yield domain instanceof Domain.Quantity quantity && quantity.isNumber(value) ? new Reading.Measured(variable.name(), quantity.value(value), Span.NONE)
					: new Reading.Named(variable.name(), name(domain, value), Span.NONE);
		}
		};
	}

	private static String name(Domain domain, int value) {
		return domain.named().stream().map(named -> named.name()).filter(name -> domain.indexOf(name) == value).findFirst().orElseThrow();
	}

	@Override
	public IndexSet means(int finding, int value) {
		IndexSet cells = IndexSet.EMPTY;
		int[] valueOfCell = variables.valueOf.get(finding);
		for (int cell = 0; cell < valueOfCell.length; cell++) {
			cells = valueOfCell[cell] == value ? cells.union(Encoding.only(cell)) : cells;
		}
		return program.cells.get(variables.inProgram[finding]).values(cells);
	}

	@Override
	public OptionalInt value(int finding, Reading reading) {
		Noted alone = new Noted(base, program);
		int var = variables.inProgram[finding];
		return alone.put(reading).isPresent() || alone.cells()[var] == Program.OPEN ? OptionalInt.empty() : OptionalInt.of(variables.valueOf.get(finding)[alone.cells()[var]]);
	}

	@Override
	public boolean isTied(int finding) {
		return lawful.isTied(variables.inProgram[finding]);
	}

	@Override
	public Prospect.Known known() {
		return begin;
	}
}
