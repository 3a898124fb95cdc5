package org.baywright.cli;

import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright share}. */
@Command(name = "share", sortOptions = false, //
		header = "Share a project with others.", //
		description = { "", "Makes your folder a copy of a project that others can join, offer changes to, and take them over. It stays where it is."
				+ " The shared place is a folder on a drive that all reach, which is empty or not there yet, or an address.", "",
				"Beneath are plain Git repositories; nobody has to know that." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the project is shared", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright share van /media/shop/van --author \"A. Author\"", //
				"  baywright share van https://git.example.com/van.git --author Ann" })
final class ShareCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "FOLDER", index = "0", description = "The folder of the project.")
	private String folder = "";

	@Parameters(paramLabel = "PLACE", index = "1", description = "The shared place.")
	private String place = "";

	@Option(names = "--author", paramLabel = "NAME", required = true, description = "Your name, as others know it.")
	private String author = "";

	@Mixin
	private HelpOption help;

	ShareCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException {
		String where = session.place(place);
		try (SharedProject project = SharedProject.begin(session.resolve(folder), where, author, CopyOption.listener(session))) {
			session.say(session.out(), Style.safe("Shared " + folder + " at " + project.place() + ". Others join it by: baywright join \"" + project.place() + "\" FOLDER --author NAME"));
		}
		return ExitCode.FINE;
	}
}
