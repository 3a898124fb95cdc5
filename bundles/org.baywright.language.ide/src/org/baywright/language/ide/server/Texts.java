package org.baywright.language.ide.server;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import org.baywright.language.ide.fold.Fold;
import org.baywright.language.ide.names.Renaming;
import org.baywright.language.ide.names.Use;
import org.baywright.language.ide.server.Asking.Site;
import org.baywright.language.text.SourceText;
import org.baywright.model.Span;
import org.eclipse.lsp4j.*;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.TextDocumentService;

/** What the protocol asks about single files. */
final class Texts implements TextDocumentService {

	private final Hosts hosts;
	private final Asking asking;
	private final Supplier<Abilities> abilities;

	Texts(Hosts hosts, Asking asking, Supplier<Abilities> abilities) {
		this.hosts = hosts;
		this.asking = asking;
		this.abilities = abilities;
	}

	// ---- what the client has open ----------------------------------------------------------------------------------

	@Override
	public void didOpen(DidOpenTextDocumentParams params) {
		TextDocumentItem item = params.getTextDocument();
		Hosts.Found found = hosts.open(item.getUri());
		String text = item.getText();
		if (text == null) {
			ServerProcess.complain("textDocument/didOpen brings no text of " + item.getUri() + "; the one known so far stays.");
			text = found.host().text(found.file());
		}
		found.host().edit(found.file(), new Document(item.getUri(), item.getVersion(), text));
	}

	@Override
	public void didChange(DidChangeTextDocumentParams params) {
		if (params.getContentChanges() == null || params.getContentChanges().stream().anyMatch(change -> change == null || change.getText() == null)) {
			ServerProcess.complain("textDocument/didChange brings no text of " + params.getTextDocument().getUri()
					+ "; the one known so far stays.");
			return;
		}
		hosts.find(params.getTextDocument().getUri()).ifPresent(found -> {
			Integer version = params.getTextDocument().getVersion();
			// a change of something that is not open, or one that comes too late, is none
			found.host().open(found.file()).filter(document -> version == null || version > document.version())
					.ifPresent(document -> found.host().edit(found.file(), document
							.changed(version == null ? document.version() + 1 : version, params.getContentChanges())));
		});
	}

	@Override
	public void didClose(DidCloseTextDocumentParams params) {
		hosts.find(params.getTextDocument().getUri()).ifPresent(found -> {
			found.host().closed(found.file());
			hosts.closed(found.host());
		});
	}

	@Override
	public void didSave(DidSaveTextDocumentParams params) {
		// what is open is known already
	}

	// ---- writing ---------------------------------------------------------------------------------------------------

	@Override
	public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(CompletionParams params) {
		return asking.about(params.getTextDocument(), Either.forLeft(List.of()),
				site -> Either.forRight(Completions.of(site.text(),
						site.services().complete(site.file(), site.offset(params.getPosition())), abilities.get().snippets())));
	}

	@Override
	public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
		return asking.about(params.getTextDocument(), List.of(), site -> site.services().format(site.file())
				.map(edits -> Positions.edits(site.text(), edits)).orElse(List.of()));
	}

	@Override
	public CompletableFuture<List<? extends TextEdit>> rangeFormatting(DocumentRangeFormattingParams params) {
		return asking.about(params.getTextDocument(), List.of(), site -> {
			int from = site.offset(params.getRange().getStart());
			int to = site.offset(params.getRange().getEnd());
			return site.services().format(site.file(), from, to - from).map(edits -> Positions.edits(site.text(), edits))
					.orElse(List.of());
		});
	}

	@Override
	public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
		CompletableFuture<Void> checked = asking.first(params.getTextDocument(), Actions::awaitCheck);
		return checked.thenCompose(done -> asking.about(params.getTextDocument(), List.of(), site -> {
			int from = site.offset(params.getRange().getStart());
			int to = site.offset(params.getRange().getEnd());
			List<Either<Command, CodeAction>> actions = new ArrayList<>();
			Actions.of(site, from, to - from, params.getContext().getDiagnostics(), abilities.get())
					.forEach(action -> actions.add(Either.forRight(action)));
			return actions;
		}));
	}

	// ---- names -----------------------------------------------------------------------------------------------------

	@Override
	public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>> definition(
			DefinitionParams params) {
		return asking.about(params.getTextDocument(), Either.forLeft(List.of()), site -> Either.forLeft(
				locations(site, site.services().definition(site.file(), site.offset(params.getPosition())))));
	}

	@Override
	public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
		return asking.about(params.getTextDocument(), List.of(), site -> locations(site, site.services().references(site.file(),
				site.offset(params.getPosition()), params.getContext().isIncludeDeclaration())));
	}

	private static List<Location> locations(Site site, List<Use> uses) {
		return uses.stream().filter(use -> !use.file().endsWith(Span.PACK)).map(use -> { // no client can open a place in a pack
			SourceText text = site.services().project().source(use.file()).orElseThrow();
			return new Location(site.host().uri(use.file()), Positions.range(text, use.offset(), use.length()));
		}).toList();
	}

	@Override
	public CompletableFuture<List<? extends DocumentHighlight>> documentHighlight(DocumentHighlightParams params) {
		return asking.about(params.getTextDocument(), List.of(),
				site -> site.services().occurrences(site.file(), site.offset(params.getPosition())).stream()
						.map(use -> new DocumentHighlight(Positions.range(site.text(), use.offset(), use.length()),
								use.declaration() ? DocumentHighlightKind.Write : DocumentHighlightKind.Read))
						.toList());
	}

	@Override
	public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>> prepareRename(
			PrepareRenameParams params) {
		return asking.about(params.getTextDocument(), null,
				site -> site.services().prepareRename(site.file(), site.offset(params.getPosition()))
						.map(use -> Either3.<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>forSecond(
								new PrepareRenameResult(Positions.range(site.text(), use.offset(), use.length()),
										site.text().text().substring(use.offset(), use.offset() + use.length()))))
						.orElse(null));
	}

	@Override
	public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
		return asking.about(params.getTextDocument(), null, site -> {
			Renaming.Result result = site.services().rename(site.file(), site.offset(params.getPosition()), params.getNewName());
			if (result instanceof Renaming.Refused refused) {
				throw Asking.error(ResponseErrorCode.RequestFailed, refused.message());
			}
			return Actions.edit(site.host(), ((Renaming.Changes) result).edits(), site.services().project().snapshot(),
					abilities.get());
		});
	}

	// ---- reading ---------------------------------------------------------------------------------------------------

	@Override
	public CompletableFuture<Hover> hover(HoverParams params) {
		return asking.about(params.getTextDocument(), null,
				site -> site.services().hover(site.file(), site.offset(params.getPosition()))
						.map(hover -> new Hover(new MarkupContent(MarkupKind.MARKDOWN, hover.markdown()),
								Positions.range(site.text(), hover.offset(), hover.length())))
						.orElse(null));
	}

	@Override
	public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(DocumentSymbolParams params) {
		return asking.about(params.getTextDocument(), List.of(), site -> site.services().outline(site.file()).stream()
				.map(item -> Either.<SymbolInformation, DocumentSymbol>forRight(Symbols.of(site.text(), item))).toList());
	}

	@Override
	public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
		return asking.about(params.getTextDocument(), List.of(),
				site -> site.services().folds(site.file()).stream().map(fold -> folding(site.text(), fold)).toList());
	}

	private static FoldingRange folding(SourceText text, Fold fold) {
		Span span = text.span(fold.offset(), fold.length());
		FoldingRange range = new FoldingRange(span.line() - 1, span.endLine() - 1);
		if (fold.comment()) {
			range.setKind(FoldingRangeKind.Comment);
		}
		return range;
	}

	@Override
	public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
		return asking.about(params.getTextDocument(), new SemanticTokens(List.of()),
				site -> SemanticColours.of(site.text(), site.services().colours(site.file())));
	}

	@Override
	public CompletableFuture<List<? extends CodeLens>> codeLens(CodeLensParams params) {
		return asking.about(params.getTextDocument(), List.of(),
				site -> site.services().minings(site.file(), site.host().live().report()).stream()
						.map(mining -> new CodeLens(Positions.range(site.text(), mining.offset(), 0), new Command(mining.text(), ""),
								null))
						.toList());
	}
}
