package org.baywright.presenter.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Consultation.Derived;
import org.baywright.analysis.Variable;
import org.baywright.model.Domain;
import org.baywright.model.Meaning;
import org.baywright.model.Reading;
import org.baywright.model.VerdictKind;
import org.baywright.presenter.Say;

/** Writes what is on the bench as a finished job. */
public final class CaseText {

	private static final int WIDTH = 100;

	private CaseText() {
	}

	/**
	 * Returns the job as text of a rule file. What the rules confirm is taken for the cause, to be corrected by who knows
	 * better; while nothing is confirmed or referred the end is left open, which the text itself then reports.
	 *
	 * @param title name of the job
	 * @param names writes a name, with the mark that a word of the language needs
	 */
	public static String of(Bench bench, Advice advice, String title, UnaryOperator<String> names) {
		List<String> traits = new ArrayList<>();
		List<String> found = new ArrayList<>();
		for (Reading reading : bench.now().readings()) {
			boolean trait = Bench.variable(bench.base(), reading).kind() == Variable.Kind.TRAIT;
			(trait ? traits : found).add(reading(bench, reading, names));
		}
		StringBuilder text = new StringBuilder("job " + Say.quoted(title) + " {\n");
		text.append(wrapped("on " + names.apply(bench.now().family()) + (traits.isEmpty() ? "" : " with "), traits));
		if (!found.isEmpty()) {
			text.append(wrapped("found ", found));
		}
		return text.append(end(advice)).append("}\n").toString();
	}

	private static String end(Advice advice) {
		List<String> causes = advice.verdicts().stream().map(Derived::verdict)
				.filter(verdict -> verdict.kind() == VerdictKind.CONFIRMED).map(verdict -> verdict.fault()).toList();
		if (!causes.isEmpty()) {
			return wrapped("was ", causes);
		}
		boolean referred = advice.verdicts().stream().anyMatch(derived -> derived.verdict().isReferral());
		return referred ? "  was referred\n" : "  // was: the cause is not known yet\n";
	}

	private static String wrapped(String word, List<String> parts) {
		StringBuilder text = new StringBuilder("  " + word);
		int start = text.length();
		int width = start;
		for (int i = 0; i < parts.size(); i++) {
			String part = parts.get(i) + (i + 1 < parts.size() ? "," : "");
			if (width > start && width + part.length() + 1 > WIDTH) {
				text.append("\n").append(" ".repeat(start));
				width = start;
			} else if (width > start) {
				text.append(' ');
				width++;
			}
			text.append(part);
			width += part.length();
		}
		return text.append("\n").toString();
	}

	private static String reading(Bench bench, Reading reading, UnaryOperator<String> names) {
		String subject = names.apply(reading.subject());
		if (reading instanceof Reading.SignSeen seen && seen.present()) {
			return subject;
		} else if (reading instanceof Reading.Named named) {
			return subject + " " + names.apply(named.value());
		} else if (reading instanceof Reading.Measured measured) {
			String unit = bench.domain(reading).filter(Domain.Quantity.class::isInstance)
					.map(domain -> ((Domain.Quantity) domain).unit()).orElse("");
			return subject + " " + Meaning.number(measured.value()) + (unit.isEmpty() ? "" : " " + unit);
		}
		return subject + " " + Bench.text(reading);
	}
}
