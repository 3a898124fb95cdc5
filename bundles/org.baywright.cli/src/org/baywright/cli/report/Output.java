package org.baywright.cli.report;

import java.io.PrintWriter;
import java.io.Writer;
import java.util.function.Consumer;

/** Where text goes. Lines end the same way on every system. */
public final class Output {

	private final PrintWriter writer;

	/** @param writer where the text goes; whoever made it closes it */
	public Output(Writer writer) {
		this.writer = new PrintWriter(writer);
	}

	public void print(String text) {
		writer.print(text);
	}

	public void println(String text) {
		writer.print(text);
		writer.print('\n');
	}

	public void println() {
		writer.print('\n');
	}

	/** Writes through what was printed so far. */
	public void flush() {
		writer.flush();
	}

	/** Gives the writer to somebody who knows only such. */
	public void into(Consumer<PrintWriter> use) {
		use.accept(writer);
	}
}
