package org.baywright.language.ide.server;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.baywright.language.workspace.FileStamps;

/** Looks again and again whether files have changed on the disk, for a client that does not watch them. */
final class DiskWatch implements AutoCloseable {

	private static final long LOOK_AGAIN_MILLIS = 1000;

	private final Hosts hosts;
	private final Map<Path, Map<String, String>> known = new TreeMap<>();
	private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor(task -> {
		Thread thread = new Thread(task, "Look at the rule files");
		thread.setDaemon(true);
		return thread;
	});

	DiskWatch(Hosts hosts) {
		this.hosts = hosts;
	}

	void start() {
		clock.scheduleWithFixedDelay(this::look, 0, LOOK_AGAIN_MILLIS, TimeUnit.MILLISECONDS);
	}

	private void look() {
		Map<Path, Host> folders = hosts.folders();
		known.keySet().retainAll(folders.keySet());
		folders.forEach(this::look);
	}

	private void look(Path folder, Host host) {
		Map<String, String> now;
		try {
			now = FileStamps.of(folder);
		} catch (IOException | RuntimeException e) {
			return; // a folder that is gone for a moment is not a folder without rules
		}
		Map<String, String> before = known.put(folder, now);
		TreeSet<String> files = new TreeSet<>(now.keySet());
		if (before != null) {
			files.addAll(before.keySet());
			files.removeIf(file -> now.getOrDefault(file, "").equals(before.getOrDefault(file, "")));
		}
		// the first look reads nothing that was not read already, unless it changed in between
		files.forEach(host::diskChanged);
	}

	@Override
	public void close() {
		clock.shutdownNow();
	}
}
