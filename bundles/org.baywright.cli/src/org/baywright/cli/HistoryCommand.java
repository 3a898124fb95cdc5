package org.baywright.cli;

import java.util.List;
import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.cli.work.SharingText;
import org.baywright.sharing.History;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;
import org.baywright.sharing.Written;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code baywright history}. */
@Command(name = "history", sortOptions = false, //
		header = "Tell who wrote, changed and reviewed what.", //
		description = { "", "Tells for each element who wrote it first, who changed its text last, and which reviews the project has of it." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:it was told", //
				"1:there is nothing of that name in the state that the copy is at", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright history", //
				"  baywright history flat_battery --in van" })
final class HistoryCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "NAME", arity = "0..1", description = "The name of a rule, a test or anything else. Without it: all rules.")
	private String name;

	@Mixin
	private CopyOption copy;

	@Mixin
	private HelpOption help;

	HistoryCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException {
		try (SharedProject project = copy.open(session)) {
			List<History> told = project.historyOfAll().stream()
					.filter(history -> name == null ? history.kind().equals("rule") || history.kind().equals("chain") : history.name().equals(name)).toList();
			told.forEach(this::tell);
			if (told.isEmpty() && name != null) {
				session.err().println(Style.safe("There is nothing of the name " + name + " in the state that your copy is at."));
				return ExitCode.FLAWS;
			}
		}
		return ExitCode.FINE;
	}

	private void tell(History history) {
		session.out().println(session.style().strong(Style.safe(history.kind() + " " + history.name())) + Style.safe(" (" + history.file() + ")"));
		session.out().println(Style.safe("  written  " + said(history.first())));
		if (!history.last().equals(history.first())) {
			session.out().println(Style.safe("  changed  " + said(history.last())));
		}
		history.reviews().forEach(review -> session.out().println(Style.safe("  review  " + review)));
	}

	private static String said(Written written) {
		return "by " + written.author() + " on " + SharingText.day(written.date()) + ": " + written.title();
	}
}
