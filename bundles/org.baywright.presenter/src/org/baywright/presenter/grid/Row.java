package org.baywright.presenter.grid;

import java.math.BigDecimal;
import java.util.List;

import org.baywright.model.Meaning;
import org.baywright.model.Span;
import org.baywright.model.words.Telling;
import org.baywright.presenter.Say;

/**
 * A test with what its results say of each fault.
 *
 * @param test its name; the empty text for what signs and codes say alone
 * @param title what a technician calls it
 * @param seenWith the test that it is seen with, as a title, whose effort it then has; the empty text if it is done by itself
 * @param cost its price with that of its tools, in the project's own money
 * @param minutes how long it takes
 * @param skill who may do it; the empty text where no test is done
 * @param cells one for each column
 * @param used whether a rule that is shown runs it
 * @param span where it is declared
 */
public record Row(String test, String title, String seenWith, BigDecimal cost, BigDecimal minutes, String skill, List<Cell> cells,
		boolean used, Span span) {

	public Row {
		cells = List.copyOf(cells);
	}

	/** Returns what it takes: "8 min, cost 5, trained", or with which test it is seen. */
	public String effort() {
		if (!seenWith.isEmpty()) {
			return "seen with " + seenWith;
		}
		StringBuilder text = new StringBuilder(Telling.minutes(minutes));
		if (cost.signum() > 0) {
			text.append(text.length() > 0 ? ", " : "").append("cost ").append(Meaning.number(cost));
		}
		return text.append(text.length() > 0 && !skill.isEmpty() ? ", " : "").append(skill).toString();
	}
}
