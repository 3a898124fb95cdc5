package org.baywright.cli;

import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code baywright withdraw}. */
@Command(name = "withdraw", sortOptions = false, //
		header = "Take back what you offered.", //
		description = { "", "Your copy stays as it is, and what was offered is kept." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the offer was taken back", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright withdraw ann/lower-limit" })
final class WithdrawCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "OFFER", description = "The name of the offer; see 'baywright offers'.")
	private String id = "";

	@Mixin
	private CopyOption copy;

	@Mixin
	private HelpOption help;

	WithdrawCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException {
		try (SharedProject project = copy.open(session)) {
			project.withdraw(id);
			session.say(session.out(), Style.safe("Withdrew " + id + "."));
		}
		return ExitCode.FINE;
	}
}
