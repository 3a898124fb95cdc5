package org.baywright.language.ide.server;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.baywright.analysis.Evidence;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Place;
import org.baywright.model.Problem;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticRelatedInformation;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.Location;

/** Says problems and flaws as the protocol does. */
final class Diagnostics {

	private static final String SOURCE = "baywright";

	private Diagnostics() {
	}

	static Diagnostic of(Problem problem) {
		String message = problem.advice().isEmpty() ? problem.message() : problem.message() + " " + problem.advice();
		Diagnostic diagnostic = new Diagnostic(Positions.range(problem.span()), message, severity(problem.severity()), SOURCE,
				problem.id());
		diagnostic.setData(problem.id());
		return diagnostic;
	}

	/**
	 * @param flaw the flaw
	 * @param span where it stands now
	 * @param related further places with what stands there, as far as the client wants them
	 */
	static Diagnostic of(Flaw flaw, Span span, List<DiagnosticRelatedInformation> related) {
		Diagnostic diagnostic = new Diagnostic(Positions.range(span), flaw.message(), severity(flaw.severity()), SOURCE,
				flaw.check());
		diagnostic.setData(flaw.id());
		if (!related.isEmpty()) {
			diagnostic.setRelatedInformation(related);
		}
		return diagnostic;
	}

	/**
	 * Returns what shows a flaw: its witness at its own place, and all further places.
	 *
	 * @param where finds the place and the address that the client knows for a place of the flaw
	 */
	static List<DiagnosticRelatedInformation> related(Flaw flaw, Function<Span, Optional<Location>> where) {
		List<DiagnosticRelatedInformation> all = new ArrayList<>();
		if (flaw.evidence() instanceof Evidence.Core core) {
			core.lines().forEach(place -> add(place, where, all));
		} else if (!flaw.story().isEmpty()) {
			String story = flaw.evidence() instanceof Evidence.Undecided ? "" : "For example: ";
			where.apply(flaw.span()).ifPresent(
					place -> all.add(new DiagnosticRelatedInformation(place, story + String.join("; ", flaw.story()))));
		}
		flaw.related().forEach(place -> add(place, where, all));
		return all;
	}

	private static void add(Place place, Function<Span, Optional<Location>> where, List<DiagnosticRelatedInformation> all) {
		where.apply(place.span()).ifPresent(at -> all.add(new DiagnosticRelatedInformation(at, place.note())));
	}

	private static DiagnosticSeverity severity(Severity severity) {
		return switch (severity) {
		case ERROR -> DiagnosticSeverity.Error;
		case WARNING -> DiagnosticSeverity.Warning;
		case NOTE -> DiagnosticSeverity.Information;
		};
	}
}
