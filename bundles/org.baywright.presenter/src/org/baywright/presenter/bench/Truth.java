package org.baywright.presenter.bench;

import java.util.function.Function;

import org.baywright.model.CodeReading;
import org.baywright.model.Condition;
import org.baywright.model.Domain;
import org.baywright.model.Reading;
import org.baywright.model.ValueSet;

/** Whether something holds, as far as it is known. */
enum Truth {
	NO, OPEN, YES;

	static Truth of(boolean holds) {
		return holds ? YES : NO;
	}

	Truth and(Truth other) {
		return compareTo(other) < 0 ? this : other;
	}

	Truth or(Truth other) {
		return compareTo(other) > 0 ? this : other;
	}

	Truth not() {
		return this == OPEN ? OPEN : of(this == NO);
	}

	/** Returns whether a condition holds. */
	static Truth of(Condition condition, Function<Condition.Atom, Truth> known) {
		return condition.match(
				(Condition.And and) -> and.parts().stream().map(part -> of(part, known)).reduce(YES, Truth::and),
				(Condition.Or or) -> or.parts().stream().map(part -> of(part, known)).reduce(NO, Truth::or),
				(Condition.Not not) -> of(not.part(), known).not(),
				known::apply);
	}

	/** Returns whether a value is among others. */
	static Truth of(ValueSet values, Domain domain, Reading reading) {
		int index = domain.indexOf(reading);
		return index < 0 ? OPEN : of(values.in(domain).contains(index));
	}

	/** Returns whether a code is as asked. What a silent module or one that has not tested for it says is no answer. */
	static Truth of(CodeReading asked, CodeReading found) {
		if (found == asked) {
			return YES;
		} else if (found == CodeReading.UNREAD || found == CodeReading.UNTESTED) {
			return asked == CodeReading.MISSING ? YES : OPEN;
		}
		boolean present = found == CodeReading.PRESENT || CodeReading.OF_PRESENT.contains(found);
		return switch (asked) {
		case PRESENT -> of(present);
		case ABSENT, MISSING -> of(!present);
		case UNREAD, UNTESTED -> NO;
		// of a present code whose state nobody told it is not known to be in another one
		case ACTIVE, STORED, PENDING -> found == CodeReading.PRESENT ? OPEN : NO;
		};
	}
}
