package org.baywright.language.formatting2;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.Fault;
import org.baywright.language.bay.Outcome;
import org.baywright.language.bay.Point;
import org.baywright.language.bay.Trait;
import org.baywright.language.vocabulary.Vocabulary;
import org.eclipse.emf.ecore.EClass;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;

/** Blanks that bring words of neighbouring lines below each other. */
final class Columns {

	/** Wider beginnings are no table; they keep one blank. */
	private static final int WIDEST = 32;
	/** The same for what stands further to the right. */
	private static final int WIDEST_LINE = 80;

	private final Map<ISemanticRegion, String> blanks = new HashMap<>();

	private Columns() {
	}

	/** Returns, for words that stand in a column, the blanks before them. */
	static Map<ISemanticRegion, String> of(List<ISemanticRegion> words, Set<ISemanticRegion> onOneLine) {
		Columns columns = new Columns();
		Map<EObject, List<List<ISemanticRegion>>> lines = new LinkedHashMap<>();
		List<ISemanticRegion> line = null;
		EObject owner = null;
		for (ISemanticRegion word : words) {
			EObject element = row(word);
			if (element == null || onOneLine.contains(word)) {
				owner = null;
				continue;
			}
			if (element != owner) {
				owner = element;
				line = new ArrayList<>();
				lines.computeIfAbsent(element.eContainer(), key -> new ArrayList<>()).add(line);
			}
			line.add(word);
		}
		lines.values().forEach(columns::align);
		columns.alignElements(words);
		return columns.blanks;
	}

	/** Titles of elements in neighbouring lines stand below each other if their author began to lay them out so. */
	private void alignElements(List<ISemanticRegion> words) {
		List<List<ISemanticRegion>> lines = new ArrayList<>();
		ISemanticRegion last = null;
		for (ISemanticRegion word : words) {
			boolean begins = last == null || Layout.beginsElement(last, word);
			if (begins && !(last != null && areNeighbours(last, word))) {
				alignIfTable(lines, Columns::title, 2, WIDEST);
				lines.clear();
			}
			if (begins) {
				lines.add(new ArrayList<>());
			}
			lines.get(lines.size() - 1).add(word);
			last = word;
		}
		alignIfTable(lines, Columns::title, 2, WIDEST);
	}

	private static boolean areNeighbours(ISemanticRegion left, ISemanticRegion right) {
		Element above = Layout.element(left);
		return isLine(above.eClass()) && above.eClass() == Layout.element(right).eClass()
				&& right.getPreviousHiddenRegion().getLineCount() <= 2;
	}

	/** Elements without braces that have a name and a title. */
	private static boolean isLine(EClass type) {
		return type.getEStructuralFeature("name") != null && type.getEStructuralFeature("title") != null
				&& Vocabulary.of(type.getName()).filter(element -> element.isLine()).isPresent();
	}

	private void alignIfTable(List<List<ISemanticRegion>> lines, Column column, int blanksOfTable, int widest) {
		boolean table = lines.stream().map(column::in)
				.anyMatch(word -> word != null && blanksBefore(word) >= blanksOfTable);
		if (table) {
			align(lines, column, widest);
		}
	}

	private static int blanksBefore(ISemanticRegion word) {
		String text = word.getPreviousHiddenRegion().getText();
		// behind a comment in the same line too, as that is where the blanks of a column go
		return text.indexOf('\n') >= 0 ? 0 : text.length() - text.stripTrailing().length();
	}

	private static EObject row(ISemanticRegion word) {
		for (EObject element = word.getSemanticElement(); element != null; element = element.eContainer()) {
			if (element instanceof Outcome || element instanceof Trait || element instanceof Fault || element instanceof Point) {
				return element;
			}
		}
		return null;
	}

	private void align(List<List<ISemanticRegion>> lines) {
		EObject kind = row(lines.get(0).get(0));
		if (kind instanceof Fault) {
			align(lines, Columns::title, WIDEST);
			align(lines, Columns::seen, WIDEST_LINE);
		} else if (kind instanceof Point) {
			align(lines, Columns::expect, WIDEST);
			align(lines, Columns::colon, WIDEST_LINE);
		} else {
			align(lines, Columns::colon, WIDEST);
			alignIfTable(lines, Columns::secondConclusion, Layout.BETWEEN_CLAUSES.length() + 1, WIDEST_LINE);
		}
	}

	/** Finds the word of a line that stands in the column; null if the line has none. */
	private interface Column {
		ISemanticRegion in(List<ISemanticRegion> line);
	}

	private static ISemanticRegion colon(List<ISemanticRegion> line) {
		return line.stream().filter(word -> Layout.isKeyword(word, ":")).findFirst().orElse(null);
	}

	private static ISemanticRegion title(List<ISemanticRegion> line) {
		return line.size() > 2 && line.get(2).getText().startsWith("\"") ? line.get(2) : null;
	}

	private static ISemanticRegion seen(List<ISemanticRegion> line) {
		return line.stream().filter(word -> Layout.isKeyword(word, "seen")).findFirst().orElse(null);
	}

	private static ISemanticRegion expect(List<ISemanticRegion> line) {
		return line.stream().filter(word -> Layout.isKeyword(word, "expect")).findFirst().orElse(null);
	}

	private static ISemanticRegion secondConclusion(List<ISemanticRegion> line) {
		for (int i = 1; i < line.size(); i++) {
			ISemanticRegion left = line.get(i - 1);
			ISemanticRegion right = line.get(i);
			if (Layout.mayBreakBetween(left, right) && right.getPreviousHiddenRegion().isMultiline()) {
				return null;
			}
			if (Layout.beginsFurtherConclusion(left, right)) {
				return right;
			}
		}
		return null;
	}

	private void align(List<List<ISemanticRegion>> lines, Column column, int widestOfTable) {
		int widest = 0;
		for (List<ISemanticRegion> line : lines) {
			int width = width(line, column.in(line));
			widest = width > widestOfTable ? widest : Math.max(widest, width);
		}
		for (List<ISemanticRegion> line : lines) {
			ISemanticRegion word = column.in(line);
			int width = width(line, word);
			if (word != null && width <= widest) {
				int least = Layout.between(word.getPreviousSemanticRegion(), word).length();
				blanks.put(word, " ".repeat(widest - width + Math.max(1, least)));
			}
		}
	}

	/** The width of a line up to a word, without the blanks before it; 0 if the line lacks the word. */
	private int width(List<ISemanticRegion> line, ISemanticRegion end) {
		if (end == null) {
			return 0;
		}
		int width = 0;
		for (int i = 0; line.get(i) != end; i++) {
			if (i > 0) {
				width += blanks.getOrDefault(line.get(i), Layout.between(line.get(i - 1), line.get(i))).length();
			}
			width += line.get(i).getText().length();
		}
		return width;
	}
}
