package org.baywright.language.formatting2;

import java.util.Set;
import org.baywright.language.bay.BuildsOn;
import org.baywright.language.bay.Conclusion;
import org.baywright.language.bay.Date;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.Repair;
import org.baywright.language.bay.VerifyStep;
import org.baywright.language.vocabulary.Vocabulary;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;

/** Which words begin a line, and how far neighbouring words stand apart. */
final class Layout {

	/** The blanks between clauses on one line. */
	static final String BETWEEN_CLAUSES = "  ";
	private static final Set<String> BREAK_AFTER = Set.of(",", "and", "or", ":", "when");

	private Layout() {
	}

	static boolean isKeyword(ISemanticRegion region, String text) {
		return region != null && region.getGrammarElement() instanceof Keyword && region.getText().equals(text);
	}

	/** Returns whether the right word is the first of an element of the file. */
	static boolean beginsElement(ISemanticRegion left, ISemanticRegion right) {
		return element(left) != element(right);
	}

	/** Returns the element of the file to which a word belongs. */
	static Element element(ISemanticRegion word) {
		Element found = null;
		for (var element = word.getSemanticElement(); element != null; element = element.eContainer()) {
			if (element instanceof Element next) {
				found = next;
			}
		}
		return found;
	}

	static boolean isString(ISemanticRegion region) {
		return region.getText().startsWith("\"");
	}

	/** Returns whether the word begins one of the clauses of a block. */
	static boolean beginsClause(ISemanticRegion region) {
		EObject element = region.getSemanticElement();
		if (region.getGrammarElement() instanceof Keyword
				&& Vocabulary.of(element.eClass().getName()).filter(own -> isClause(own, region.getText())).isPresent()) {
			return true;
		}
		for (EObject part = element; part != null && isFirst(region, part); part = part.eContainer()) {
			if (isPart(part) && !isString(region)) {
				return true;
			}
		}
		return false;
	}

	/** What has a rule of its own is known by that: its first word may be one of an enumeration, which is no keyword. */
	private static boolean isClause(org.baywright.language.vocabulary.Element element, String word) {
		int at = element.indexOf(word);
		return at >= 0 && element.clauses().get(at).part().isEmpty();
	}

	private static boolean isPart(EObject element) {
		if (element.eContainer() == null) {
			return false;
		}
		String owner = element.eContainer().eClass().getName();
		return Vocabulary.isPart(owner, element.eClass().getName())
				|| element.eClass().getESuperTypes().stream().anyMatch(type -> Vocabulary.isPart(owner, type.getName()));
	}

	/** Returns whether a word belongs to a step of a verification, which need not begin its line. */
	static boolean isInStep(ISemanticRegion region) {
		for (EObject element = region.getSemanticElement(); element != null; element = element.eContainer()) {
			if (element instanceof VerifyStep) {
				return true;
			}
		}
		return false;
	}

	private static boolean isFirst(ISemanticRegion region, EObject element) {
		ISemanticRegion before = region.getPreviousSemanticRegion();
		return before == null || !isInside(before.getSemanticElement(), element);
	}

	private static boolean isInside(EObject inner, EObject outer) {
		for (EObject element = inner; element != null; element = element.eContainer()) {
			if (element == outer) {
				return true;
			}
		}
		return false;
	}

	/** Returns the blanks between two neighbouring words on one line. */
	static String between(ISemanticRegion left, ISemanticRegion right) {
		if (isKeyword(right, ",") || isKeyword(right, ")") || isKeyword(left, "(")) {
			return "";
		}
		if (beginsFurtherConclusion(left, right)) {
			return BETWEEN_CLAUSES;
		}
		boolean inDate = left.getSemanticElement() instanceof Date && right.getSemanticElement() instanceof Date;
		return inDate ? "" : " ";
	}

	/** Returns whether the right word begins a conclusion that follows another one of the same outcome. */
	static boolean beginsFurtherConclusion(ISemanticRegion left, ISemanticRegion right) {
		EObject conclusion = right.getSemanticElement();
		return conclusion instanceof Conclusion && isFirst(right, conclusion)
				&& left.getSemanticElement() instanceof Conclusion;
	}

	/** Returns whether the author may go on in a new line between these words. */
	static boolean mayBreakBetween(ISemanticRegion left, ISemanticRegion right) {
		if (BREAK_AFTER.stream().anyMatch(word -> isKeyword(left, word)) || beginsFurtherConclusion(left, right)) {
			return true;
		}
		EObject element = right.getSemanticElement();
		return isString(left) && isString(right) && (element instanceof Repair || element instanceof BuildsOn)
				|| Vocabulary.mayBreakBefore(element.eClass().getName(), right.getText());
	}
}
