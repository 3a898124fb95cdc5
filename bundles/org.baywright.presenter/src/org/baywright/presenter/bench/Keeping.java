package org.baywright.presenter.bench;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;

import org.baywright.analysis.Consultation.Advice;
import org.baywright.analysis.Listener;
import org.baywright.model.Case;
import org.baywright.model.Reading;
import org.baywright.model.RuleBase;
import org.baywright.model.words.Words;
import org.baywright.model.write.RuleWriter;
import org.baywright.presenter.Say;

/**
 * Keeping the job on the bench in the project, at the end of a rule file.
 *
 * @param bench the job
 * @param advice what the rules make of it
 * @param file the file, relative to the project with forward slashes; it may be a new one
 * @param name what the job is called
 */
public record Keeping(Bench bench, Advice advice, String file, String name) {

	private static final String FILE = "jobs.bay";
	private static final int MOST_LETTERS = 200;

	/**
	 * Proposes a file, the one with most jobs, and a name: "Job 2026-11-30: Engine does not crank".
	 *
	 * @param date when the job was done
	 */
	public static Keeping of(Bench bench, Advice advice, LocalDate date) {
		return new Keeping(bench, advice, file(bench.base()), free("Job " + date + ": " + complaint(bench), bench.base()));
	}

	/** Returns the same under another name. */
	public Keeping named(String other) {
		return new Keeping(bench, advice, file, Say.inLine(other));
	}

	/** Returns the same in another file. */
	public Keeping in(String other) {
		return new Keeping(bench, advice, other, name);
	}

	private static String file(RuleBase base) {
		Map<String, Integer> counts = new TreeMap<>();
		base.cases().stream().map(Case::span).filter(span -> !span.file().isEmpty() && !span.isElsewhere()).forEach(span -> counts.merge(span.file(), 1, Integer::sum));
		// of several the first by name
		return counts.entrySet().stream().min(Comparator.comparing(entry -> -entry.getValue())).map(Map.Entry::getKey).orElse(FILE);
	}

	private static String complaint(Bench bench) {
		return bench.now().readings().stream().filter(reading -> reading instanceof Reading.SignSeen seen && seen.present())
				.map(reading -> new Words(bench.base()).sign(reading.subject())).findFirst().orElse("no complaint");
	}

	private static String free(String name, RuleBase base) {
		Collection<String> taken = names(base);
		String free = name;
		for (int i = 2; taken.contains(free); i++) {
			free = name + " (" + i + ")";
		}
		return free;
	}

	/** Returns whether a file has a job of that name already, whoever has written it. */
	public boolean isIn(String present) {
		String head = text().lines().findFirst().orElse("");
		return present.contains(head.substring(0, head.lastIndexOf('"') + 1));
	}

	/** Returns the same under a name that a file does not have yet. */
	public Keeping unlike(String present) {
		Keeping other = this;
		for (int i = 2; other.isIn(present); i++) {
			other = named(name + " (" + i + ")");
		}
		return other;
	}

	private static List<String> names(RuleBase base) {
		return base.cases().stream().map(Case::name).toList();
	}

	/** Returns why the job cannot be kept yet, in one sentence. */
	public Optional<String> problem() {
		if (name.isBlank()) {
			return Optional.of("Give the job a number or a name by which it can be found again.");
		} else if (name.length() > MOST_LETTERS || Say.hides(name)) {
			return Optional.of("A name has at most " + MOST_LETTERS + " letters, and none that do not show. Write it anew.");
		} else if (names(bench.base()).contains(name)) {
			return Optional.of("There is already a job named " + name + ".");
		}
		return Mending.of(bench, advice).isEnded() ? Optional.empty()
				: Optional.of("The cause is not known yet: say what it was, or to whom the job was referred.");
	}

	/**
	 * Returns what to say of a kept job that the rules do not bring to its end, in one sentence; the empty text for nothing.
	 *
	 * @param listener can stop the work
	 * @throws CancellationException if the listener asked to stop
	 */
	public String failure(Listener listener) {
		return Trial.message(bench.base(), CaseText.job(bench, Mending.of(bench, advice), name), listener).filter(message -> !message.isEmpty())
				.map(message -> "The rules do not bring it to this end, which a check reports as an error: " + message).orElse("");
	}

	/** Returns the job as text of a rule file. */
	public String text() {
		return CaseText.of(bench, advice, name);
	}

	/**
	 * Returns the file with the job at its end.
	 *
	 * @param present its text as it is; the empty text for a new file
	 */
	public String appended(String present) {
		return present + RuleWriter.gap(present) + text();
	}
}
