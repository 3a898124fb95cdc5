package org.baywright.cli.bench;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.baywright.analysis.Listener;
import org.baywright.presenter.bench.Ask;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Check;
import org.baywright.presenter.bench.Consulting;
import org.baywright.presenter.bench.JobSheet;
import org.baywright.presenter.bench.Keeping;
import org.baywright.presenter.bench.Mending;
import org.baywright.presenter.bench.Shown;
import org.baywright.presenter.bench.Subject;

/** A job in the course of a dialogue: the bench, what the rules make of it, and what is asked. */
final class Job {

	private final Consulting consulting = new Consulting();
	private final Listener listener;
	private Bench bench;
	private Optional<Consulting.Followed> followed = Optional.empty();
	private Optional<Ask> taken = Optional.empty();

	Job(Bench bench, Listener listener) {
		this.listener = listener;
		this.bench = bench;
	}

	Bench bench() {
		return bench;
	}

	Shown shown() {
		return followed.orElseThrow().shown();
	}

	/** Returns what was noted with the last answer, as it follows from it, in sentences. */
	List<String> followed() {
		return followed.orElseThrow().noted();
	}

	Listener listener() {
		return listener;
	}

	/** Goes on with another bench, which stays even where it is stopped to work out what follows from it. */
	void set(Bench next) {
		bench = next;
		followed = Optional.empty();
		taken = Optional.empty();
		followed = Optional.of(consulting.follow(next, listener));
		bench = followed.get().bench();
	}

	/** Asks for something that the user chose. */
	void take(Subject subject) {
		taken = Optional.of(Ask.of(subject));
	}

	/** Returns whether the user chose what is asked. */
	boolean isTaken() {
		return taken.isPresent();
	}

	/** Leaves to the bench what is asked. */
	void leave() {
		taken = Optional.empty();
	}

	/** Returns what is asked; nothing where what was entered cannot be. */
	Optional<Ask> ask() {
		return bench().now().family().isEmpty() ? Ask.vehicle(bench()) : taken.or(() -> Ask.of(bench(), shown()));
	}

	Optional<Mending> mending() {
		return shown().mending();
	}

	/** Returns the line of a verification that is asked for. */
	Optional<Check> check(Ask ask) {
		return taken.isPresent() ? Optional.empty()
				: mending().flatMap(Mending::work).stream().flatMap(work -> work.checks().stream())
						.filter(check -> check.verdict() == Check.Verdict.OPEN && ask.subject().isPresent() && check.subject().equals(ask.subject()) && check.text().equals(ask.title()))
						.findFirst();
	}

	/** Returns whether nothing is left to do. */
	boolean isOver() {
		return mending().filter(mending -> mending.stage() == Mending.Stage.VERIFIED || mending.stage() == Mending.Stage.REFERRED).isPresent();
	}

	Keeping keeping() {
		return Keeping.of(bench(), shown().advice(), LocalDate.now());
	}

	/** Returns the sheet of the job, or the one that goes along where it is handed on. */
	String sheet() {
		return JobSheet.on(LocalDate.now(), bench, followed.map(known -> known.shown().advice()).orElseGet(() -> consulting.advice(bench)));
	}
}
