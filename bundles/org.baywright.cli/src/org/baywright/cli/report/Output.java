package org.baywright.cli.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.Consumer;

/** Where text goes. Lines end the same way on every system. What cannot be written is remembered, see {@link #failure}. */
public final class Output {

	private final Kept kept;
	private final PrintWriter writer;
	private final OutputStream stream;

	/** @param writer where the text goes; whoever made it closes it */
	public Output(Writer writer) {
		this(writer, null);
	}

	/** @param stream where the text goes, as UTF-8; whoever made it closes it */
	public Output(OutputStream stream) {
		this(new OutputStreamWriter(stream, StandardCharsets.UTF_8), stream);
	}

	private Output(Writer writer, OutputStream stream) {
		kept = new Kept(writer);
		this.writer = new PrintWriter(kept);
		this.stream = stream;
	}

	/** A writer that goes on after a failure, silently, and remembers the first. */
	private static final class Kept extends Writer {

		private final Writer to;
		private IOException failure;

		Kept(Writer to) {
			this.to = to;
		}

		/** Something that may fail. */
		private interface Act {
			void run() throws IOException;
		}

		private void attempt(Act act) {
			if (failure == null) {
				try {
					act.run();
				} catch (IOException e) {
					failure = e;
				}
			}
		}

		@Override
		public void write(char[] text, int from, int length) {
			attempt(() -> to.write(text, from, length));
		}

		@Override
		public void flush() {
			attempt(to::flush);
		}

		@Override
		public void close() {
			flush();
		}
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

	/** Writes bytes as they are, behind all that was printed. */
	public void write(byte[] bytes) {
		writer.flush();
		if (stream == null) {
			print(new String(bytes, StandardCharsets.UTF_8));
		} else {
			kept.attempt(() -> stream.write(bytes));
		}
	}

	/** Writes through what was printed so far. */
	public void flush() {
		writer.flush();
	}

	/** Returns why something that was printed could not be written; nothing if all could. */
	public Optional<IOException> failure() {
		flush();
		return Optional.ofNullable(kept.failure);
	}

	/** Gives the writer to somebody who knows only such. */
	public void into(Consumer<PrintWriter> use) {
		use.accept(writer);
	}
}
