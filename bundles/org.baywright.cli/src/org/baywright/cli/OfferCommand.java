package org.baywright.cli;

import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.cli.work.SharingText;
import org.baywright.sharing.Offer;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright offer}. */
@Command(name = "offer", sortOptions = false, //
		header = "Offer what you have changed to the others.", //
		description = { "", "The others see what is offered with 'offers', and 'take-over' makes it part of the shared state. What is offered again under the"
				+ " same title takes the place of what was offered before. Your copy stays as it is." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:it is offered", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright offer \"Lower limit at rest\"", //
				"  baywright offer \"Lower limit at rest\" --note \"As measured on four vans.\" --in van" })
final class OfferCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "TITLE", description = "What it is, in a few words.")
	private String title = "";

	@Option(names = "--note", paramLabel = "TEXT", description = "What else to say about it.")
	private String note = "";

	@Mixin
	private CopyOption copy;

	@Mixin
	private HelpOption help;

	OfferCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException {
		if (title.isBlank()) {
			throw new CommandException(ExitCode.USAGE, "Say what you offer, in a few words.");
		}
		try (SharedProject project = copy.open(session)) {
			Offer offer = project.offer(title, note);
			session.out().println(Style.safe(offer.id()));
			SharingText.changes(session.out(), project.state().mine());
		}
		return ExitCode.FINE;
	}
}
