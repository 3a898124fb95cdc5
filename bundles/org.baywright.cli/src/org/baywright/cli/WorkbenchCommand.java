package org.baywright.cli;

import java.util.concurrent.Callable;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code baywright workbench}, which the start script does; here is its help. */
@Command(name = "workbench", sortOptions = false, header = "Open the workbench.", //
		description = { "", "Opens the window in which rules are written, checked and tried." }, //
		parameterListHeading = "%nArguments:%n", optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:the workbench was closed",
				"1:it could not be opened; the message says why", "2:the command was used in a wrong way" }, //
		footerHeading = "%nExamples:%n", footer = "  baywright workbench ~/my-workspace")
final class WorkbenchCommand implements Callable<Integer> {

	@Parameters(paramLabel = "FOLDER", arity = "0..1", description = {
			"The workspace, in which the workbench keeps projects. Default: baywright-workspace in the home folder." })
	private String folder;

	@Mixin
	private HelpOption help;

	@Override
	public Integer call() {
		throw new CommandException(ExitCode.USAGE,
				"The workbench is a program of its own. Open it with the start script: releng/baywright workbench");
	}
}
