package org.baywright.language.ide.server;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.baywright.language.ide.live.LiveProject;
import org.baywright.language.text.SourceText;
import org.baywright.model.Span;

/** A project with the texts that the client has open in it. */
final class Host {

	private final Optional<Path> folder;
	private final Map<String, Document> open = new ConcurrentHashMap<>();
	private LiveProject live;
	private Publishing publishing;

	/** @param folder its folder; nothing for a text that lies in none */
	Host(Optional<Path> folder) {
		this.folder = folder;
	}

	void start(LiveProject project, Publishing told) {
		live = project;
		publishing = told;
	}

	/** Ends the project and takes back what was said of it. */
	void close() {
		live.close();
		publishing.clear();
	}

	LiveProject live() {
		return live;
	}

	/** Returns the text that the client has open, if it has. */
	Optional<Document> open(String file) {
		return Optional.ofNullable(open.get(file));
	}

	/** Returns the text of a file as it is known, the empty text if it is not. */
	String text(String file) {
		return open(file).map(Document::text).orElseGet(() -> live.services().project().source(file).map(SourceText::text).orElse(""));
	}

	boolean hasOpen() {
		return !open.isEmpty();
	}

	/** Takes over a text of the client. */
	synchronized void edit(String file, Document document) {
		open.put(file, document);
		live.edit(file, document.text());
	}

	/** The client does not have the file open any more. */
	synchronized void closed(String file) {
		open.remove(file);
		diskChanged(file);
	}

	/** Returns the address of a file, as the client writes it if it has the file open. */
	String uri(String file) {
		return open(file).map(Document::uri)
				.orElseGet(() -> folder.map(path -> address(path, file)).orElse(file));
	}

	/** A way out of the folder leads where the folder really is. */
	private static String address(Path folder, String file) {
		try {
			return (Span.isElsewhere(file) ? folder.toRealPath().resolve(file).normalize() : folder.resolve(file)).toUri().toString();
		} catch (IOException e) {
			return folder.resolve(file).normalize().toUri().toString();
		}
	}

	/** Returns the client's number of a text, if that is what it has open. */
	Optional<Integer> version(String file, String text) {
		return open(file).filter(document -> document.text().equals(text)).map(Document::version);
	}

	/** Gives a file the text that the disk has, unless the client has it open. */
	synchronized void diskChanged(String file) {
		if (open.containsKey(file)) {
			return;
		}
		if (folder.isPresent()) {
			live.reload(file);
		} else {
			live.remove(file);
		}
	}
}
