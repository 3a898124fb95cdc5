package org.baywright.cli;

import picocli.CommandLine.Option;

/** The option that every command has. */
final class HelpOption {

	@Option(names = { "-h", "--help" }, usageHelp = true, description = "Show this help.")
	private boolean help;
}
