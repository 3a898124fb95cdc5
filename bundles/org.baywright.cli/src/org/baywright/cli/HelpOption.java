package org.baywright.cli;

import java.util.Locale;
import org.baywright.cli.report.Style;

import picocli.CommandLine.Option;

/** The options that every command has. */
final class HelpOption {

	/** When to use colours. */
	enum Colour {
		AUTO, ALWAYS, NEVER;

		@Override
		public String toString() {
			return name().toLowerCase(Locale.ROOT);
		}
	}

	private final Session session;

	@Option(names = { "-h", "--help" }, usageHelp = true, description = "Show this help.")
	private boolean help;

	HelpOption(Session session) {
		this.session = session;
	}

	@Option(names = { "-q", "--quiet" }, description = "Show only results and what is wrong: no totals, no progress.")
	private void quiet(boolean quiet) {
		if (quiet) {
			session.beQuiet();
		}
	}

	@Option(names = "--color", paramLabel = "auto|always|never", description = "When to use colours. Default: auto, on a terminal.")
	private void color(Colour when) {
		if (when != null && when != Colour.AUTO) {
			session.style(when == Colour.ALWAYS ? Style.COLOURED : Style.PLAIN);
		}
	}
}
