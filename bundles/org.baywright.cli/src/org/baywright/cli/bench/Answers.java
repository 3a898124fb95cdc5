package org.baywright.cli.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;

import org.baywright.cli.report.Output;

/** The lines that somebody answers with, one after the other; those that begin with # are comments. */
public final class Answers {

	private static final String PROMPT = "> ";
	private static final String COMMENT = "#";
	private static final String BYTE_ORDER_MARK = "\uFEFF";
	private static final int LONGEST = 100_000;
	private static final int MILLISECONDS = 50;
	private static final int AHEAD = 100;
	/** So often is looked for what is answered to a question that nobody can hear. */
	private static final int LOOKS_UNHEARD = 20;

	/**
	 * A line.
	 *
	 * @param text it without blanks around it; no more than its beginning where it is too long
	 * @param wrong what is wrong with it and what to do, in words; the empty text if nothing is
	 */
	record Line(String text, String wrong) {
	}

	/** A line, or the end of all; a failure ends them too. */
	private record Read(Optional<Line> line, Optional<IOException> failure) {
	}

	private final BlockingQueue<Read> read = new ArrayBlockingQueue<>(AHEAD);
	private final Reader from;
	private final Output out;
	private final boolean prompted;
	private final BooleanSupplier cancelled;
	private Thread reading;

	/**
	 * @param from the lines; whoever made it closes it
	 * @param out what has to be written through before an answer is waited for
	 * @param prompted whether a terminal answers, which is told that it is its turn
	 * @param cancelled asked again and again while an answer is waited for
	 */
	public Answers(Reader from, Output out, boolean prompted, BooleanSupplier cancelled) {
		this.from = from;
		this.out = out;
		this.prompted = prompted;
		this.cancelled = cancelled;
	}

	/**
	 * Waits for the next line.
	 *
	 * @return the line; nothing at the end
	 * @throws IOException if the lines cannot be read
	 * @throws CancellationException if it was cancelled
	 */
	Optional<Line> next() throws IOException {
		if (prompted) {
			out.print(PROMPT);
		}
		out.flush();
		if (reading == null) {
			// nothing ends a read from a terminal, so that another thread has to wait for it
			reading = new Thread(this::readAll, "answers");
			reading.setDaemon(true);
			reading.start();
		}
		Read next = take();
		if (next.failure().isPresent()) {
			throw next.failure().get();
		} else if (next.line().isEmpty() && prompted) {
			out.println();
		}
		return next.line();
	}

	/** Returns the next line, with one letter too many where it is too long, or null at the end. */
	private static String line(Reader lines) throws IOException {
		StringBuilder line = new StringBuilder();
		int c = lines.read();
		if (c < 0) {
			return null;
		}
		for (; c >= 0 && c != '\n' && c != '\r'; c = lines.read()) {
			if (line.length() <= LONGEST) {
				line.append((char) c);
			}
		}
		if (c == '\r') {
			lines.mark(1);
			if (lines.read() != '\n') {
				lines.reset();
			}
		}
		return line.toString();
	}

	private void readAll() {
		try {
			BufferedReader lines = new BufferedReader(from);
			Optional<IOException> failure = Optional.empty();
			try {
				int number = 1;
				for (String line = line(lines); line != null; line = line(lines), number++) {
					// some editors begin a file with a mark that nobody sees
					String text = number == 1 && line.startsWith(BYTE_ORDER_MARK) ? line.substring(1) : line;
					if (!text.startsWith(COMMENT)) {
						read.put(new Read(Optional.of(new Line(text.strip(), line.length() > LONGEST ? tooLong(number) : "")), Optional.empty()));
					}
				}
			} catch (IOException e) {
				failure = Optional.of(e);
			}
			read.put(new Read(Optional.empty(), failure));
		} catch (InterruptedException e) {
			Thread.currentThread().interrupt();
		}
	}

	private String tooLong(int number) {
		return (prompted ? "That answer" : "The answer in line " + number) + " is longer than " + LONGEST + " characters. Write a shorter one.";
	}

	private Read take() {
		try {
			// what was answered beforehand still counts, but nobody waits for an answer to what was not heard
			int looks = out.failure().isPresent() ? LOOKS_UNHEARD : Integer.MAX_VALUE;
			Read next = null;
			for (int i = 0; next == null && i < looks; i++) {
				if (cancelled.getAsBoolean()) {
					throw new CancellationException();
				}
				next = read.poll(MILLISECONDS, TimeUnit.MILLISECONDS);
			}
			return next == null ? new Read(Optional.empty(), Optional.empty()) : next;
		} catch (InterruptedException e) {
			Thread.currentThread().interrupt();
			throw new CancellationException();
		}
	}
}
