package org.baywright.language.ide.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.Pipe;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.baywright.language.ide.live.Checker;
import org.eclipse.lsp4j.*;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;

/** A client of the server, over pipes. */
final class Client implements LanguageClient, AutoCloseable {

	private static final Duration LONG = Duration.ofSeconds(30);

	final Map<String, List<Diagnostic>> diagnostics = new ConcurrentHashMap<>();
	final List<String> calls = Collections.synchronizedList(new ArrayList<>());
	final CompletableFuture<Integer> ended = new CompletableFuture<>();
	final LanguageServer server;
	volatile boolean cancelsProgress;
	private final OutputStream toServer;
	private final Map<String, Integer> versions = new ConcurrentHashMap<>();

	Client(Supplier<Checker> checkers) throws IOException {
		// pipes of streams would break when a thread that wrote to them ends
		Pipe there = Pipe.open();
		Pipe back = Pipe.open();
		toServer = Channels.newOutputStream(there.sink());
		InputStream serverIn = Channels.newInputStream(there.source());
		OutputStream serverOut = Channels.newOutputStream(back.sink());
		InputStream fromServer = Channels.newInputStream(back.source());
		Thread serving = new Thread(() -> {
			try {
				ended.complete(ServerProcess.serve(serverIn, serverOut, "test", () -> false, checkers));
			} catch (InterruptedException e) {
				ended.completeExceptionally(e);
			}
		});
		serving.setDaemon(true);
		serving.start();
		Launcher<LanguageServer> launcher = new Launcher.Builder<LanguageServer>().setLocalService(this)
				.setRemoteInterface(LanguageServer.class).setInput(fromServer).setOutput(toServer).create();
		launcher.startListening();
		server = launcher.getRemoteProxy();
	}

	/** Starts a server for a folder, as a client that can do everything. */
	static Client in(Path folder) throws IOException {
		return in(folder, Checker::proving);
	}

	static Client in(Path folder, Supplier<Checker> checkers) throws IOException {
		Client client = new Client(checkers);
		client.initialize(folder, capable());
		return client;
	}

	InitializeResult initialize(Path folder, ClientCapabilities capabilities) {
		InitializeParams params = new InitializeParams();
		params.setCapabilities(capabilities);
		params.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "test")));
		InitializeResult result = get(server.initialize(params));
		server.initialized(new InitializedParams());
		return result;
	}

	static ClientCapabilities capable() {
		ClientCapabilities can = new ClientCapabilities();
		TextDocumentClientCapabilities text = new TextDocumentClientCapabilities();
		text.setCompletion(new CompletionCapabilities(new CompletionItemCapabilities(true)));
		text.setPublishDiagnostics(new PublishDiagnosticsCapabilities(true));
		can.setTextDocument(text);
		WorkspaceClientCapabilities workspace = new WorkspaceClientCapabilities();
		WorkspaceEditCapabilities edit = new WorkspaceEditCapabilities();
		edit.setDocumentChanges(true);
		workspace.setWorkspaceEdit(edit);
		workspace.setDidChangeWatchedFiles(new DidChangeWatchedFilesCapabilities(true));
		can.setWorkspace(workspace);
		WindowClientCapabilities window = new WindowClientCapabilities();
		window.setWorkDoneProgress(true);
		can.setWindow(window);
		return can;
	}

	static <T> T get(CompletableFuture<T> future) {
		try {
			return future.get(LONG.toSeconds(), TimeUnit.SECONDS);
		} catch (InterruptedException | TimeoutException e) {
			throw new AssertionError(e);
		} catch (ExecutionException e) {
			if (e.getCause() instanceof RuntimeException known) {
				throw known;
			}
			throw new AssertionError(e.getCause());
		}
	}

	/** Waits until something is so. */
	void until(BooleanSupplier so, Supplier<String> otherwise) {
		long end = System.nanoTime() + LONG.toNanos();
		while (!so.getAsBoolean()) {
			if (System.nanoTime() > end) {
				throw new AssertionError("it never happened; now: " + otherwise.get());
			}
			try {
				Thread.sleep(5);
			} catch (InterruptedException e) {
				throw new AssertionError(e);
			}
		}
	}

	/** Waits until the diagnostics of a file have exactly these codes. */
	void codes(Path file, String... expected) {
		until(() -> codes(file).equals(List.of(expected)), () -> codes(file) + " after " + calls);
	}

	List<String> codes(Path file) {
		return diagnostics.getOrDefault(file.toUri().toString(), List.of()).stream().map(found -> found.getCode().getLeft())
				.toList();
	}

	TextDocumentIdentifier id(Path file) {
		return new TextDocumentIdentifier(file.toUri().toString());
	}

	void open(Path file, String text) {
		versions.put(file.toUri().toString(), 1);
		server.getTextDocumentService()
				.didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(file.toUri().toString(), "baywright", 1, text)));
	}

	void change(Path file, TextDocumentContentChangeEvent... changes) {
		int version = versions.merge(file.toUri().toString(), 1, Integer::sum);
		change(file, version, changes);
	}

	void change(Path file, int version, TextDocumentContentChangeEvent... changes) {
		server.getTextDocumentService().didChange(new DidChangeTextDocumentParams(
				new VersionedTextDocumentIdentifier(file.toUri().toString(), version), List.of(changes)));
	}

	void close(Path file) {
		server.getTextDocumentService().didClose(new DidCloseTextDocumentParams(id(file)));
	}

	/** Ends what the client says, without a word. */
	/** Sends a message as it is. */
	void send(String json) throws IOException {
		byte[] body = json.getBytes(java.nio.charset.StandardCharsets.UTF_8);
		synchronized (toServer) {
			toServer.write(("Content-Length: " + body.length + "\r\n\r\n").getBytes(java.nio.charset.StandardCharsets.US_ASCII));
			toServer.write(body);
			toServer.flush();
		}
	}

	void hangUp() throws IOException {
		toServer.close();
	}

	@Override
	public void close() throws IOException {
		toServer.close();
	}

	@Override
	public void publishDiagnostics(PublishDiagnosticsParams params) {
		diagnostics.put(params.getUri(), params.getDiagnostics());
		calls.add("diagnostics");
	}

	@Override
	public void logMessage(MessageParams message) {
		calls.add("log " + message.getMessage());
	}

	@Override
	public void showMessage(MessageParams message) {
		calls.add("show " + message.getMessage());
	}

	@Override
	public CompletableFuture<Void> registerCapability(RegistrationParams params) {
		params.getRegistrations().forEach(registration -> calls.add("register " + registration.getMethod()));
		return CompletableFuture.completedFuture(null);
	}

	@Override
	public CompletableFuture<Void> createProgress(WorkDoneProgressCreateParams params) {
		calls.add("progress");
		return CompletableFuture.completedFuture(null);
	}

	@Override
	public void notifyProgress(ProgressParams params) {
		calls.add(params.getValue().getLeft().getClass().getSimpleName());
		if (params.getValue().getLeft() instanceof WorkDoneProgressBegin && cancelsProgress) {
			server.cancelProgress(new WorkDoneProgressCancelParams(params.getToken()));
		}
	}

	@Override
	public void telemetryEvent(Object object) {
		// nobody measures
	}

	@Override
	public CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
		return CompletableFuture.completedFuture(null);
	}
}
