package org.baywright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;

import org.baywright.analysis.difference.Comparison;
import org.baywright.analysis.difference.Difference;
import org.baywright.cli.report.CompareReport;
import org.baywright.cli.report.ComparedText;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Progress;
import org.baywright.cli.work.Read;
import org.baywright.model.Problem;
import org.baywright.model.RuleBase;
import org.baywright.model.Severity;
import org.baywright.model.Span;
import org.baywright.pack.PackReader;
import org.baywright.pack.manifest.PackException;
import org.baywright.presenter.Say;
import org.baywright.presenter.review.Compared;
import org.baywright.sharing.PastState;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright compare}. */
@Command(name = "compare", sortOptions = false, //
		header = "Tell what a change of the rules does to vehicles.", //
		description = { "", "Compares two states of a project: in which situations a job ends otherwise, what can come out now and could not, which finished jobs and"
				+ " findings changed; then which elements were edited. All situations are compared, by proof.", "",
				"Names, places, layout, comments and the spelling of units change nothing for a vehicle and are told as such." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:no change in meaning", //
				"1:the meaning changed: vehicles end otherwise, or what is done at them was edited", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written, or a text has an error", //
				"4:nothing was found to change, but not every question was decided" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright compare light-van-before light-van        two folders", //
				"  baywright compare van-1.baypack van-2.baypack       two rule packs", //
				"  baywright compare --since shared light-van          what is not offered yet", //
				"  baywright compare --since main --until HEAD          two states of the Git repository", //
				"  baywright compare --format html --output review.html before after" })
final class CompareCommand implements Callable<Integer> {

	/** Forms in which a difference is told. */
	enum Format {
		TEXT, JSON, HTML;

		@Override
		public String toString() {
			return name().toLowerCase(Locale.ROOT);
		}
	}

	private final Session session;

	@Parameters(paramLabel = "STATE", arity = "0..2", description = "The state before and the state now: each the folder of a rule project, a rule file (*.bay) or a rule"
			+ " pack (*.baypack). With --since only the state now. Default: this folder.")
	private List<String> states = List.of();

	@Option(names = "--since", paramLabel = "REVISION", description = "Compare with what the project was in this state of its Git repository: a branch, a tag, a commit. The word"
			+ " shared stands for the newest shared state.")
	private Optional<String> since = Optional.empty();

	@Option(names = "--until", paramLabel = "REVISION", description = "With --since: take another such state for the state now.")
	private Optional<String> until = Optional.empty();

	@Option(names = { "-f", "--format" }, paramLabel = "FORMAT", defaultValue = "text", description = "text for people, json for programs, html for a page to print or to"
			+ " hang on a change that is offered. Default: text.")
	private Format format = Format.TEXT;

	@Option(names = { "-o", "--output" }, paramLabel = "FILE", description = "Write to this file.")
	private Optional<String> output = Optional.empty();

	@Option(names = "--all", description = "Tell all entries of long lists; without it text tells the first " + ComparedText.MOST + " of each.")
	private boolean all;

	@Option(names = "--plans", description = "Tell which plans move too, for every complaint; this may take a minute.")
	private boolean plans;

	@Option(names = "--progress", description = "Show progress although there is no terminal.")
	private boolean progress;

	@Mixin
	private HelpOption help;

	CompareCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws IOException, SharingException {
		if (since.isPresent() ? states.size() > 1 : states.size() != 2 || until.isPresent()) {
			throw new CommandException(ExitCode.USAGE, "Name two states to compare, or one project with --since; 'baywright help compare' tells more.");
		}
		Optional<Target> target = Target.of(session, output);
		Progress shown = session.progress(progress);
		try {
			String project = since.isPresent() ? states.stream().findFirst().orElse(".") : states.get(1);
			RuleBase old = since.isPresent() ? past(project, since.get(), shown) : read(states.get(0), shown);
			RuleBase other = until.isPresent() ? past(project, until.get(), shown) : read(project, shown);
			shown.phase("Comparing");
			Difference difference = new Comparison().compareChecked(old, other, shown);
			List<Compared.Entry> moved = plans ? Compared.plans(old, other, difference, session.cancelled()::get) : List.of();
			shown.end();
			Compared told = Compared.of(old, other, difference, moved);
			String title = "What changes from " + since.orElseGet(() -> states.get(0)) + " to " + until.orElse(project);
			switch (format) {
			case JSON -> write(target, CompareReport.json(difference, told));
			case HTML -> write(target, told.sheet(title));
			default -> write(target, ComparedText.of(told, target.isPresent() ? Style.PLAIN : session.style(), all));
			}
			return switch (difference.verdict()) {
			case SAME -> ExitCode.FINE;
			case UNDECIDED -> ExitCode.UNDECIDED;
			default -> ExitCode.FLAWS;
			};
		} finally {
			shown.end();
		}
	}

	/** What is left out because of an error could make all the difference. */
	private RuleBase read(String given, Progress shown) throws IOException {
		if (given.endsWith(Span.PACK)) {
			try {
				return PackReader.read(session.pack(given)).rules();
			} catch (PackException e) {
				throw new CommandException(ExitCode.FILES, given + ": " + e.getMessage());
			}
		}
		return rules(session.resolve(given), given, shown);
	}

	private static RuleBase rules(Path path, String given, Progress shown) throws IOException {
		Read read = Read.of(path, given, shown);
		List<Problem> errors = read.problems().stream().filter(problem -> problem.severity() == Severity.ERROR).toList();
		if (!errors.isEmpty()) {
			Problem first = errors.get(0);
			throw new CommandException(ExitCode.FILES, given + " has " + Say.count(errors.size(), "error") + " and cannot be compared. The first: " + first.span() + ": "
					+ first.message() + " " + first.advice());
		}
		return read.rules();
	}

	private RuleBase past(String project, String revision, Progress shown) throws IOException, SharingException {
		Path folder = session.resolve(project);
		String known = revision;
		if (revision.equals("shared")) {
			try (SharedProject copy = SharedProject.open(folder, CopyOption.listener(session))) {
				known = copy.newest();
			}
		}
		try (PastState state = PastState.of(folder, known)) {
			return rules(state.project(), revision, shown);
		}
	}

	private void write(Optional<Target> target, String text) throws IOException {
		if (target.isPresent()) {
			target.get().write(text.getBytes(StandardCharsets.UTF_8));
			session.say(target.get().tell(), Style.safe("Wrote " + target.get().given()));
		} else {
			session.out().print(text);
		}
	}
}
