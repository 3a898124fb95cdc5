package org.baywright.language.ide.live;

import org.baywright.analysis.Report;
import org.baywright.language.workspace.Snapshot;

/**
 * Hears what is wrong with a project. Calls come one after another, from threads of their own, and never with a snapshot
 * older than that of the call before. No call may wait for another thread that uses the project.
 */
public interface Audience {

	/** Hears nothing. */
	Audience NONE = new Audience() {
	};

	/** The texts were read; a check of the rules follows. What was found before holds for older texts. */
	default void problems(Snapshot snapshot) {
	}

	/** The rules were checked. */
	default void flaws(Snapshot snapshot, Report report) {
	}

	/**
	 * Reading or checking failed, so nothing is known of the rules as they are now, and nothing found earlier may be
	 * shown any more.
	 *
	 * @param snapshot the newest texts that could be read
	 * @param failure what happened; a {@code CancellationException} if somebody stopped the check
	 */
	default void failed(Snapshot snapshot, Throwable failure) {
	}
}
