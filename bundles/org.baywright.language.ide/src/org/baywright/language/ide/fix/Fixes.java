package org.baywright.language.ide.fix;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;
import org.baywright.model.Span;

/** Finds changes that answer what is wrong at a place. */
public final class Fixes {

	private Fixes() {
	}

	/**
	 * Returns the fixes of all problems and flaws that touch a range, in the order of their places.
	 *
	 * @param file path relative to the project
	 * @param offset where the range begins
	 * @param length how long it is
	 * @param snapshot the project; the changes are in terms of its texts
	 * @param report what was found in this snapshot, if it was checked
	 * @param signature who stands for what is written anew
	 */
	public static List<QuickFix> at(String file, int offset, int length, Snapshot snapshot, Optional<Report> report,
			Signature signature) {
		List<QuickFix> fixes = new ArrayList<>();
		SortedMap<String, String> sources = snapshot.ownSources();
		for (Problem problem : snapshot.problems()) {
			if (touches(problem.span(), file, offset, length)) {
				fixes.addAll(new ProblemFixes(sources, signature).of(problem));
			}
		}
		for (Flaw flaw : report.map(Report::flaws).orElse(List.of())) {
			if (flaw.accepted().isEmpty() && touches(flaw.span(), file, offset, length)) {
				fixes.addAll(new FlawFixes(sources, signature).of(flaw));
			}
		}
		return fixes;
	}

	private static boolean touches(Span span, String file, int offset, int length) {
		return span.file().equals(file) && span.offset() <= offset + length && offset <= span.offset() + span.length();
	}
}
