package org.baywright.language.formatting2;

import java.util.Map;
import java.util.Set;
import org.baywright.language.bay.Acceptance;
import org.baywright.language.bay.Case;
import org.baywright.language.bay.Conclusion;
import org.baywright.language.bay.Date;
import org.baywright.language.bay.Element;
import org.baywright.language.bay.Fault;
import org.baywright.language.bay.Hazard;
import org.baywright.language.bay.Law;
import org.baywright.language.bay.Outcome;
import org.baywright.language.bay.Repair;
import org.baywright.language.bay.Review;
import org.baywright.language.bay.Rule;
import org.baywright.language.bay.Test;
import org.baywright.language.bay.Trait;
import org.baywright.language.bay.VerifyBlock;
import org.baywright.language.bay.VerifyStep;
import org.baywright.language.bay.VinPattern;
import org.eclipse.emf.ecore.EObject;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.formatting2.regionaccess.ISemanticRegion;

/** Which words begin a line, and how far neighbouring words stand apart. */
final class Layout {

	/** The blanks between clauses on one line. */
	static final String BETWEEN_CLAUSES = "  ";
	private static final Set<String> BREAK_AFTER = Set.of(",", "and", "or", ":", "when");
	private static final Map<Class<? extends EObject>, Set<String>> CLAUSES = Map.of(
			Hazard.class, Set.of("caution", "licensed", "reference"),
			Test.class, Set.of("measures", "results", "at", "needs", "in", "prepare", "takes", "cost", "skill", "fits",
					"disturbs", "caution"),
			Rule.class, Set.of("for", "given", "in", "run", "expect", "because", "source", "by"),
			Repair.class, Set.of("fixes", "steps", "caution", "needs", "takes", "cost", "skill", "tell_customer",
					"changes_for_good"),
			Case.class, Set.of("on", "vin", "found", "was"));

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
		if (region.getGrammarElement() instanceof Keyword) {
			for (Map.Entry<Class<? extends EObject>, Set<String>> entry : CLAUSES.entrySet()) {
				if (entry.getKey().isInstance(element)) {
					return entry.getValue().contains(region.getText());
				}
			}
		}
		return isClause(element) && isFirst(region, element);
	}

	/** Elements that are a clause of their own; an outcome begins with the word of an enumeration, which is no keyword. */
	private static boolean isClause(EObject element) {
		return element instanceof Trait || element instanceof VinPattern || element instanceof Fault
				|| element instanceof Outcome || element instanceof VerifyBlock || element instanceof VerifyStep;
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
		return isString(left) && isString(right) && element instanceof Repair
				|| element instanceof Law && isKeyword(right, "then")
				|| element instanceof Rule && (isKeyword(right, "except") || isKeyword(right, "where"))
				|| element instanceof Review && (isKeyword(right, "by") || isKeyword(right, "meaning"))
				|| element instanceof Acceptance && (isKeyword(right, "because") || isKeyword(right, "by"));
	}
}
