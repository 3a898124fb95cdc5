package org.baywright.cli;

import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright join}. */
@Command(name = "join", sortOptions = false, //
		header = "Make a copy of a shared project.", //
		description = { "", "Makes a new folder with all that is shared. What you change there is yours until you offer it and somebody takes it over." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the copy was made", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright join /media/shop/van van --author Ann" })
final class JoinCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "PLACE", index = "0", description = "The shared place.")
	private String place = "";

	@Parameters(paramLabel = "FOLDER", index = "1", description = "The folder for your copy; it is not there yet, or empty.")
	private String folder = "";

	@Option(names = "--author", paramLabel = "NAME", required = true, description = "Your name, as others know it.")
	private String author = "";

	@Mixin
	private HelpOption help;

	JoinCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException {
		String where = session.place(place);
		try (SharedProject project = SharedProject.join(where, session.resolve(folder), author, CopyOption.listener(session))) {
			session.say(session.out(), Style.safe("Your copy is in " + folder + "."));
		}
		return ExitCode.FINE;
	}
}
