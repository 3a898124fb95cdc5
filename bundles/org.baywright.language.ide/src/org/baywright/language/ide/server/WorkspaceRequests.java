package org.baywright.language.ide.server;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import org.baywright.language.workspace.RuleProject;
import org.baywright.model.Span;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.FileEvent;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.WorkspaceSymbol;
import org.eclipse.lsp4j.WorkspaceSymbolParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.services.WorkspaceService;

/** What the protocol asks and tells about whole folders. */
final class WorkspaceRequests implements WorkspaceService {

	private static final int MOST_SYMBOLS = 500;

	private final Hosts hosts;
	private final Asking asking;
	private final Consumer<Path> reading;

	/** @param reading begins to read a folder */
	WorkspaceRequests(Hosts hosts, Asking asking, Consumer<Path> reading) {
		this.reading = reading;
		this.hosts = hosts;
		this.asking = asking;
	}

	@Override
	public CompletableFuture<Either<List<? extends SymbolInformation>, List<? extends WorkspaceSymbol>>> symbol(
			WorkspaceSymbolParams params) {
		return asking.<WorkspaceSymbol>all(host -> host.live().read("", services -> services.symbols(params.getQuery()).stream()
				.filter(found -> !found.file().endsWith(Span.PACK)).limit(MOST_SYMBOLS)
				.map(found -> Symbols.of(host, services.project().source(found.file()).orElseThrow(), found)).toList()))
				.thenApply(Either::forRight);
	}

	@Override
	public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
		for (FileEvent event : params.getChanges()) {
			hosts.find(event.getUri()).filter(found -> RuleProject.isRuleFile(found.file()))
					.ifPresent(found -> found.host().diskChanged(found.file()));
		}
	}

	@Override
	public void didChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams params) {
		for (WorkspaceFolder folder : params.getEvent().getRemoved()) {
			Hosts.path(folder.getUri()).ifPresent(hosts::remove);
		}
		for (WorkspaceFolder folder : params.getEvent().getAdded()) {
			Hosts.path(folder.getUri()).ifPresent(reading);
		}
	}

	@Override
	public void didChangeConfiguration(DidChangeConfigurationParams params) {
		// there is nothing to configure
	}
}
