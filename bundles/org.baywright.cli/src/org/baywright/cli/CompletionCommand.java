package org.baywright.cli;

import java.util.concurrent.Callable;

import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code baywright completion}. */
@Command(name = "completion", sortOptions = false, //
		header = "Print a script that lets the shell complete commands and options.", //
		description = { "", "For bash, and for zsh with bashcompinit. The command is completed under the name baywright." }, //
		optionListHeading = "%nOptions:%n", exitCodeListHeading = "%nExit codes:%n", exitCodeList = "0:the script was printed", //
		footerHeading = "%nExamples:%n", footer = { //
				"  source <(baywright completion)                       for this shell", //
				"  baywright completion > ~/.baywright-completion.bash  to be sourced by ~/.bashrc" })
final class CompletionCommand implements Callable<Integer> {

	private final Session session;

	@Spec
	private CommandSpec spec;

	@Mixin
	private HelpOption help;

	CompletionCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() {
		session.out().print(AutoComplete.bash("baywright", spec.parent().commandLine()));
		return ExitCode.FINE;
	}
}
