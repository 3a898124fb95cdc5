package org.baywright.language.ide.server;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import org.baywright.analysis.Flaw;
import org.baywright.analysis.Report;
import org.baywright.language.ide.live.Audience;
import org.baywright.language.text.SourceText;
import org.baywright.language.workspace.Snapshot;
import org.baywright.model.Problem;
import org.baywright.model.Span;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.MessageType;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.services.LanguageClient;

/**
 * Sends the problems and flaws of a project, each file's only when they differ from what was sent before. Between
 * reading and checking the flaws of the last check stay where what they speak of has not changed.
 */
final class Publishing implements Audience {

	private final Host host;
	private final LanguageClient client;
	private final Abilities abilities;
	private final Map<String, List<Diagnostic>> sent = new HashMap<>();
	private final Map<String, String> sentTo = new HashMap<>();
	private List<Flaw> found = List.of();
	private Map<String, String> foundIn = Map.of();

	Publishing(Host host, LanguageClient client, Abilities abilities) {
		this.host = host;
		this.client = client;
		this.abilities = abilities;
	}

	@Override
	public void problems(Snapshot snapshot) {
		send(snapshot);
	}

	@Override
	public void flaws(Snapshot snapshot, Report report) {
		found = report.flaws().stream().filter(flaw -> flaw.accepted().isEmpty()).toList();
		foundIn = snapshot.sources();
		send(snapshot);
		if (abilities.refreshesLenses()) {
			client.refreshCodeLenses();
		}
	}

	@Override
	public void failed(Snapshot snapshot, Throwable failure) {
		found = List.of();
		send(snapshot);
		String why = failure instanceof CancellationException ? "The check was stopped."
				: "The check failed: " + failure;
		client.logMessage(new MessageParams(MessageType.Error, why));
	}

	private synchronized void send(Snapshot snapshot) {
		SortedMap<String, List<Diagnostic>> now = new TreeMap<>();
		for (Problem problem : snapshot.problems()) {
			now.computeIfAbsent(problem.span().file(), none -> new ArrayList<>()).add(Diagnostics.of(problem));
		}
		Map<String, Moved> moves = new HashMap<>();
		for (Flaw flaw : found) {
			place(flaw.span(), snapshot, moves).ifPresent(span -> now
					.computeIfAbsent(span.file(), none -> new ArrayList<>())
					.add(Diagnostics.of(flaw, span, abilities.relatedInformation() ? Diagnostics.related(flaw,
							place -> place(place, snapshot, moves).filter(at -> !at.file().endsWith(Span.PACK)).map(this::location)) : List.of())));
		}
		TreeSet<String> files = new TreeSet<>(now.keySet());
		files.addAll(sent.keySet());
		for (String file : files) {
			send(file, now.getOrDefault(file, List.of()), snapshot);
		}
	}

	private void send(String file, List<Diagnostic> diagnostics, Snapshot snapshot) {
		String uri = host.uri(file);
		String before = sentTo.get(file);
		if (before != null && !before.equals(uri)) {
			client.publishDiagnostics(new PublishDiagnosticsParams(before, List.of()));
			sent.remove(file);
		}
		if (!diagnostics.equals(sent.getOrDefault(file, List.of()))) {
			PublishDiagnosticsParams params = new PublishDiagnosticsParams(uri, diagnostics);
			Optional.ofNullable(snapshot.sources().get(file)).flatMap(text -> host.version(file, text))
					.ifPresent(params::setVersion);
			client.publishDiagnostics(params);
		}
		if (diagnostics.isEmpty()) {
			sent.remove(file);
			sentTo.remove(file);
		} else {
			sent.put(file, diagnostics);
			sentTo.put(file, uri);
		}
	}

	/** Where a place of the last check stands now. */
	private Optional<Span> place(Span span, Snapshot snapshot, Map<String, Moved> moves) {
		String old = foundIn.get(span.file());
		String now = snapshot.sources().get(span.file());
		if (old == null || now == null) {
			return Optional.empty();
		}
		if (old.equals(now)) {
			return Optional.of(span);
		}
		return moves.computeIfAbsent(span.file(), file -> new Moved(old, new SourceText(file, now))).place(span);
	}

	private Location location(Span span) {
		return new Location(host.uri(span.file()), Positions.range(span));
	}

	/** Takes everything back, as when the project leaves the workspace. */
	synchronized void clear() {
		sentTo.values().forEach(uri -> client.publishDiagnostics(new PublishDiagnosticsParams(uri, List.of())));
	}
}
