package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

import org.baywright.analysis.Variable;
import org.baywright.model.Code;
import org.baywright.model.CodeReading;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.Span;

/** What stands after more was read: a later reading takes the place of an earlier one of the same thing. */
record Afterwards(RuleBase base, List<Reading> before) {

	List<Reading> with(Collection<Reading> later) {
		List<Reading> readings = new ArrayList<>(before);
		later.forEach(reading -> put(reading, readings));
		return readings;
	}

	private void put(Reading reading, List<Reading> into) {
		// a module that has answered in between is silent no more, and the other way round
		if (reading instanceof Reading.CodeRead read) {
			base.code(read.subject()).map(Code::module).ifPresent(module -> replace(
					new Reading.ModuleAsked(module, read.reading() != CodeReading.UNREAD, Span.NONE), into, false));
		} else if (reading instanceof Reading.ModuleAsked asked) {
			into.removeIf(old -> old instanceof Reading.CodeRead read && (read.reading() == CodeReading.UNREAD) == asked.answers()
					&& base.code(read.subject()).filter(code -> code.module().equals(asked.subject())).isPresent());
		}
		replace(reading, into, true);
	}

	private void replace(Reading reading, List<Reading> into, boolean add) {
		Variable variable = Variable.of(base, reading);
		for (int i = 0; i < into.size(); i++) {
			if (Variable.of(base, into.get(i)).equals(variable)) {
				into.set(i, reading);
				return;
			}
		}
		if (add) {
			into.add(reading);
		}
	}
}
