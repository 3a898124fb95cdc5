package org.baywright.language.ide.layout;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.baywright.language.formatting2.Formatting;
import org.baywright.language.ide.text.TextEdit;
import org.eclipse.xtext.formatting2.regionaccess.ITextReplacement;
import org.eclipse.xtext.resource.XtextResource;

/** Lays files out, by changes as small as can be. */
public final class LayingOut {

	private final Formatting formatting;

	/** @param formatting the layout of the language */
	public LayingOut(Formatting formatting) {
		this.formatting = formatting;
	}

	/**
	 * Returns what lays out a part of a file.
	 *
	 * @param tree the file
	 * @param text its text
	 * @param offset where the part begins
	 * @param length how long it is
	 * @return the changes in the order of the text, or nothing if the file has a syntax error, which has to be put right
	 *         first
	 */
	public Optional<List<TextEdit>> changes(XtextResource tree, String text, int offset, int length) {
		return formatting.changes(tree).map(changes -> {
			List<TextEdit> edits = new ArrayList<>();
			for (ITextReplacement change : changes) {
				boolean within = change.getOffset() <= offset + length && change.getEndOffset() >= offset;
				String old = text.substring(change.getOffset(), change.getEndOffset());
				if (within && !old.equals(change.getReplacementText())) {
					edits.add(smallest(change.getOffset(), old, change.getReplacementText()));
				}
			}
			edits.sort(null);
			return edits;
		});
	}

	/** Leaves out what is the same at the beginning and at the end. */
	private static TextEdit smallest(int offset, String old, String now) {
		int shortest = Math.min(old.length(), now.length());
		int head = 0;
		while (head < shortest && old.charAt(head) == now.charAt(head)) {
			head++;
		}
		int tail = 0;
		while (tail < shortest - head && old.charAt(old.length() - 1 - tail) == now.charAt(now.length() - 1 - tail)) {
			tail++;
		}
		return new TextEdit(offset + head, old.length() - head - tail, now.substring(head, now.length() - tail));
	}
}
