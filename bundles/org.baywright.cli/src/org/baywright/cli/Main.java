package org.baywright.cli;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

import org.baywright.cli.report.Output;
import org.baywright.cli.report.Style;

/** Entry point of the command line. */
public final class Main {

	/** Long enough to finish what must not be left half done; nobody waits longer after Ctrl+C. */
	private static final int SECONDS_TO_STOP = 5;

	private Main() {
	}

	public static void main(String[] args) {
		AtomicBoolean cancelled = new AtomicBoolean();
		CountDownLatch done = new CountDownLatch(1);
		Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(cancelled, done)));
		int code = CommandLineRun.run(session(cancelled), args);
		boolean stopping = cancelled.get();
		done.countDown();
		if (!stopping) {
			System.exit(code);
		}
	}

	/** Java ends with code 130 after Ctrl+C on its own, once this has let the command end properly. */
	private static void stop(AtomicBoolean cancelled, CountDownLatch done) {
		cancelled.set(true);
		try {
			done.await(SECONDS_TO_STOP, TimeUnit.SECONDS);
		} catch (InterruptedException e) {
			Thread.currentThread().interrupt();
		}
	}

	/**
	 * The property {@code baywright.terminals}, which the start script sets, tells which of standard input (0), output (1) and
	 * error (2) are terminals; Java itself can only tell whether all are.
	 */
	@SuppressWarnings("resource") // the streams of the process stay open until it ends
	private static Session session(AtomicBoolean cancelled) {
		String terminals = System.getProperty("baywright.terminals", System.console() == null ? "" : "012");
		String term = System.getenv().getOrDefault("TERM", "");
		// the convention of no-color.org: any value but the empty one forbids colours
		boolean colours = terminals.contains("1") && System.getenv().getOrDefault("NO_COLOR", "").isEmpty()
				&& !term.equals("dumb");
		Session.Input in = new Session.Input(new InputStreamReader(new FileInputStream(FileDescriptor.in), StandardCharsets.UTF_8),
				terminals.contains("0"));
		return new Session(in, output(FileDescriptor.out), output(FileDescriptor.err), colours ? Style.COLOURED : Style.PLAIN,
				Path.of("").toAbsolutePath(), Path.of(System.getProperty("baywright.home", "")),
				terminals.contains("2") && !term.equals("dumb"), cancelled);
	}

	@SuppressWarnings("resource") // the streams of the process stay open until it ends
	private static Output output(FileDescriptor target) {
		return new Output(new FileOutputStream(target));
	}
}
