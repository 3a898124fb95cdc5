package org.baywright.language.ide.server;

import static org.baywright.language.ide.server.Client.get;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.baywright.analysis.Listener;
import org.baywright.analysis.run.Analysis;
import org.baywright.language.ide.live.Checker;
import org.baywright.language.ide.testing.Cursor;
import org.baywright.language.workspace.RuleProject;
import org.eclipse.lsp4j.*;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ServerTest {

	private static final String RULE = "rule a \"A\" {\n  given no_crank\n  run lamp\n  on dark : suspects battery.flat\n"
			+ "  on lit  : proves nothing\n  because \"b\"\n  source practice\n  by \"R. Falk\" on 2026-03-02\n}\n";

	@TempDir
	private Path folder;
	private Path names;
	private Path here;
	private Client client;

	@BeforeEach
	void start() throws IOException {
		folder = folder.toRealPath();
		names = folder.resolve("names.bay");
		here = folder.resolve("here.bay");
		Files.writeString(names, Cursor.COMMON);
	}

	@AfterEach
	void end() throws IOException {
		if (client != null) {
			client.close();
		}
	}

	private void begin() throws IOException {
		client = Client.in(folder);
	}

	private static Position at(String text, String word) {
		int offset = text.indexOf(word);
		int line = (int) text.substring(0, offset).chars().filter(c -> c == '\n').count();
		return new Position(line, offset - text.lastIndexOf('\n', offset - 1) - 1);
	}

	private static TextDocumentContentChangeEvent all(String text) {
		return new TextDocumentContentChangeEvent(text);
	}

	private static TextDocumentContentChangeEvent piece(Position from, Position to, String text) {
		return new TextDocumentContentChangeEvent(new Range(from, to), text);
	}

	private List<String> expected(String hereText) {
		RuleProject project = RuleProject.inMemory("fresh");
		project.update("names.bay", Cursor.COMMON);
		project.update("here.bay", hereText);
		List<String> codes = new ArrayList<>();
		project.snapshot().problems().stream().filter(problem -> problem.span().file().equals("here.bay"))
				.forEach(problem -> codes.add(problem.id()));
		new Analysis().check(project.snapshot().rules(), Listener.NONE).flaws().stream()
				.filter(flaw -> flaw.span().file().equals("here.bay")).forEach(flaw -> codes.add(flaw.check()));
		return codes;
	}

	// ---- the whole -------------------------------------------------------------------------------------------------

	@Test
	void whatLiesInTheFolderIsCheckedAtOnce() throws IOException {
		begin();
		client.until(() -> client.codes(names).contains("gap"), () -> client.codes(names).toString());
		Diagnostic gap = client.diagnostics.get(names.toUri().toString()).stream()
				.filter(found -> found.getCode().getLeft().equals("gap")).findFirst().orElseThrow();
		assertEquals("baywright", gap.getSource());
		assertEquals(DiagnosticSeverity.Warning, gap.getSeverity());
		assertTrue(gap.getRelatedInformation().get(0).getMessage().startsWith("For example: Tarn T3 van; Engine does not crank"),
				gap::toString);
		client.until(() -> client.calls.contains("register workspace/didChangeWatchedFiles"), client.calls::toString);
	}

	@Test
	void problemsComeAndGo() throws IOException {
		begin();
		client.open(here, RULE.replace("no_crank", "no_crak"));
		client.codes(here, "unknown-name");
		Diagnostic problem = client.diagnostics.get(here.toUri().toString()).get(0);
		assertEquals(new Range(new Position(1, 8), new Position(1, 15)), problem.getRange());
		assertTrue(problem.getMessage().endsWith("Did you mean `no_crank`?"), problem.getMessage());
		client.change(here, piece(new Position(1, 14), new Position(1, 14), "n"));
		client.codes(here, expected(RULE).toArray(new String[0]));
	}

	@Test
	void changesAreMadeOneAfterAnother() throws IOException {
		begin();
		client.open(here, "sign \u00e4 \"\ud83d\ude97 car\"\r\nsign b\n");
		client.change(here, piece(new Position(0, 11), new Position(0, 14), "bus"), piece(new Position(1, 5), new Position(1, 6), "c"),
				piece(new Position(2, 0), new Position(2, 0), "sign d\n"));
		List<Either<SymbolInformation, DocumentSymbol>> symbols = get(
				client.server.getTextDocumentService().documentSymbol(new DocumentSymbolParams(client.id(here))));
		assertEquals(List.of("\ud83d\ude97 bus", "c", "d"), symbols.stream().map(symbol -> symbol.getRight().getName()).toList());
		client.change(here, 2, all("sign old\n"));
		assertEquals(3, get(client.server.getTextDocumentService().documentSymbol(new DocumentSymbolParams(client.id(here)))).size(),
				"a change that comes too late is none");
	}

	@Test
	void afterAFloodTheDiagnosticsAreThoseOfAFreshCheck() throws IOException {
		begin();
		client.open(here, RULE);
		for (int i = 0; i < 500; i++) {
			client.change(here, piece(new Position(1, 8), new Position(1, 9), i % 2 == 0 ? "x" : "n"));
		}
		String last = RULE.replace("proves nothing", "confirms battery.flat");
		client.change(here, all(last));
		client.codes(here, expected(last).toArray(new String[0]));
		assertTrue(client.codes(here).contains("confirmed-without-test") || !client.codes(here).isEmpty());
	}

	@Test
	void aFailedCheckLeavesNothingStale() throws IOException {
		AtomicBoolean fails = new AtomicBoolean();
		client = Client.in(folder, () -> {
			Checker proving = Checker.proving();
			return (rules, listener) -> {
				if (fails.get()) {
					throw new IllegalStateException("broken");
				}
				return proving.check(rules, listener);
			};
		});
		client.until(() -> client.codes(names).contains("gap"), () -> client.codes(names).toString());
		fails.set(true);
		client.open(here, "sign smoke\n");
		client.codes(names);
		client.until(() -> client.calls.stream().anyMatch(call -> call.startsWith("log The check failed")), client.calls::toString);
	}

	@Test
	void aClosedFileIsThatOfTheDisk() throws IOException {
		Files.writeString(here, "sign smoke\n");
		begin();
		client.open(here, "sign ;\n");
		client.codes(here, "syntax");
		client.close(here);
		client.codes(here, expected("sign smoke\n").toArray(new String[0]));
		Files.writeString(here, "sign ;\n");
		client.server.getWorkspaceService().didChangeWatchedFiles(new DidChangeWatchedFilesParams(
				List.of(new FileEvent(here.toUri().toString(), FileChangeType.Changed))));
		client.codes(here, "syntax");
		Files.delete(here);
		client.server.getWorkspaceService().didChangeWatchedFiles(new DidChangeWatchedFilesParams(
				List.of(new FileEvent(here.toUri().toString(), FileChangeType.Deleted))));
		client.codes(here);
	}

	@Test
	void aFileOutsideOfTheWorkspaceIsAProjectOfItsOwn(@TempDir Path other) throws IOException {
		begin();
		Path outside = other.toRealPath().resolve("alone.bay");
		client.open(outside, "rule a { run lamp }\n");
		client.until(() -> client.codes(outside).contains("unknown-name"), () -> client.codes(outside).toString());
		client.close(outside);
		client.codes(outside);
	}

	/** It need not be in the workspace, and no client watches it. */
	@Test
	void aProjectThatIsBuiltOnIsReadAndWatched(@TempDir Path other) throws IOException {
		Path shared = other.toRealPath().resolve("smoke.bay");
		Files.writeString(shared, "// more\nsign smoke \"Smoke\"\n");
		begin();
		String text = "builds_on \"" + folder.relativize(shared.getParent()) + "\"\nlaw \"x\" : never smoke\n";
		client.open(here, text);
		client.until(() -> client.codes(here).equals(List.of("builds-on-not-taken")), () -> client.codes(here).toString());
		List<? extends Location> found = get(client.server.getTextDocumentService()
				.definition(new DefinitionParams(client.id(here), at(text, "smoke")))).getLeft();
		assertEquals(List.of(new Location(shared.toUri().toString(), new Range(new Position(1, 5), new Position(1, 10)))), found);
		Files.writeString(shared, "sign smoke\nsign no_crank\n");
		client.until(() -> client.codes(names).contains("duplicate-name"), () -> client.codes(names).toString());
	}

	@Test
	void aFolderThatLeavesTakesItsDiagnosticsAlong() throws IOException {
		begin();
		client.until(() -> client.codes(names).contains("gap"), () -> client.codes(names).toString());
		client.server.getWorkspaceService().didChangeWorkspaceFolders(new DidChangeWorkspaceFoldersParams(
				new WorkspaceFoldersChangeEvent(List.of(), List.of(new WorkspaceFolder(folder.toUri().toString(), "test")))));
		client.codes(names);
	}

	/** A checker that takes a second. */
	private static Checker slow() {
		Checker proving = Checker.proving();
		return (rules, listener) -> {
			for (int done = 0; done < 20 && !listener.isCancelled(); done++) {
				listener.progress(done, 20);
				try {
					Thread.sleep(50);
				} catch (InterruptedException e) {
					throw new IllegalStateException(e);
				}
			}
			if (listener.isCancelled()) {
				throw new CancellationException();
			}
			return proving.check(rules, listener);
		};
	}

	@Test
	void aLongCheckShowsHowFarItIs() throws IOException {
		client = Client.in(folder, ServerTest::slow);
		client.until(() -> client.calls.contains("WorkDoneProgressEnd"), client.calls::toString);
		assertTrue(client.calls.containsAll(List.of("progress", "WorkDoneProgressBegin", "WorkDoneProgressReport")),
				client.calls::toString);
		assertTrue(client.codes(names).contains("gap"));
	}

	@Test
	void aLongCheckCanBeStopped() throws IOException {
		client = new Client(ServerTest::slow);
		client.cancelsProgress = true;
		client.initialize(folder, Client.capable());
		client.until(() -> client.calls.contains("log The check was stopped."), client.calls::toString);
		client.codes(names);
	}

	// ---- questions -------------------------------------------------------------------------------------------------

	@Test
	void completionWithSlots() throws IOException {
		begin();
		String text = "rule a {\n  given no_crank\n  run la\n}\n";
		client.open(here, text);
		CompletionList list = get(client.server.getTextDocumentService()
				.completion(new CompletionParams(client.id(here), new Position(2, 8)))).getRight();
		CompletionItem lamp = list.getItems().get(0);
		assertEquals("lamp", lamp.getLabel());
		assertEquals(new Range(new Position(2, 6), new Position(2, 8)), lamp.getTextEdit().getLeft().getRange());
		assertFalse(list.isIncomplete());
		client.change(here, all(text.replace("run la", "run charge")));
		CompletionList byTitle = get(client.server.getTextDocumentService()
				.completion(new CompletionParams(client.id(here), new Position(2, 12)))).getRight();
		assertEquals("charge", byTitle.getItems().get(0).getFilterText());
		assertTrue(byTitle.isIncomplete());
		client.change(here, all("si"));
		CompletionItem sign = get(client.server.getTextDocumentService()
				.completion(new CompletionParams(client.id(here), new Position(0, 2)))).getRight().getItems().get(0);
		assertEquals(InsertTextFormat.Snippet, sign.getInsertTextFormat());
		assertEquals("sign ${1:name} \"${2:title}\"\n", sign.getTextEdit().getLeft().getNewText());
	}

	@Test
	void whoCannotFillInSlotsGetsPlainText() throws IOException {
		client = new Client(Checker::proving);
		client.initialize(folder, new ClientCapabilities());
		client.open(here, "si");
		CompletionItem sign = get(client.server.getTextDocumentService()
				.completion(new CompletionParams(client.id(here), new Position(0, 2)))).getRight().getItems().get(0);
		assertEquals(InsertTextFormat.PlainText, sign.getInsertTextFormat());
		assertEquals("sign name \"title\"\n", sign.getTextEdit().getLeft().getNewText());
	}

	@Test
	void hoverDefinitionReferencesAndHighlights() throws IOException {
		begin();
		client.open(here, RULE);
		var texts = client.server.getTextDocumentService();
		Hover hover = get(texts.hover(new HoverParams(client.id(here), new Position(1, 10))));
		assertTrue(hover.getContents().getRight().getValue().startsWith("**sign** `no_crank`"));
		List<? extends Location> found = get(texts.definition(new DefinitionParams(client.id(here), new Position(1, 10)))).getLeft();
		assertEquals(new Location(names.toUri().toString(), new Range(at(Cursor.COMMON, "no_crank"),
				new Position(at(Cursor.COMMON, "no_crank").getLine(), 13))), found.get(0));
		assertEquals(3, get(texts.references(new ReferenceParams(client.id(here), new Position(1, 10), new ReferenceContext(true)))).size());
		assertEquals(2, get(texts.references(new ReferenceParams(client.id(here), new Position(1, 10), new ReferenceContext(false)))).size());
		assertEquals(DocumentHighlightKind.Read,
				get(texts.documentHighlight(new DocumentHighlightParams(client.id(here), new Position(1, 10)))).get(0).getKind());
		assertNull(get(texts.hover(new HoverParams(client.id(here), new Position(99, 0)))));
	}

	@Test
	void renameOverFiles() throws IOException {
		begin();
		client.open(here, RULE);
		var texts = client.server.getTextDocumentService();
		PrepareRenameResult prepared = get(texts.prepareRename(new PrepareRenameParams(client.id(here), new Position(2, 7)))).getSecond();
		assertEquals("lamp", prepared.getPlaceholder());
		WorkspaceEdit edit = get(texts.rename(new RenameParams(client.id(here), new Position(2, 7), "warning_lamp")));
		assertEquals(2, edit.getDocumentChanges().size());
		TextDocumentEdit first = edit.getDocumentChanges().get(0).getLeft();
		assertEquals(1, first.getTextDocument().getVersion());
		assertEquals("warning_lamp", first.getEdits().get(0).getNewText());
		ResponseErrorException refused = assertThrows(ResponseErrorException.class,
				() -> get(texts.rename(new RenameParams(client.id(here), new Position(2, 7), "two words"))));
		assertTrue(refused.getMessage().startsWith("`two words` is not a valid name."), refused.getMessage());
		assertNull(get(texts.prepareRename(new PrepareRenameParams(client.id(here), new Position(5, 3)))));
	}

	@Test
	void quickFixes() throws IOException {
		begin();
		client.open(here, RULE.replace("no_crank", "no_crak"));
		client.codes(here, "unknown-name");
		List<Diagnostic> shown = client.diagnostics.get(here.toUri().toString());
		List<Either<Command, CodeAction>> actions = get(client.server.getTextDocumentService().codeAction(
				new CodeActionParams(client.id(here), shown.get(0).getRange(), new CodeActionContext(shown))));
		CodeAction write = actions.get(0).getRight();
		assertEquals("Write no_crank", write.getTitle());
		assertEquals(1, write.getDiagnostics().size());
		assertEquals("no_crank", write.getEdit().getDocumentChanges().get(0).getLeft().getEdits().get(0).getNewText());
	}

	@Test
	void fixesOfFlaws() throws IOException {
		begin();
		client.open(names, Cursor.COMMON);
		Position sign = at(Cursor.COMMON, "no_crank");
		List<Either<Command, CodeAction>> actions = get(client.server.getTextDocumentService()
				.codeAction(new CodeActionParams(client.id(names), new Range(sign, sign), new CodeActionContext(List.of()))));
		assertTrue(actions.stream().anyMatch(action -> action.getRight().getTitle().startsWith("Accept this")), actions::toString);
	}

	@Test
	void symbolsFoldsColoursLensesAndLayout() throws IOException {
		begin();
		String ugly = RULE.replace("  run", "run");
		client.open(here, ugly);
		var texts = client.server.getTextDocumentService();
		var symbols = get(client.server.getWorkspaceService().symbol(new WorkspaceSymbolParams("lamp"))).getRight();
		assertEquals(List.of("lamp", "lamp_dark"), symbols.stream().map(WorkspaceSymbol::getName).toList());
		assertEquals(List.of(new FoldingRange(0, 8)), get(texts.foldingRange(new FoldingRangeRequestParams(client.id(here)))));
		List<Integer> colours = get(texts.semanticTokensFull(new SemanticTokensParams(client.id(here)))).getData();
		assertEquals(List.of(0, 0, 4, 0, 0, 0, 5, 1, 12, 1), colours.subList(0, 10));
		assertEquals(0, colours.size() % 5);
		assertEquals(List.of(new TextEdit(new Range(new Position(2, 0), new Position(2, 0)), "  ")),
				get(texts.formatting(new DocumentFormattingParams(client.id(here), new FormattingOptions(2, true)))));
		assertEquals(List.of(), get(texts.rangeFormatting(new DocumentRangeFormattingParams(client.id(here), new FormattingOptions(2, true),
				new Range(new Position(4, 4), new Position(5, 4))))));
		client.until(() -> !client.codes(names).isEmpty(), () -> "");
		assertTrue(get(texts.codeLens(new CodeLensParams(client.id(names)))).stream()
				.anyMatch(lens -> lens.getCommand().getTitle().equals("2 rules use this test")));
	}

	// ---- the end ---------------------------------------------------------------------------------------------------

	@Test
	void anEndInGoodOrder() throws Exception {
		begin();
		get(client.server.shutdown());
		assertThrows(ResponseErrorException.class,
				() -> get(client.server.getTextDocumentService().hover(new HoverParams(client.id(names), new Position(0, 0)))));
		client.server.exit();
		assertEquals(0, client.ended.get(5, TimeUnit.SECONDS));
	}

	@Test
	void anEndWithoutAWord() throws Exception {
		begin();
		client.hangUp();
		assertEquals(1, client.ended.get(5, TimeUnit.SECONDS));
	}

	@Test
	void theEndOfTheClientsProcess() throws Exception {
		client = new Client(Checker::proving);
		Process parent = new ProcessBuilder("sleep", "60").start();
		InitializeParams params = new InitializeParams();
		params.setCapabilities(new ClientCapabilities());
		params.setProcessId((int) parent.pid());
		get(client.server.initialize(params));
		parent.destroyForcibly();
		assertEquals(1, client.ended.get(5, TimeUnit.SECONDS));
	}

	@Test
	void nothingIsAnsweredBeforeInitialize() throws IOException {
		client = new Client(Checker::proving);
		assertThrows(ResponseErrorException.class,
				() -> get(client.server.getTextDocumentService().hover(new HoverParams(client.id(names), new Position(0, 0)))));
	}

	// ---- odd clients ------------------------------------------------------------------------------------------------

	@Test
	void aChangeOnDiskIsSeenAlsoWhenNobodyWatches() throws IOException {
		client = new Client(Checker::proving);
		ClientCapabilities poor = Client.capable();
		poor.getWorkspace().setDidChangeWatchedFiles(null);
		client.initialize(folder, poor);
		client.until(() -> client.codes(names).contains("gap"), () -> client.codes(names).toString());
		Files.writeString(here, "sign no_crank \"Again\"\n");
		// of two the one in the later file is the second
		client.until(() -> client.codes(names).contains("duplicate-name"), () -> client.codes(names).toString());
		Files.delete(here);
		client.until(() -> !client.codes(names).contains("duplicate-name"), () -> client.codes(names).toString());
	}

	@Test
	void aMessageNestedWithoutEndGetsAnErrorAndEndsNothing() throws IOException {
		begin();
		client.send("{\"jsonrpc\":\"2.0\",\"id\":\"deep\",\"method\":\"workspace/symbol\",\"params\":{\"query\":" + "[".repeat(100_000)
				+ "]".repeat(100_000) + "}}");
		client.open(here, RULE);
		assertFalse(get(client.server.getTextDocumentService().documentSymbol(new DocumentSymbolParams(client.id(here)))).isEmpty());
	}

	@Test
	void anOddRequestIsToldWhatItLacks() throws IOException {
		begin();
		client.open(here, RULE);
		for (HoverParams params : new HoverParams[] { null, new HoverParams(), half(client.id(here)) }) {
			ResponseErrorException error = assertThrows(ResponseErrorException.class,
					() -> get(client.server.getTextDocumentService().hover(params)));
			assertEquals(-32602, error.getResponseError().getCode(), error.getMessage());
			assertFalse(error.getMessage().contains("Internal error"), error.getMessage());
		}
	}

	/** A message that brings no text changes none, and whatever comes after it is read. */
	@Test
	void aTextThatIsMissingLeavesTheOldOne() throws IOException {
		begin();
		client.open(here, RULE.replace("no_crank", "no_crak"));
		client.codes(here, "unknown-name");
		String about = "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/%s\",\"params\":{\"textDocument\":{\"uri\":\"" + here.toUri()
				+ "\",\"languageId\":\"baywright\",\"version\":%d,\"text\":null}%s}}";
		for (String change : List.of("{\"text\":null}", "{}", "null", "{\"text\":\"sign x\"},{}")) {
			client.send(about.formatted("didChange", 2, ",\"contentChanges\":[" + change + "]"));
		}
		// this one is read as no change at all, which has a version all the same
		client.send(about.formatted("didChange", 1, ""));
		client.change(here, piece(new Position(1, 14), new Position(1, 14), "n"));
		client.codes(here, expected(RULE).toArray(new String[0]));
		client.close(here);
		client.send(about.formatted("didOpen", 1, ""));
		client.change(here, all(RULE.replace("lamp", "lammp")));
		client.codes(here, "unknown-name");
		client.change(here, all(RULE));
		client.codes(here, expected(RULE).toArray(new String[0]));
		assertTrue(client.calls.stream().noneMatch(call -> call.contains("failed")), client.calls::toString);
	}

	/** What a server says to messages that no library would write, in the order of the messages. */
	private static List<String> answers(String... messages) throws InterruptedException {
		ByteArrayOutputStream in = new ByteArrayOutputStream();
		for (String message : messages) {
			in.writeBytes(("Content-Length: " + message.length() + "\r\n\r\n" + message).getBytes(StandardCharsets.US_ASCII));
		}
		ByteArrayOutputStream out = new ByteArrayOutputStream();
		ServerProcess.serve(new ByteArrayInputStream(in.toByteArray()), out, "test", () -> false);
		return Stream.of(out.toString(StandardCharsets.UTF_8).split("Content-Length: \\d+\r\n\r\n")).filter(text -> !text.isEmpty()).toList();
	}

	/** The bounds of an integer are those of the protocol 3.17, "Base Types". */
	@Test
	void everyIdOfTheProtocolIsAnswered() throws InterruptedException {
		for (String id : List.of("1000000000", "2147483647", "-2147483648", "\"a\"")) {
			List<String> answers = answers("{\"jsonrpc\":\"2.0\",\"id\":" + id + ",\"method\":\"$/unknown\"}");
			assertEquals(1, answers.size(), answers::toString);
			assertTrue(answers.get(0).contains("\"id\":" + id) && answers.get(0).contains("-32601"), answers.get(0));
		}
		for (String id : List.of("2147483648", "1.5", "true", "[]")) {
			List<String> answers = answers("{\"jsonrpc\":\"2.0\",\"id\":" + id + ",\"method\":\"shutdown\"}");
			assertTrue(answers.get(0).contains("\"id\":null") && answers.get(0).contains("-32600"), answers.get(0));
		}
		assertEquals(List.of(), answers("{\"jsonrpc\":\"2.0\",\"method\":\"$/unknown\"}"), "a notification has no answer");
	}

	private static HoverParams half(TextDocumentIdentifier document) {
		HoverParams params = new HoverParams();
		params.setTextDocument(document);
		return params;
	}
}
