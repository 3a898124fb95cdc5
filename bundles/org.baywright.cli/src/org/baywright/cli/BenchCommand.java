package org.baywright.cli;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.function.UnaryOperator;

import org.baywright.cli.bench.Answers;
import org.baywright.cli.bench.Desk;
import org.baywright.cli.bench.Dialogue;
import org.baywright.cli.bench.Printer;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Progress;
import org.baywright.cli.work.Read;
import org.baywright.cli.work.RuleText;
import org.baywright.model.Severity;
import org.baywright.presenter.Say;
import org.baywright.presenter.bench.Bench;
import org.baywright.presenter.bench.Keeping;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code baywright bench}. */
@Command(name = "bench", sortOptions = false, //
		header = "Lead a job from the complaint to the verified repair, by questions and answers.", //
		description = { "", "Asks for one thing at a time, as the bench of the workbench does: what to find out next, with its cautions, how it"
				+ " is done and why it is next; then the repair, step by step, whom to tell, and the verification. At the end the job is"
				+ " kept among the finished jobs of the project.", "",
				"A choice is answered by its number or its words, a value by a number with or without its unit, and what is done by the"
						+ " word done. Further words can be used at any question: back, redo, instead, enter, why, found, sheet, refer, cause, vin,"
						+ " took, spent, keep, draft, quit; the word help lists them. What is wrong is told, and the same is asked again.", "",
				"Answers may come from a pipe or a file, one in a line; lines that begin with # are comments." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the job is kept or at its end, or was left with quit", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written", //
				"4:the answers ended before the job did, or it could not be kept; what was found is told" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright bench light-van                               asks for the vehicle and the complaint first", //
				"  baywright bench light-van --vehicle bord_s --complaint no_crank", //
				"  baywright bench light-van --vehicle bord_s --with engine=diesel_2_1 --sheet job.html", //
				"  baywright bench light-van --answers job.txt > job.log" })
final class BenchCommand implements Callable<Integer> {

	private final Session session;

	@Mixin
	private VehicleOptions options;

	@Option(names = "--sheet", paramLabel = "FILE", description = {
			"Write the job sheet (HTML) to this file at the end, however it ends; the referral sheet where the job is handed on." })
	private Optional<String> sheet = Optional.empty();

	@Option(names = "--answers", paramLabel = "FILE", description = "Read the answers from this file, not from standard input.")
	private Optional<String> answers = Optional.empty();

	@Mixin
	private HelpOption help;

	BenchCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException {
		Optional<Target> page = Target.of(session, sheet);
		Read project;
		try {
			project = read(session, options.given(), "the bench does");
		} catch (CancellationException e) {
			page.ifPresent(target -> session.err().println(Style.safe("The rules were still being read, so that no job had begun and " + target.given() + " is not written.")));
			throw e;
		}
		Bench bench = options.opening(project.rules(), "").bench();
		if (answers.isEmpty()) {
			return lead(project, bench, session.in(), page);
		}
		if (Files.isDirectory(session.resolve(answers.get()))) {
			throw new CommandException(ExitCode.FILES, answers.get() + " is a folder. Name a file with one answer in a line.");
		}
		try (Reader lines = new InputStreamReader(Files.newInputStream(session.resolve(answers.get())), StandardCharsets.UTF_8)) {
			return lead(project, bench, new Session.Input(lines, false), page);
		}
	}

	/**
	 * Reads a project, and tells what is left out of it.
	 *
	 * @param who who does not know what is left out: "the bench does"
	 */
	static Read read(Session session, String given, String who) throws IOException {
		Progress shown = session.progress(false);
		try {
			Read project = Read.of(session.resolve(given), given, shown);
			shown.end();
			long errors = project.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).count();
			if (errors > 0) {
				session.err().println(Style.safe("There " + (errors == 1 ? "is " : "are ") + Say.count(errors, "error") + " in the text of the rules, and " + who + " not"
						+ " know what is left out because of " + (errors == 1 ? "it" : "them") + ": baywright check " + given));
			}
			return project;
		} finally {
			shown.end();
		}
	}

	private int lead(Read project, Bench bench, Session.Input in, Optional<Target> page) throws IOException {
		Printer printer = new Printer(session.out(), session.style());
		Answers lines = new Answers(in.lines(), session.out(), in.terminal(), session.cancelled()::get);
		Dialogue dialogue = new Dialogue(bench, lines, printer, new Writer(project), Progress.silent(session.cancelled()));
		Dialogue.End end;
		try {
			end = dialogue.run();
		} catch (CancellationException | IOException e) {
			write(dialogue, page);
			throw e;
		}
		write(dialogue, page);
		return switch (end) {
		case KEPT, LEFT, OVER -> ExitCode.FINE;
		case CUT_SHORT -> ExitCode.UNDECIDED;
		};
	}

	private void write(Dialogue dialogue, Optional<Target> page) throws IOException {
		if (page.isPresent()) {
			page.get().writeLike(dialogue.sheet().getBytes(StandardCharsets.UTF_8));
			session.done("Wrote " + page.get().given() + ".");
			session.say(page.get().tell(), Style.safe("Wrote " + page.get().given()));
		}
	}

	/** Writes what comes of the job. */
	private final class Writer implements Desk {

		private final Read project;

		Writer(Read project) {
			this.project = project;
		}

		@Override
		public void page(String file, String html) throws IOException {
			write(file, true, html);
			session.done("Wrote " + file + ".");
		}

		@Override
		public void draft(String file, String rule, boolean replace) throws IOException {
			if (!replace && Files.exists(session.resolve(file))) {
				throw new IOException("There is already a file " + file + ". Name another one, or write over in place of to, to replace it.");
			} else if (file.endsWith(".bay") && !Files.exists(session.resolve(file))) {
				add(session.resolve(file), present -> rule);
			} else {
				write(file, false, rule);
			}
			session.done("Wrote " + file + ".");
		}

		private void write(String file, boolean like, String text) throws IOException {
			try {
				Target target = new Target(session, file);
				byte[] content = text.getBytes(StandardCharsets.UTF_8);
				if (like) {
					target.writeLike(content);
				} else {
					target.write(content);
				}
			} catch (CommandException e) {
				throw new IOException(e.getMessage(), e);
			} catch (IOException e) {
				throw new IOException(CommandLineRun.say(e), e);
			}
		}

		@Override
		public Keeping place(Keeping keeping) {
			return Files.isDirectory(session.resolve(options.given())) ? keeping : keeping.in(project.files().get(0));
		}

		@Override
		public boolean isGone(Keeping keeping) {
			return project.files().contains(keeping.file()) && !Files.exists(project.folder().resolve(keeping.file()));
		}

		@Override
		public boolean keep(Keeping keeping) throws IOException {
			boolean kept = add(project.folder().resolve(keeping.file()), present -> {
				// somebody else may have kept one meanwhile
				if (keeping.isIn(present)) {
					throw new IllegalStateException("There is already a job named " + keeping.name() + " in " + keeping.file() + ". Write keep with another name.");
				}
				return keeping.text();
			});
			if (kept) {
				session.done("“" + keeping.name() + "” is kept in " + keeping.file() + ".");
			}
			return kept;
		}

		private boolean add(Path file, UnaryOperator<String> text) throws IOException {
			try {
				return RuleText.append(file, text);
			} catch (IllegalStateException e) {
				throw new IOException(e.getMessage(), e);
			} catch (IOException e) {
				throw new IOException(CommandLineRun.say(e), e);
			}
		}
	}
}
