package org.baywright.cli;

import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.cli.work.SharingText;
import org.baywright.sharing.News;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code baywright news}. */
@Command(name = "news", sortOptions = false, //
		header = "Tell what is new in the shared state since you last looked.", //
		description = { "", "Tells who brought what and what it changes. Your copy stays as it is; 'catch-up' brings it up." }, //
		optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:it was told", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright news", //
				"  baywright news --again --in van" })
final class NewsCommand implements Callable<Integer> {

	private final Session session;

	@Option(names = "--again", description = "Tell the same again the next time.")
	private boolean again;

	@Mixin
	private CopyOption copy;

	@Mixin
	private HelpOption help;

	NewsCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException {
		try (SharedProject project = copy.open(session)) {
			project.refresh();
			News news = project.newSinceLastLook();
			if (news.steps().isEmpty()) {
				session.say(session.out(), "Nothing is new.");
			}
			news.steps().forEach(step -> session.out().println(Style.safe(SharingText.day(step.date()) + "  " + step.author() + ": " + step.title())));
			SharingText.details(session.out(), news.changes());
			if (!again) {
				project.looked();
			}
		}
		return ExitCode.FINE;
	}
}
