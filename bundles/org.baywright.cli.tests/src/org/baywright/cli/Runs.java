package org.baywright.cli;

import java.io.StringReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;

/** Runs command lines in a folder and keeps what they print. */
final class Runs {

	private final Path folder;
	private final AtomicBoolean cancelled = new AtomicBoolean();
	private Style style = Style.PLAIN;
	private boolean terminal;
	private String input = "";

	/**
	 * What came of a command line.
	 *
	 * @param code its exit code
	 * @param out what it printed
	 * @param err what it complained of
	 */
	record Result(int code, String out, String err) {
	}

	Runs(Path folder) {
		this.folder = folder;
	}

	Runs onTerminal() {
		style = Style.COLOURED;
		terminal = true;
		return this;
	}

	/** Gives lines that are read as answers. */
	Runs answering(String... lines) {
		input = String.join("\n", lines) + "\n";
		return this;
	}

	Runs cancelled() {
		cancelled.set(true);
		return this;
	}

	Result run(String... args) {
		StringWriter out = new StringWriter();
		StringWriter err = new StringWriter();
		int code = CommandLineRun.run(new Session(new Session.Input(new StringReader(input), terminal), new Output(out), new Output(err), style, folder,
				folder.resolve("home"), terminal, cancelled), args);
		return new Result(code, out.toString(), err.toString());
	}
}
