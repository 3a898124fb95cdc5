package org.baywright.pack;

import java.util.List;

import org.baywright.analysis.Finding;
import org.baywright.model.Problem;

/** No pack is made while an error stands; this says which ones stand. */
public final class PackRefused extends PackException {

	private static final long serialVersionUID = 1L;

	private final transient List<Problem> problems;
	private final transient List<Finding> findings;

	PackRefused(List<Problem> problems, List<Finding> findings) {
		super(sentence(problems.size() + findings.size()));
		this.problems = List.copyOf(problems);
		this.findings = List.copyOf(findings);
	}

	private static String sentence(int errors) {
		return errors == 1 ? "No pack was made, since an error stands." : "No pack was made, since " + errors + " errors stand.";
	}

	/** Returns the errors in the text of the rules. */
	public List<Problem> problems() {
		return problems;
	}

	/** Returns the errors that were proved. */
	public List<Finding> findings() {
		return findings;
	}
}
