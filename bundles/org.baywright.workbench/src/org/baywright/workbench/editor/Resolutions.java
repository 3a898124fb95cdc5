package org.baywright.workbench.editor;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.fix.QuickFix;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.model.Span;
import org.baywright.model.Written;
import org.baywright.workbench.Baywright;
import org.baywright.workbench.Icon;
import org.baywright.workbench.preference.Preferences;
import org.baywright.workbench.project.FileEdits;
import org.baywright.workbench.project.LiveState;
import org.baywright.workbench.project.OpenProject;
import org.baywright.workbench.project.Places;
import org.baywright.workbench.project.RuleMarkers;
import org.baywright.workbench.project.RuleProjects;
import org.eclipse.core.resources.IFile;
import org.eclipse.core.resources.IMarker;
import org.eclipse.core.runtime.CoreException;
import org.eclipse.jface.dialogs.ErrorDialog;
import org.eclipse.jface.dialogs.InputDialog;
import org.eclipse.jface.dialogs.MessageDialog;
import org.eclipse.jface.window.Window;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.ui.IMarkerResolution;
import org.eclipse.ui.IMarkerResolution2;
import org.eclipse.ui.IMarkerResolutionGenerator2;

/** Offers what can be done about a mark in the text; the description shows what it would change. */
public final class Resolutions implements IMarkerResolutionGenerator2 {

	/** What stands in an acceptance before somebody has given the reason. */
	private static final String NO_REASON = "because \"\"";

	/** What stands in a rule before somebody has said who writes it. */
	private static final String NO_AUTHOR = "by \"\"";

	@Override
	public boolean hasResolutions(IMarker marker) {
		return marker.getResource() instanceof IFile;
	}

	@Override
	public IMarkerResolution[] getResolutions(IMarker marker) {
		return of(marker).stream().toArray(IMarkerResolution[]::new);
	}

	/** Returns what can be done about a mark. */
	static List<Resolution> of(IMarker marker) {
		if (!(marker.getResource() instanceof IFile file)) {
			return List.of();
		}
		int offset = marker.getAttribute(IMarker.CHAR_START, 0);
		int length = Math.max(0, marker.getAttribute(IMarker.CHAR_END, offset) - offset);
		return RuleProjects.of(file).map(project -> of(project, file.getProjectRelativePath().toPortableString(), offset, length,
				marker.getAttribute(RuleMarkers.FLAW_ID, ""))).orElse(List.of());
	}

	private static List<Resolution> of(OpenProject project, String path, int offset, int length, String about) {
		LiveState state = project.state();
		EditorServices services = project.ready().orElse(null);
		if (services == null || state.texts().isEmpty()) {
			return List.of();
		}
		List<QuickFix> fixes = services.fixes(path, offset, length, state.texts().get(), state.fresh().map(LiveState.Checked::report));
		return fixes.stream().filter(fix -> fix.about().equals(about)).map(fix -> new Resolution(project, fix, state)).toList();
	}

	/** Returns the titles of what can be done about something at a place; it may have to be read first, so not for the screen's thread. */
	public static List<String> titles(OpenProject project, Span place, String about) {
		return of(project, place.file(), place.offset(), place.length(), about).stream().map(Resolution::getLabel).toList();
	}

	/**
	 * Shows what a fix would change and makes the change if the user agrees.
	 *
	 * @param place the flaw's place
	 * @param about the flaw's id
	 * @param title the fix's title
	 */
	public static void offer(Shell shell, OpenProject project, Span place, String about, String title) {
		Optional<Resolution> fix = of(project, place.file(), place.offset(), place.length(), about).stream()
				.filter(found -> found.getLabel().equals(title)).findFirst();
		if (fix.isEmpty()) {
			MessageDialog.openInformation(shell, title, EditorMessages.FixStale);
		} else if (fix.get().asks() || MessageDialog.openConfirm(shell, title, fix.get().getDescription())) {
			// who accepts is asked for the reason, and can go back there
			fix.get().run(null);
		}
	}

	/** Something that can be done. */
	static final class Resolution implements IMarkerResolution2 {

		private final OpenProject project;
		private final QuickFix fix;
		private final LiveState state;

		Resolution(OpenProject project, QuickFix fix, LiveState state) {
			this.project = project;
			this.fix = fix;
			this.state = state;
		}

		@Override
		public String getLabel() {
			return fix.title();
		}

		@Override
		public String getDescription() {
			return isAcceptance() ? EditorMessages.AcceptPreview + "\n\n" + fix.preview().replace(NO_REASON, clause("\u2026"))
					: EditorMessages.FixPreview + "\n\n" + fix.preview();
		}

		@Override
		public Image getImage() {
			return (fix.title().startsWith("Accept") ? Icon.ACCEPT : Icon.SKELETON).image();
		}

		@Override
		public void run(IMarker marker) {
			Shell shell = Display.getCurrent() == null ? null : Display.getCurrent().getActiveShell();
			if (!isStillTrue()) {
				MessageDialog.openInformation(shell, fix.title(), EditorMessages.FixStale);
				return;
			}
			Optional<Map<String, List<TextEdit>>> wanted = withReason(shell);
			if (wanted.isEmpty()) {
				return;
			}
			try {
				for (Map.Entry<String, List<TextEdit>> edits : wanted.get().entrySet()) {
					FileEdits.change(project.file(edits.getKey()), document -> TextChanges.together(edits.getValue()).apply(document));
				}
				fix.next().ifPresent(next -> Places.open(project.file(next.file()), next.offset(), next.length(), true));
			} catch (CoreException e) {
				Baywright.log(EditorMessages.FixFailed, e);
				ErrorDialog.openError(shell, fix.title(), EditorMessages.FixFailed, e.getStatus());
			}
		}

		/** Who accepts, or says where a rule comes from, says why, and who says so; returns nothing if the user does not. Other fixes stay as they are. */
		private Optional<Map<String, List<TextEdit>>> withReason(Shell shell) {
			if (!asks()) {
				return Optional.of(fix.edits());
			}
			boolean acceptance = isAcceptance();
			Optional<String> reason = ask(shell, acceptance ? EditorMessages.AcceptWhy : EditorMessages.SourceWhy,
					acceptance ? EditorMessages.AcceptBlank : EditorMessages.SourceBlank);
			if (reason.isEmpty()) {
				return Optional.empty();
			}
			String because = acceptance ? clause(reason.get()) : "because " + Written.text(reason.get());
			String by = NO_AUTHOR;
			if (!acceptance && writes(NO_AUTHOR)) {
				Optional<String> author = ask(shell, EditorMessages.SourceWho, EditorMessages.SourceNobody);
				if (author.isEmpty()) {
					return Optional.empty();
				}
				Preferences.setAuthor(author.get());
				by = "by " + Written.text(author.get());
			}
			String signed = by;
			Map<String, List<TextEdit>> changed = new TreeMap<>();
			fix.edits().forEach((file, edits) -> changed.put(file, edits.stream()
					.map(edit -> new TextEdit(edit.offset(), edit.length(), edit.text().replace(NO_REASON, because).replace(NO_AUTHOR, signed))).toList()));
			return Optional.of(changed);
		}

		private Optional<String> ask(Shell shell, String question, String blank) {
			InputDialog dialog = new InputDialog(shell, fix.title(), question, "", answer -> answer.isBlank() ? blank : null);
			return dialog.open() == Window.OK ? Optional.of(dialog.getValue().strip()) : Optional.empty();
		}

		/** Returns whether the user is asked for a reason. */
		boolean asks() {
			return writes(NO_REASON);
		}

		private boolean isAcceptance() {
			return asks() && fix.title().startsWith("Accept");
		}

		private boolean writes(String open) {
			return fix.edits().values().stream().flatMap(List::stream).anyMatch(edit -> edit.text().contains(open));
		}

		private static String clause(String reason) {
			String author = Preferences.author();
			return "because " + Written.text(reason) + (author.isEmpty() ? "" : " by " + Written.text(author) + " on " + LocalDate.now());
		}

		/** A change is in terms of the texts that were checked. */
		boolean isStillTrue() {
			for (String path : fix.edits().keySet()) {
				String checked = state.texts().orElseThrow().sources().get(path);
				if (checked == null || !FileEdits.isText(project.file(path), checked)) {
					return false;
				}
			}
			return true;
		}
	}
}
