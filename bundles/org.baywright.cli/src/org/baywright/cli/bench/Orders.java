package org.baywright.cli.bench;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.baywright.cli.work.Guess;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.BenchText;
import org.baywright.presenter.bench.JobRule;
import org.baywright.presenter.bench.Keeping;
import org.baywright.presenter.bench.Lacking;
import org.baywright.presenter.bench.Lead;
import org.baywright.presenter.bench.Mending;
import org.baywright.presenter.bench.Paragraph;
import org.baywright.presenter.bench.Shown;
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
		BACK("back", "take the last entry back; undo does the same"), //
		REDO("redo", "go forward again after back"), //
		INSTEAD("instead [STEP]", "list the next best steps, or take one of them by its letter or its title"), //
		ENTER("enter NAME [VALUE]", "enter anything else, by its name or its title"), //
		WHY("why [all]", "tell why this is next and which rules applied; why all, what each rule says, waits for or lacks"), //
		FOUND("found", "list what was entered and what is known of the faults"), //
		SHEET("sheet FILE", "write the job sheet (HTML), or the referral sheet where the job is handed on"), //
		REFER("refer TO WHOM", "hand the job on; refer alone takes that back"), //
		CAUSE("cause FAULT", "say what the cause was; cause alone leaves it to the rules"), //
		VIN("vin NUMBER", "record the vehicle's identification number"), //
		TOOK("took TIME", "say how long the job took, such as 40 min or 1.5 h"), //
		SPENT("spent SUM", "say what the job cost"), //
		KEEP("keep [NAME]", "keep the job among the finished jobs of the project, and end"), //
		DRAFT("draft TEST CAUSE [to FILE]", "show the rule that this job teaches and what all others make of it; write it (over FILE replaces one)"), //
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
			return small.equals("undo") ? Optional.of(BACK) : small.equals("rules") ? Optional.of(WHY) : Arrays.stream(values()).filter(each -> each.name().toLowerCase(Locale.ROOT).equals(small)).findFirst();
		}
	}

	private static final int MOST_STEPS = 26;
	private static final Pattern WITH_FILE = Pattern.compile("(.*\\S)\\s+(to|over)\\s+(\\S+)");

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

	/** What a job teaches: the test that decided, and the fault that was the cause. */
	private record Taught(String test, String cause) {
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
		case REDO -> job.bench().canRedo() ? go(job.bench().redo()) : say("There is nothing to go forward to.");
		case WHY -> why(rest.equals("all") || parts[0].equalsIgnoreCase("rules"));
		case FOUND -> found();
		case SHEET -> sheet(rest);
		case REFER -> rest.isEmpty() && job.bench().now().done().referredTo().isEmpty() ? say("Say to whom the job goes: refer TO WHOM.") : go(job.bench().refer(rest));
		case CAUSE -> cause(rest);
		case VIN -> rest.isEmpty() && job.bench().now().done().vin().isEmpty() ? say("Say which: vin NUMBER.") : vin(rest);
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

	private Then why(boolean all) {
		Shown shown = job.shown();
		if (all) {
			return again(BenchText.rules(shown), "No rule was looked at yet.");
		}
		shown.lead().first().filter(todo -> !job.isTaken()).ifPresent(todo -> todo.why().forEach(printer::line));
		shown.fired().forEach(rule -> {
			printer.line("The rule “" + rule.title() + "” applied:");
			rule.lines().forEach(line -> printer.item(line.text()));
		});
		return say(shown.fired().isEmpty() ? "No rule applied yet. Write why all for what each rule waits for." : "Write why all for what the other rules wait for or lack.");
	}

	private Then instead(String step) {
		List<Lead.Other> others = job.shown().lead().others();
		// whatever their number, nobody looks further than the alphabet
		List<Named> known = IntStream.range(0, Math.min(others.size(), MOST_STEPS)).mapToObj(at -> new Named(Printer.letter(at), others.get(at).title())).toList();
		Optional<String> letter = Named.find(step, known);
		if (others.isEmpty()) {
			return say("There is no other step.");
		} else if (letter.isEmpty()) {
			printer.heading(step.isEmpty() ? "Or instead" : "There is no step “" + step + "”. Write instead with a letter or a title of these:");
			printer.letters(others.stream().limit(MOST_STEPS).map(other -> other.title() + " (" + other.expected() + ")").toList());
			return Then.AGAIN;
		}
		Lead.Other other = others.get(letter.get().charAt(0) - 'a');
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

	private Then vin(String number) {
		Then then = go(job.bench().vin(number));
		if (then == Then.NEXT) {
			String vin = job.bench().now().done().vin();
			printer.line(vin.isEmpty() ? "The vehicle has no identification number now." : "Noted: Identification number: " + vin);
		}
		return then;
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
			boolean gone = desk.isGone(keeping);
			if (problem.isPresent()) {
				return say(problem.get());
			} else if (!desk.keep(keeping)) {
				return say("Something else has changed " + keeping.file() + " meanwhile, so nothing was written. Write keep again.");
			}
			printer.line(job.isOver() ? "" : "The repair is not verified; the job is kept without that, and without time and money that nobody has told.");
			printer.line("“" + keeping.name() + "” is kept in " + keeping.file() + (gone ? ", which was not there any more and was made anew." : "."));
			printer.line(keeping.failure(job.listener()));
			return Then.KEPT;
		} catch (IOException e) {
			return say(e.getMessage());
		}
	}

	/** Shows the rule that the job teaches; with too little said, what can be named. */
	Then draft(String text) {
		List<Named> tests = Named.all(JobRule.tests(job.bench().base(), job.bench().now().readings()), JobRule.Choice::name, JobRule.Choice::title);
		// a title may have such a word in it
		Optional<Matcher> file = Optional.of(WITH_FILE.matcher(text)).filter(matcher -> taught(text, tests).isEmpty() && matcher.matches());
		Optional<Taught> taught = taught(file.map(matcher -> matcher.group(1)).orElse(text), tests);
		if (tests.isEmpty()) {
			return say("No test was done in this job, so no rule can rest on one.");
		} else if (taught.isEmpty()) {
			printer.line("Say which test decided and what the cause was: draft TEST CAUSE, or draft TEST CAUSE to FILE. The tests that were done:");
			tests.forEach(each -> printer.item(each.name() + " " + each.title()));
			return Then.AGAIN;
		}
		String cause = taught.get().cause();
		JobRule rule = JobRule.of(job.bench(), taught.get().test(), cause, "", LocalDate.now());
		List<String> lines = new ArrayList<>();
		Lacking lacking = Lacking.of(job.bench(), job.shown().advice(), cause);
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
		if (file.isPresent()) {
			try {
				desk.draft(file.get().group(3), String.join("\n", lines) + "\n", file.get().group(2).equals("over"));
				printer.line("Wrote " + file.get().group(3) + ".");
			} catch (IOException e) {
				return say(e.getMessage());
			}
		}
		return say("It belongs into " + JobRule.file(job.bench().base(), job.bench().now().readings()) + ", with the reason written instead of “" + JobRule.WHY + "”.");
	}

	private Optional<Taught> taught(String text, List<Named> tests) {
		return Named.begin(text, tests).flatMap(test -> Named.find(test.rest(), faults()).map(cause -> new Taught(test.name(), cause)));
	}

	private Then help() {
		int width = Arrays.stream(Word.values()).mapToInt(word -> word.use.length()).max().orElse(0) + 2;
		Arrays.stream(Word.values()).forEach(word -> printer.item(String.format(Locale.ROOT, "%-" + width + "s", word.use) + word.does));
		return say("A choice is answered by its number or its words, a value by a number with or without its unit; done or yes says that something is done.");
	}
}
