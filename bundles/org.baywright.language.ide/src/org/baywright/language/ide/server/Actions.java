package org.baywright.language.ide.server;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.baywright.language.ide.fix.QuickFix;
import org.baywright.language.ide.text.TextEdit;
import org.baywright.language.text.SourceText;
import org.baywright.language.workspace.Snapshot;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionKind;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.TextDocumentEdit;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.messages.Either;

/** Says fixes and changes of several files as the protocol does. */
final class Actions {

	/** Fixes of flaws are worth a moment, since the editor asks for them anew only when the cursor moves. */
	private static final Duration WORTH_A_MOMENT = Duration.ofSeconds(2);

	private Actions() {
	}

	/** Waits until the fixes of flaws can be told. */
	static void awaitCheck(Host host) {
		try {
			host.live().awaitIdle(WORTH_A_MOMENT);
		} catch (InterruptedException e) {
			Thread.currentThread().interrupt();
		}
	}

	static List<CodeAction> of(Asking.Site site, int offset, int length, List<Diagnostic> shown, Abilities abilities) {
		Optional<Snapshot> snapshot = site.host().live().snapshot();
		if (snapshot.isEmpty() || !site.text().text().equals(snapshot.get().sources().get(site.file()))) {
			return List.of();
		}
		List<CodeAction> actions = new ArrayList<>();
		for (QuickFix fix : site.services().fixes(site.file(), offset, length, snapshot.get(), site.host().live().report())) {
			CodeAction action = new CodeAction(fix.title());
			action.setKind(CodeActionKind.QuickFix);
			action.setDiagnostics(shown.stream().filter(diagnostic -> isAbout(diagnostic, fix)).toList());
			action.setEdit(edit(site.host(), fix.edits(), snapshot.get(), abilities));
			actions.add(action);
		}
		return actions;
	}

	private static boolean isAbout(Diagnostic diagnostic, QuickFix fix) {
		String data = diagnostic.getData() == null ? "" : diagnostic.getData().toString().replace("\"", "");
		return data.equals(fix.about());
	}

	/**
	 * Says changes of several files.
	 *
	 * @param host the project
	 * @param edits the changes
	 * @param snapshot the texts that they are meant for
	 * @param abilities what the client can do
	 */
	static WorkspaceEdit edit(Host host, Map<String, List<TextEdit>> edits, Snapshot snapshot, Abilities abilities) {
		Map<String, List<org.eclipse.lsp4j.TextEdit>> changes = new LinkedHashMap<>();
		List<Either<TextDocumentEdit, org.eclipse.lsp4j.ResourceOperation>> versioned = new ArrayList<>();
		edits.forEach((file, list) -> {
			String text = snapshot.sources().get(file);
			List<org.eclipse.lsp4j.TextEdit> said = Positions.edits(new SourceText(file, text), list);
			changes.put(host.uri(file), said);
			versioned.add(Either.forLeft(new TextDocumentEdit(
					new VersionedTextDocumentIdentifier(host.uri(file), host.version(file, text).orElse(null)), said)));
		});
		return abilities.versionedEdits() ? new WorkspaceEdit(versioned) : new WorkspaceEdit(changes);
	}
}
