package org.baywright.language.text;

import java.util.Arrays;
import java.util.List;
import org.baywright.model.Span;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.emf.ecore.EStructuralFeature;
import org.eclipse.xtext.nodemodel.ICompositeNode;
import org.eclipse.xtext.nodemodel.INode;
import org.eclipse.xtext.nodemodel.util.NodeModelUtils;

/** The text of one file and the places in it. */
public final class SourceText {

	private final String file;
	private final String text;
	private final int[] lineStarts;

	/**
	 * @param file path of the file relative to its project, with forward slashes
	 * @param text all of its text
	 */
	public SourceText(String file, String text) {
		this.file = file;
		this.text = text;
		int[] starts = new int[16];
		int count = 1;
		for (int i = 0; i < text.length(); i++) {
			char c = text.charAt(i);
			if (c == '\n' || c == '\r' && (i + 1 == text.length() || text.charAt(i + 1) != '\n')) {
				if (count == starts.length) {
					starts = Arrays.copyOf(starts, 2 * count);
				}
				starts[count++] = i + 1;
			}
		}
		lineStarts = Arrays.copyOf(starts, count);
	}

	public String file() {
		return file;
	}

	public String text() {
		return text;
	}

	/** Returns the place of a run of characters; what reaches beyond the text is cut off. */
	public Span span(int offset, int length) {
		int start = Math.max(0, Math.min(offset, text.length()));
		int end = Math.max(start, Math.min(start + length, text.length()));
		int line = line(start);
		int endLine = line(end);
		return new Span(file, line + 1, start - lineStarts[line] + 1, endLine + 1, end - lineStarts[endLine] + 1, start,
				end - start);
	}

	private int line(int offset) {
		int found = Arrays.binarySearch(lineStarts, offset);
		return found >= 0 ? found : -found - 2;
	}

	/** Returns the place of a node, without blanks and comments around it. */
	public Span span(INode node) {
		return span(node.getOffset(), node.getLength());
	}

	/** Returns the place from the beginning of one node to the end of another. */
	public Span span(INode first, INode last) {
		return span(first.getOffset(), Math.max(last.getEndOffset() - first.getOffset(), 0));
	}

	/** Returns a place with the blanks that would be left over without it: with the end of its line, or those behind it. */
	public Span withBlanks(Span span) {
		int start = span.offset();
		int end = start + span.length();
		while (end < text.length() && (text.charAt(end) == ' ' || text.charAt(end) == '\t')) {
			end++;
		}
		if (end == text.length() || text.charAt(end) == '\n' || text.charAt(end) == '\r') {
			while (start > 0 && Character.isWhitespace(text.charAt(start - 1))) {
				start--;
			}
		}
		return span(start, end - start);
	}

	/** Returns the place of an element of the syntax tree. */
	public Span span(EObject element) {
		ICompositeNode node = NodeModelUtils.findActualNodeFor(element);
		return node == null ? span(0, 0) : span(node);
	}

	/** Returns the place of the value of a feature, or of the whole element if it is not written. */
	public Span span(EObject element, EStructuralFeature feature) {
		return span(element, feature, 0);
	}

	/** Returns the place of one value of a feature, or of the whole element if it is not written. */
	public Span span(EObject element, EStructuralFeature feature, int index) {
		List<INode> nodes = NodeModelUtils.findNodesForFeature(element, feature);
		return index < nodes.size() ? span(nodes.get(index)) : span(element);
	}

	/** Returns how an element is written, each run of blanks as one. */
	public String written(EObject element) {
		ICompositeNode node = NodeModelUtils.findActualNodeFor(element);
		return node == null ? "" : NodeModelUtils.getTokenText(node).strip().replaceAll("\\s+", " ");
	}
}
