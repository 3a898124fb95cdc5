package org.baywright.pack;

import java.util.List;

import org.baywright.analysis.Flaw;
import org.baywright.model.Problem;
import org.baywright.pack.manifest.PackException;

/** No pack is made while an error stands, nor, but for a draft, while the sign-off is not met; this says what blocks. */
public final class PackRefused extends PackException {

	private static final long serialVersionUID = 1L;

	private final transient List<Problem> problems;
	private final transient List<Flaw> flaws;

	private PackRefused(String sentence, List<Problem> problems, List<Flaw> flaws) {
		super(sentence);
		this.problems = List.copyOf(problems);
		this.flaws = List.copyOf(flaws);
	}

	static PackRefused forErrors(List<Problem> problems, List<Flaw> flaws) {
		int errors = problems.size() + flaws.size();
		return new PackRefused(errors == 1 ? "No pack was made, since an error stands." : "No pack was made, since " + errors + " errors stand.",
				problems, flaws);
	}

	static PackRefused forBreaches(List<Flaw> breaches) {
		return new PackRefused("No pack was made, since the sign-off is not met: " + (breaches.size() == 1 ? "one breach." : breaches.size() + " breaches."),
				List.of(), breaches);
	}

	/** Returns whether only the sign-off blocks, so that a draft can be made. */
	public boolean isForSignOff() {
		return flaws.stream().anyMatch(Flaw::breach);
	}

	/** Returns the errors in the text of the rules. */
	public List<Problem> problems() {
		return problems;
	}

	/** Returns the errors that were proved, or the breaches of the sign-off. */
	public List<Flaw> flaws() {
		return flaws;
	}
}
