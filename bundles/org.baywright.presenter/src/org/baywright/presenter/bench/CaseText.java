package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Derived;
import org.baywright.analysis.Variable;
import org.baywright.model.Case;
import org.baywright.model.Reading;
import org.baywright.model.Span;
import org.baywright.model.VerdictKind;
import org.baywright.model.write.RuleWriter;
import org.baywright.presenter.Say;

/** Writes what is on the bench as a finished job. */
public final class CaseText {

	private CaseText() {
	}

	/**
	 * Returns the job as text of a rule file. What the rules confirm is taken for the cause, to be corrected by who knows
	 * better; while nothing is confirmed or referred the end is left open, which the text itself then reports.
	 *
	 * @param title name of the job
	 */
	public static String of(Bench bench, Advice advice, String title) {
		List<Reading> traits = new ArrayList<>();
		List<Reading> found = new ArrayList<>();
		for (Reading reading : bench.now().readings()) {
			boolean trait = Bench.variable(bench.base(), reading).kind() == Variable.Kind.TRAIT;
			(trait ? traits : found).add(reading);
		}
		List<String> causes = advice.verdicts().stream().map(Derived::verdict)
				.filter(verdict -> verdict.kind() == VerdictKind.CONFIRMED).map(verdict -> verdict.fault()).toList();
		boolean referred = causes.isEmpty() && advice.verdicts().stream().anyMatch(derived -> derived.verdict().isReferral());
		String text = new RuleWriter(bench.base()).text(
				new Case(Say.inLine(title), bench.now().family(), traits, found, causes, referred, Optional.empty(), Span.NONE));
		return causes.isEmpty() && !referred ? text.replaceFirst("}\n$", "  // was: the cause is not known yet\n}\n") : text;
	}
}
