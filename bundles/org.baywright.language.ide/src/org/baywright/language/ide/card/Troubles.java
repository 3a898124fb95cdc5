package org.baywright.language.ide.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.baywright.model.Span;

/** What is wrong with one element, shared out among its lines. */
final class Troubles {

	static final Troubles NONE = new Troubles(List.of());

	private final List<Line.Trouble> all;
	private final List<Line.Trouble> left;

	private Troubles(List<Line.Trouble> all) {
		this.all = all;
		left = new ArrayList<>(all);
	}

	Troubles(String file, Sheet sheet, List<Problem> problems, Optional<Report> report) {
		this(found(file, sheet, problems, report));
	}

	private static List<Line.Trouble> found(String file, Sheet sheet, List<Problem> problems, Optional<Report> report) {
		List<Line.Trouble> found = new ArrayList<>();
		for (Problem problem : problems) {
			if (isIn(problem.span(), file, sheet)) {
				String sentence = (problem.message() + " " + problem.advice()).strip();
				found.add(new Line.Trouble(problem.severity(), sentence, problem.id(), problem.span().offset(), problem.span().length()));
			}
		}
		for (Flaw flaw : report.map(Report::flaws).orElse(List.of())) {
			if (flaw.accepted().isEmpty() && isIn(flaw.span(), file, sheet)) {
				found.add(new Line.Trouble(flaw.severity(), flaw.message(), flaw.id(), flaw.span().offset(), flaw.span().length()));
			}
		}
		found.sort(Comparator.comparing(Line.Trouble::severity).thenComparing(Line.Trouble::offset));
		return List.copyOf(found);
	}

	private static boolean isIn(Span span, String file, Sheet sheet) {
		return span.file().equals(file) && span.offset() >= sheet.offset() && span.offset() <= sheet.end();
	}

	List<Line.Trouble> all() {
		return all;
	}

	/** Returns those that begin in a range; they are not told again for the whole. */
	List<Line.Trouble> of(int from, int to) {
		List<Line.Trouble> here = left.stream().filter(trouble -> trouble.offset() >= from && trouble.offset() < Math.max(to, from + 1)).toList();
		left.removeAll(here);
		return here;
	}

	/** Returns those that no line has. */
	List<Line.Trouble> left() {
		return List.copyOf(left);
	}

	OptionalInt firstError() {
		return all.stream().filter(trouble -> trouble.severity() == Severity.ERROR).mapToInt(Line.Trouble::offset).min();
	}
}
