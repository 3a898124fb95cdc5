package org.baywright.language.ide.server;

import java.net.URI;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;

/** Finds the project of a file: that of the innermost folder of the workspace, or one for its own folder. */
final class Hosts {

	private final Function<Optional<Path>, Host> starting;
	private final Map<Path, Host> workspace = new TreeMap<>();
	private final Map<String, Host> others = new TreeMap<>();

	/** @param starting starts the project of a folder, or one without a folder */
	Hosts(Function<Optional<Path>, Host> starting) {
		this.starting = starting;
	}

	/** A file of a project. */
	record Found(Host host, String file) {
	}

	/** Returns the path that an address means, if it means one on this machine. */
	static Optional<Path> path(String uri) {
		try {
			URI address = URI.create(uri);
			return "file".equals(address.getScheme()) ? Optional.of(Path.of(address).toAbsolutePath().normalize())
					: Optional.empty();
		} catch (IllegalArgumentException | FileSystemNotFoundException e) {
			return Optional.empty();
		}
	}

	/** Adds a folder of the workspace; returns its project if it is new. */
	synchronized Optional<Host> add(Path folder) {
		if (workspace.containsKey(folder)) {
			return Optional.empty();
		}
		Host host = starting.apply(Optional.of(folder));
		workspace.put(folder, host);
		return Optional.of(host);
	}

	/** Takes a folder out of the workspace. */
	synchronized void remove(Path folder) {
		Host gone = workspace.remove(folder);
		if (gone != null) {
			gone.close();
		}
	}

	/** Returns the project of a file, if there is one already. */
	synchronized Optional<Found> find(String uri) {
		Optional<Path> path = path(uri);
		if (path.isPresent()) {
			Optional<Path> folder = workspace.keySet().stream().filter(path.get()::startsWith)
					.max(Comparator.comparingInt(Path::getNameCount));
			if (folder.isPresent() && !folder.get().equals(path.get())) {
				return Optional.of(new Found(workspace.get(folder.get()), relative(folder.get(), path.get())));
			}
		}
		Host own = others.get(key(uri, path));
		return own == null ? Optional.empty() : Optional.of(new Found(own, name(uri, path)));
	}

	/** Returns the project of a file that the client opens. */
	synchronized Found open(String uri) {
		Optional<Found> found = find(uri);
		if (found.isPresent()) {
			return found.get();
		}
		Optional<Path> path = path(uri);
		Host own = starting.apply(path.map(Path::getParent));
		others.put(key(uri, path), own);
		return new Found(own, name(uri, path));
	}

	/** Ends the project of a single text once no text of it is open. */
	synchronized void closed(Host host) {
		if (!host.hasOpen() && others.values().remove(host)) {
			host.close();
		}
	}

	/** Returns the projects of the workspace by folder. */
	synchronized Map<Path, Host> folders() {
		return new TreeMap<>(workspace);
	}

	synchronized List<Host> all() {
		List<Host> all = new ArrayList<>(workspace.values());
		all.addAll(others.values());
		return all;
	}

	private static String key(String uri, Optional<Path> path) {
		return path.map(Path::toString).orElse(uri);
	}

	private static String name(String uri, Optional<Path> path) {
		return path.map(Path::getFileName).map(Path::toString).orElse(uri);
	}

	private static String relative(Path folder, Path file) {
		return folder.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
	}
}
