package org.baywright.analysis.proof;

import java.util.Map;
import java.util.Set;

import org.baywright.model.Rule;

/** What is known of a rule by itself. Kept from run to run as long as the rule, as an object, is the same. */
final class RuleFacts {

	final Rule rule;
	final Footprint print;
	/** Its meaning together with what it speaks of: domains, modules, signs. */
	Key key;
	/** Vehicle families it reaches. */
	Set<String> reach;
	/** Whether the checks of single rules have nothing to say about it. */
	boolean isQuiet;
	/** What checks remember of it, as long as it means the same. */
	Map<String, Object> remembered = Map.of();

	RuleFacts(Rule rule) {
		this.rule = rule;
		print = Footprint.of(rule);
	}
}
