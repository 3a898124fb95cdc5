package org.baywright.cli;

import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;

import org.baywright.analysis.RuleCheck;
import org.baywright.analysis.check.Checks;
import org.baywright.analysis.check.HelpPages;
import org.baywright.analysis.check.Kinds;
import org.baywright.cli.report.JsonReport;
import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;
import org.baywright.cli.work.Guess;
import org.baywright.model.ProblemKind;
import org.baywright.model.Severity;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code baywright explain}. */
@Command(name = "explain", sortOptions = false, //
		header = "Explain a kind of flaw, or list all kinds.", //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:it was explained", "2:there is no such kind of flaw" }, //
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
			"The kind of flaw, such as gap: the word at the end of the first line of a flaw. Without it all kinds are"
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
				session.out().print(JsonReport.kinds(Kinds.all(), List.of(ProblemKind.values()), kind -> HelpPages.page(kind).orElse("")));
			} else {
				list();
			}
			return ExitCode.FINE;
		}
		Optional<RuleCheck> about = Kinds.get(id);
		Optional<ProblemKind> problem = ProblemKind.of(id);
		Optional<String> page = HelpPages.page(id);
		if (about.isEmpty() && page.isEmpty()) {
			List<String> known = Stream.concat(Checks.ids().stream(), HelpPages.problems().stream()).sorted().toList();
			throw new CommandException(ExitCode.USAGE, "There is no help on " + id + ". "
					+ Guess.advice(id, known, "The checks are: " + String.join(", ", Checks.ids()) + "."));
		}
		if (form == Form.JSON && (about.isPresent() || problem.isPresent())) {
			session.out().print(JsonReport.kinds(about.stream().toList(), problem.stream().toList(), kind -> page.orElse("")));
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
		int width = Stream.concat(Checks.ids().stream(), HelpPages.problems().stream()).mapToInt(String::length).max().orElse(0) + 2;
		Kinds.all().forEach(about -> out.println(line(about.severity(), about.id(), about.summary(), width)));
		out.println();
		out.println("Problems of a text:");
		for (ProblemKind kind : ProblemKind.values()) {
			out.println(line(kind.severity(), kind.id(), kind.title(), width));
		}
	}

	private String line(Severity severity, String id, String says, int width) {
		return session.style().of(severity, String.format(Locale.ROOT, "%-8s", severity.name().toLowerCase(Locale.ROOT)))
				+ String.format(Locale.ROOT, "%-" + width + "s", id) + says;
	}
}
