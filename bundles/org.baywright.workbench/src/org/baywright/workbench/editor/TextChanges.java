package org.baywright.workbench.editor;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;

import org.baywright.language.ide.text.TextEdit;
import org.baywright.workbench.project.OpenProject;
import org.eclipse.core.resources.IFile;
import org.eclipse.ltk.core.refactoring.CompositeChange;
import org.eclipse.ltk.core.refactoring.TextFileChange;
import org.eclipse.text.edits.MultiTextEdit;
import org.eclipse.text.edits.ReplaceEdit;

/** Turns the language's changes into the platform's, which can be previewed and undone in one step. */
public final class TextChanges {

	private TextChanges() {
	}

	static CompositeChange of(String title, OpenProject project, SortedMap<String, List<TextEdit>> edits) {
		CompositeChange all = new CompositeChange(title);
		for (Map.Entry<String, List<TextEdit>> entry : edits.entrySet()) {
			IFile file = project.file(entry.getKey());
			TextFileChange change = new TextFileChange(file.getName(), file);
			change.setTextType("bay");
			change.setSaveMode(TextFileChange.KEEP_SAVE_STATE);
			change.setEdit(together(entry.getValue()));
			all.add(change);
		}
		return all;
	}

	/** Returns the changes of one text as one change, each in terms of the text as it is. */
	public static MultiTextEdit together(List<TextEdit> edits) {
		MultiTextEdit all = new MultiTextEdit();
		edits.forEach(edit -> all.addChild(new ReplaceEdit(edit.offset(), edit.length(), edit.text())));
		return all;
	}
}
