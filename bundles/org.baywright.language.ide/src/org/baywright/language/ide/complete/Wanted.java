package org.baywright.language.ide.complete;

import org.eclipse.emf.ecore.EClass;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.CrossReference;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.Keyword;
import org.eclipse.xtext.RuleCall;

/**
 * What may be written at a place.
 *
 * @param sort what it is
 * @param spot where in the grammar
 * @param word the word of the language; empty for all else
 * @param type what a name must mean; null for all else
 */
record Wanted(Sort sort, Frame.Spot spot, String word, EClass type) {

	enum Sort {
		/** A word of the language. */
		WORD,
		/** The name of something declared elsewhere. */
		REFERENCE, UNIT, NUMBER, TEXT, DATE,
		/** Nothing that could be proposed: a new name, or a sign within a number. */
		NONE
	}

	static Wanted of(Follow.Place place) {
		AbstractElement leaf = place.leaf();
		Frame.Spot spot = Frame.spot(leaf, place.frame());
		EClass type = reference(leaf, place.frame());
		String within = place.frame().rule().getName();
		boolean sign = leaf instanceof Keyword keyword && !Character.isLetter(keyword.getValue().charAt(0));
		if (type != null) {
			return new Wanted(sign ? Sort.NONE : Sort.REFERENCE, spot, "", type);
		}
		if (within.equals("UnitPart")) {
			return new Wanted(Sort.UNIT, spot, "", null);
		}
		if (within.equals("Date")) {
			return new Wanted(leaf instanceof RuleCall && spot.feature().equals("year") ? Sort.DATE : Sort.NONE, spot, "", null);
		}
		if (leaf instanceof Keyword keyword) {
			boolean word = !GrammarUtil.isDatatypeRule(place.frame().rule()) && !sign;
			return new Wanted(word ? Sort.WORD : Sort.NONE, place.frame().rule().getName().equals(spot.rule()) ? spot
					: new Frame.Spot(place.frame().rule().getName(), ""), word ? keyword.getValue() : "", null);
		}
		String terminal = ((RuleCall) leaf).getRule().getName();
		Sort sort = switch (terminal) {
		case "STRING" -> Sort.TEXT;
		case "NUMBER" -> Sort.NUMBER;
		default -> Sort.NONE;
		};
		return new Wanted(sort, spot, "", null);
	}

	private static EClass reference(AbstractElement element, Frame frame) {
		AbstractElement at = element;
		for (Frame next = frame; at != null; at = next.call(), next = next.parent()) {
			CrossReference reference = EcoreUtil2.getContainerOfType(at, CrossReference.class);
			if (reference != null) {
				return (EClass) reference.getType().getClassifier();
			}
			if (!GrammarUtil.isDatatypeRule(next.rule()) || next.call() == null) {
				return null;
			}
		}
		return null;
	}
}
