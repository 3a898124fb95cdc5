package org.baywright.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.Callable;

import org.baywright.cli.report.Style;
import org.baywright.cli.work.Choices;
import org.baywright.cli.work.NewErrors;
import org.baywright.cli.work.SharingText;
import org.baywright.sharing.Offer;
import org.baywright.sharing.Outcome;
import org.baywright.sharing.SharedProject;
import org.baywright.sharing.SharingException;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright take-over}. */
@Command(name = "take-over", sortOptions = false, //
		header = "Make an offer part of the shared state.", //
		description = { "", "Joins the offer with what is shared, rule by rule, and brings your copy up to that. Nothing is changed while something has to be"
				+ " chosen, or where the joined rules have errors that the shared state did not have." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { //
				"0:it was taken over", //
				"1:something has to be chosen first, or the joined rules have new errors; nothing was changed", //
				"2:the command was used in a wrong way", //
				"3:it could not be done; nothing was changed" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright take-over ann/lower-limit", //
				"  baywright take-over ann/lower-limit --choose \"rule flat_battery=theirs\"" })
final class TakeOverCommand implements Callable<Integer> {

	private final Session session;

	@Parameters(paramLabel = "OFFER", description = "The name of the offer; see 'baywright offers'.")
	private String id = "";

	@Mixin
	private ChoiceOption choices;

	@Option(names = "--with-errors", description = "Take it over although the joined rules have new errors.")
	private boolean withErrors;

	@Mixin
	private CopyOption copy;

	@Mixin
	private HelpOption help;

	TakeOverCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws SharingException, IOException {
		try (SharedProject project = copy.open(session)) {
			var made = Choices.of(choices.made(), session::resolve);
			Outcome outcome = project.takeOver(id, made, texts -> withErrors ? List.of() : against(project, texts));
			if (!outcome.done()) {
				Choices.requireKnown(made, outcome.conflicts());
				SharingText.conflicts(session.err(), outcome.conflicts(), "shared", "offered");
				outcome.refused().forEach(reason -> session.err().println(Style.safe(reason)));
				if (!outcome.refused().isEmpty()) {
					session.err().println("The joined rules have new errors; nothing was changed. Ask for a change of the offer, or use --with-errors.");
				}
				return ExitCode.FLAWS;
			}
			session.say(session.out(), Style.safe("Took over " + id + "."));
			SharingText.changes(session.out(), outcome.changes());
			if (outcome.copyWaits()) {
				session.say(session.out(), "Your copy is not brought up yet, since something has to be chosen there: baywright catch-up");
			}
		}
		return ExitCode.FINE;
	}

	/** Returns what is against the joined texts, and the rule files of the offer that are no text at all. */
	private List<String> against(SharedProject project, Map<String, String> texts) {
		List<String> against = new ArrayList<>(NewErrors.of(shared(project), texts));
		try {
			for (Offer offer : project.offers()) {
				if (offer.id().equals(id)) {
					Set<String> unreadable = new TreeSet<>(project.texts(offer.revision()).others().keySet());
					unreadable.removeAll(project.texts(project.newest()).others().keySet());
					unreadable.stream().filter(file -> file.endsWith(".bay")).map(file -> file + ": This is no text in UTF-8, so no rule can be read from it.").forEach(against::add);
				}
			}
		} catch (SharingException e) {
			throw new CommandException(ExitCode.FILES, e.getMessage());
		}
		return against;
	}

	private static Map<String, String> shared(SharedProject project) {
		try {
			return project.texts(project.newest()).texts();
		} catch (SharingException e) {
			throw new CommandException(ExitCode.FILES, e.getMessage());
		}
	}
}
