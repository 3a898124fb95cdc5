package org.baywright.cli;

import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;

import org.baywright.analysis.Kinds;
import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.Checks;
import org.baywright.analysis.check.HelpPages;
import org.baywright.cli.report.JsonReport;
import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Guess;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright explain}. */
@Command(name = "explain", sortOptions = false, //
		header = "Explain a kind of finding, or list all kinds.", //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:it was explained", "2:there is no such kind of finding" }, //
		footerHeading = "%nExamples:%n", footer = { "  baywright explain gap", "  baywright explain --format json > kinds.json" })
final class ExplainCommand implements Callable<Integer> {

	/** What there is help on. */
	static final class Ids implements Iterable<String> {
		@Override
		public Iterator<String> iterator() {
			return Stream.concat(Checks.ids().stream(), HelpPages.problems().stream()).sorted().iterator();
		}
	}

	private final Session session;

	@Parameters(paramLabel = "ID", arity = "0..1", completionCandidates = Ids.class, description = {
			"The kind of finding, such as gap: the word at the end of the first line of a finding. Without it all kinds are"
					+ " listed." })
	private String id;

	@Option(names = { "-f", "--format" }, paramLabel = "text|json", description = "text for people, json for programs. Default: text.")
	private Form form = Form.TEXT;

	@Mixin
	private HelpOption help;

	ExplainCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() {
		if (id == null) {
			if (form == Form.JSON) {
				session.out().print(JsonReport.kinds(Kinds.all(), kind -> HelpPages.page(kind).orElse("")));
			} else {
				list();
			}
			return ExitCode.FINE;
		}
		Optional<RuleCheck> about = Kinds.get(id);
		Optional<String> page = HelpPages.page(id);
		if (about.isEmpty() && page.isEmpty()) {
			List<String> known = Stream.concat(Checks.ids().stream(), HelpPages.problems().stream()).sorted().toList();
			throw new CommandException(ExitCode.USAGE, "There is no help on " + id + ". "
					+ Guess.advice(id, known, "The checks are: " + String.join(", ", Checks.ids()) + "."));
		}
		if (form == Form.JSON && about.isPresent()) {
			session.out().print(JsonReport.kinds(List.of(about.get()), kind -> page.orElse("")));
			return ExitCode.FINE;
		}
		if (page.isPresent()) {
			page.get().lines().forEach(line -> session.out()
					.println(line.startsWith("#") ? session.style().strong(line.replaceFirst("^#+ *", "")) : Style.safe(line)));
		} else {
			session.out().println(session.style().strong(id) + " (" + about.get().severity().name().toLowerCase(Locale.ROOT) + ")");
			session.out().println(about.get().summary() + ".");
		}
		return ExitCode.FINE;
	}

	private void list() {
		Output out = session.out();
		int width = Checks.ids().stream().mapToInt(String::length).max().orElse(0);
		for (RuleCheck about : Kinds.all()) {
			out.println(session.style().of(about.severity(), String.format(Locale.ROOT, "%-8s", about.severity().name()
					.toLowerCase(Locale.ROOT))) + String.format(Locale.ROOT, "%-" + (width + 2) + "s", about.id()) + about.summary());
		}
		out.println();
		out.println("Problems of a text: " + String.join(", ", HelpPages.problems()) + ".");
	}
}
