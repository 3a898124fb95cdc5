package org.baywright.language.ide.complete;

import org.eclipse.xtext.AbstractRule;
import org.eclipse.xtext.Assignment;
import org.eclipse.xtext.AbstractElement;
import org.eclipse.xtext.EcoreUtil2;
import org.eclipse.xtext.GrammarUtil;
import org.eclipse.xtext.RuleCall;

/**
 * A rule of the grammar that is being read, and the call that led into it.
 *
 * @param rule the rule
 * @param call the call, or null for the rule that reading began with
 * @param parent where the call stands, or null
 */
record Frame(AbstractRule rule, RuleCall call, Frame parent) {

	/**
	 * Where in the grammar something stands.
	 *
	 * @param rule name of the rule
	 * @param feature what is assigned there, or the empty text
	 */
	record Spot(String rule, String feature) {
	}

	/** Returns the innermost place at which an element, or what it is part of, is assigned to a feature. */
	static Spot spot(AbstractElement element, Frame frame) {
		AbstractElement at = element;
		for (Frame next = frame; at != null; at = next.call(), next = next.parent()) {
			Assignment assignment = EcoreUtil2.getContainerOfType(at, Assignment.class);
			if (assignment != null) {
				return new Spot(next.rule().getName(), assignment.getFeature());
			}
			if (!GrammarUtil.isDatatypeRule(next.rule()) || next.call() == null) {
				return new Spot(next.rule().getName(), "");
			}
		}
		return new Spot("", "");
	}

	/** Returns whether the frame lies in what a rule of the grammar assigns to a feature. */
	boolean isIn(String ruleName, String feature) {
		for (Frame next = this; next.call() != null; next = next.parent()) {
			Assignment assignment = EcoreUtil2.getContainerOfType(next.call(), Assignment.class);
			if (assignment != null && assignment.getFeature().equals(feature)
					&& next.parent().rule().getName().equals(ruleName)) {
				return true;
			}
		}
		return false;
	}

	/** Returns whether a rule of the grammar is being read. */
	boolean isIn(String ruleName) {
		for (Frame next = this; next != null; next = next.parent()) {
			if (next.rule().getName().equals(ruleName)) {
				return true;
			}
		}
		return false;
	}
}
