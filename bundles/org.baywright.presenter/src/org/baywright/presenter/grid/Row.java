package org.baywright.presenter.grid;

import java.math.BigDecimal;
import java.util.List;

import org.baywright.model.Meaning;
import org.baywright.model.Span;
import org.baywright.presenter.Say;

/**
 * A test with what its results say of each fault.
 *
 * @param test its name; the empty text for what signs and codes say alone
 * @param title what a technician calls it
 * @param cost its price with that of its tools, in the project's own money
 * @param minutes how long it takes
 * @param skill who may do it; the empty text where no test is done
 * @param cells one for each column
 * @param span where it is declared
 */
public record Row(String test, String title, BigDecimal cost, BigDecimal minutes, String skill, List<Cell> cells,
		Span span) {

	public Row {
		cells = List.copyOf(cells);
	}

	/** Returns what it takes: "8 min, cost 5, trained". */
	public String effort() {
		StringBuilder text = new StringBuilder(Say.minutes(minutes));
		if (cost.signum() > 0) {
			text.append(text.length() > 0 ? ", " : "").append("cost ").append(Meaning.number(cost));
		}
		return text.append(text.length() > 0 && !skill.isEmpty() ? ", " : "").append(skill).toString();
	}
}
