package org.baywright.cli;

import java.util.concurrent.Callable;

import org.baywright.cli.work.Serving;
import org.baywright.pack.ToolVersion;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code baywright serve}. */
@Command(name = "serve", sortOptions = false, //
		header = "Serve an editor as its language server.", //
		description = { "", "An editor that knows the Language Server Protocol 3.17 starts this command and talks to it over standard"
				+ " input and output: problems and flaws while typing, proposals, names, fixes, layout. It ends when the"
				+ " editor says so or is gone." }, //
		optionListHeading = "%nOptions:%n", //
		exitCodeListHeading = "%nExit codes:%n", exitCodeList = { "0:the editor has ended it properly", //
				"1:the editor was gone before it said so" }, //
		footerHeading = "%nExamples:%n", footer = "  baywright serve    as the command that an editor starts for files *.bay")
final class ServeCommand implements Callable<Integer> {

	private final Session session;

	@Option(names = "--stdio", description = "Talk over standard input and output. That is what is done anyway; some editors"
			+ " say so.")
	private boolean stdio;

	@Mixin
	private HelpOption help;

	ServeCommand(Session session) {
		this.session = session;
	}

	@Override
	public Integer call() throws InterruptedException {
		return Serving.overStandardStreams(ToolVersion.CURRENT, session.cancelled()::get);
	}
}
