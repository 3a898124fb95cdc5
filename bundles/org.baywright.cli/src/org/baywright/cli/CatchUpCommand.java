package org.baywright.cli;

import java.io.IOException;
import java.util.concurrent.Callable;

import org.baywright.cli.work.Choices;
import org.baywright.cli.work.SharingText;
import org.baywright.sharing.Outcome;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code baywright catch-up}. */
@Command(name = "catch-up", sortOptions = false, //
		header = "Bring your copy up to the shared state.", //
		description = { "", "What you have changed and not offered yet stays, joined with what is new rule by rule." }, //
		optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the copy is at the newest shared state", //
				"1:something has to be chosen first; nothing was changed", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright catch-up", //
				"  baywright catch-up --choose \"rule flat_battery=ours\"" })
final class CatchUpCommand implements Callable<Integer> {

	private final Session session;

	@Mixin
	private ChoiceOption choices;

	@Mixin
	private CopyOption copy;

	@Mixin
	private HelpOption help;

	CatchUpCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException, IOException {
		try (SharedProject project = copy.open(session)) {
			Outcome outcome = project.catchUp(Choices.of(choices.made(), session::resolve));
			if (!outcome.done()) {
				SharingText.conflicts(session.err(), outcome.conflicts(), "yours", "shared");
				return ExitCode.FLAWS;
			}
			SharingText.changes(session.out(), outcome.changes());
			session.say(session.out(), outcome.changes().isEmpty() ? "There is nothing new for your copy." : "Your copy is at the newest shared state.");
		}
		return ExitCode.FINE;
	}
}
