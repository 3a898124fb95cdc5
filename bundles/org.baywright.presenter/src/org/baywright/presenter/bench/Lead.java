package org.baywright.presenter.bench;

import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Variable;
import org.baywright.model.Reading;
import org.baywright.presenter.Link;

/**
 * What to do next on the bench, and why that.
 *
 * @param asksComplaint whether nothing is known of what is wrong with the vehicle, so that this comes first
 * @param first the next step; empty where nothing that can be found out would change the end, or before there is a complaint
 * @param others the next best steps, what is told to take least first
 * @param note what else is to be said: what is lost or out of reach; the empty text for nothing
 * @param follows what the rules ask for and what was found leaves only one answer to, so that it is noted before all else
 */
public record Lead(boolean asksComplaint, Optional<Todo> first, List<Other> others, String note, Optional<Reading> follows) {

	/** Nothing is to be done. */
	public static final Lead NONE = new Lead(false, Optional.empty(), List.of(), "", Optional.empty());

	/**
	 * One thing to do.
	 *
	 * @param title what to do
	 * @param asks what to enter of it, in the order in which it is seen
	 * @param exception what to say where it needs something of the vehicle although something else comes first; the empty text for nothing
	 * @param cautions what can hurt somebody, first
	 * @param how what it takes and how it is done, one sentence each
	 * @param why why this, one sentence each
	 * @param pictures what shows where or how it is done, each with the way to its file
	 * @param scan whether it is reading all modules at once, which is noted with the first code that is entered
	 */
	public record Todo(String title, List<Subject> asks, String exception, List<Caution> cautions, List<String> how, List<String> why, List<Link> pictures, boolean scan) {
		public Todo {
			asks = List.copyOf(asks);
			cautions = List.copyOf(cautions);
			how = List.copyOf(how);
			why = List.copyOf(why);
			pictures = List.copyOf(pictures);
		}

		/** Returns the ways in which it can be said in a list of links: the title. */
		Optional<Variable> variable() {
			return asks.stream().map(Subject::variable).findFirst();
		}
	}

	/**
	 * A step that could be done instead.
	 *
	 * @param title what to do
	 * @param expected how long until the cause is found is to be expected if one begins with it: "22 min"
	 * @param variable what is entered first of it
	 */
	public record Other(String title, String expected, Variable variable) {
	}

	public Lead {
		others = List.copyOf(others);
	}
}
