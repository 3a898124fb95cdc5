package org.baywright.analysis.difference;

import java.util.List;

import org.baywright.analysis.Effect;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Reach;

/**
 * What differs between two states of a rule base.
 *
 * @param edits what was done to elements, sorted
 * @param effects what changes for vehicles, what changes the end of jobs first
 * @param reaches verdicts that come out now and did not, or did and do not, sorted
 * @param jobs finished jobs of both that come to another end, in the order of now
 * @param come findings that were not there before, sorted; empty if nobody asked for them
 * @param gone findings that are no longer there, sorted
 * @param undecided questions that a limit left open, sorted
 * @param more whether there are more effects than are listed
 */
public record Difference(List<Edit> edits, List<Effect> effects, List<Reach> reaches, List<JobChange> jobs, List<Flaw> come, List<Flaw> gone,
		List<String> undecided, boolean more) {

	/** What it comes to. */
	public enum Verdict {
		/** Nothing but names, places, layout or words: no vehicle ends otherwise and nobody does anything else. */
		SAME,
		/** Elements say something else, and no vehicle ends otherwise. */
		EDITED,
		/** Some vehicle ends otherwise. */
		CHANGED,
		/** A limit was reached before anything was found to change. */
		UNDECIDED
	}

	public Difference {
		edits = List.copyOf(edits);
		effects = List.copyOf(effects);
		reaches = List.copyOf(reaches);
		jobs = List.copyOf(jobs);
		come = List.copyOf(come);
		gone = List.copyOf(gone);
		undecided = List.copyOf(undecided);
	}

	/** Returns what it comes to. */
	public Verdict verdict() {
		if (!effects.isEmpty() || !reaches.isEmpty()) {
			return Verdict.CHANGED;
		} else if (!undecided.isEmpty() || more) {
			return Verdict.UNDECIDED;
		}
		return edits.stream().anyMatch(edit -> edit.weight().compareTo(Edit.Weight.WORK) >= 0) ? Verdict.EDITED : Verdict.SAME;
	}
}
