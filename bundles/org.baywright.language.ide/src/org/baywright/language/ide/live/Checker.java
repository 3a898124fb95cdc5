package org.baywright.language.ide.live;

import org.baywright.analysis.Listener;
import org.baywright.analysis.Report;
import org.baywright.analysis.run.Analysis;
import org.baywright.model.RuleBase;

/** Checks the rules of one project, again and again; used by one thread at a time. */
@FunctionalInterface
public interface Checker {

	/** Makes all checks; see {@link Analysis#check}. */
	Report check(RuleBase rules, Listener listener);

	/** Returns a checker that remembers what it proved. */
	static Checker proving() {
		return new Analysis()::check;
	}
}
