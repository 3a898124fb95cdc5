package org.baywright.cli.bench;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.baywright.cli.work.Guess;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.BenchText;
import org.baywright.presenter.bench.JobRule;
import org.baywright.presenter.bench.Keeping;
import org.baywright.presenter.bench.Lacking;
import org.baywright.presenter.bench.Lead;
import org.baywright.presenter.bench.Mending;
import org.baywright.presenter.bench.Paragraph;
import org.baywright.presenter.bench.Subject;
import org.baywright.presenter.bench.Trial;

/** The words that can be used at any question. */
final class Orders {

	/** What comes after one. */
	enum Then {
		/** The same is asked again. */
		AGAIN,
		/** It is looked anew what is asked. */
		NEXT,
		/** The job is kept. */
		KEPT,
		/** The job is left. */
		LEFT
	}

	/** A word. */
	private enum Word {
		BACK("back", "take the last entry back"), //
		INSTEAD("instead [NUMBER]", "list the next best steps, or take one of them"), //
		ENTER("enter NAME [VALUE]", "enter anything else, by its name or its title"), //
		WHY("why", "tell what each rule says, waits for or lacks; rules does the same"), //
		FOUND("found", "list what was entered and what is known of the faults"), //
		SHEET("sheet FILE", "write the job sheet (HTML), or the referral sheet where the job is handed on"), //
		REFER("refer TO WHOM", "hand the job on; with nobody named it is not"), //
		CAUSE("cause FAULT", "say what the cause was; with no fault it is left to the rules"), //
		TOOK("took TIME", "say how long the job took, such as 40 min or 1.5 h"), //
		SPENT("spent SUM", "say what the job cost"), //
		KEEP("keep [NAME]", "keep the job among the finished jobs of the project, and end"), //
		DRAFT("draft TEST CAUSE", "show the rule that this job teaches, and what all others make of it"), //
		HELP("help", "list these words"), //
		QUIT("quit", "end without keeping the job");

		private final String use;
		private final String does;

		Word(String use, String does) {
			this.use = use;
			this.does = does;
		}

		static Optional<Word> of(String word) {
			String small = word.toLowerCase(Locale.ROOT);
			return small.equals("rules") ? Optional.of(WHY) : Arrays.stream(values()).filter(each -> each.name().toLowerCase(Locale.ROOT).equals(small)).findFirst();
		}
	}

	private final Job job;
	private final Printer printer;
	private final Desk desk;
	private final Trial trial = new Trial();
	private boolean refused;

	Orders(Job job, Printer printer, Desk desk) {
		this.job = job;
		this.printer = printer;
		this.desk = desk;
	}

	/** Returns whether a line is one of the words and nothing else. */
	static boolean isBare(String line) {
		return Word.of(line).isPresent();
	}

	/** Returns a sentence on which word may have been meant. */
	static String advice(String line, String otherwise) {
		return Guess.advice(line.split("\\s")[0], Arrays.stream(Word.values()).map(word -> word.name().toLowerCase(Locale.ROOT)).toList(), otherwise);
	}

	/** Returns whether the job could not be kept when that was wanted last. */
	boolean isRefused() {
		return refused;
	}

	/**
	 * Does what a line says.
	 *
	 * @return nothing if it is none of the words
	 */
	Optional<Then> take(String line) throws IOException {
		String[] parts = line.split("\\s+", 2);
		String rest = parts.length > 1 ? parts[1].strip() : "";
		Optional<Word> word = Word.of(parts[0]);
		return word.isEmpty() ? Optional.empty() : Optional.of(switch (word.get()) {
		case BACK -> back();
		case INSTEAD -> instead(rest);
		case ENTER -> enter(rest);
		case WHY -> again(BenchText.rules(job.shown()), "No rule was looked at yet.");
		case FOUND -> found();
		case SHEET -> sheet(rest);
		case REFER -> go(job.bench().refer(rest));
		case CAUSE -> cause(rest);
		case TOOK -> spent(job.bench().took(rest));
		case SPENT -> spent(job.bench().spent(rest));
		case KEEP -> keep(rest);
		case DRAFT -> draft(rest);
		case HELP -> help();
		case QUIT -> Then.LEFT;
		});
	}

	/** Goes on with another bench, and tells what is to be said of it; one that has not changed was refused. */
	Then go(Bench next) {
		printer.line(next.message());
		if (next.now().equals(job.bench().now()) && !next.message().isEmpty()) {
			return Then.AGAIN;
		}
		job.set(next.quiet());
		return Then.NEXT;
	}

	private Then say(String text) {
		printer.line(text);
		return Then.AGAIN;
	}

	private Then again(List<Paragraph> told, String otherwise) {
		printer.tell(told);
		return told.isEmpty() ? say(otherwise) : Then.AGAIN;
	}

	private Then back() {
		if (job.isTaken()) {
			job.leave();
			return Then.NEXT;
		}
		return job.bench().canUndo() ? go(job.bench().undo()) : say("There is nothing to take back.");
	}

	private Then instead(String number) {
		List<Lead.Other> others = job.shown().lead().others();
		if (others.isEmpty()) {
			return say("There is no other step.");
		} else if (number.isEmpty()) {
			printer.heading("Or instead");
			printer.choices(others.stream().map(other -> other.title() + " (" + other.expected() + ")").toList());
			return Then.AGAIN;
		} else if (!number.matches("[0-9]{1,4}") || Integer.parseInt(number) < 1 || Integer.parseInt(number) > others.size()) {
			return say("There is no step " + number + ": write a number from 1 to " + others.size() + ".");
		}
		Lead.Other other = others.get(Integer.parseInt(number) - 1);
		job.bench().subjects().stream().filter(subject -> subject.variable().equals(other.variable())).findFirst().ifPresent(job::take);
		return Then.NEXT;
	}

	private Then enter(String text) {
		Map<String, Subject> subjects = job.bench().subjects().stream().collect(Collectors.toMap(subject -> subject.variable().name(), subject -> subject, (one, other) -> one));
		List<Named> known = Named.all(subjects.values(), subject -> subject.variable().name(), Subject::title);
		Optional<Named.Begin> begin = Named.begin(text, known);
		if (begin.isEmpty()) {
			return say(text.isEmpty() ? "Say what: enter NAME VALUE." : "There is nothing to enter named “" + text + "”. " + Named.advice(text.split("\\s")[0], known, "Write its name or its title as the rules have it."));
		}
		Subject subject = subjects.get(begin.get().name());
		String value = begin.get().rest();
		if (value.isEmpty()) {
			job.take(subject);
			return Then.NEXT;
		}
		return go(job.bench().enter(subject.variable(), Dialogue.choice(subject, value).orElse(value)));
	}

	/** Lists what was entered and what is known of the faults. */
	Then found() {
		if (job.bench().lines().isEmpty()) {
			return say("Nothing was entered yet.");
		}
		job.bench().lines().forEach(line -> printer.item(line.title() + ": " + line.value()));
		printer.line(job.mending().filter(mending -> BenchText.isAfter(job.shown())).map(Mending::headline).orElse(job.shown().headline()));
		printer.tell(BenchText.verdicts(job.shown().verdicts()));
		return Then.AGAIN;
	}

	private Then sheet(String file) {
		if (file.isEmpty()) {
			return say("Say where to: sheet FILE.");
		}
		try {
			desk.page(file, job.sheet());
			return say("Wrote " + file + ".");
		} catch (IOException e) {
			return say(e.getMessage());
		}
	}

	private Then cause(String text) {
		List<Named> faults = faults();
		Optional<String> fault = text.isEmpty() ? Optional.of("") : Named.find(text, faults);
		return fault.isPresent() ? go(job.bench().cause(fault.get()))
				: say("There is no fault “" + text + "” in these rules. " + Named.advice(text, faults, "Write its name or its title as the rules have it."));
	}

	private List<Named> faults() {
		return Named.all(JobRule.faults(job.bench().base()), JobRule.Choice::name, JobRule.Choice::title);
	}

	private Then spent(Bench next) {
		Then then = go(next);
		if (then == Then.NEXT) {
			job.mending().ifPresent(mending -> printer.tell(BenchText.left(mending)));
		}
		return then;
	}

	/**
	 * Keeps the job.
	 *
	 * @param name what it is called; the empty text for what is proposed
	 */
	Then keep(String name) {
		Then then = kept(name);
		refused = then != Then.KEPT;
		return then;
	}

	private Then kept(String name) {
		if (job.bench().now().readings().isEmpty()) {
			return say("Nothing was entered yet.");
		}
		Keeping proposed = desk.place(job.keeping());
		Keeping keeping = name.isEmpty() ? proposed : proposed.named(name);
		Optional<String> problem = keeping.problem();
		try {
			if (problem.isPresent()) {
				return say(problem.get());
			} else if (!desk.keep(keeping)) {
				return say("Something else has changed " + keeping.file() + " meanwhile, so nothing was written. Write keep again.");
			}
			printer.line("“" + keeping.name() + "” is kept in " + keeping.file() + ".");
			return Then.KEPT;
		} catch (IOException e) {
			return say(e.getMessage());
		}
	}

	/** Shows the rule that the job teaches; with too little said, what can be named. */
	Then draft(String text) {
		List<Named> tests = Named.all(JobRule.tests(job.bench().base(), job.bench().now().readings()), JobRule.Choice::name, JobRule.Choice::title);
		Optional<Named.Begin> test = Named.begin(text, tests);
		Optional<String> cause = test.flatMap(begin -> Named.find(begin.rest(), faults()));
		if (tests.isEmpty()) {
			return say("No test was done in this job, so no rule can rest on one.");
		} else if (cause.isEmpty()) {
			printer.line("Say which test decided and what the cause was: draft TEST CAUSE. The tests that were done:");
			tests.forEach(each -> printer.item(each.name() + " " + each.title()));
			return Then.AGAIN;
		}
		JobRule rule = JobRule.of(job.bench(), test.get().name(), cause.get(), "", LocalDate.now());
		List<String> lines = new ArrayList<>();
		Lacking lacking = Lacking.of(job.bench(), job.shown().advice(), cause.get());
		printer.heading(lacking.headline());
		lacking.rules().forEach(lack -> {
			printer.line(lack.title());
			lack.lines().forEach(line -> printer.item(line.text()));
		});
		rule.text().lines().forEach(lines::add);
		printer.blank();
		lines.forEach(printer::line);
		printer.blank();
		Trial.Result result = trial.of(rule, job.listener());
		printer.line(result.headline() + (result.added().isEmpty() ? "" : " " + result.added().get(0).message()));
		return say("It belongs into " + JobRule.file(job.bench().base(), job.bench().now().readings()) + ", with the reason written instead of “" + JobRule.WHY + "”.");
	}

	private Then help() {
		int width = Arrays.stream(Word.values()).mapToInt(word -> word.use.length()).max().orElse(0) + 2;
		Arrays.stream(Word.values()).forEach(word -> printer.item(String.format(Locale.ROOT, "%-" + width + "s", word.use) + word.does));
		return say("A choice is answered by its number or its words, a value by a number with or without its unit; done or yes says that something is done.");
	}
}
