package org.baywright.cli;

import java.util.concurrent.Callable;

import org.baywright.pack.ToolVersion;

import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The command {@code baywright} itself. */
@Command(name = "baywright", versionProvider = Baywright.Version.class, subcommands = { CheckCommand.class,
		BenchCommand.class, PlanCommand.class, CompareCommand.class, PackCommand.class, ShowCommand.class, VerifyCommand.class, TidyCommand.class, ExplainCommand.class,
		TourCommand.class, ShareCommand.class, JoinCommand.class, OfferCommand.class, OffersCommand.class, TakeOverCommand.class, WithdrawCommand.class,
		CatchUpCommand.class, NewsCommand.class, UndoCommand.class, HistoryCommand.class, MergeDriverCommand.class, ServeCommand.class, WorkbenchCommand.class, HelpCommand.class, CompletionCommand.class }, synopsisSubcommandLabel = "COMMAND", sortOptions = false, //
		description = { "Checks rules for diagnosing vehicles, proves what is wrong with them, and packs them for other tools.",
				"" }, //
		commandListHeading = "%nCommands:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes of all commands:%n", exitCodeList = { //
				"0:nothing stands in the way", //
				"1:something was found that counts, or a pack is not as it should be", //
				"2:the command was used in a wrong way", //
				"3:a file could not be read or written", //
				"4:nothing was found that counts, but not every question was decided", //
				"70:Baywright itself failed", //
				"130:the command was cancelled with Ctrl+C" }, //
		footerHeading = "%nExamples:%n", footer = { //
				"  baywright tour                      check the example projects and write their packs", //
				"  baywright check                     check the rule project in this folder", //
				"  baywright explain gap               say what a kind of flaw means", //
				"  baywright bench van                 lead a job from the complaint to the verified repair", //
				"  baywright plan van --vehicle tarn --complaint no_crank", //
				"  baywright pack van -o van.baypack   check the project in van and write its rule pack", //
				"  baywright share van S:/rules/van    share the project in van with others, at that folder", //
				"  baywright workbench                 open the workbench", //
				"  baywright serve                     serve an editor, which starts this itself", //
				"", //
				"A rule project is a folder with rule files (*.bay), at any depth.", //
				"Colours are used on a terminal only; --color or NO_COLOR=1 changes that. 'baywright help COMMAND' says more." })
final class Baywright implements Callable<Integer> {

	private final Session session;

	@Spec
	private CommandSpec spec;

	@Option(names = { "-h", "--help" }, usageHelp = true, description = "Show this help.")
	private boolean help;

	@Option(names = { "-V", "--version" }, versionHelp = true, description = "Show the version.")
	private boolean version;

	Baywright(Session session) {
		this.session = session;
	}

	static final class Version implements IVersionProvider {
		@Override
		public String[] getVersion() {
			return new String[] { "Baywright " + ToolVersion.CURRENT };
		}
	}

	@Override
	public Integer call() {
		session.err().into(spec.commandLine()::usage);
		return ExitCode.USAGE;
	}
}
