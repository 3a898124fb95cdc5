package org.baywright.cli;

import java.util.Map;
import java.util.concurrent.Callable;

import org.baywright.cli.work.Guess;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code baywright help}. */
@Command(name = "help", sortOptions = false, header = "Show the help of a command.", //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:the help was shown", "2:there is no such command" }, //
		footerHeading = "%nExamples:%n", footer = "  baywright help check")
final class HelpCommand implements Callable<Integer> {

	private final Session session;

	@Spec
	private CommandSpec spec;

	@Parameters(paramLabel = "COMMAND", arity = "0..1", description = "The command. Without it: an overview.")
	private String command;

	@Mixin
	private HelpOption help;

	HelpCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() {
		CommandLine overview = spec.parent().commandLine();
		Map<String, CommandLine> commands = overview.getSubcommands();
		CommandLine about = command == null ? overview : commands.get(command);
		if (about == null) {
			throw new CommandException(ExitCode.USAGE, "There is no command " + command + ". "
					+ Guess.advice(command, commands.keySet(), "'baywright help' lists them."));
		}
		session.out().into(about::usage);
		return ExitCode.FINE;
	}
}
