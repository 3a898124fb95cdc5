package org.baywright.language.ide.server;

import java.io.InputStream;
import java.io.OutputStream;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.baywright.language.ide.live.Checker;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.jsonrpc.json.MessageJsonHandler;
import org.eclipse.lsp4j.services.LanguageClient;

/** Serves one client over a pair of streams. */
public final class ServerProcess {

	private static final int INTERNAL = 70;
	private static final int CANCELLED = 130;
	private static final long LOOK_AGAIN_MILLIS = 200;

	/** The library tells of each odd message with a page of its own insides; one line is enough. */
	private static final Logger PROTOCOL = Logger.getLogger("org.eclipse.lsp4j");

	static {
		PROTOCOL.setUseParentHandlers(false);
		PROTOCOL.addHandler(new Handler() {
			@Override
			public void publish(LogRecord told) {
				String line = String.valueOf(told.getMessage()).lines().findFirst().orElse("");
				System.err.println("From the editor: " + line.replaceFirst("^For input string: ", "Content-Length is not a number: "));
			}

			@Override
			public void flush() {
				System.err.flush();
			}

			@Override
			public void close() {
				// standard error stays open
			}
		});
	}

	private ServerProcess() {
	}

	/** Tells in one line of a message to which there is no answer. */
	static void complain(String line) {
		PROTOCOL.warning(line);
	}

	/**
	 * Serves until the client says {@code exit}, the input ends or the client's process is gone.
	 *
	 * @param in what the client says
	 * @param out what is said to the client, and nothing else
	 * @param version the program's version, for the client to show
	 * @param cancelled becomes true when the process shall end anyway
	 * @return the exit code of the process: 0 if the client said {@code shutdown} before
	 */
	public static int serve(InputStream in, OutputStream out, String version, BooleanSupplier cancelled)
			throws InterruptedException {
		return serve(in, out, version, cancelled, Checker::proving);
	}

	/** As above, with checkers from elsewhere. */
	static int serve(InputStream in, OutputStream out, String version, BooleanSupplier cancelled,
			Supplier<Checker> checkers) throws InterruptedException {
		CompletableFuture<Integer> ended = new CompletableFuture<>();
		Server server = new Server(ended::complete, checkers, version);
		Launcher<LanguageClient> launcher = new Launcher.Builder<LanguageClient>() {
			@Override
			protected MessageJsonHandler createJsonHandler() {
				return new Strict(getSupportedMethods());
			}
		}.setLocalService(server).setExceptionHandler(Strict::said)
				.setRemoteInterface(LanguageClient.class).setInput(in).setOutput(out).create();
		server.connect(launcher.getRemoteProxy());
		Future<Void> listening = launcher.startListening();
		Thread watching = new Thread(() -> {
			try {
				listening.get();
			} catch (InterruptedException | ExecutionException | CancellationException e) {
				// the input has ended one way or another
			}
			ended.complete(server.exitCode());
		}, "Watch the editor's end");
		watching.setDaemon(true);
		watching.start();
		try {
			return await(ended, cancelled);
		} finally {
			server.close();
			listening.cancel(true);
		}
	}

	private static int await(CompletableFuture<Integer> ended, BooleanSupplier cancelled) throws InterruptedException {
		while (true) {
			try {
				return ended.get(LOOK_AGAIN_MILLIS, TimeUnit.MILLISECONDS);
			} catch (TimeoutException e) {
				if (cancelled.getAsBoolean()) {
					return CANCELLED;
				}
			} catch (ExecutionException e) {
				return INTERNAL;
			}
		}
	}
}
