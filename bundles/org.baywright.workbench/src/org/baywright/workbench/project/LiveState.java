package org.baywright.workbench.project;

import java.util.Optional;

import org.baywright.analysis.Report;
import org.baywright.language.workspace.Snapshot;
import org.baywright.presenter.ProjectState;
import org.eclipse.core.resources.IProject;

/**
 * What is known of an open project at one moment. Screens are made of {@link #shown}.
 *
 * @param project the project in the workspace
 * @param texts its texts and their problems as last read; empty before the first reading has ended
 * @param checked the last report with the texts it is about, which may be older ones; empty before the first check
 * @param failure why the last check failed, in one sentence, if it did
 */
public record LiveState(IProject project, Optional<Snapshot> texts, Optional<Checked> checked, Optional<String> failure) {

	/**
	 * A report with the texts it is about.
	 *
	 * @param snapshot the texts
	 * @param report what was found in them
	 */
	public record Checked(Snapshot snapshot, Report report) {
	}

	/** Returns what is known of a project that was not read yet. */
	static LiveState unread(IProject project) {
		return new LiveState(project, Optional.empty(), Optional.empty(), Optional.empty());
	}

	/** Returns what is known of a project that is not read, and says why. */
	static LiveState unread(IProject project, String failure) {
		return new LiveState(project, Optional.empty(), Optional.empty(), Optional.of(failure));
	}

	/** Returns what is known once the texts were read anew; the last report stays. */
	LiveState read(Snapshot snapshot) {
		return new LiveState(project, Optional.of(snapshot), checked, Optional.empty());
	}

	/** Returns what is known once texts were checked. */
	LiveState checked(Snapshot snapshot, Report report) {
		return new LiveState(project, Optional.of(snapshot), Optional.of(new Checked(snapshot, report)), Optional.empty());
	}

	/** Returns what is known once the check of texts has failed. */
	LiveState failed(Snapshot snapshot, String why) {
		return new LiveState(project, Optional.of(snapshot), Optional.empty(), Optional.of(why));
	}

	/** Returns the last report with its texts, if these are the present ones. */
	public Optional<Checked> fresh() {
		return checked.filter(last -> failure.isEmpty() && texts.isPresent() && texts.get().version() == last.snapshot().version());
	}

	/** Returns whether the report is about the present texts. */
	public boolean isFresh() {
		return fresh().isPresent();
	}

	/** Returns what screens show; nothing before the first reading has ended. */
	public Optional<ProjectState> shown() {
		return texts.map(now -> new ProjectState(now.rules(), now.problems(), now.dropped(), checked.map(Checked::report),
				checked.map(Checked::snapshot).orElse(now).rules(), isFresh()));
	}
}
