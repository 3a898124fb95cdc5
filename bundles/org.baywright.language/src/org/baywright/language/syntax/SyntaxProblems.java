package org.baywright.language.syntax;

import java.util.ArrayList;
import java.util.List;
import org.baywright.language.translate.SourceText;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.eclipse.xtext.nodemodel.INode;

/** Says syntax errors plainly. */
public final class SyntaxProblems {

	private SyntaxProblems() {
	}

	/** Returns the problems of a file's syntax. */
	public static List<Problem> of(SourceText source, List<INode> errors) {
		List<Problem> problems = new ArrayList<>();
		for (INode error : errors) {
			problems.add(new Problem("syntax", Severity.ERROR, source.span(error),
					error.getSyntaxErrorMessage().getMessage(), ""));
		}
		return problems;
	}
}
