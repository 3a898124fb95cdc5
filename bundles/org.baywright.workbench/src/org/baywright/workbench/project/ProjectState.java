package org.baywright.workbench.project;

import java.util.Optional;

import org.baywright.analysis.Report;
import org.baywright.language.workspace.Snapshot;
import org.eclipse.core.resources.IProject;

/**
 * What is known of a rule project at one moment.
 *
 * @param project the project in the workspace
 * @param texts its texts and their problems as last read; empty before the first reading has ended
 * @param checked the last report with the texts it is about, which may be older ones; empty before the first check
 * @param failure why the last check failed, in one sentence, if it did
 */
public record ProjectState(IProject project, Optional<Snapshot> texts, Optional<Checked> checked, Optional<String> failure) {

	/**
	 * A report with the texts it is about.
	 *
	 * @param snapshot the texts
	 * @param report what was found in them
	 */
	public record Checked(Snapshot snapshot, Report report) {
	}

	/** Returns whether the report is about the present texts. */
	public boolean isFresh() {
		return failure.isEmpty() && texts.isPresent() && checked.isPresent()
				&& texts.get().version() == checked.get().snapshot().version();
	}
}
