package org.baywright.cli.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

import org.baywright.analysis.Listener;
import org.baywright.model.VerdictKind;
import org.baywright.model.words.Invisible;
import org.baywright.presenter.Say;
import org.baywright.presenter.bench.Ask;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.BenchText;
import org.baywright.presenter.bench.Check;
import org.baywright.presenter.bench.Lead;
import org.baywright.presenter.bench.Mending;
import org.baywright.presenter.bench.Paragraph;
import org.baywright.presenter.bench.Shown;
import org.baywright.presenter.bench.Subject;
import org.baywright.presenter.bench.Work;

/** Leads a job from the complaint to the kept job by questions and answers. */
public final class Dialogue {

	/** How it ended. */
	public enum End {
		/** The job is kept. */
		KEPT,
		/** Somebody left it on purpose. */
		LEFT,
		/** There are no more answers, and nothing is left to do but to keep it. */
		OVER,
		/** There are no more answers, and the job is not at its end, or could not be kept. */
		CUT_SHORT
	}

	private final Job job;
	private final Answers answers;
	private final Printer printer;
	private final Orders orders;
	private List<Paragraph> first = List.of();
	private boolean justTold;
	private String after = "";
	private List<Shown.VerdictLine> verdicts = List.of();

	/**
	 * @param bench where it begins
	 * @param listener can stop the work
	 */
	public Dialogue(Bench bench, Answers answers, Printer printer, Desk desk, Listener listener) {
		this.answers = answers;
		this.printer = printer;
		job = new Job(bench, listener);
		orders = new Orders(job, printer, desk);
	}

	/**
	 * Asks until the job is over, left, or nothing answers any more.
	 *
	 * @throws IOException if the answers cannot be read
	 */
	public End run() throws IOException {
		job.set(job.bench());
		printer.line("Write help for the words that can be used at any question.");
		if (!job.bench().now().family().isEmpty()) {
			noted("Vehicle", job.bench().vehicle());
		}
		List<Bench.Line> lines = job.bench().lines();
		// what follows comes last, and is told with its reason
		lines.subList(0, lines.size() - job.followed().size()).forEach(line -> noted(line.title(), line.value()));
		while (true) {
			job.followed().forEach(text -> printer.line("Noted: " + text));
			news();
			Optional<Ask> ask = job.ask();
			printer.blank();
			question(ask);
			answer(ask);
			Orders.Then then = Orders.Then.AGAIN;
			while (then == Orders.Then.AGAIN) {
				Optional<Answers.Line> line = answers.next();
				if (line.isEmpty()) {
					return ended(job.isOver() && !orders.isRefused() ? End.OVER : End.CUT_SHORT);
				}
				then = taken(line.get(), ask);
				if (then == Orders.Then.AGAIN) {
					printer.heading(asked(ask));
					answer(ask);
				}
			}
			if (then == Orders.Then.KEPT) {
				return End.KEPT;
			} else if (then == Orders.Then.LEFT) {
				return ended(End.LEFT);
			}
		}
	}

	/** Returns the sheet of the job as it stands. */
	public String sheet() {
		return job.sheet();
	}

	// ---- what is told before the question ----------------------------------------------------------------------

	/** Tells what has changed since the question before. */
	private void news() {
		Shown shown = job.shown();
		List<Paragraph> nowFirst = BenchText.first(shown);
		justTold = !texts(nowFirst).equals(texts(first));
		if (justTold) {
			printer.block(nowFirst);
		}
		first = nowFirst;
		// the headline of finding counts rules, and changes with every answer
		Optional<Mending> mending = shown.mending().filter(each -> BenchText.isAfter(shown));
		String now = mending.map(each -> each.headline() + each.work().map(Work::repair).orElse("")).orElse("");
		if (!now.equals(after)) {
			mending.ifPresent(each -> {
				if (each.stage() == Mending.Stage.REFERRED && !justTold) {
					printer.block(BenchText.precautions(shown));
				}
				printer.block(after(each));
			});
		}
		after = now;
		// who takes the job over is told at the end, and the causes with their repair
		List<String> known = verdicts.stream().map(Shown.VerdictLine::text).toList();
		printer.block(BenchText.verdicts(shown.verdicts().stream().filter(verdict -> verdict.kind() != null && !known.contains(verdict.text()))
				.filter(verdict -> mending.isEmpty() || verdict.kind() != VerdictKind.CONFIRMED).toList()));
		verdicts = shown.verdicts();
	}

	private static List<String> texts(List<Paragraph> paragraphs) {
		return paragraphs.stream().map(Paragraph::text).toList();
	}

	private List<Paragraph> after(Mending mending) {
		List<Paragraph> told = new ArrayList<>(BenchText.causes(mending));
		if (mending.causes().size() == 1) {
			told.removeIf(paragraph -> paragraph.text().equals(mending.causes().get(0).title())); // the headline names it
			told.removeIf(paragraph -> job.isOver() && paragraph.kind() == Paragraph.Kind.ITEM);
			told.replaceAll(paragraph -> paragraph.kind() == Paragraph.Kind.ITEM
					? new Paragraph(Paragraph.Kind.LINE, "By the rule “" + paragraph.text() + "”.", paragraph.way()) : paragraph);
		}
		if (job.isOver()) {
			told.remove(0); // the question says the same
		} else if (mending.stage() == Mending.Stage.REPAIR) {
			told.addAll(BenchText.repairs(job.bench(), mending));
			mending.work().ifPresent(work -> told.addAll(BenchText.work(job.bench(), work)));
		}
		told.addAll(BenchText.left(mending));
		return told;
	}

	// ---- the question ------------------------------------------------------------------------------------------

	private void question(Optional<Ask> ask) {
		ask.ifPresentOrElse(asked -> {
			printer.heading(asked.title());
			printer.line(asked.detail());
			Optional<Lead.Todo> todo = job.isTaken() ? Optional.empty() : job.shown().lead().first();
			precautions(asked, todo);
			printer.tell(todo.map(BenchText::doing).or(() -> asked.subject().map(subject -> BenchText.doing(job.bench(), subject))).orElse(List.of()));
			printer.line(todo.map(first -> job.shown().lead().note()).orElse(""));
		}, () -> printer.heading(asked(ask)));
	}

	/** What comes first was told when its sign was entered, which may be long ago for who is about to go against it. */
	private void precautions(Ask asked, Optional<Lead.Todo> todo) {
		boolean verification = asked.detail().equals(Ask.VERIFICATION);
		String exception = todo.map(Lead.Todo::exception).or(() -> asked.subject().map(subject -> BenchText.exception(job.bench(), subject))).orElse("");
		if (!justTold && (verification || !exception.isEmpty())) {
			printer.tell(BenchText.precautions(job.shown()));
		}
		printer.line(verification && !job.shown().precautions().isEmpty() ? "The repair is done; this is for its verification alone." : "");
	}

	private String asked(Optional<Ask> ask) {
		return ask.map(Ask::title).orElseGet(() -> job.shown().warnings().isEmpty() ? job.shown().headline() : "Take something back, or enter it anew.");
	}

	/** Tells how to answer. */
	private void answer(Optional<Ask> ask) {
		if (ask.isEmpty()) {
			printer.line(job.bench().subjects().isEmpty() ? "Answer: quit" : "Answer: back, or enter NAME VALUE");
		} else if (ask.get().subject().isPresent()) {
			Subject subject = ask.get().subject().get();
			String name = subject.variable().name().isEmpty() ? "Answer:" : "Answer (" + subject.variable().name() + "):";
			printer.line(subject.choices().isEmpty() ? name + " a number from " + subject.range() : name);
			printer.choices(subject.choices().stream().map(Subject.Choice::title).toList());
			job.check(ask.get()).ifPresent(check -> printer.line(check.note()));
			printer.line(!job.isTaken() && job.mending().filter(Mending::isWithoutOther).isPresent() ? "Or: refer TO WHOM" : "");
		} else {
			printer.line("Answer: " + switch (ask.get().special()) {
			case KEEP -> "keep, or keep NAME";
			case DRAFT -> "cause FAULT, refer TO WHOM, draft TEST CAUSE, or quit";
			case NONE -> "done or yes" + (ask.get().button().equals("Done") ? "" : " (" + Say.lower(ask.get().button()) + ")");
			});
		}
	}

	// ---- the answer --------------------------------------------------------------------------------------------

	private Orders.Then taken(Answers.Line answer, Optional<Ask> ask) throws IOException {
		String line = answer.text();
		if (line.isEmpty() || !answer.wrong().isEmpty()) {
			printer.line(answer.wrong());
			return Orders.Then.AGAIN;
		} else if (line.indexOf(Invisible.LOST) >= 0) {
			printer.line("A letter of that answer did not arrive, as it is not written in UTF-8. Type it again.");
			return Orders.Then.AGAIN;
		}
		Optional<Subject> subject = ask.flatMap(Ask::subject);
		// its own words come before an order that begins alike
		if (subject.isEmpty() && ask.filter(asked -> asked.button().equalsIgnoreCase(line)).isPresent()) {
			return done(ask.get());
		}
		Optional<String> choice = subject.flatMap(asked -> choice(asked, line));
		if (choice.isEmpty() || Orders.isBare(line)) {
			Optional<Orders.Then> order = orders.take(line);
			if (order.isPresent()) {
				return order.get();
			}
		}
		if (ask.isPresent() && subject.isPresent() && (choice.isPresent() || subject.get().choices().isEmpty())) {
			return give(ask.get(), choice.orElse(line));
		} else if (subject.isPresent()) {
			List<Named> known = Named.all(subject.get().choices(), Subject.Choice::text, Subject.Choice::title);
			printer.line("“" + line + "” is none of these. " + Named.advice(line, known, Orders.advice(line, "Write the number before one of them, or its words.")));
			return Orders.Then.AGAIN;
		} else if (ask.isPresent() && List.of("done", "yes").contains(line.toLowerCase(Locale.ROOT))) {
			return done(ask.get());
		}
		printer.line("“" + line + "” is no answer here. " + Orders.advice(line, "Write help for what can be written."));
		return Orders.Then.AGAIN;
	}

	private Orders.Then done(Ask ask) throws IOException {
		return switch (ask.special()) {
		case NONE -> give(ask, "");
		case KEEP -> orders.keep("");
		case DRAFT -> orders.draft("");
		};
	}

	/** Returns what the bench takes for a choice, which is named by its words or its number. */
	static Optional<String> choice(Subject subject, String typed) {
		List<Named> known = Named.all(subject.choices(), Subject.Choice::text, Subject.Choice::title);
		return Named.find(typed, known).or(() -> typed.matches("[0-9]{1,4}")
				? Stream.of(Integer.parseInt(typed) - 1).filter(at -> at >= 0 && at < known.size()).map(at -> known.get(at).name()).findFirst()
				: Optional.empty());
	}

	private Orders.Then give(Ask ask, String text) {
		Optional<Check> check = job.check(ask);
		Orders.Then then = orders.go(ask.answer(job.bench(), text));
		if (then == Orders.Then.NEXT) {
			check.flatMap(this::now).ifPresentOrElse(read -> noted(read.subject().orElseThrow().title(), read.said() + switch (read.verdict()) {
			case OPEN -> "";
			case AS_EXPECTED -> ", as expected";
			case NOT_AS_EXPECTED -> ", not as expected";
			}), () -> ask.subject().ifPresent(subject -> noted(subject, text)));
		}
		return then;
	}

	private Optional<Check> now(Check check) {
		return job.mending().flatMap(Mending::work).stream().flatMap(work -> work.checks().stream()).filter(each -> each.at().equals(check.at())).findFirst();
	}

	private void noted(Subject subject, String text) {
		String said = subject.choices().stream().filter(choice -> choice.text().equals(text)).map(Subject.Choice::title).findFirst()
				.or(() -> job.bench().lines().stream().filter(line -> line.variable().equals(subject.variable())).map(Bench.Line::value).findFirst()).orElse(text);
		noted(subject.title(), said);
	}

	private void noted(String what, String value) {
		printer.line("Noted: " + what + ": " + value);
	}

	// ---- the end -----------------------------------------------------------------------------------------------

	private End ended(End end) {
		printer.blank();
		printer.heading("Where the job stands");
		if (job.mending().filter(mending -> mending.stage() == Mending.Stage.VERIFIED).isEmpty()) {
			printer.tell(BenchText.precautions(job.shown()));
		}
		printer.line(job.bench().vehicle());
		orders.found();
		job.mending().ifPresent(mending -> printer.tell(BenchText.left(mending)));
		printer.line(end == End.CUT_SHORT ? "The answers ended before the job did; it is not kept." : "The job is not kept.");
		return end;
	}
}
