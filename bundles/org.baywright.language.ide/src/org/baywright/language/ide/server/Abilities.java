package org.baywright.language.ide.server;

import java.util.Optional;
import java.util.function.Function;
import org.eclipse.lsp4j.ClientCapabilities;

/**
 * What a client can do.
 *
 * @param snippets whether it fills in slots of an inserted text
 * @param relatedInformation whether it shows further places of a diagnostic
 * @param versionedEdits whether changes may name the version that they are meant for
 * @param refreshesLenses whether it asks for lenses again when told to
 * @param progress whether it shows progress that the server begins
 * @param watches whether it can be asked to watch files
 */
record Abilities(boolean snippets, boolean relatedInformation, boolean versionedEdits, boolean refreshesLenses,
		boolean progress, boolean watches) {

	/** Nothing beyond what every client can. */
	static final Abilities NONE = of(new ClientCapabilities());

	static Abilities of(ClientCapabilities client) {
		return new Abilities(
				is(client, ClientCapabilities::getTextDocument, text -> text.getCompletion(),
						completion -> completion.getCompletionItem(), item -> item.getSnippetSupport()),
				is(client, ClientCapabilities::getTextDocument, text -> text.getPublishDiagnostics(),
						diagnostics -> diagnostics.getRelatedInformation()),
				is(client, ClientCapabilities::getWorkspace, workspace -> workspace.getWorkspaceEdit(),
						edit -> edit.getDocumentChanges()),
				is(client, ClientCapabilities::getWorkspace, workspace -> workspace.getCodeLens(),
						lens -> lens.getRefreshSupport()),
				is(client, ClientCapabilities::getWindow, window -> window.getWorkDoneProgress()),
				is(client, ClientCapabilities::getWorkspace, workspace -> workspace.getDidChangeWatchedFiles(),
						watching -> watching.getDynamicRegistration()));
	}

	private static <A, B> boolean is(A start, Function<A, B> one, Function<B, Boolean> last) {
		return Optional.ofNullable(start).map(one).map(last).orElse(false);
	}

	private static <A, B, C> boolean is(A start, Function<A, B> one, Function<B, C> two, Function<C, Boolean> last) {
		return Optional.ofNullable(start).map(one).map(two).map(last).orElse(false);
	}

	private static <A, B, C, D> boolean is(A start, Function<A, B> one, Function<B, C> two, Function<C, D> three,
			Function<D, Boolean> last) {
		return Optional.ofNullable(start).map(one).map(two).map(three).map(last).orElse(false);
	}
}
