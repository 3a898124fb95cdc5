package org.baywright.pack;

import java.util.List;

import org.baywright.analysis.Flaw;
import org.baywright.model.Problem;
import org.baywright.pack.manifest.PackException;

/** No pack is made while an error stands; this says which ones stand. */
public final class PackRefused extends PackException {

	private static final long serialVersionUID = 1L;

	private final transient List<Problem> problems;
	private final transient List<Flaw> flaws;

	PackRefused(List<Problem> problems, List<Flaw> flaws) {
		super(sentence(problems.size() + flaws.size()));
		this.problems = List.copyOf(problems);
		this.flaws = List.copyOf(flaws);
	}

	private static String sentence(int errors) {
		return errors == 1 ? "No pack was made, since an error stands." : "No pack was made, since " + errors + " errors stand.";
	}

	/** Returns the errors in the text of the rules. */
	public List<Problem> problems() {
		return problems;
	}

	/** Returns the errors that were proved. */
	public List<Flaw> flaws() {
		return flaws;
	}
}
