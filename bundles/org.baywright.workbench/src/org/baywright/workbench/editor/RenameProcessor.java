package org.baywright.workbench.editor;

import java.util.Optional;

import org.baywright.language.ide.names.Renaming;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.ltk.core.refactoring.Change;
import org.eclipse.ltk.core.refactoring.RefactoringStatus;
import org.eclipse.ltk.core.refactoring.participants.CheckConditionsContext;
import org.eclipse.ltk.core.refactoring.participants.RefactoringParticipant;
import org.eclipse.ltk.core.refactoring.participants.RefactoringProcessor;
import org.eclipse.ltk.core.refactoring.participants.SharableParticipants;

/** A renaming as the platform's preview drives it. */
public final class RenameProcessor extends RefactoringProcessor {

	private final EditedFile edited;
	private final int offset;
	private volatile String name;
	private Renaming.Changes changes;

	RenameProcessor(EditedFile edited, int offset, String old) {
		this.edited = edited;
		this.offset = offset;
		name = old;
	}

	void setName(String to) {
		name = to;
	}

	String name() {
		return name;
	}

	/** Returns why a name cannot be given; nothing if it can. To be called on a worker thread. */
	Optional<String> refused(String to) {
		return edited.ask((services, path) -> services.refusedName(path, offset, to));
	}

	private RefactoringStatus ask() {
		Renaming.Result result = edited.ask((services, path) -> services.rename(path, offset, name));
		changes = null;
		if (result instanceof Renaming.Refused refused) {
			return RefactoringStatus.createFatalErrorStatus(refused.message());
		}
		changes = (Renaming.Changes) result;
		return new RefactoringStatus();
	}

	@Override
	public RefactoringStatus checkInitialConditions(IProgressMonitor monitor) {
		return new RefactoringStatus();
	}

	@Override
	public RefactoringStatus checkFinalConditions(IProgressMonitor monitor, CheckConditionsContext context) {
		return ask();
	}

	@Override
	public Change createChange(IProgressMonitor monitor) {
		return TextChanges.of(EditorMessages.RenameTitle, edited.project(), changes.edits());
	}

	@Override
	public RefactoringParticipant[] loadParticipants(RefactoringStatus status, SharableParticipants shared) {
		return new RefactoringParticipant[0];
	}

	@Override
	public Object[] getElements() {
		return new Object[] { edited.file() };
	}

	@Override
	public String getIdentifier() {
		return "org.baywright.workbench.rename";
	}

	@Override
	public String getProcessorName() {
		return EditorMessages.RenameTitle;
	}

	@Override
	public boolean isApplicable() {
		return true;
	}
}
