package org.baywright.analysis;

import java.util.List;


/**
 * A verdict that some vehicle comes to now and none did before, or the other way round.
 *
 * @param verdict the verdict
 * @param families the families of these vehicles, in the order of their declaration
 * @param now whether it is reached now, and not before
 */
public record Reach(Verdict verdict, List<String> families, boolean now) {

	public Reach {
		families = List.copyOf(families);
	}
}
