package org.baywright.sharing;

import java.util.List;

import org.baywright.language.merge.Change;
import org.baywright.language.merge.Conflict;

/**
 * What came of joining two states.
 *
 * @param done whether it was done; else nothing has changed
 * @param conflicts what has to be chosen first
 * @param refused what whoever checked the joined rules said against them
 * @param changes what came into the copy
 * @param copyWaits whether the copy could not be brought up, since something has to be chosen about what is in it and not offered yet
 */
public record Outcome(boolean done, List<Conflict> conflicts, List<String> refused, List<Change> changes, boolean copyWaits) {

	static Outcome conflicting(List<Conflict> conflicts) {
		return new Outcome(false, conflicts, List.of(), List.of(), false);
	}

	static Outcome refused(List<String> reasons) {
		return new Outcome(false, List.of(), reasons, List.of(), false);
	}

	static Outcome done(List<Change> changes) {
		return new Outcome(true, List.of(), List.of(), changes, false);
	}
}
