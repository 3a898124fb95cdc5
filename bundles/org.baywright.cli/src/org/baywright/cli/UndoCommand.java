package org.baywright.cli;

import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.cli.work.SharingText;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;
import org.baywright.sharing.Step;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright undo}. */
@Command(name = "undo", sortOptions = false, //
		header = "Undo the last step of sharing in your copy.", //
		description = { "", "Steps are: offer, take-over, withdraw, catch-up. What you wrote since stays. What others have already is taken back by a state of"
				+ " its own, so they get that too. To undo what was undone, name the number of the undoing." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the step was undone, or the steps were listed", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright undo", //
				"  baywright undo --list", //
				"  baywright undo 4 --in van" })
final class UndoCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "NUMBER", arity = "0..1", description = "The number of a step. Without it: the last one.")
	private Integer number;

	@Option(names = "--list", description = "Undo nothing; list the steps.")
	private boolean list;

	@Mixin
	private CopyOption copy;

	@Mixin
	private HelpOption help;

	UndoCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException {
		try (SharedProject project = copy.open(session)) {
			if (list) {
				project.steps().forEach(step -> session.out().println(
						Style.safe(step.number() + "  " + SharingText.day(step.date()) + "  " + step.words() + (step.undone() ? " (undone)" : ""))));
			} else {
				Step step = number == null ? project.undo() : project.undo(number);
				session.say(session.out(), Style.safe("Undone: " + step.words()));
			}
		}
		return ExitCode.FINE;
	}
}
