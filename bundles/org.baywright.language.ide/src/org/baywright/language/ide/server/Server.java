package org.baywright.language.ide.server;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.ide.live.Checker;
import org.baywright.language.ide.live.LiveProject;
import org.baywright.language.workspace.RuleProject;
import org.eclipse.lsp4j.*;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageClientAware;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;

/** A language server for one client. */
final class Server implements LanguageServer, LanguageClientAware {

	private static final int THREADS = 3;
	private static final int ENDED_WELL = 0;
	private static final int ENDED_WITHOUT_SHUTDOWN = 1;

	private final IntConsumer exit;
	private final Supplier<Checker> checkers;
	private final String version;
	private final ExecutorService threads;
	private final Hosts hosts;
	private final Asking asking;
	private final DiskWatch disk;
	private LanguageClient client;
	private ClientWork work;
	private final TextDocumentService texts;
	private final WorkspaceService workspace;
	private volatile Abilities abilities = Abilities.NONE;
	private volatile boolean initialized;
	private volatile boolean shutDown;

	/**
	 * @param exit ends the process, with an exit code
	 * @param checkers makes what checks the rules of a project
	 * @param version the program's version
	 */
	Server(IntConsumer exit, Supplier<Checker> checkers, String version) {
		this.exit = exit;
		this.checkers = checkers;
		this.version = version;
		threads = Executors.newFixedThreadPool(THREADS, task -> {
			Thread thread = new Thread(task, "Answer the editor");
			thread.setDaemon(true);
			return thread;
		});
		hosts = new Hosts(this::start);
		disk = new DiskWatch(hosts);
		asking = new Asking(hosts, threads, this::guard);
		texts = new Texts(hosts, asking, () -> abilities);
		workspace = new WorkspaceRequests(hosts, asking, this::read);
	}

	@Override
	public void connect(LanguageClient connected) {
		client = connected;
		work = new ClientWork(connected, () -> abilities);
	}

	private Host start(Optional<Path> folder) {
		Host host = new Host(folder);
		RuleProject project = folder.map(RuleProject::unread).orElseGet(() -> RuleProject.inMemory("rules"));
		Publishing publishing = new Publishing(host, client, abilities);
		host.start(new LiveProject(new EditorServices(project), work, publishing, checkers), publishing);
		return host;
	}

	/** Reads what lies in a folder. */
	private void read(Path folder) {
		hosts.add(folder).ifPresent(host -> {
			try {
				host.live().reload(RuleProject.filesIn(folder));
			} catch (IOException e) {
				client.showMessage(new MessageParams(MessageType.Error, "The folder " + folder + " cannot be read."));
			}
		});
	}

	private void guard() {
		if (!initialized) {
			throw Asking.error(ResponseErrorCode.ServerNotInitialized, "The client has not said initialize yet.");
		}
		if (shutDown) {
			throw Asking.error(ResponseErrorCode.InvalidRequest, "The client has said shutdown already.");
		}
	}

	// ---- from the first to the last word ---------------------------------------------------------------------------

	@Override
	public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
		if (initialized) {
			throw Asking.error(ResponseErrorCode.InvalidRequest, "The client has said initialize already.");
		}
		abilities = params.getCapabilities() == null ? Abilities.NONE : Abilities.of(params.getCapabilities());
		if (params.getProcessId() != null) {
			Optional<ProcessHandle> parent = ProcessHandle.of(params.getProcessId());
			parent.ifPresentOrElse(process -> process.onExit().thenRun(() -> exit.accept(ENDED_WITHOUT_SHUTDOWN)),
					() -> exit.accept(ENDED_WITHOUT_SHUTDOWN));
		}
		for (String uri : folders(params)) {
			Hosts.path(uri).ifPresent(this::read);
		}
		initialized = true;
		return CompletableFuture.completedFuture(new InitializeResult(capabilities(), new ServerInfo("Baywright", version)));
	}

	@SuppressWarnings("deprecation") // older clients name one folder only
	private static List<String> folders(InitializeParams params) {
		List<String> folders = new ArrayList<>();
		if (params.getWorkspaceFolders() != null) {
			params.getWorkspaceFolders().forEach(folder -> folders.add(folder.getUri()));
		} else if (params.getRootUri() != null) {
			folders.add(params.getRootUri());
		} else if (params.getRootPath() != null) {
			folders.add(Path.of(params.getRootPath()).toUri().toString());
		}
		return folders;
	}

	@Override
	public void initialized(InitializedParams params) {
		if (abilities.watches()) {
			DidChangeWatchedFilesRegistrationOptions files = new DidChangeWatchedFilesRegistrationOptions(
					List.of(new FileSystemWatcher(Either.forLeft("**/*.[bB][aA][yY]"))));
			client.registerCapability(new RegistrationParams(
					List.of(new Registration("rule-files", "workspace/didChangeWatchedFiles", files))));
		} else {
			disk.start();
		}
	}

	@Override
	public CompletableFuture<Object> shutdown() {
		shutDown = true;
		hosts.all().forEach(host -> host.live().close());
		return CompletableFuture.completedFuture(null);
	}

	@Override
	public void exit() {
		exit.accept(exitCode());
	}

	/** Returns 0 if the client said that it was about to end. */
	int exitCode() {
		return shutDown ? ENDED_WELL : ENDED_WITHOUT_SHUTDOWN;
	}

	/** Ends all work. */
	void close() {
		hosts.all().forEach(host -> host.live().close());
		disk.close();
		threads.shutdown();
	}

	@Override
	public void cancelProgress(WorkDoneProgressCancelParams params) {
		if (params.getToken().isLeft()) {
			work.cancel(params.getToken().getLeft());
		}
	}

	@Override
	public void setTrace(SetTraceParams params) {
		// nothing is traced
	}

	@Override
	public TextDocumentService getTextDocumentService() {
		return texts;
	}

	@Override
	public WorkspaceService getWorkspaceService() {
		return workspace;
	}

	private static ServerCapabilities capabilities() {
		ServerCapabilities can = new ServerCapabilities();
		TextDocumentSyncOptions sync = new TextDocumentSyncOptions();
		sync.setOpenClose(true);
		sync.setChange(TextDocumentSyncKind.Incremental);
		can.setTextDocumentSync(sync);
		can.setPositionEncoding(PositionEncodingKind.UTF16);
		can.setCompletionProvider(new CompletionOptions(false, List.of(".")));
		can.setHoverProvider(true);
		can.setDefinitionProvider(true);
		can.setReferencesProvider(true);
		can.setDocumentHighlightProvider(true);
		can.setRenameProvider(new RenameOptions(true));
		can.setCodeActionProvider(new CodeActionOptions(List.of(CodeActionKind.QuickFix)));
		can.setDocumentSymbolProvider(true);
		can.setWorkspaceSymbolProvider(true);
		can.setFoldingRangeProvider(true);
		can.setSemanticTokensProvider(new SemanticTokensWithRegistrationOptions(SemanticColours.LEGEND, true));
		can.setCodeLensProvider(new CodeLensOptions(false));
		can.setDocumentFormattingProvider(true);
		can.setDocumentRangeFormattingProvider(true);
		WorkspaceFoldersOptions folders = new WorkspaceFoldersOptions();
		folders.setSupported(true);
		folders.setChangeNotifications(true);
		can.setWorkspace(new WorkspaceServerCapabilities(folders));
		return can;
	}
}
