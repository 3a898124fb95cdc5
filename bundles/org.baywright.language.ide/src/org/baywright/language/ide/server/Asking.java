package org.baywright.language.ide.server;

import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import org.baywright.language.ide.EditorServices;
import org.baywright.language.text.SourceText;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.jsonrpc.CompletableFutures;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;

/** Answers questions about files on threads of its own, on the text that the client had when it asked. */
final class Asking {

	private final Hosts hosts;
	private final Executor threads;
	private final Runnable guard;

	/**
	 * @param hosts the projects
	 * @param threads where answers are found
	 * @param guard throws if this is no time for questions
	 */
	Asking(Hosts hosts, Executor threads, Runnable guard) {
		this.hosts = hosts;
		this.threads = threads;
		this.guard = guard;
	}

	/**
	 * What a question works with.
	 *
	 * @param host the project
	 * @param file path relative to the project
	 * @param text the file as the client sees it
	 * @param services the services; the project's lock is held
	 */
	record Site(Host host, String file, SourceText text, EditorServices services) {

		int offset(Position position) {
			require(position, "the position that it is about (position)");
			return Positions.offset(text.text(), position);
		}
	}

	/** A question. */
	interface Question<T> {
		T ask(Site site);
	}

	/**
	 * Asks about a file.
	 *
	 * @param document the file
	 * @param nothing the answer if the file belongs to no project
	 * @param question asks
	 */
	<T> CompletableFuture<T> about(TextDocumentIdentifier document, T nothing, Question<T> question) {
		guard.run();
		require(document, "the document that it is about (textDocument)");
		Hosts.Found found = hosts.find(document.getUri()).orElse(null);
		if (found == null) {
			return CompletableFuture.completedFuture(nothing);
		}
		Document open = found.host().open(found.file()).orElse(null);
		return CompletableFutures.computeAsync(threads, cancelled -> {
			cancelled.checkCanceled();
			return found.host().live().read(found.file(), services -> {
				cancelled.checkCanceled();
				SourceText text = services.project().source(found.file()).orElse(null);
				if (text == null) {
					return nothing;
				}
				if (open != null && !open.text().equals(text.text())) {
					throw error(ResponseErrorCode.ContentModified, "The text has changed meanwhile.");
				}
				return question.ask(new Site(found.host(), found.file(), text, services));
			});
		});
	}

	/** Does something with the project of a file before a question about it. */
	CompletableFuture<Void> first(TextDocumentIdentifier document, Consumer<Host> what) {
		return hosts.find(document.getUri()).map(found -> CompletableFuture.runAsync(() -> what.accept(found.host()), threads))
				.orElseGet(() -> CompletableFuture.completedFuture(null));
	}

	/** Asks something of all projects. */
	<T> CompletableFuture<List<T>> all(Function<Host, List<T>> question) {
		guard.run();
		List<Host> all = hosts.all();
		return CompletableFutures.computeAsync(threads, cancelled -> all.stream().flatMap(host -> {
			cancelled.checkCanceled();
			return question.apply(host).stream();
		}).toList());
	}

	/** Makes sure that a request holds what it cannot be answered without. */
	static void require(Object part, String what) {
		if (part == null) {
			throw error(ResponseErrorCode.InvalidParams, "The request lacks " + what + ".");
		}
	}

	static ResponseErrorException error(ResponseErrorCode code, String message) {
		return new ResponseErrorException(new ResponseError(code, message, null));
	}
}
