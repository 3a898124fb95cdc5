package org.baywright.cli;

import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;

import org.baywright.analysis.Listener;
import org.baywright.analysis.difference.Comparison;
import org.baywright.cli.report.ComparedText;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Guess;
import org.baywright.cli.work.Projects;
import org.baywright.cli.work.SharingText;
import org.baywright.model.RuleBase;
import org.baywright.presenter.review.Compared;
import org.baywright.sharing.Offer;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright offers}. */
@Command(name = "offers", sortOptions = false, //
		header = "Show what is offered.", //
		description = { "", "Lists the open offers; with the name of one, what it changes in the texts and what that does to vehicles." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:the offers were shown", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright offers", //
				"  baywright offers ann/lower-limit --in van", //
				"  baywright offers --all" })
final class OffersCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "OFFER", arity = "0..1", description = "The name of an offer. Without it: a list.")
	private String id;

	@Option(names = "--all", description = "List also what was taken over or withdrawn.")
	private boolean all;

	@Mixin
	private CopyOption copy;

	@Mixin
	private HelpOption help;

	OffersCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException {
		try (SharedProject project = copy.open(session)) {
			project.refresh();
			List<Offer> offers = project.offers().stream()
					.filter(offer -> id == null ? all || offer.standing() == Offer.Standing.OPEN : offer.id().equals(id)).toList();
			if (id != null && offers.isEmpty()) {
				throw new CommandException(ExitCode.USAGE, Style.safe("There is no offer " + id + ". "
						+ Guess.advice(id, project.offers().stream().map(Offer::id).toList(), "'baywright offers' lists them.")));
			}
			if (offers.isEmpty()) {
				session.say(session.out(), "Nothing is offered.");
			}
			for (Offer offer : offers) {
				tell(offer);
				if (id != null) {
					Map<String, String> before = project.texts(offer.base()).texts();
					Map<String, String> after = project.texts(offer.revision()).texts();
					SharingText.between(session.out(), before, after);
					session.out().println();
					session.out().print(ComparedText.of(compared(before, after), session.style(), all));
				}
			}
		}
		return ExitCode.FINE;
	}

	/** What has an error is left out, as it is told when the offer is taken over. */
	private static Compared compared(Map<String, String> before, Map<String, String> after) {
		RuleBase old = Projects.ofTexts(before).rules();
		RuleBase now = Projects.ofTexts(after).rules();
		return Compared.of(old, now, new Comparison().compareChecked(old, now, Listener.NONE));
	}

	private void tell(Offer offer) {
		String standing = switch (offer.standing()) {
		case OPEN -> offer.newest() ? "" : ", of an older state";
		case TAKEN_OVER -> ", taken over";
		case WITHDRAWN -> ", withdrawn";
		};
		session.out().println(Style.safe(offer.id() + "  " + offer.title() + " (" + offer.author() + ", " + SharingText.day(offer.date()) + standing + ")"));
		if (!offer.note().isEmpty()) {
			offer.note().lines().forEach(line -> session.out().println(Style.safe("  " + line)));
		}
	}
}
